// Measures pieces of ductwork with a general-purpose geometry kernel and prints
// the areas as JSON. See README.md.
'use strict';
const { load } = require('./kernel.js');
const ducts = require('./ducts.js');
const { sheet, breeches } = require('./sheets.js');
const { tee, spigot, withSpigots } = require('./branches.js');
const { pieces, SEED } = require('./sizes.js');
const { corners } = require('./corners.js');

const makers = {
  straight: ducts.straight, flexible: ducts.straight, inline: ducts.straight,
  bend: ducts.bend, offset: ducts.offset, cap: ducts.cap, plenum: ducts.plenum,
  reducer: sheet, transition: sheet, breeches, tee, cross: tee, spigot,
};

// tolerance is how close, relative, another exact route must come. Where curved
// solids are fused the kernel follows their meeting curve only to about that,
// and a spiral is a spline; the rest is exact but for the integration.
function tolerance(piece, built) {
  const fused = piece.with || ['tee', 'cross', 'spigot', 'breeches'].includes(piece.kind);
  return fused || built.includes('spiral') ? 1e-8 : 1e-9;
}

// m2 gives an area in m2 to eleven figures: fewer than the kernel keeps, so
// that another machine prints the same.
const m2 = (mm2) => Number((mm2 / 1e6).toPrecision(11));

function measured(K, piece) {
  const make = piece.with ? withSpigots : makers[piece.kind];
  const [area, built, opening] = make(K, piece);
  const result = { ...piece, built, area_m2: m2(area), tolerance: tolerance(piece, built) };
  if (opening !== undefined) result.opening_m2 = m2(opening);
  return result;
}

async function main() {
  const K = await load();
  let failed = 0;
  const lines = [...pieces(), ...corners()].map((piece) => {
    try {
      return measured(K, piece);
    } catch (e) {
      failed++;
      process.stderr.write(JSON.stringify(piece) + ': ' + (e.stack || e) + '\n');
      return undefined;
    }
  }).filter(Boolean).map((r) => '    ' + JSON.stringify(r));
  process.stdout.write('{\n  "kernel": "Open CASCADE, npm replicad-opencascadejs 1.1.0",\n  "seed": ' + SEED +
    ',\n  "pieces": [\n' + lines.join(',\n') + '\n  ]\n}\n');
  if (failed) process.exitCode = 1;
}

main();
