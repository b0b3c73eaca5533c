// States the division of a tree as a mixed-integer linear program. Written
// from the statement of the problem alone: nothing here follows the search in
// planner/partition.
"use strict";

// clusters joins the nodes across joints that can't be cut, takes out the
// clusters that are heavier than `amax` by themselves (each stands alone, and
// all its joints are cut), and returns the forest that is left.
function clusters(tree) {
  const n = tree.parent.length;
  const head = Array.from({ length: n }, (_, v) => v);
  const find = (v) => {
    while (head[v] !== v) v = head[v];
    return v;
  };
  for (let v = 0; v < n; v++) {
    if (tree.parent[v] >= 0 && tree.cut_cost[v] === null) head[find(v)] = find(tree.parent[v]);
  }
  const weight = new Map();
  for (let v = 0; v < n; v++) weight.set(find(v), (weight.get(find(v)) ?? 0) + tree.area[v]);
  const forest = { over: 0, forced: 0, weight: new Map(), above: new Map() };
  for (const [c, w] of weight) {
    if (w > tree.amax) forest.over++;
    else forest.weight.set(c, w);
  }
  for (let v = 0; v < n; v++) {
    const u = tree.parent[v];
    if (u < 0 || find(u) === find(v)) continue;
    if (forest.weight.has(find(u)) && forest.weight.has(find(v))) {
      forest.above.set(find(v), { to: find(u), price: tree.cut_cost[v] });
    } else {
      forest.forced += tree.cut_cost[v];
    }
  }
  return forest;
}

// program writes the constraints and the figures that are made least.
//
// For every cluster v: y_v = 1 where v is the top of a part (its joint above is
// cut; at a root always), f_v the weight that v hands up, s_v = weight_v + the
// sum of f of its children, u_v = 1 where the part that v tops is under range.
//
//     s_v <= U                      s_v >= L (y_v - u_v),  u_v <= y_v
//     f_v <= U (1 - y_v)            f_v <= s_v,  f_v >= s_v - U y_v
function program(tree) {
  const forest = clusters(tree);
  const kids = new Map([...forest.weight.keys()].map((c) => [c, []]));
  for (const [c, j] of forest.above) kids.get(j.to).push(c);
  const order = [...forest.weight.keys()].filter((c) => !forest.above.has(c));
  for (let i = 0; i < order.length; i++) order.push(...kids.get(order[i]));
  const rows = [];
  const bounds = [];
  const binary = [];
  const figures = { under: [], tests: [], minutes: [], total: [] };
  for (const c of order) {
    const root = !forest.above.has(c);
    bounds.push(`${forest.weight.get(c)} <= s${c} <= ${tree.amax}`);
    rows.push(`s${c}${kids.get(c).map((k) => ` - f${k}`).join("")} = ${forest.weight.get(c)}`);
    rows.push(`s${c} - ${tree.amin} y${c} + ${tree.amin} u${c} >= 0`);
    rows.push(`u${c} - y${c} <= 0`);
    binary.push(`y${c}`, `u${c}`);
    figures.under.push(`u${c}`);
    figures.tests.push(`y${c}`);
    const price = root ? 0 : forest.above.get(c).price;
    if (price > 0) figures.minutes.push(`${price} y${c}`);
    figures.total.push(`${tree.section_cost + price} y${c}`);
    if (root) {
      rows.push(`y${c} = 1`);
      continue;
    }
    rows.push(`f${c} + ${tree.amax} y${c} <= ${tree.amax}`);
    rows.push(`f${c} - s${c} <= 0`);
    rows.push(`f${c} - s${c} + ${tree.amax} y${c} >= 0`);
  }
  return { over: forest.over, forced: forest.forced, rows, bounds, binary, figures };
}

// text is the program in the LP format, with one figure made least and others
// held at what they were found to be.
function text(p, least, held) {
  const sum = (terms) => (terms.length > 0 ? terms.join(" + ") : "0");
  const rows = [...p.rows, ...held.map((h) => `${sum(h.terms)} <= ${h.value}`)];
  return [
    "Minimize", ` least: ${sum(least)}`, "Subject To", ...rows.map((r, i) => ` r${i}: ${r}`),
    "Bounds", ...p.bounds.map((b) => ` ${b}`), "Binary", ` ${p.binary.join(" ")}`, "End", "",
  ].join("\n");
}

module.exports = { program, text };
