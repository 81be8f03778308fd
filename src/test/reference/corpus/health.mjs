// Is a triangle mesh a sound solid: closed, oriented, how many shells, what genus, no crossings.

import { orient2, orient3 } from './signs.mjs';

/** The mesh with its triangles taken to the first of vertices at one place; texts are kept. */
export function joinedByPlace(mesh) {
  const first = new Map();
  const at = Array.from({ length: mesh.points.length / 3 }, (_, v) => {
    const place = mesh.points.slice(3 * v, 3 * v + 3).map((x) => x + 0).join();
    if (!first.has(place)) first.set(place, v);
    return first.get(place);
  });
  return { ...mesh, corners: mesh.corners.map((v) => at[v]) };
}

/** { open, bad, shells, euler, volume }: open edges, edges used too often or the same way twice. */
export function topology({ points, corners }) {
  const uses = new Map();
  const shell = new Map();
  const root = (v) => {
    while (shell.get(v) !== v) {
      shell.set(v, shell.get(shell.get(v)));
      v = shell.get(v);
    }
    return v;
  };
  let volume = 0;
  for (let f = 0; f < corners.length; f += 3) {
    const [a, b, c] = [corners[f], corners[f + 1], corners[f + 2]];
    for (const [s, t] of [[a, b], [b, c], [c, a]]) {
      const key = s * 4294967296 + t;
      uses.set(key, (uses.get(key) ?? 0) + 1);
      if (!shell.has(s)) shell.set(s, s);
    }
    shell.set(root(a), root(b));
    shell.set(root(b), root(c));
    volume += tetra(points, 3 * a, 3 * b, 3 * c) / 6;
  }
  let open = 0;
  let bad = 0;
  for (const [key, count] of uses) {
    const s = Math.floor(key / 4294967296);
    const t = key - s * 4294967296;
    if (count > 1 || s === t) bad++;
    if (!uses.has(t * 4294967296 + s)) open++;
  }
  const shells = new Set([...shell.keys()].map(root)).size;
  return { open, bad, shells, euler: shell.size - corners.length / 6, volume };
}

const tetra = (p, a, b, c) =>
  p[a] * (p[b + 1] * p[c + 2] - p[b + 2] * p[c + 1]) +
  p[a + 1] * (p[b + 2] * p[c] - p[b] * p[c + 2]) +
  p[a + 2] * (p[b] * p[c + 1] - p[b + 1] * p[c]);

/** Facets with two corners at one place or without area (exact). */
export function flatFacets({ points, corners }, focus) {
  return focus.filter((f) => {
    const [a, b, c] = [3 * corners[3 * f], 3 * corners[3 * f + 1], 3 * corners[3 * f + 2]];
    return [[0, 1], [1, 2], [2, 0]].every(([i, j]) => orient2(points, a, b, c, i, j) === 0);
  });
}

/**
 * Pairs of facets that meet anywhere but in the corners and edges they share, at least one of them in
 * `focus` (facet numbers). Touching counts. Exact. Facets without area are left to flatFacets().
 */
export function crossings({ points, corners }, focus) {
  const boxes = [0, 1, 2].map((i) => span(points, corners, i));
  const inFocus = new Uint8Array(corners.length / 3);
  focus.forEach((f) => (inFocus[f] = 1));
  const near = reached(boxes, focus).filter((f) => !flatFacets({ points, corners }, [f]).length);
  // Swept along the longest axis: facets whose spans overlap there are compared in the other two.
  const long = [0, 1, 2].reduce((best, i) => (length(boxes[i], near) > length(boxes[best], near) ? i : best), 0);
  const [sweep, ...others] = [long, (long + 1) % 3, (long + 2) % 3].map((i) => boxes[i]);
  near.sort((f, g) => sweep.low[f] - sweep.low[g]);
  const found = [];
  for (let i = 0; i < near.length; i++) {
    const f = near[i];
    for (let j = i + 1; j < near.length && sweep.low[near[j]] <= sweep.high[f]; j++) {
      const g = near[j];
      if (!inFocus[f] && !inFocus[g]) continue;
      if (others.some(({ low, high }) => low[f] > high[g] || low[g] > high[f])) continue;
      if (meet(points, corners, f, g)) found.push([f, g]);
    }
  }
  return found;
}

