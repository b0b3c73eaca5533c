// Sheets between two parallel ends: reducers, tapers, changes of shape, and the
// legs of breeches. A sheet that can be rolled joins points with parallel
// tangents: corner to arc is an oblique cone, edge to edge a plane.
'use strict';
const { scale, ORIGIN, at, end, turn } = require('./kernel.js');
const { PARTS, sectionOf, swing, rad } = require('./ducts.js');

const LEG_PARTS = 16; // more take the kernel's booleans minutes

function farSection(p) {
  const { diameter2_mm: d, width2_mm: w, height2_mm: h } = p.sizes;
  const shape = p.shape2 || p.shape;
  return shape === 'circular' ? { shape, d } : { shape, w, h };
}

const farFrame = (z) => ({ ...ORIGIN, o: at(ORIGIN, z.offset_mm || 0, z.offset2_mm || 0, z.length_mm) });

// rounded gives a section as a rectangle of flats fx by fy with corners of
// radius r.
function rounded(s) {
  if (s.shape === 'circular') return { fx: 0, fy: 0, r: s.d / 2 };
  if (s.shape === 'flat-oval') return { fx: s.w - s.h, fy: 0, r: s.h / 2 };
  return { fx: s.w, fy: s.h, r: 0 };
}

// corner k of an end: the arc in parts, or the point it shrinks to, and the
// arc's two ends.
function corner(K, s, f, k) {
  const { fx, fy, r } = rounded(s);
  const sx = [1, -1, -1, 1][k], sy = [1, 1, -1, -1][k];
  const o = at(f, sx * fx / 2, sy * fy / 2), a = k * Math.PI / 2;
  const point = (t) => at({ ...f, o }, r * Math.round(Math.cos(t)), r * Math.round(Math.sin(t)));
  const parts = r > 0 ? K.arcs({ ...f, o }, r, a, a + Math.PI / 2, PARTS / 4).map((e) => K.wire([e])) : Array(PARTS / 4).fill(o);
  return { r, first: point(a), last: point(a + Math.PI / 2), parts };
}

const distinct = (points) => points.filter((p, i) => {
  const q = points[(i + points.length - 1) % points.length];
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]) > 1e-9;
});

// developable gives the faces of the sheet: four corners and the planes
// between them.
function developable(K, near, far, g) {
  const faces = [];
  for (let k = 0; k < 4; k++) {
    const a = corner(K, near, ORIGIN, k), b = corner(K, far, g, k);
    const a2 = corner(K, near, ORIGIN, (k + 1) % 4), b2 = corner(K, far, g, (k + 1) % 4);
    if (a.r + b.r > 0) a.parts.forEach((part, i) => faces.push(...K.faces(K.ruled(part, b.parts[i], false))));
    const plane = distinct([a.last, a2.first, b2.first, b.last]);
    if (plane.length > 2) faces.push(K.face(K.polygon(plane)));
  }
  const ends = [[near, ORIGIN], [far, g]].map(([s, f]) => K.face(K.outline(s, f, PARTS / (s.shape === 'circular' ? 1 : 2))));
  if (!K.closed([...faces, ...ends])) throw new Error('the sheet leaks');
  return faces.reduce((sum, f) => sum + K.area(f), 0);
}

function sheet(K, p) {
  const near = sectionOf(p), far = farSection(p), g = farFrame(p.sizes);
  const like = near.shape === far.shape && near.shape !== 'flat-oval';
  if (!like) return [developable(K, near, far, g), 'plane faces and oblique cones, sewn tight'];
  const concentric = near.shape === 'circular' && !p.sizes.offset_mm && !p.sizes.offset2_mm;
  if (concentric) {
    const profile = K.polygon([[0, 0, 0], [near.d / 2, 0, 0], [far.d / 2, 0, g.o[2]], [0, 0, g.o[2]]]);
    const cone = K.revolve(K.face(profile), [0, 0, 0], [0, 0, 1], 2 * Math.PI);
    return [K.area(cone, [end(ORIGIN), end(g)]), 'trapezoid revolved'];
  }
  return [K.area(K.ruled(K.outline(near, ORIGIN, PARTS), K.outline(far, g, PARTS), true), [end(ORIGIN), end(g)]), 'ruled solid between the ends'];
}

// breeches are two legs fused; rectangular ones two bends side by side.
function breeches(K, p) {
  const z = p.sizes;
  if (p.shape === 'rectangular') return twinBend(K, p);
  const leg = { shape: 'circular', d: z.branch_diameter_mm };
  const legs = [1, -1].map((side) => {
    // turned so that the kernel's seam lies on the outer side of each leg
    const half = (f) => ({ ...f, x: scale(f.x, side), y: scale(f.y, side) });
    const g = farFrame({ length_mm: z.length_mm, offset_mm: side * z.offset_mm });
    return K.ruled(K.outline(sectionOf(p), half(ORIGIN), LEG_PARTS), K.outline(leg, half(g), LEG_PARTS), true);
  });
  const ends = [end(ORIGIN), end(farFrame({ length_mm: z.length_mm }))];
  return [K.area(K.fuse(legs[0], legs[1]), ends), 'two oblique cones, fused'];
}

function twinBend(K, p) {
  const s = sectionOf(p), z = p.sizes, leg = { ...s, w: s.w / 2 }, theta = rad(z.angle_deg);
  const r = z.throat_mm + leg.w / 2;
  const sum = [1, -1].reduce((total, side) => {
    const f = { ...ORIGIN, o: at(ORIGIN, side * leg.w / 2, 0) };
    const bend = swing(K, leg, f, side * r, side * theta);
    return total + K.area(bend, [end(f), end(turn(f, side * r, side * theta))]);
  }, 0);
  return [sum, 'two half sections revolved apart'];
}

module.exports = { sheet, breeches };
