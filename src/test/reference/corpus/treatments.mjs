// What exporters, remeshers and careless tools do to a mesh. Each treatment takes { mesh, features }
// and says what the input then is ('sound', 'joinable', 'unsound') and by how much points were moved.

import { fromMesh, keep, toMesh } from './kernel.mjs';
import { add, cross, dot, mul, norm, sub, unit } from './vec.mjs';

export function treated(base, name, random) {
  const make = TREATMENTS[name];
  if (!make) throw new Error(`no treatment ${name}`);
  return { ...base, ...make(base, random) };
}

const point = (mesh, v) => Array.from(mesh.points.slice(3 * v, 3 * v + 3));
const facet = (mesh, f) => Array.from(mesh.corners.slice(3 * f, 3 * f + 3));
const facetCount = (mesh) => mesh.corners.length / 3;
const meshOf = (points, facets) => ({ points: Float64Array.from(points.flat()), corners: Uint32Array.from(facets.flat()) });
const lists = (mesh) => ({
  points: Array.from({ length: mesh.points.length / 3 }, (_, v) => point(mesh, v)),
  facets: Array.from({ length: facetCount(mesh) }, (_, f) => facet(mesh, f)),
});

/** Every coordinate moved independently by up to `amount` either way. */
const jitter = (amount) => ({ mesh, features }, random) => ({
  mesh: { ...mesh, points: mesh.points.map((x) => x + random.between(-amount, amount)) },
  noise: amount, features,
});

/** Spelled with few decimals: moved by up to half a step. */
const rounded = (spelling, step) => () => ({ spelling, noise: step / 2 });

const smallest = (features) => Math.min(...features.map((f) => f.r ?? 3));

/** The kernel's own subdivision to short edges: flat stays flat, walls stay prisms. */
const fine = (share) => ({ mesh, features }) => ({
  mesh: toMesh(keep(fromMesh(mesh).refineToLength(smallest(features) * share))),
});

/** The kernel's simplification: walls lose corners and get long oblique facets. */
const decimated = (tolerance) => ({ mesh, features }, random) => {
  const dense = keep(fromMesh(mesh).refineToLength(smallest(features) * 0.4));
  const shaken = keep(dense.warp((vertex) => {
    for (let i = 0; i < 3; i++) vertex[i] += random.between(-tolerance / 4, tolerance / 4);
  }));
  return { mesh: toMesh(keep(shaken.simplify(tolerance))), noise: 1.5 * tolerance };
};

/** Splits edges very close to an end, over and over: needle triangles, still closed. */
function slivers({ mesh }, random) {
  const { points, facets } = lists(mesh);
  const owner = new Map();
  const claim = (f) => facets[f].forEach((v, k) => owner.set(`${v},${facets[f][(k + 1) % 3]}`, f));
  facets.forEach((_, f) => claim(f));
  for (let step = 0; step < 60; step++) {
    const f = random.whole(0, facets.length - 1);
    const k = random.whole(0, 2);
    const [a, b] = [facets[f][k], facets[f][(k + 1) % 3]];
    const g = owner.get(`${b},${a}`);
    const long = norm(sub(points[b], points[a]));
    if (long < 0.5) continue;
    const share = random.pick([0.02, 0.1]) / long;
    const m = points.push(add(mul(points[a], 1 - share), mul(points[b], share))) - 1;
    for (const [own, from, to] of [[f, a, b], [g, b, a]]) {
      const third = facets[own].find((v) => v !== a && v !== b);
      facets[own] = [from, m, third];
      facets.push([m, to, third]);
      claim(own);
      claim(facets.length - 1);
    }
  }
  return { mesh: meshOf(points, facets) };
}

/** Order of vertices and triangles, and the first corner of each, at random. */
function shuffled({ mesh }, random) {
  const { points, facets } = lists(mesh);
  const mix = (list) => {
    for (let i = list.length - 1; i > 0; i--) {
      const j = random.whole(0, i);
      [list[i], list[j]] = [list[j], list[i]];
    }
    return list;
  };
  const order = mix(points.map((_, v) => v));
  const place = [];
  order.forEach((v, at) => (place[v] = at));
  const turned = mix(facets).map((f) => {
    const k = random.whole(0, 2);
    return [place[f[k]], place[f[(k + 1) % 3]], place[f[(k + 2) % 3]]];
  });
  return { mesh: meshOf(order.map((v) => points[v]), turned) };
}

/** Each triangle (or each with the given chance) gets vertices of its own. */
const soup = (share) => ({ mesh }, random) => {
  const { points, facets } = lists(mesh);
  const torn = facets.map((f) => (random.next() < share ? f.map((v) => points.push(points[v]) - 1) : f));
  const used = [...new Set(torn.flat())].sort((a, b) => a - b);
  const place = new Map(used.map((v, at) => [v, at]));
  return { mesh: meshOf(used.map((v) => points[v]), torn.map((f) => f.map((v) => place.get(v)))), sound: 'joinable' };
};

/** The same, and the caller wants the file to share them. */
const thenJoined = (make) => (base, random) => ({ ...make(base, random), args: ['--join-vertices'] });