/** Least and greatest coordinate i of every facet. */
function span(points, corners, i) {
  const count = corners.length / 3;
  const [low, high] = [new Float64Array(count), new Float64Array(count)];
  for (let f = 0; f < count; f++) {
    const [a, b, c] = [points[3 * corners[3 * f] + i], points[3 * corners[3 * f + 1] + i], points[3 * corners[3 * f + 2] + i]];
    low[f] = Math.min(a, b, c);
    high[f] = Math.max(a, b, c);
  }
  return { low, high };
}
const ends = ({ low, high }, list) => list.reduce(([l, h], f) => [Math.min(l, low[f]), Math.max(h, high[f])], [Infinity, -Infinity]);
const length = (box, list) => {
  const [l, h] = ends(box, list);
  return h - l;
};
/** Facets that reach into the box around those in focus. */
function reached(boxes, focus) {
  const limits = boxes.map((box) => ends(box, focus));
  return Array.from({ length: boxes[0].low.length }, (_, f) => f)
    .filter((f) => boxes.every(({ low, high }, i) => low[f] <= limits[i][1] && high[f] >= limits[i][0]));
}

function meet(points, corners, f, g) {
  const a = [0, 1, 2].map((k) => 3 * corners[3 * f + k]);
  const b = [0, 1, 2].map((k) => 3 * corners[3 * g + k]);
  const shared = a.filter((v) => b.includes(v));
  if (shared.length === 3) return true;
  if (shared.length === 2) return folded(points, a, b, shared);
  const own = (edgesOf, tri) => edges(edgesOf).filter(([s, t]) => !shared.includes(s) && !shared.includes(t)).some(([s, t]) => close(points, s, t, tri) && pierces(points, s, t, tri));
  if (own(a, b) || own(b, a)) return true;
  return false;
}
const edges = ([a, b, c]) => [[a, b], [b, c], [c, a]];

/** Do the boxes of a segment and a triangle overlap? */
const close = (p, s, t, [a, b, c]) => [0, 1, 2].every((i) =>
  Math.min(p[s + i], p[t + i]) <= Math.max(p[a + i], p[b + i], p[c + i]) && Math.max(p[s + i], p[t + i]) >= Math.min(p[a + i], p[b + i], p[c + i]));

/** Neighbours over an edge that lie on each other: same plane, third corners on the same side. */
function folded(points, a, b, shared) {
  const p = a.find((v) => !shared.includes(v));
  const q = b.find((v) => !shared.includes(v));
  if (orient3(points, a[0], a[1], a[2], q) !== 0) return false;
  const [i, j] = plane(points, a);
  const s = orient2(points, shared[0], shared[1], p, i, j);
  const t = orient2(points, shared[0], shared[1], q, i, j);
  return s !== 0 && s === t;
}

/** Two coordinates in which the triangle has an area. */
function plane(points, [a, b, c]) {
  return [[0, 1], [1, 2], [2, 0]].find(([i, j]) => orient2(points, a, b, c, i, j) !== 0) ?? [0, 1];
}

/** Closed segment against closed triangle. */
function pierces(points, s, t, [a, b, c]) {
  const [above, below] = [orient3(points, a, b, c, s), orient3(points, a, b, c, t)];
  if (above * below > 0) return false;
  if (above === 0 && below === 0) return inPlane(points, s, t, [a, b, c]);
  const turns = edges([a, b, c]).map(([x, y]) => orient3(points, s, t, x, y));
  return turns.every((w) => w >= 0) || turns.every((w) => w <= 0);
}

function inPlane(points, s, t, tri) {
  const [i, j] = plane(points, tri);
  const side = (x, y, z) => orient2(points, x, y, z, i, j);
  const way = side(...tri);
  const inside = (x) => edges(tri).every(([p, q]) => side(p, q, x) * way >= 0);
  if (inside(s) || inside(t)) return true;
  return edges(tri).some(([p, q]) => {
    const [w1, w2, w3, w4] = [side(s, t, p), side(s, t, q), side(p, q, s), side(p, q, t)];
    return w1 * w2 < 0 && w3 * w4 < 0 || (w1 === 0 && onSegment(points, s, t, p)) || (w2 === 0 && onSegment(points, s, t, q));
  });
}
const onSegment = (p, s, t, x) =>
  [0, 1, 2].every((i) => Math.min(p[s + i], p[t + i]) <= p[x + i] && p[x + i] <= Math.max(p[s + i], p[t + i]));
