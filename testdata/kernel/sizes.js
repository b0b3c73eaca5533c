// The pieces: families of random sizes, each from a seed of its own, so that a
// family can grow without changing the others.
'use strict';

const SEED = 20031;

// random gives a source of whole numbers: mulberry32, a public-domain mixer.
function random(family) {
  let a = SEED;
  for (const c of family) a = Math.imul(a ^ c.charCodeAt(0), 2654435761) >>> 0;
  const next = () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return (low, high) => Math.floor(low + next() * (Math.floor(high) - Math.ceil(low) + 1));
}

const box = (n, low = 150, high = 1200) => ({ width_mm: n(low, high), height_mm: n(low, high) });
const round = (n, low = 80, high = 900) => ({ diameter_mm: n(low, high) });
function oval(n) {
  const height_mm = n(100, 400);
  return { width_mm: height_mm + n(60, 700), height_mm };
}
const second = (s) => Object.fromEntries(Object.entries(s).map(([k, v]) => [k.replace('_mm', '2_mm'), v]));
const section = { rectangular: box, circular: round, 'flat-oval': oval };
const inPlane = (s, plane) => s.diameter_mm || (plane === 'height' ? s.height_mm : s.width_mm);
const most = (s) => Math.max(...Object.values(s));

const families = [];
const family = (count, head, sizes) => families.push({ count, head, sizes });
const each = (shapes, make) => shapes.forEach(make);
const shapes = ['rectangular', 'circular', 'flat-oval'];

each(shapes, (shape) => {
  family(2, { kind: 'straight', shape }, (n) => ({ ...section[shape](n), length_mm: n(200, 6000) }));
});
each(['flexible', 'inline'], (kind) => each(shapes, (shape) => {
  family(1, { kind, shape }, (n) => ({ ...section[shape](n), length_mm: n(150, 1500) }));
}));

// bends
const bothWays = [['rectangular', 'width'], ['rectangular', 'height'], ['circular'], ['flat-oval', 'width'], ['flat-oval', 'height']];
each(bothWays, ([shape, plane]) => {
  family(2, { kind: 'bend', style: 'radius', shape, plane }, (n) => {
    const s = section[shape](n);
    return { ...s, angle_deg: n(15, 135), throat_mm: n(20, 500), legs_mm: n(0, 120) };
  });
  family(1, { kind: 'bend', style: 'mitred', shape, plane }, (n) => ({ ...section[shape](n), angle_deg: n(15, 100), legs_mm: n(20, 150) }));
  family(1, { kind: 'bend', style: 'gored', shape, plane }, (n) => {
    const s = section[shape](n);
    return { ...s, angle_deg: n(30, 90), gores: n(3, 6), radius_mm: Math.ceil(inPlane(s, plane) / 2) + n(20, 500) };
  });
});
each(['width', 'height'], (plane) => {
  const head = { kind: 'bend', shape: 'rectangular', plane };
  family(1, { ...head, style: 'square throat' }, (n) => ({ ...box(n), angle_deg: n(20, 100), legs_mm: n(0, 80) }));
  family(2, { ...head, style: 'square heel' }, (n) => ({ ...box(n), angle_deg: n(30, 110), throat_mm: n(30, 300), legs_mm: n(0, 80) }));
  family(2, { ...head, style: 'radius' }, (n) => ({
    ...box(n), ['' + plane + '2_mm']: n(150, 1200), angle_deg: n(30, 100), throat_mm: n(50, 400), legs_mm: n(0, 80),
  }));
});

