// Pieces at the limits: nearly degenerate sizes, where a formula or the kernel
// is most likely to lose figures.
'use strict';

const list = [];
const corner = (note, kind, style, shape, sizes, more = {}) => list.push({ kind, style, shape, ...more, note, sizes });

const bend = (note, style, shape, sizes, more) => corner(note, 'bend', style, shape, sizes, more);
bend('half a degree', 'radius', 'circular', { diameter_mm: 315, angle_deg: 0.5, radius_mm: 315 });
bend('half a turn', 'radius', 'rectangular', { width_mm: 600, height_mm: 400, angle_deg: 180, throat_mm: 100 });
bend('throat of a thousandth', 'radius', 'circular', { diameter_mm: 400, angle_deg: 90, throat_mm: 0.4 });
bend('no throat', 'radius', 'circular', { diameter_mm: 400, angle_deg: 90, throat_mm: 0 });
bend('oval with nearly equal axes', 'radius', 'flat-oval', { width_mm: 300.3, height_mm: 300, angle_deg: 60, throat_mm: 150 });
bend('five degrees', 'mitred', 'circular', { diameter_mm: 500, angle_deg: 5, legs_mm: 100 });
bend('sharp', 'mitred', 'rectangular', { width_mm: 300, height_mm: 500, angle_deg: 150, legs_mm: 40 });
bend('no legs', 'mitred', 'rectangular', { width_mm: 600, height_mm: 400, angle_deg: 90, legs_mm: 0 });
bend('two pieces', 'gored', 'circular', { diameter_mm: 250, angle_deg: 60, gores: 2, radius_mm: 300 });
bend('twelve pieces', 'gored', 'circular', { diameter_mm: 250, angle_deg: 90, gores: 12, radius_mm: 260 });
bend('small throat, small angle', 'square heel', 'rectangular', { width_mm: 500, height_mm: 300, angle_deg: 4, throat_mm: 1 });
bend('hardly reducing', 'radius', 'rectangular', { width_mm: 500, height_mm: 300, width2_mm: 499.5, angle_deg: 90, throat_mm: 100 });
bend('opening out', 'radius', 'rectangular', { width_mm: 200, height_mm: 300, width2_mm: 900, angle_deg: 45, throat_mm: 50 });

const sheet = (note, shape, shape2, sizes) =>
  corner(note, shape === shape2 ? 'reducer' : 'transition', undefined, shape, sizes, shape === shape2 ? {} : { shape2 });
const [R, C, O] = ['rectangular', 'circular', 'flat-oval'];
sheet('tiny difference', C, C, { diameter_mm: 400, diameter2_mm: 399.9, length_mm: 500 });
sheet('tiny difference, shifted', C, C, { diameter_mm: 400, diameter2_mm: 400.1, length_mm: 500, offset_mm: 200 });
sheet('hardly shifted', C, C, { diameter_mm: 500, diameter2_mm: 315, length_mm: 300, offset_mm: 0.2 });
sheet('short and far shifted', C, C, { diameter_mm: 500, diameter2_mm: 315, length_mm: 20, offset_mm: 400 });
sheet('tiny difference', R, R, { width_mm: 600, height_mm: 400, width2_mm: 600, height2_mm: 399.9, length_mm: 500 });
sheet('one side only, far shifted', R, R, { width_mm: 600, height_mm: 400, width2_mm: 300, height2_mm: 400, length_mm: 200, offset_mm: 300, offset2_mm: -200 });
sheet('nearly equal axes', O, O, { width_mm: 301, height_mm: 300, width2_mm: 200.5, height2_mm: 200, length_mm: 250, offset_mm: 30 });
sheet('same flats', O, O, { width_mm: 700, height_mm: 300, width2_mm: 600, height2_mm: 200, length_mm: 250, offset_mm: 30, offset2_mm: 20 });
sheet('circle as wide as the square', R, C, { width_mm: 400, height_mm: 400, diameter2_mm: 400, length_mm: 300 });
sheet('very short', R, C, { width_mm: 600, height_mm: 300, diameter2_mm: 355, length_mm: 5, offset_mm: 60, offset2_mm: -40 });
sheet('nearly a circle', O, C, { width_mm: 400.5, height_mm: 400, diameter2_mm: 400, length_mm: 200 });
sheet('oval as wide and high as the rectangle', R, O, { width_mm: 800, height_mm: 300, width2_mm: 800, height2_mm: 300, length_mm: 400 });

