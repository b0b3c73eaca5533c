// Branches on mains: tees, crosses, spigots. Main and branch are solids, fused;
// the opening and the branch are found again apart, as what the one solid takes
// out of the other's wall.
'use strict';
const { add, scale, end, at, along } = require('./kernel.js');
const { push, rad } = require('./ducts.js');

const X = [1, 0, 0], Y = [0, 1, 0], Z = [0, 0, 1];

// mainFrame has the main's axis along Z and, for a circle, the kernel's seam on
// the side away from the branch.
const mainFrame = (l) => ({ o: [0, 0, -l / 2], x: scale(X, -1), y: scale(Y, -1), z: Z });

// The branch stands on the side +X; across the main is Y, the main's width.
function mainSection(shape, z) {
  if (shape === 'circular') return { shape, d: z.diameter_mm };
  return { shape, w: z.height_mm, h: z.width_mm };
}

const wallAt = (s, shift) => (s.shape === 'circular' ? Math.sqrt(s.d * s.d / 4 - shift * shift) : s.w / 2);

function branchSection(p) {
  const z = p.sizes;
  if (z.branch_diameter_mm !== undefined) return { shape: 'circular', d: z.branch_diameter_mm };
  return { shape: (p.kind === 'spigot' ? p.shape : p.shape2) || 'rectangular', w: z.branch_width_mm, h: z.branch_height_mm };
}

// stub makes the branch as a solid that begins inside the main. side is 1, or
// -1 for the one opposite; z0 is where its axis meets the wall.
function stub(K, p, main, side = 1, z0 = 0) {
  const z = p.sizes, beta = rad(z.branch_angle_deg === undefined ? 90 : z.branch_angle_deg);
  const shift = z.branch_shift_mm || 0, wall = wallAt(main, shift);
  const out = scale(X, side);
  if (p.style === 'conical') return cone(K, z, main, out, wall, z0);
  if (p.style === 'shoe') return shoe(K, z, out, wall, z0);
  const axis = add(scale(Z, Math.cos(beta)), out, Math.sin(beta));
  const alongMain = add(scale(out, Math.cos(beta)), Z, -Math.sin(beta));
  const o = [0, shift, z0 - wall / Math.tan(beta)];
  const f = { o, x: alongMain, y: scale(Y, side), z: axis };
  const free = wall / Math.sin(beta) + z.branch_length_mm;
  return { solid: push(K, branchSection(p), f, free), ends: [end(f), end(along(f, free))] };
}

// cone is revolved: entry wide at the wall or crown, going on inwards at the
// same slope until it's well inside the main.
function cone(K, z, main, out, wall, z0) {
  const r1 = z.entry_mm / 2, r2 = z.branch_diameter_mm / 2, m = (r1 - r2) / z.branch_length_mm;
  const radius = (x) => r1 + m * (wall - x);
  let foot = wall / 2;
  if (main.shape === 'circular') {
    while (foot > 0 && Math.hypot(foot, radius(foot)) > 0.98 * wall) foot -= wall / 1000;
  }
  if (Math.hypot(foot, radius(foot)) > wall && main.shape === 'circular') throw new Error('the cone outgrows the main');
  const p = (x, r) => add(scale(out, x), Z, z0 + r);
  const top = wall + z.branch_length_mm;
  const profile = K.polygon([p(foot, 0), p(top, 0), p(top, r2), p(foot, radius(foot))]);
  const solid = K.revolve(K.face(profile), [0, 0, z0], out, 2 * Math.PI);
  return { solid, ends: [{ p: p(foot, 0), n: out }, { p: p(top, 0), n: out }] };
}

// shoe is a branch whose side is let out at 45 degrees by the entry, drawn from
// the side and pushed across.
function shoe(K, z, out, wall, z0) {
  const { branch_width_mm: w, branch_height_mm: h, branch_length_mm: l, entry_mm: t } = z;
  const p = (u, v) => add(add(scale(out, u), Z, z0 + v), Y, -h / 2);
  const inside = wall / 2;
  const points = [p(inside, -w / 2 - t), p(wall, -w / 2 - t), p(wall + t, -w / 2), p(wall + l, -w / 2), p(wall + l, w / 2), p(inside, w / 2)];
  if (t === l) points.splice(3, 1);
  const solid = K.prism(K.face(K.polygon(points)), scale(Y, h));
  return { solid, ends: [{ p: p(inside, 0), n: out }, { p: p(wall + l, 0), n: out }] };
}

// on fuses branches to a main and measures the whole, the branches and the
// openings, each for itself.
function on(K, main, mainEnds, stubs) {
  let whole = main, branch = 0, opening = 0;
  for (const s of stubs) {
    whole = K.fuse(whole, s.solid);
    branch += sides(K, s.solid, s.ends).reduce((sum, f) => sum + K.area(K.cut(f, main)), 0);
    opening += sides(K, main, mainEnds).reduce((sum, f) => sum + K.area(K.common(f, s.solid)), 0);
  }
  const area = K.area(whole, [...mainEnds, ...stubs.map((s) => s.ends[1])]);
  const parts = K.area(main, mainEnds) - opening + branch;
  if (Math.abs(parts / area - 1) > 1e-8) throw new Error('the parts don\'t add up: ' + (parts / area - 1));
  return { area, branch, opening };
}

const sides = (K, solid, ends) => K.faces(solid).filter((f) => K.area(f, ends) > 0);

function straightMain(K, shape, z) {
  const f = mainFrame(z.length_mm), s = mainSection(shape, z);
  return { s, solid: push(K, s, f, z.length_mm), ends: [end(f), end(along(f, z.length_mm))] };
}

function tee(K, p) {
  const main = straightMain(K, p.shape, p.sizes);
  const stubs = (p.kind === 'cross' ? [1, -1] : [1]).map((side) => stub(K, p, main.s, side));
  return [on(K, main.solid, main.ends, stubs).area, 'main and branch as solids, fused'];
}

// wallOf reads the wall a spigot sits in; a plenum's is a wide flat one.
function wallOf(from) {
  const [shape, size] = from.split(' ');
  if (shape === 'plenum') return { shape: 'rectangular', z: { width_mm: 5000, height_mm: 2000, length_mm: 5000 } };
  const [a, b] = size.split('x').map(Number);
  const z = shape === 'circular' ? { diameter_mm: a } : { width_mm: a, height_mm: b };
  return { shape, z: { ...z, length_mm: 5000 } };
}

function spigot(K, p) {
  const w = wallOf(p.from), main = straightMain(K, w.shape, w.z);
  const found = on(K, main.solid, main.ends, [stub(K, p, main.s)]);
  return [found.branch, 'branch and wall as solids; what lies outside the wall', found.opening];
}

// withSpigots is a straight or a plenum with its spigots, in a row along it; a
// plenum's own ends count.
function withSpigots(K, p) {
  const main = straightMain(K, p.shape, p.sizes), n = p.with.length;
  const stubs = p.with.map((b, i) => stub(K, b, main.s, 1, p.sizes.length_mm * ((i + 0.5) / n - 0.5)));
  const found = on(K, main.solid, p.kind === 'plenum' ? [] : main.ends, stubs);
  return [found.area, p.kind + ' and spigots as solids, fused'];
}

module.exports = { tee, spigot, withSpigots };