// sheets between parallel ends
const shifted = (n, s) => ({ ...s, length_mm: n(150, 1200), offset_mm: n(-200, 200), offset2_mm: n(-150, 150) });
family(2, { kind: 'reducer', style: '', shape: 'circular', note: 'concentric' }, (n) => ({ ...round(n), ...second(round(n)), length_mm: n(100, 900) }));
each(shapes, (shape) => {
  family(3, { kind: 'reducer', shape }, (n) => shifted(n, { ...section[shape](n), ...second(section[shape](n)) }));
});
each([['rectangular', 'circular'], ['circular', 'rectangular'], ['rectangular', 'flat-oval'], ['flat-oval', 'rectangular'],
  ['flat-oval', 'circular'], ['circular', 'flat-oval']], ([shape, shape2], i) => {
  family(i === 0 ? 4 : 2, { kind: 'transition', shape, shape2 }, (n) => shifted(n, { ...section[shape](n), ...second(section[shape2](n)) }));
});

// offsets
each(bothWays, ([shape, plane]) => {
  const head = { kind: 'offset', shape, plane };
  family(1, { ...head, style: 'straight' }, (n) => ({ ...section[shape](n), length_mm: n(500, 1500), offset_mm: n(40, 500), legs_mm: n(0, 100) }));
  family(1, { ...head, style: 'mitred' }, (n) => {
    const s = section[shape](n), legs_mm = Math.ceil(inPlane(s, plane) / 4) + n(0, 60);
    return { ...s, offset_mm: n(40, 300), legs_mm, length_mm: 2 * legs_mm + n(500, 1200) };
  });
  family(2, { ...head, style: 'radius' }, (n) => {
    const s = section[shape](n), offset_mm = n(40, 250), legs_mm = n(0, 80);
    const sizes = { ...s, offset_mm, legs_mm, length_mm: 2 * legs_mm + 2 * most(s) + n(200, 600) };
    return n(0, 1) ? sizes : { ...sizes, radius_mm: Math.ceil(inPlane(s, plane) / 2) + n(5, 60) };
  });
});

// branches on a round main
const collar = (n) => ({ branch_length_mm: n(60, 300) });
const roundTee = (n, low = 0.2, high = 0.95) => {
  const diameter_mm = n(200, 900);
  return { diameter_mm, branch_diameter_mm: n(low * diameter_mm, high * diameter_mm) };
};
const tee = { kind: 'tee', style: 'straight', shape: 'circular' };
family(3, { ...tee, note: 'at right angles' }, (n) => {
  const s = roundTee(n);
  return { ...s, length_mm: s.branch_diameter_mm + n(50, 500), ...collar(n) };
});
family(3, { ...tee, note: 'at an angle' }, (n) => {
  const s = roundTee(n), branch_angle_deg = n(0, 1) ? n(30, 75) : n(105, 140);
  return { ...s, length_mm: 5 * s.diameter_mm, branch_angle_deg, branch_length_mm: s.diameter_mm + n(200, 500) };
});
family(2, { ...tee, note: 'equal' }, (n) => {
  const s = roundTee(n, 1, 1);
  return { ...s, length_mm: s.diameter_mm + n(50, 500), ...collar(n) };
});
family(1, { ...tee, note: 'equal, at an angle' }, (n) => {
  const s = roundTee(n, 1, 1);
  return { ...s, length_mm: 6 * s.diameter_mm, branch_angle_deg: n(40, 70), branch_length_mm: 2 * s.diameter_mm };
});
family(3, { ...tee, note: 'off centre' }, (n) => {
  const s = roundTee(n, 0.2, 0.6), room = (s.diameter_mm - s.branch_diameter_mm) / 2;
  return { ...s, length_mm: s.branch_diameter_mm + n(50, 500), branch_shift_mm: n(10, 0.95 * room), ...collar(n) };
});
family(1, { ...tee, note: 'off centre, at an angle' }, (n) => {
  const s = roundTee(n, 0.2, 0.6), room = (s.diameter_mm - s.branch_diameter_mm) / 2;
  return { ...s, length_mm: 5 * s.diameter_mm, branch_shift_mm: n(10, 0.9 * room), branch_angle_deg: n(40, 80), branch_length_mm: s.diameter_mm + n(100, 300) };
});
family(3, { ...tee, style: 'conical' }, (n) => {
  const diameter_mm = n(300, 900), branch_diameter_mm = n(0.2 * diameter_mm, 0.5 * diameter_mm);
  const entry_mm = branch_diameter_mm + n(5, 0.15 * diameter_mm);
  return { diameter_mm, branch_diameter_mm, entry_mm, length_mm: diameter_mm + n(200, 500), branch_length_mm: n(120, 300) };
});
each(['rectangular', 'flat-oval'], (shape2) => {
  family(2, { ...tee, shape2 }, (n) => {
    const diameter_mm = n(300, 900), branch_height_mm = n(0.2 * diameter_mm, 0.9 * diameter_mm);
    const branch_width_mm = branch_height_mm + n(20, 300);
    return { diameter_mm, branch_width_mm, branch_height_mm, length_mm: branch_width_mm + n(50, 400), ...collar(n) };
  });
});

