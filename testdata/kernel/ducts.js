// Ducts of one section along a path, and what closes them: straights, bends,
// offsets, caps, plenums. Each is made the way its name says: pushed along,
// swung round an axis, or cut by mitre planes and joined.
'use strict';
const { add, scale, unit, ORIGIN, at, along, end, turn } = require('./kernel.js');

// PARTS is how many parts the arcs of a curved sheet are made in: twice as many
// change nothing in nine figures.
const PARTS = 64;

const rad = (deg) => deg * Math.PI / 180;

// sectionOf reads a section with the side in the plane of the bend along x.
function sectionOf(p) {
  const { diameter_mm: d, width_mm: w, height_mm: h } = p.sizes;
  if (p.shape === 'circular') return { shape: p.shape, d };
  return p.plane === 'height' ? { shape: p.shape, w: h, h: w } : { shape: p.shape, w, h };
}
const inPlane = (s) => (s.shape === 'circular' ? s.d : s.w);

const push = (K, s, f, l) => K.prism(K.face(K.outline(s, f)), scale(f.z, l));

// swing revolves a section by an angle about an axis r away along x; a
// negative r and angle bend the other way.
const swing = (K, s, f, r, angle) =>
  K.revolve(K.face(K.outline(s, f)), at(f, r, 0), scale(f.y, Math.sign(angle)), Math.abs(angle));

// chain lays stretches end to end and adds up their outsides: {l} is straight,
// {r, angle} an arc.
function chain(K, s, stretches) {
  let f = ORIGIN, sum = 0;
  for (const t of stretches) {
    if (t.l === 0) continue;
    const next = t.l ? along(f, t.l) : turn(f, t.r, t.angle);
    const solid = t.l ? push(K, s, f, t.l) : swing(K, s, f, t.r, t.angle);
    sum += K.area(solid, [end(f), end(next)]);
    f = next;
  }
  return sum;
}

// mitred makes a duct along a bent line: straight solids cut off by the planes
// that halve the angles, joined into one.
function mitred(K, s, lengths, turns) {
  const w = inPlane(s), far = 10 * (w + Math.max(...lengths));
  let f = ORIGIN, whole, cutter;
  lengths.forEach((l, i) => {
    const theta = turns[i];
    const after = i < turns.length ? w * (Math.tan(Math.abs(theta) / 2) + 0.5) : 0;
    const before = i > 0 ? w * (Math.tan(Math.abs(turns[i - 1]) / 2) + 0.5) : 0;
    let solid = push(K, s, along(f, -before), before + l + after);
    if (cutter) solid = K.cut(solid, half(K, cutter, -far));
    f = along(f, l);
    if (i < turns.length) {
      cutter = turn(f, 0, theta / 2);
      solid = K.cut(solid, half(K, cutter, far));
      f = turn(f, 0, theta);
    }
    whole = whole ? K.fuse(whole, solid) : solid;
  });
  return K.area(whole, [end(ORIGIN), end(f)]);
}

// half is all that lies beyond a frame's plane, as far as it matters.
const half = (K, f, far) =>
  K.prism(K.face(K.outline({ shape: 'rectangular', w: 2 * Math.abs(far), h: 2 * Math.abs(far) }, f)), scale(f.z, far));

// planBend pushes the plan of a bend, drawn round the origin, across by h. Its
// ends are at angle 0 and theta.
function planBend(K, edges, h, theta) {
  const f = { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1], o: [0, 0, 0] };
  const solid = K.prism(K.face(K.wire(edges)), [0, 0, h]);
  const ends = [{ p: f.o, n: [0, 1, 0] }, { p: f.o, n: [-Math.sin(theta), Math.cos(theta), 0] }];
  return K.area(solid, ends);
}
const polar = (r, a) => [r * Math.cos(a), r * Math.sin(a), 0];

function squareHeel(K, s, R, theta) {
  const outer = R + s.w, inner = R > 0 ? [K.arc(ORIGIN, R, 0, theta)] : [];
  const corner = polar(outer / Math.cos(theta / 2), theta / 2);
  return planBend(K, [
    K.line(polar(R, 0), polar(outer, 0)), K.line(polar(outer, 0), corner),
    K.line(corner, polar(outer, theta)), K.line(polar(outer, theta), polar(R, theta)), ...inner,
  ], s.h, theta);
}

// spiral is the heel of a reducing bend, whose radius grows in proportion to
// the angle: a spline through points of it, close enough that twice as many
// change nothing in nine figures.
function spiral(K, r1, r2, theta) {
  const n = 800, slope = (r2 - r1) / theta;
  const points = Array.from({ length: n + 1 }, (_, i) => polar(r1 + (r2 - r1) * i / n, theta * i / n));
  const tangent = (r, a) => add(scale(polar(1, a), slope), polar(r, a + Math.PI / 2));
  return K.curve(points, tangent(r1, 0), tangent(r2, theta));
}