function duplicated({ mesh }, random) {
  const { points, facets } = lists(mesh);
  return { mesh: meshOf(points, [...facets, facets[random.whole(0, facets.length - 1)]]), sound: 'unsound' };
}

/** A triangle without area between two neighbours: closed by its edges, flat by its points. */
function degenerate({ mesh }, random) {
  const { points, facets } = lists(mesh);
  const f = random.whole(0, facets.length - 1);
  const [a, b, c] = facets[f];
  const m = points.push(mul(add(points[a], points[b]), 0.5)) - 1;
  facets[f] = [a, m, c];
  facets.push([m, b, c], [a, b, m]);
  return { mesh: meshOf(points, facets), sound: 'flawed' };
}

function missing({ mesh }, random) {
  const { points, facets } = lists(mesh);
  facets.splice(random.whole(0, facets.length - 1), 1);
  return { mesh: meshOf(points, facets), sound: 'unsound' };
}

/** A vertex on an edge that only one of the two neighbours knows. */
function tJunction({ mesh }, random) {
  const { points, facets } = lists(mesh);
  const f = random.whole(0, facets.length - 1);
  const [a, b, c] = facets[f];
  const m = points.push(mul(add(points[a], points[b]), 0.5)) - 1;
  facets[f] = [a, m, c];
  facets.push([m, b, c]);
  return { mesh: meshOf(points, facets), sound: 'unsound' };
}

function flipped({ mesh }) {
  const { points, facets } = lists(mesh);
  return { mesh: meshOf(points, facets.map(([a, b, c]) => [a, c, b])), sound: 'flawed' };
}

/** One of several shells inside out. */
function flippedShell({ mesh }) {
  const { points, facets } = lists(mesh);
  const reached = new Set(facets[0]);
  for (let before = 0; before !== reached.size; ) {
    before = reached.size;
    for (const f of facets) if (f.some((v) => reached.has(v))) f.forEach((v) => reached.add(v));
  }
  return { mesh: meshOf(points, facets.map(([a, b, c]) => (reached.has(a) ? [a, c, b] : [a, b, c]))), sound: 'flawed' };
}

/** A small tetrahedron outside that shares one vertex (or one edge) with the part. */
const touching = (what) => ({ mesh }) => {
  const { points, facets } = lists(mesh);
  const normal = facets.map(([a, b, c]) => cross(sub(points[b], points[a]), sub(points[c], points[a])));
  const edge = facets.flatMap((f, i) => f.map((a, k) => [a, f[(k + 1) % 3], i])).map(([a, b, i]) => {
    const j = facets.findIndex((f) => f.some((v, k) => v === b && f[(k + 1) % 3] === a));
    return { a, b, out: add(unit(normal[i]), unit(normal[j])) };
  }).find(({ a, b, out }) => norm(out) < 1.9 && norm(out) > 0.1 && norm(sub(points[b], points[a])) > 2 &&
    points.every((p) => dot(p, out) <= dot(points[a], out) + 1e-6) && points.every((p, v) => v === a || v === b || dot(p, out) < dot(points[a], out) - 1e-6));
  if (!edge) throw new Error('no convex edge stands out');
  const out = unit(edge.out);
  const along = unit(sub(points[edge.b], points[edge.a]));
  const side = cross(out, along);
  const [a, b] = [edge.a, edge.b];
  const middle = mul(add(points[a], points[b]), 0.5);
  const c = points.push(add(add(middle, mul(out, 3)), mul(side, 0.5))) - 1;
  const d = points.push(add(add(middle, mul(out, 3)), mul(side, -0.5))) - 1;
  const e = what === 'edge' ? b : points.push(add(points[a], add(mul(out, 3), mul(along, 1)))) - 1;
  const solid = [[a, e, c], [a, d, e], [a, c, d], [e, d, c]];
  const volume = solid.reduce((s, [p, q, r]) => s + dot(sub(points[p], points[a]), cross(sub(points[q], points[a]), sub(points[r], points[a]))), 0);
  return { mesh: meshOf(points, [...facets, ...(volume > 0 ? solid : solid.map(([p, q, r]) => [p, r, q]))]), sound: 'flawed' };
};

/** The whole part ten metres away, spelled with nine digits: five before the point, steps of 1e-4 mm. */
const far = ({ mesh, features }) => {
  const away = [1e4, -1e4, 0];
  return {
    mesh: { ...mesh, points: mesh.points.map((x, i) => x + away[i % 3]) },
    features: features.map((f) => ({ ...f, p: add(f.p, away) })), spelling: 'nine', noise: 5e-5,
  };
};

export const TREATMENTS = {
  none: () => ({}),
  fine: fine(0.5), finer: fine(0.2),
  decimated: decimated(0.01),
  slivers, shuffled,
  rounded3: rounded('three', 1e-3), rounded2: rounded('two', 1e-2),
  jitter2: jitter(0.002), jitter5: jitter(0.005), jitter10: jitter(0.01),
  soup: soup(1), partSoup: soup(0.2), soupJoined: thenJoined(soup(1)), partSoupJoined: thenJoined(soup(0.2)),
  duplicated, degenerate, missing, tJunction, flipped, flippedShell,
  touchVertex: touching('vertex'), touchEdge: touching('edge'),
  far,
};