// branches on a flat wall
const flatTee = (n, shape) => {
  const s = shape === 'flat-oval' ? { width_mm: n(600, 1000), height_mm: n(200, 300) } : { width_mm: n(400, 1000), height_mm: n(300, 800) };
  return { ...s, length_mm: n(900, 1500) };
};
each(['rectangular', 'flat-oval'], (shape) => {
  family(2, { ...tee, shape, shape2: 'circular' }, (n) => ({ ...flatTee(n, shape), branch_diameter_mm: n(80, 280), branch_shift_mm: n(0, 10), ...collar(n) }));
  family(1, { ...tee, shape, shape2: 'circular', note: 'at an angle' }, (n) => (
    { ...flatTee(n, shape), branch_diameter_mm: n(80, 200), branch_angle_deg: n(40, 70), branch_length_mm: n(200, 400) }));
  family(1, { ...tee, shape, shape2: 'rectangular' }, (n) => ({ ...flatTee(n, shape), branch_width_mm: n(100, 600), branch_height_mm: n(80, 250), ...collar(n) }));
  family(1, { ...tee, shape, shape2: 'rectangular', style: 'shoe' }, (n) => (
    { ...flatTee(n, shape), branch_width_mm: n(100, 400), branch_height_mm: n(80, 250), entry_mm: n(30, 100), branch_length_mm: n(120, 300) }));
  family(1, { ...tee, shape, shape2: 'circular', style: 'conical' }, (n) => {
    const branch_diameter_mm = n(80, 180);
    return { ...flatTee(n, shape), branch_diameter_mm, entry_mm: branch_diameter_mm + n(20, 90), ...collar(n) };
  });
});

// crosses, spigots and what carries spigots
each(shapes, (shape) => {
  family(2, { kind: 'cross', style: 'straight', shape, shape2: 'circular' }, (n) => {
    const s = shape === 'circular' ? roundTee(n, 0.2, 0.9) : { ...flatTee(n, shape), branch_diameter_mm: n(80, 350) };
    return { ...s, length_mm: s.branch_diameter_mm + n(100, 500), ...collar(n) };
  });
});
family(1, { kind: 'cross', style: 'straight', shape: 'circular', note: 'at an angle' }, (n) => (
  { ...roundTee(n, 0.2, 0.6), length_mm: 3000, branch_angle_deg: n(40, 75), branch_length_mm: n(600, 900) }));
family(1, { kind: 'cross', style: 'conical', shape: 'circular' }, (n) => (
  { diameter_mm: n(400, 700), branch_diameter_mm: n(100, 200), entry_mm: n(205, 290), length_mm: n(600, 900), branch_length_mm: n(120, 300) }));
family(1, { kind: 'cross', style: 'shoe', shape: 'rectangular' }, (n) => (
  { ...flatTee(n), branch_width_mm: n(100, 400), branch_height_mm: n(80, 250), entry_mm: n(30, 100), branch_length_mm: n(120, 300) }));