function reducing(K, s, w2, R, theta) {
  return planBend(K, [
    K.line(polar(R, 0), polar(R + s.w, 0)), spiral(K, R + s.w, R + w2, theta),
    K.line(polar(R + w2, theta), polar(R, theta)), K.arc(ORIGIN, R, 0, theta),
  ], s.h, theta);
}

function bend(K, p) {
  const s = sectionOf(p), z = p.sizes, w = inPlane(s), theta = rad(z.angle_deg), e = z.legs_mm || 0;
  const rc = z.radius_mm !== undefined ? z.radius_mm : (z.throat_mm || 0) + w / 2;
  const legs = e ? chain(K, s, [{ l: 2 * e }]) : 0;
  switch (p.style) {
    case 'mitred': {
      const l = e + w / 2 * Math.tan(theta / 2);
      return [mitred(K, s, [l, l], [theta]), 'two prisms cut by the mitre plane, fused'];
    }
    case 'gored': {
      const n = z.gores - 1, l = rc * Math.tan(theta / 2 / n);
      const lengths = [l + e, ...Array(n - 1).fill(2 * l), l + e];
      return [mitred(K, s, lengths, Array(n).fill(theta / n)), z.gores + ' prisms cut by the mitre planes, fused'];
    }
    case 'square heel':
      return [squareHeel(K, s, rc - w / 2, theta) + legs, 'plan with a corner and a throat arc, pushed across'];
    case 'square throat':
      return [chain(K, s, [{ l: e }, { r: w / 2, angle: theta }, { l: e }]), 'section revolved about its own side'];
  }
  const w2 = p.plane === 'height' ? z.height2_mm : z.width2_mm;
  if (w2 === undefined) {
    return [chain(K, s, [{ l: e }, { r: rc, angle: theta }, { l: e }]), 'section revolved'];
  }
  const far = e ? chain(K, { ...s, w: w2 }, [{ l: e }]) : 0;
  return [reducing(K, s, w2, rc - w / 2, theta) + legs / 2 + far, 'plan with a spiral heel and a throat arc, pushed across'];
}

// swerve finds the angle of a radius offset by halving: two arcs of radius r
// with a straight between, l along and o across.
function swerve(l, o, r) {
  if (r === undefined) {
    const theta = 2 * Math.atan2(o, l);
    return { theta, r: l / 2 / Math.sin(theta), straight: 0 };
  }
  const straight = (t) => (l - 2 * r * Math.sin(t)) / Math.cos(t);
  const across = (t) => 2 * r * (1 - Math.cos(t)) + straight(t) * Math.sin(t);
  let low = 0, high = 2 * Math.atan2(o, l);
  for (let i = 0; i < 200; i++) {
    const mid = (low + high) / 2;
    if (across(mid) < o) low = mid; else high = mid;
  }
  return { theta: low, r, straight: straight(low) };
}

function offset(K, p) {
  const s = sectionOf(p), z = p.sizes, e = z.legs_mm || 0, l = z.length_mm - 2 * e, o = z.offset_mm;
  if (p.style === 'straight') {
    const v = [o, 0, l];
    const sheared = K.prism(K.face(K.outline(s, ORIGIN, PARTS)), v);
    const area = K.area(sheared, [end(ORIGIN), end(along(ORIGIN, l))]);
    return [area + chain(K, s, [{ l: 2 * e }]), 'section pushed aslant'];
  }
  if (p.style === 'mitred') {
    const phi = Math.atan2(o, l);
    return [mitred(K, s, [e, Math.hypot(l, o), e], [phi, -phi]), 'three prisms cut by the mitre planes, fused'];
  }
  const r = z.radius_mm !== undefined ? z.radius_mm : z.throat_mm !== undefined ? z.throat_mm + inPlane(s) / 2 : undefined;
  const c = swerve(l, o, r);
  const arcs = [{ l: e }, { r: c.r, angle: c.theta }, { l: c.straight }, { r: -c.r, angle: -c.theta }, { l: e }];
  return [chain(K, s, arcs), 'section revolved one way, then the other'];
}

function cap(K, p) {
  const s = sectionOf(p);
  if (p.style !== 'dished') return [K.area(K.face(K.outline(s, ORIGIN))), 'plane face'];
  const r = s.d / 2, h = p.sizes.rise_mm, R = (r * r + h * h) / 2 / h;
  const f = { o: [0, 0, h - R], x: [0, 0, 1], y: [1, 0, 0], z: [0, 1, 0] };
  const profile = K.wire([K.line([0, 0, 0], [0, 0, h]), K.arc(f, R, 0, Math.atan2(r, R - h)), K.line([r, 0, 0], [0, 0, 0])]);
  return [K.area(K.revolve(K.face(profile), [0, 0, 0], [0, 0, 1], 2 * Math.PI), [end(ORIGIN)]), 'arc revolved'];
}

const straight = (K, p) => [chain(K, sectionOf(p), [{ l: p.sizes.length_mm }]), 'section pushed along'];
const plenum = (K, p) => [K.area(push(K, sectionOf(p), ORIGIN, p.sizes.length_mm)), 'box'];

module.exports = { PARTS, sectionOf, push, swing, rad, unit, straight, bend, offset, cap, plenum };
