"use strict";
(() => {
  const data = JSON.parse(document.getElementById("data").textContent);
  const $ = (id) => document.getElementById(id);
  const svg = $("drawing");
  const slack = 1e-9; // m2, the noise of adding up

  // A limit is cut off, never rounded up.
  const cutOff = (q) => {
    const n = q >= 100 ? 1 : q >= 1 ? 2 : q >= 0.1 ? 3 : 4;
    const text = String(q);
    if (text.includes("e")) return q.toFixed(n);
    const [whole, rest = ""] = text.split(".");
    return whole + "." + (rest + "0".repeat(n)).slice(0, n);
  };
  const area = (m2) => (m2 * data.units.area).toFixed(2) + " " + data.units.areaWord;
  const flow = (q) => cutOff(q * data.units.flow) + " " + data.units.flowWord;
  const el = (tag, text, attrs) => {
    const e = document.createElement(tag);
    if (text !== undefined) e.textContent = text;
    for (const k in attrs) e.setAttribute(k, attrs[k]);
    return e;
  };

  const many = (n, word) => n + " " + word + (n === 1 ? "" : "s");

  // ---- trying cuts ----

  const planned = new Set();
  data.joints.forEach((j, k) => { if (j.cut) planned.add(k); });
  let cuts = new Set(planned);
  const free = (j) => !j.bar && !j.fix && !j.loose;

  // parts finds what hangs together with a set of cuts, and judges it as the
  // plan does: the area, the limit, and whether the rig's windows hold it.
  function parts(set) {
    const up = data.nodes.map((_, i) => i);
    const find = (i) => { while (up[i] !== i) { up[i] = up[up[i]]; i = up[i]; } return i; };
    data.joints.forEach((j, k) => {
      const a = data.nodes[j.a].s, b = data.nodes[j.b].s;
      if (a < 0 || b < 0 || j.fix || set.has(k)) return;
      if (j.loose && a !== b) return;
      const x = find(j.a), y = find(j.b);
      if (x !== y) up[Math.max(x, y)] = Math.min(x, y);
    });
    const list = [], at = new Map();
    data.nodes.forEach((n, i) => {
      if (n.s < 0) return;
      const r = find(i);
      if (!at.has(r)) { at.set(r, list.length); list.push({ first: i, s: n.s, nodes: [], area: 0, exact: 0, blanks: 0 }); }
      const p = list[at.get(r)];
      p.nodes.push(i); p.area += n.a; p.exact += n.e;
    });
    const of = (i) => at.get(find(i));
    data.joints.forEach((j, k) => {
      const a = data.nodes[j.a].s, b = data.nodes[j.b].s;
      if (j.loose || !(set.has(k) || j.fix || a < 0 || b < 0)) return;
      if (a >= 0) list[of(j.a)].blanks++;
      if (b >= 0) list[of(j.b)].blanks++;
    });
    data.ends.forEach((e) => { if (data.nodes[e.n].s >= 0) list[of(e.n)].blanks++; });
    list.forEach(judge);
    name(list);
    return { list, of };
  }

  function judge(p) {
    const s = data.sections[p.s];
    const least = data.held ? Math.min(p.area, p.exact) : p.area;
    const most = data.held ? Math.max(p.area, p.exact) : p.area;
    p.limit = s.perM2 * least;
    if (s.windows.some((w) => least >= w[0] - slack && most <= w[1] + slack)) { p.state = "in range"; return; }
    p.state = most > s.most + slack ? "over range" : "under range";
  }

  // A part that holds the first piece of a planned section has its name.
  function name(list) {
    const firsts = new Map();
    data.nodes.forEach((n, i) => { if (n.s >= 0 && !firsts.has(n.s)) firsts.set(n.s, i); });
    const taken = new Set();
    let fresh = 1;
    list.forEach((p) => {
      p.id = "";
      for (const i of p.nodes) {
        const s = data.nodes[i].s;
        if (firsts.get(s) === i && !taken.has(s)) { taken.add(s); p.id = data.sections[s].id; p.look = s; break; }
      }
    });
    list.forEach((p) => { if (!p.id) { p.id = "new " + fresh; p.look = -(fresh++); } });
  }

  function score(set, list) {
    let minutes = 0;
    for (const k of set) minutes += data.joints[k].m;
    return {
      tests: list.length, over: list.filter((p) => p.state === "over range").length,
      under: list.filter((p) => p.state === "under range").length, minutes,
    };
  }

  const csv = (v) => {
    let t = String(v === 0 ? "" : v);
    if (/^[=+\-@\t\r\n＝＋－＠]/.test(t)) t = "'" + t;
    return /[",\r\n]/.test(t) ? '"' + t.replace(/"/g, '""') + '"' : t;
  };
  const cutList = () => "tag,piece,next_tag,next_piece\n" +
    [...cuts].sort((a, b) => a - b).map((k) => data.joints[k].sides.map(csv).join(",") + "\n").join("");

  // ---- drawing ----

  const ns = "http://www.w3.org/2000/svg";
  const shape = (tag, attrs, to) => {
    const e = document.createElementNS(ns, tag);
    for (const k in attrs) e.setAttribute(k, attrs[k]);
    to.appendChild(e);
    return e;
  };
  const overlay = (pattern, w) => ({
    1: [0.34 * w], 2: [w, "2 7"], 3: [0.5 * w, "0 8", "round"], 4: [w, "4 16"], 5: [0.4 * w, "10 6"],
  })[pattern];

  function line(d, w, colour, pattern, to) {
    shape("path", { d, stroke: colour, "stroke-width": w }, to);
    const o = overlay(pattern, w);
    if (o) shape("path", { d, stroke: "#fff", "stroke-width": o[0], "stroke-dasharray": o[1] || "none", "stroke-linecap": o[2] || "butt" }, to);
  }

  function redraw() {
    const to = $("tried");
    to.replaceChildren();
    if (mode !== "try") return;
    const now = parts(cuts);
    now.list.forEach((p) => {
      const s = p.look >= 0 ? data.sections[p.look] : data.sections[(-p.look * 5) % data.sections.length];
      const g = shape("g", { class: "sec" }, to);
      const by = new Map();
      p.nodes.forEach((i) => {
        const n = data.nodes[i];
        if (n.p) by.set(n.w, (by.get(n.w) || "") + n.p);
      });
      by.forEach((d, w) => line(d, w, s.colour, p.look >= 0 ? s.pattern : (s.pattern + 3) % 6, g));
      const mid = data.nodes[p.nodes[Math.floor(p.nodes.length / 2)]];
      const b = shape("g", { class: "badge" + (p.state === "in range" ? "" : " bad") }, to);
      const wide = 6.6 * p.id.length + 8;
      shape("rect", { x: mid.x - wide / 2, y: mid.y + 7, width: wide, height: 15, rx: 3 }, b);
      shape("text", { x: mid.x, y: mid.y + 18.5 }, b).textContent = p.id;
    });
    data.joints.forEach((j, k) => {
      if (!j.w || j.loose) return;
      const half = j.w / 2 + 6, across = (shift, cls) => shape("path", {
        class: cls, d: j.up ? `M${j.x - half} ${j.y + shift}L${j.x + half} ${j.y + shift}` : `M${j.x + shift} ${j.y - half}L${j.x + shift} ${j.y + half}`,
      }, to);
      if (cuts.has(k)) { across(0, "halo"); across(-2.5, "cut"); across(2.5, "cut"); }
      else if (j.fix) across(0, "cut");
      else if (!j.bar) shape("circle", { class: "could", cx: j.x, cy: j.y, r: 3 }, to);
    });
    tell(now);
  }

  // ---- panel ----

  let mode = "look", chosen = null;
  const panel = $("panel");

  function rows(list) {
    const t = el("dl");
    list.forEach(([k, v]) => { t.append(el("dt", k), el("dd", v)); });
    return t;
  }

  function showSection(i) {
    const now = mode === "try" ? parts(cuts) : parts(planned);
    const p = now.list[now.of(i)];
    const s = data.sections[p.s];
    chosen = { node: i };
    panel.replaceChildren(el("h3", "Section " + p.id), rows([
      ["system", s.system], ["tested at", s.about], ["area", area(p.area)], ["limit", flow(p.limit)],
      ["the rig", p.state], ["blanks", String(p.blanks)], ["piece", data.nodes[i].n + ": " + data.nodes[i].k],
    ]));
    if (p.state !== "in range") panel.append(el("p", p.state === "over range" ? "Too large for the rig: add a blank inside it." : "Too small for the rig: lift one of its blanks.", { class: "bad" }));
    if (mode === "look" && s.left) panel.append(el("p", "No test here: " + s.left + "."));
    else if (mode === "look") {
      const a = el("a", "its card", { href: "#card-" + s.id });
      panel.append(a);
    }
    panel.append(joints(now, p));
    mark(now.list[now.of(i)].nodes);
  }

  // joints lists where a section is blanked and could be, for the keyboard.
  function joints(now, p) {
    const d = el("details", undefined, { "aria-label": "joints of section " + p.id });
    const own = new Set(p.nodes);
    const list = [];
    data.joints.forEach((j, k) => { if (!j.loose && (own.has(j.a) || own.has(j.b))) list.push(k); });
    d.append(el("summary", "its joints (" + list.length + ")"));
    const ul = el("ul");
    list.slice(0, 400).forEach((k) => {
      const li = el("li"), b = el("button", (cuts.has(k) ? "blank: " : "") + data.joints[k].at, { type: "button" });
      b.onclick = () => showJoint(k);
      li.append(b); ul.append(li);
    });
    d.append(ul);
    return d;
  }

  function showJoint(k) {
    const j = data.joints[k];
    chosen = { joint: k };
    const what = cuts.has(k) ? "blanked on both sides" : j.fix ? "a section ends here" : j.bar ? "can't be blanked" : "no blank";
    panel.replaceChildren(el("h3", "Joint"), rows([
      ["where", j.at], ["opening", j.size], ["now", what], ...(j.fix ? [["why", j.fix]] : []), ...(j.bar ? [["why not", j.bar]] : []),
      ...(free(j) || cuts.has(k) ? [["a blank costs", j.m.toFixed(0) + " min, both sides and both tests"]] : []),
    ]));
    if (mode === "try" && free(j)) {
      const b = el("button", cuts.has(k) ? "Lift the blank" : "Blank off here", { type: "button" });
      b.onclick = () => toggle(k);
      panel.append(b);
    }
    spot(j.x, j.y);
  }

  function toggle(k) {
    const j = data.joints[k];
    if (!free(j)) { showJoint(k); say(j.fix ? "A section has to end here: " + j.fix : "Can't be blanked: " + j.bar); return; }
    if (cuts.has(k)) cuts.delete(k); else cuts.add(k);
    redraw();
    const now = parts(cuts), sides = [now.list[now.of(j.a)], now.list[now.of(j.b)]];
    showJoint(k);
    (sides[0] === sides[1] ? [sides[0]] : sides).forEach((p) => panel.append(el("h4", "Section " + p.id), rows([
      ["area", area(p.area)], ["limit", flow(p.limit)], ["the rig", p.state], ["blanks", String(p.blanks)],
    ])));
    say(sides.map((p) => p.id + " " + p.state).join(", "));
  }

  function tell(now) {
    const a = data.score, b = score(cuts, now.list);
    $("score").textContent = `plan: ${many(a.tests, "test")}, ${a.under_range} under range, ${a.over_range} over range, cuts ${a.blank_minutes.toFixed(0)} min` +
      `; now: ${many(b.tests, "test")}, ${b.under} under range, ${b.over} over range, cuts ${b.minutes.toFixed(0)} min`;
  }

  const say = (text) => { $("said").textContent = text; };

  function mark(nodes) {
    const to = $("marked");
    to.replaceChildren();
    nodes.forEach((i) => { const n = data.nodes[i]; if (n.p) shape("path", { d: n.p, "stroke-width": n.w + 7 }, to); });
  }
  function spot(x, y) {
    const to = $("marked");
    to.replaceChildren();
    shape("circle", { cx: x, cy: y, r: 14 }, to);
  }

  // ---- looking around ----

  let view = { x: 0, y: 0, w: data.width, h: data.height };
  const apply = () => svg.setAttribute("viewBox", `${view.x} ${view.y} ${view.w} ${view.h}`);
  function fit() {
    const r = svg.getBoundingClientRect(), k = Math.max(data.width / r.width, data.height / r.height, 0.5);
    view = { w: r.width * k, h: r.height * k };
    view.x = (data.width - view.w) / 2; view.y = Math.min(0, (data.height - view.h) / 2);
    apply();
  }
  function zoom(k, cx, cy) {
    const w = Math.min(Math.max(view.w * k, 60), data.width * 4 + 400), f = w / view.w;
    cx = cx === undefined ? view.x + view.w / 2 : cx; cy = cy === undefined ? view.y + view.h / 2 : cy;
    view = { x: cx - (cx - view.x) * f, y: cy - (cy - view.y) * f, w, h: view.h * f };
    apply();
  }
  const place = (e) => {
    const r = svg.getBoundingClientRect();
    return [view.x + (e.clientX - r.left) / r.width * view.w, view.y + (e.clientY - r.top) / r.height * view.h];
  };
  function centre(x, y) {
    if (view.w > 700) { const f = 700 / view.w; view.w *= f; view.h *= f; }
    view.x = x - view.w / 2; view.y = y - view.h / 2;
    apply();
  }

  const fingers = new Map();
  let moved = 0, pinch = 0;
  svg.addEventListener("wheel", (e) => { e.preventDefault(); zoom(e.deltaY > 0 ? 1.2 : 1 / 1.2, ...place(e)); }, { passive: false });
  svg.addEventListener("pointerdown", (e) => { fingers.set(e.pointerId, e); moved = 0; pinch = 0; });
  addEventListener("pointerup", (e) => { fingers.delete(e.pointerId); pinch = 0; });
  addEventListener("pointercancel", (e) => { fingers.delete(e.pointerId); pinch = 0; });
  svg.addEventListener("pointermove", (e) => {
    const was = fingers.get(e.pointerId);
    if (!was) return;
    const k = view.w / svg.getBoundingClientRect().width;
    fingers.set(e.pointerId, e);
    if (fingers.size === 1) {
      moved += Math.abs(e.clientX - was.clientX) + Math.abs(e.clientY - was.clientY);
      view.x -= (e.clientX - was.clientX) * k; view.y -= (e.clientY - was.clientY) * k;
      apply();
    } else if (fingers.size === 2) {
      moved = 99;
      const [a, b] = [...fingers.values()], far = Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY);
      if (pinch) zoom(pinch / far, ...place({ clientX: (a.clientX + b.clientX) / 2, clientY: (a.clientY + b.clientY) / 2 }));
      pinch = far;
    }
  });
  svg.addEventListener("click", (e) => {
    if (moved > 6) return;
    const [x, y] = place(e), reach = 14 * view.w / svg.getBoundingClientRect().width;
    let best = -1, near = Math.max(reach, 6);
    data.joints.forEach((j, k) => {
      if (!j.w || j.loose || mode === "look" && !cuts.has(k) && !j.fix) return;
      const d = Math.hypot(j.x - x, j.y - y);
      if (d < near) { near = d; best = k; }
    });
    if (best >= 0) { if (mode === "try" && free(data.joints[best])) toggle(best); else showJoint(best); return; }
    near = 40;
    data.nodes.forEach((n, i) => {
      if (n.s < 0 || !n.p) return;
      const d = Math.hypot((n.x - x) * 0.5, n.y - y);
      if (d < near) { near = d; best = i; }
    });
    if (best >= 0) showSection(best);
  });
  svg.addEventListener("keydown", (e) => {
    const step = view.w / 10, go = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step] }[e.key];
    if (go) { view.x += go[0]; view.y += go[1]; apply(); e.preventDefault(); }
    else if (e.key === "+" || e.key === "=") zoom(1 / 1.3);
    else if (e.key === "-") zoom(1.3);
    else if (e.key === "0") fit();
    else if ((e.key === "Enter" || e.key === " ") && e.target.dataset.s !== undefined) {
      showSection(data.nodes.findIndex((n) => n.s === Number(e.target.dataset.s)));
      e.preventDefault();
    }
  });
  $("in").onclick = () => zoom(1 / 1.4);
  $("out").onclick = () => zoom(1.4);
  $("fit").onclick = fit;

  let found = [], at = 0, asked = "";
  $("find").onsubmit = (e) => {
    e.preventDefault();
    const text = $("what").value.trim().toLowerCase();
    if (!text) return;
    if (text !== asked) {
      const whole = [], part = [];
      data.nodes.forEach((n, i) => { const t = n.t.toLowerCase(); if (n.p && t === text) whole.push(i); else if (n.p && t.includes(text)) part.push(i); });
      found = whole.concat(part); at = -1; asked = text;
    }
    if (!found.length) { say("No tag holds " + text + "."); return; }
    at = (at + 1) % found.length;
    const n = data.nodes[found[at]];
    centre(n.x, n.y);
    if (n.s >= 0) showSection(found[at]); else panel.replaceChildren(el("h3", n.t), el("p", n.k + ": in no section"));
    spot(n.x, n.y);
    say(`${at + 1} of ${found.length}: ${n.n}` + (n.s >= 0 ? ", section " + data.sections[n.s].id : ""));
  };

  function turn(to) {
    mode = to;
    document.body.classList.toggle("trying", mode === "try");
    $("try").setAttribute("aria-pressed", String(mode === "try"));
    $("tools").hidden = mode !== "try";
    redraw();
    panel.replaceChildren(el("p", mode === "try" ? "Choose a joint to blank it off or to lift its blank." : "Choose a section or a cut."));
  }
  $("try").onclick = () => turn(mode === "try" ? "look" : "try");
  $("back").onclick = () => { cuts = new Set(planned); redraw(); say("Back to the plan's own cuts."); };
  $("save").onclick = () => {
    const a = el("a", "", { download: "own-cuts.csv", href: URL.createObjectURL(new Blob([cutList()], { type: "text/csv" })) });
    a.click();
    say("own-cuts.csv: give it to blankoff plan with --cuts.");
  };
  addEventListener("beforeprint", () => { if (mode === "try") turn("look"); });

  let wide = innerWidth; // a keyboard on the screen changes only the height
  if (data.nodes.length) { fit(); addEventListener("resize", () => { if (innerWidth !== wide) { wide = innerWidth; fit(); } }); }
  globalThis.blankoff = { parts: (set) => parts(set || cuts).list, cuts: () => cuts, toggle, cutList, score: () => score(cuts, parts(cuts).list), data };
})();
