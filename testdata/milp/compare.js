// Divides the trees of testdata/partitions with a general MILP solver and, in
// the same run, with planner/partition, and says whether they agree and how
// long each took. Writes results.json; prints the table on stdout.
//
//     node compare.js [most nodes, 200] [seconds for one solve, 600]
"use strict";

const { execFileSync } = require("node:child_process");
const fs = require("node:fs");
const os = require("node:os");
const path = require("node:path");
const highs = require("highs");
const { program, text } = require("./model.js");

const { version } = JSON.parse(fs.readFileSync(path.join(__dirname, "node_modules", "highs", "package.json"), "utf8"));
const trees = path.join(__dirname, "..", "partitions", "medium.json");
const home = path.join(__dirname, "..", "..", "planner", "partition");
// Every figure is a whole number, so a gap under 1 is a proof.
const options = { mip_rel_gap: 0, mip_abs_gap: 0.99, threads: 1, output_flag: false };

// solve makes one figure least and returns it, rounded to the whole number
// that it is, with the seconds it took. Loading the solver isn't counted.
function solve(solver, p, least, held, limit) {
  if (least.length === 0) return { value: 0, seconds: 0 };
  const lp = text(p, least, held);
  const begin = process.hrtime.bigint();
  const answer = solver.solve(lp, { ...options, time_limit: limit });
  const seconds = Number(process.hrtime.bigint() - begin) / 1e9;
  if (answer.Status !== "Optimal") return { value: null, seconds };
  return { value: Math.round(answer.ObjectiveValue), seconds };
}

// byMILP is the best division in the order over range, under range, then by
// aim. The orders are met by successive solves, each holding what went before,
// so that no figure has to be weighed against another.
function byMILP(solver, tree, aim, limit) {
  const p = program(tree);
  const out = { over: p.over, seconds: 0, proved: true };
  const held = [];
  const step = (terms) => {
    if (!out.proved) return NaN;
    const a = solve(solver, p, terms, held, limit);
    out.seconds += a.seconds;
    out.proved &&= a.value !== null;
    held.push({ terms, value: a.value });
    return a.value ?? NaN;
  };
  out.under = step(p.figures.under);
  if (aim === "time") {
    out.total = step(p.figures.total) + tree.section_cost * p.over + p.forced;
    return out;
  }
  out.tests = step(p.figures.tests) + p.over;
  out.minutes = step(p.figures.minutes) + p.forced;
  return out;
}

// bySearch runs the Go benchmark of one tree and reads its figures.
function bySearch(binary, tree, aim) {
  const said = execFileSync(binary, ["-test.run", "^$", "-test.benchtime", "0.2s", "-test.bench", `^BenchmarkMILPTrees$/^${tree.name}$/^${aim}$`], { cwd: home, encoding: "utf8" });
  const line = said.split("\n").find((l) => l.startsWith("BenchmarkMILPTrees/"));
  const figure = (unit) => Number(line.match(new RegExp(`([0-9.e+-]+) ${unit}\\b`))[1]);
  const out = { over: figure("over"), under: figure("under"), seconds: figure("ns/op") / 1e9 };
  if (aim === "time") return { ...out, total: figure("total") };
  return { ...out, tests: figure("tests"), minutes: figure("minutes") };
}

const median = (list) => {
  const s = [...list].sort((a, b) => a - b);
  const mid = s.length >> 1;
  return s.length % 2 === 1 ? s[mid] : (s[mid - 1] + s[mid]) / 2;
};
const brief = (x) => Number(x.toPrecision(3));

async function main(most, limit) {
  const binary = path.join(fs.mkdtempSync(path.join(os.tmpdir(), "milp-")), "partition.test");
  execFileSync("go", ["test", "-c", "-o", binary, "."], { cwd: home });
  const cases = JSON.parse(fs.readFileSync(trees, "utf8")).cases.filter((c) => c.parent.length <= most);
  cases.sort((a, b) => a.parent.length - b.parent.length || (a.name < b.name ? -1 : 1));
  const solver = await highs();
  byMILP(solver, cases[0], "tests", limit); // the solver's code is compiled as it is first used
  const answers = [];
  let wrong = 0;
  console.log("| tree | aim | over | under | tests | minutes | MILP s | search s | ratio |\n|---|---|---|---|---|---|---|---|---|");
  for (const tree of cases) {
    for (const aim of ["tests", "time"]) {
      const m = byMILP(solver, tree, aim, limit);
      const s = bySearch(binary, tree, aim);
      const keys = aim === "time" ? ["over", "under", "total"] : ["over", "under", "tests", "minutes"];
      const agree = m.proved && keys.every((k) => m[k] === s[k]);
      if (!agree) wrong++;
      const ratio = m.seconds / s.seconds;
      const figures = Object.fromEntries(keys.map((k) => [k, m[k]]));
      answers.push({ tree: tree.name, nodes: tree.parent.length, aim, proved: m.proved, ...figures, seconds: brief(m.seconds), search_seconds: brief(s.seconds), ratio: brief(ratio) });
      const cells = [tree.name, aim, m.over, m.under ?? "?", m.tests ?? "", m.minutes ?? m.total, brief(m.seconds), brief(s.seconds).toExponential(1), Math.round(ratio)];
      console.log(`| ${cells.join(" | ")} |${agree ? "" : m.proved ? " DIFFERENT: " + JSON.stringify(s) : " not proved in time"}`);
    }
  }
  console.log("\n| nodes | median MILP s | median search s | median ratio | least | greatest |\n|---|---|---|---|---|---|");
  for (const n of [...new Set(answers.map((a) => a.nodes)), 0]) {
    const some = answers.filter((a) => n === 0 || a.nodes === n);
    const of = (key) => some.map((a) => a[key]);
    console.log(`| ${n || "all"} | ${brief(median(of("seconds")))} | ${brief(median(of("search_seconds"))).toExponential(1)} | ${Math.round(median(of("ratio")))} | ${Math.round(Math.min(...of("ratio")))} | ${Math.round(Math.max(...of("ratio")))} |`);
  }
  const lines = answers.map((a) => "  " + JSON.stringify(a));
  fs.writeFileSync(path.join(__dirname, "results.json"), `{"solver": "HiGHS by npm highs ${version}", "cores": ${os.cpus().length}, "processor": ${JSON.stringify(os.arch())}, "answers": [\n${lines.join(",\n")}\n]}\n`);
  if (wrong > 0) process.exitCode = 1;
}

main(Number(process.argv[2] ?? 200), Number(process.argv[3] ?? 600));