const spigot = { kind: 'spigot', style: 'straight', shape: 'circular' };
const roundSpigot = (n) => ({ branch_diameter_mm: n(80, 240), ...collar(n) });
each(['plenum', 'rectangular 700x350', 'circular 500', 'circular 260', 'flat-oval 800x300'], (from) => {
  family(1, { ...spigot, from }, roundSpigot);
});
family(1, { ...spigot, from: 'circular 630', note: 'off centre, at an angle' }, (n) => (
  { ...roundSpigot(n), branch_shift_mm: n(20, 150), branch_angle_deg: n(50, 80), branch_length_mm: n(500, 700) }));
each(['plenum', 'circular 500'], (from) => {
  family(1, { ...spigot, from, style: 'conical' }, (n) => ({ branch_diameter_mm: n(100, 160), entry_mm: n(165, 250), branch_length_mm: n(120, 250) }));
  each(['rectangular', 'flat-oval'], (shape) => {
    family(1, { ...spigot, from, shape }, (n) => ({ branch_width_mm: n(260, 500), branch_height_mm: n(80, 250), ...collar(n) }));
  });
});
family(1, { ...spigot, from: 'rectangular 700x350', shape: 'rectangular', style: 'shoe' }, (n) => (
  { branch_width_mm: n(200, 500), branch_height_mm: n(80, 250), entry_mm: n(30, 100), branch_length_mm: n(120, 250) }));
const carried = (from) => (n) => [
  { ...spigot, from, sizes: roundSpigot(n) },
  { ...spigot, from, shape: 'rectangular', sizes: { branch_width_mm: n(100, 300), branch_height_mm: n(80, 250), ...collar(n) } },
  { ...spigot, from, style: 'conical', sizes: { branch_diameter_mm: n(80, 120), entry_mm: n(125, 200), branch_length_mm: n(120, 250) } },
];
const carrying = (head, sizes, from) => families.push({ count: 2, head, sizes, with: (n, s) => carried(from(s))(n) });
carrying({ kind: 'plenum', shape: 'rectangular' }, (n) => ({ ...box(n, 500), length_mm: n(1300, 2000) }), () => 'plenum');
carrying({ kind: 'straight', shape: 'circular' }, (n) => ({ ...round(n, 400), length_mm: n(1300, 2000) }), (s) => 'circular ' + s.diameter_mm);

// breeches, caps
family(3, { kind: 'breeches', shape: 'circular' }, (n) => {
  const diameter_mm = n(200, 700), branch_diameter_mm = n(0.5 * diameter_mm, 0.9 * diameter_mm);
  return { diameter_mm, branch_diameter_mm, length_mm: n(300, 900), offset_mm: Math.ceil(branch_diameter_mm / 2) + n(20, 200) };
});
family(1, { kind: 'breeches', shape: 'rectangular' }, (n) => ({ ...box(n, 200), angle_deg: n(45, 90), throat_mm: n(50, 200) }));
each(shapes, (shape) => family(1, { kind: 'cap', style: 'flat', shape }, (n) => section[shape](n)));
family(3, { kind: 'cap', style: 'dished', shape: 'circular' }, (n) => {
  const s = round(n, 150);
  return { ...s, rise_mm: n(0.05 * s.diameter_mm, 0.45 * s.diameter_mm) };
});

function clean(head) {
  return Object.fromEntries(Object.entries(head).filter(([, v]) => v !== undefined && v !== ''));
}

// pieces lists every random piece in a fixed order.
function pieces() {
  return families.flatMap((f) => {
    const n = random(Object.values(f.head).join(' '));
    return Array.from({ length: f.count }, () => {
      const sizes = f.sizes(n);
      const piece = { ...clean(f.head), sizes };
      return f.with ? { ...piece, with: f.with(n, sizes) } : piece;
    });
  });
}

module.exports = { pieces, SEED };
