// The kernel's own operations, wrapped thinly: wires, faces, solids, booleans
// and the measuring of faces. Lengths in mm, angles in radians. Nothing here
// knows a formula of a piece of ductwork.
'use strict';

const EPS = 1e-9; // relative error asked of the kernel's integration; its default is far coarser

const add = (a, b, t = 1) => a.map((v, i) => v + t * b[i]);
const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const scale = (a, t) => a.map((v) => v * t);
const unit = (a) => scale(a, 1 / Math.sqrt(dot(a, a)));

// A frame stands at the centre of a section: x and y in the section, z along
// the duct.
const ORIGIN = { o: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };
const at = (f, x, y, z = 0) => add(add(add(f.o, f.x, x), f.y, y), f.z, z);
const along = (f, l) => ({ ...f, o: at(f, 0, 0, l) });
const end = (f) => ({ p: f.o, n: f.z });

// turn swings a frame round an axis parallel to y at distance r along x.
function turn(f, r, angle) {
  const c = Math.cos(angle), s = Math.sin(angle);
  const x = add(scale(f.x, c), f.z, -s), z = add(scale(f.z, c), f.x, s);
  return { o: add(at(f, r, 0), x, -r), x, y: f.y, z };
}

async function load() {
  const oc = await require('replicad-opencascadejs')();
  const pnt = (a) => new oc.gp_Pnt(a[0], a[1], a[2]);
  const dir = (a) => new oc.gp_Dir(a[0], a[1], a[2]);
  const vec = (a) => new oc.gp_Vec(a[0], a[1], a[2]);
  const FACE = oc.TopAbs_ShapeEnum.TopAbs_FACE, VERTEX = oc.TopAbs_ShapeEnum.TopAbs_VERTEX;
  const SOLID = oc.TopAbs_ShapeEnum.TopAbs_SOLID;

  const line = (a, b) => new oc.BRepBuilderAPI_MakeEdge(pnt(a), pnt(b)).Edge();

  // arc is part of a circle in the x-y plane of frame f, from angle a to b.
  const arc = (f, r, a, b) =>
    new oc.BRepBuilderAPI_MakeEdge(new oc.gp_Circ(new oc.gp_Ax2(pnt(f.o), dir(f.z), dir(f.x)), r), a, b).Edge();

  function wire(edges) {
    const w = new oc.BRepBuilderAPI_MakeWire();
    for (const e of edges) w.Add(e);
    if (!w.IsDone()) throw new Error('the edges make no wire');
    return w.Wire();
  }

  const polygon = (points) => wire(points.map((p, i) => line(p, points[(i + 1) % points.length])));

  // arcs is an arc in n like parts. A sheet that isn't a plane, a right cylinder
  // or a right cone is made on parts of arcs, because the kernel's integration
  // takes too few points on a long curved face, and its own estimate of the
  // error doesn't see that.
  const arcs = (f, r, a, b, n) =>
    Array.from({ length: n }, (_, i) => arc(f, r, a + (b - a) * i / n, a + (b - a) * (i + 1) / n));

  // outline is the wire of a section {shape, w, h} or {shape, d} in frame f, its
  // arcs in n parts; w lies along x. The longer axis of a flat oval may be either.
  function outline(s, f, n = 1) {
    if (s.shape === 'circular') return wire(arcs(f, s.d / 2, 0, 2 * Math.PI, n));
    const { w, h } = s;
    if (s.shape === 'rectangular') {
      return polygon([at(f, w / 2, h / 2), at(f, -w / 2, h / 2), at(f, -w / 2, -h / 2), at(f, w / 2, -h / 2)]);
    }
    const upright = h > w, r = Math.min(w, h) / 2, c = Math.abs(w - h) / 2;
    const g = upright ? { o: f.o, x: f.y, y: scale(f.x, -1), z: f.z } : f;
    const H = Math.PI / 2;
    return wire([
      ...arcs({ ...g, o: at(g, c, 0) }, r, -H, H, n), line(at(g, c, r), at(g, -c, r)),
      ...arcs({ ...g, o: at(g, -c, 0) }, r, H, 3 * H, n), line(at(g, -c, -r), at(g, c, -r)),
    ]);
  }

  function face(w) {
    const f = new oc.BRepBuilderAPI_MakeFace(w, true);
    if (!f.IsDone()) throw new Error('the wire makes no plane face');
    return f.Face();
  }

  const prism = (shape, v) => new oc.BRepPrimAPI_MakePrism(shape, vec(v)).Shape();
  // the last argument picks the constructor that takes an angle
  const revolve = (shape, p, axis, angle) =>
    new oc.BRepPrimAPI_MakeRevol(shape, new oc.gp_Ax1(pnt(p), dir(axis)), angle, false).Shape();

  // ruled joins two wires, or a wire and a point, by straight lines between
  // points of equal parameter.
  function ruled(a, b, solid) {
    const t = new oc.BRepOffsetAPI_ThruSections(solid, true, 1e-9);
    t.CheckCompatibility(false);
    for (const end of [a, b]) {
      if (Array.isArray(end)) t.AddVertex(new oc.BRepBuilderAPI_MakeVertex(pnt(end)).Vertex());
      else t.AddWire(end);
    }
    t.Build();
    return t.Shape();
  }

  // curve is a wire through the given points of a smooth curve, with its
  // tangents at both ends.
  function curve(points, first, last) {
    const list = new oc.NCollection_Array1_gp_Pnt(1, points.length);
    points.forEach((p, i) => list.SetValue(i + 1, pnt(p)));
    const fit = new oc.GeomAPI_Interpolate(new oc.NCollection_HArray1_gp_Pnt(list), false, 1e-9);
    fit.Load(vec(first), vec(last), true);
    fit.Perform();
    return new oc.BRepBuilderAPI_MakeEdge(fit.Curve()).Edge();
  }

  function parts(shape, type) {
    const list = [];
    const x = new oc.TopExp_Explorer(shape, type);
    for (; x.More(); x.Next()) list.push(x.Current());
    return list;
  }
  const faces = (shape) => parts(shape, FACE).map((f) => oc.TopoDS.Face(f));

  function checked(op, a, b) {
    const made = new oc[op](a, b);
    if (!made.IsDone() || made.HasErrors()) throw new Error(op + ' failed');
    const shape = made.Shape();
    if (!new oc.BRepCheck_Analyzer(shape, true, false).IsValid()) throw new Error(op + ' gave an invalid shape');
    return shape;
  }
  const cut = (a, b) => checked('BRepAlgoAPI_Cut', a, b);
  const common = (a, b) => checked('BRepAlgoAPI_Common', a, b);

  // fuse joins two solids that must make one, and holds the volumes against
  // each other.
  function fuse(a, b) {
    const shape = checked('BRepAlgoAPI_Fuse', a, b);
    if (parts(shape, SOLID).length !== 1) throw new Error('the solids don\'t make one');
    const off = (volume(shape) + volume(common(a, b))) / (volume(a) + volume(b)) - 1;
    if (!(Math.abs(off) < 1e-7)) throw new Error('the volumes don\'t add up: ' + off);
    return shape;
  }

  function volume(shape) {
    const p = new oc.GProp_GProps();
    oc.BRepGProp.VolumeProperties(shape, p, EPS, false, false);
    return Math.abs(p.Mass());
  }

  // onPlane reports whether a face is plane and lies in the plane of an end.
  function onPlane(f, centre, { p, n }) {
    const off = (q) => Math.abs(dot(add(q, p, -1), n));
    const surface = new oc.BRepAdaptor_Surface(f, true);
    const plane = surface.GetType() === oc.GeomAbs_SurfaceType.GeomAbs_Plane;
    if (!plane || off(centre) > 1e-4) return false;
    return parts(f, VERTEX).every((v) => {
      const q = oc.BRep_Tool.Pnt(oc.TopoDS.Vertex(v));
      return off([q.X(), q.Y(), q.Z()]) < 1e-4;
    });
  }

  // area is the area of a shape's faces, mm2, without those in an end's plane.
  function area(shape, ends = []) {
    let sum = 0;
    for (const f of faces(shape)) {
      const p = new oc.GProp_GProps();
      oc.BRepGProp.SurfaceProperties(f, p, EPS, false);
      const c = p.CentreOfMass();
      if (!ends.some((e) => onPlane(f, [c.X(), c.Y(), c.Z()], e))) sum += Math.abs(p.Mass());
    }
    return sum;
  }

  // closed reports whether faces sew together without a free edge.
  function closed(list) {
    const s = new oc.BRepBuilderAPI_Sewing(1e-6, true, true, true, false);
    for (const f of list) s.Add(f);
    s.Perform();
    return s.NbFreeEdges() === 0 && s.NbMultipleEdges() === 0;
  }

  return { line, arc, arcs, wire, polygon, outline, face, prism, revolve, ruled, curve, faces, cut, common, fuse, volume, area, closed };
}

module.exports = { load, add, dot, scale, unit, ORIGIN, at, along, end, turn };