corner('hardly an offset', 'offset', 'straight', C, { diameter_mm: 315, length_mm: 1000, offset_mm: 1 });
corner('steep', 'offset', 'straight', C, { diameter_mm: 315, length_mm: 50, offset_mm: 900 });
corner('hardly an offset', 'offset', 'mitred', C, { diameter_mm: 315, length_mm: 1000, offset_mm: 5, legs_mm: 100 });
corner('hardly an offset', 'offset', 'radius', R, { width_mm: 400, height_mm: 300, length_mm: 1000, offset_mm: 1 });
corner('no throat', 'offset', 'radius', R, { width_mm: 400, height_mm: 300, length_mm: 800, offset_mm: 300, throat_mm: 0 });

const tee = (note, style, sizes, more) => corner(note, 'tee', style, C, sizes, more);
tee('branch of 0.98', 'straight', { diameter_mm: 500, length_mm: 800, branch_diameter_mm: 490, branch_length_mm: 100 });
tee('branch of 0.999', 'straight', { diameter_mm: 500, length_mm: 800, branch_diameter_mm: 499.5, branch_length_mm: 100 });
tee('branch of 0.9999', 'straight', { diameter_mm: 500, length_mm: 800, branch_diameter_mm: 499.95, branch_length_mm: 100 });
tee('branch of 0.98 at an angle', 'straight', { diameter_mm: 500, length_mm: 3000, branch_diameter_mm: 490, branch_angle_deg: 45, branch_length_mm: 900 });
tee('branch of a hundredth', 'straight', { diameter_mm: 2000, length_mm: 500, branch_diameter_mm: 20, branch_length_mm: 50 });
tee('a degree off square', 'straight', { diameter_mm: 400, length_mm: 900, branch_diameter_mm: 250, branch_angle_deg: 89, branch_length_mm: 150 });
tee('twenty degrees', 'straight', { diameter_mm: 315, length_mm: 4000, branch_diameter_mm: 200, branch_angle_deg: 20, branch_length_mm: 900 });
tee('a millimetre off centre', 'straight', { diameter_mm: 400, length_mm: 600, branch_diameter_mm: 250, branch_shift_mm: 1, branch_length_mm: 100 });
tee('nearly at the edge', 'straight', { diameter_mm: 400, length_mm: 600, branch_diameter_mm: 200, branch_shift_mm: 99.9, branch_length_mm: 100 });
tee('at the edge', 'straight', { diameter_mm: 400, length_mm: 600, branch_diameter_mm: 200, branch_shift_mm: 100, branch_length_mm: 100 });
tee('hardly conical', 'conical', { diameter_mm: 500, length_mm: 700, branch_diameter_mm: 250, entry_mm: 250.2, branch_length_mm: 150 });
tee('wide cone', 'conical', { diameter_mm: 500, length_mm: 900, branch_diameter_mm: 200, entry_mm: 380, branch_length_mm: 400 });
tee('square branch as wide as the main', 'straight', { diameter_mm: 400, length_mm: 800, branch_width_mm: 300, branch_height_mm: 400, branch_length_mm: 100 }, { shape2: R });
tee('oval branch with nearly equal axes', 'straight', { diameter_mm: 500, length_mm: 800, branch_width_mm: 300.3, branch_height_mm: 300, branch_length_mm: 100 }, { shape2: O });
corner('collar of a millimetre', 'tee', 'straight', R, { width_mm: 400, height_mm: 300, length_mm: 600, branch_diameter_mm: 399, branch_length_mm: 1 });
corner('shoe as long as its collar', 'tee', 'shoe', R, { width_mm: 600, height_mm: 400, length_mm: 900, branch_width_mm: 300, branch_height_mm: 250, entry_mm: 100, branch_length_mm: 100 });
corner('branches of 0.98', 'cross', 'straight', C, { diameter_mm: 500, length_mm: 800, branch_diameter_mm: 490, branch_length_mm: 100 });

corner('legs\' ends touch', 'breeches', undefined, C, { diameter_mm: 400, branch_diameter_mm: 315, length_mm: 500, offset_mm: 157.5 });
corner('legs as wide as the main', 'breeches', undefined, C, { diameter_mm: 300, branch_diameter_mm: 300, length_mm: 500, offset_mm: 200 });
corner('spread wide', 'breeches', undefined, C, { diameter_mm: 400, branch_diameter_mm: 150, length_mm: 120, offset_mm: 600 });
corner('half a sphere', 'cap', 'dished', C, { diameter_mm: 500, rise_mm: 250 });
corner('hardly dished', 'cap', 'dished', C, { diameter_mm: 500, rise_mm: 1 });
corner('oval with nearly equal axes', 'cap', 'flat', O, { width_mm: 300.1, height_mm: 300 });

module.exports = { corners: () => list.map((p) => Object.fromEntries(Object.entries(p).filter(([, v]) => v !== undefined))) };
