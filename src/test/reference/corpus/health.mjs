// Is a triangle mesh a sound solid: closed, oriented, how many shells, what genus, no crossings.

import { orient2, orient3 } from './signs.mjs';

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
  const count = corners.length / 3;
  const inFocus = new Uint8Array(count);
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  const box = (f, i) => {
    const [a, b, c] = [points[3 * corners[3 * f] + i], points[3 * corners[3 * f + 1] + i], points[3 * corners[3 * f + 2] + i]];
    return [Math.min(a, b, c), Math.max(a, b, c)];
  };
  for (const f of focus) {
    inFocus[f] = 1;
    for (let i = 0; i < 3; i++) {
      const [l, h] = box(f, i);
      low[i] = Math.min(low[i], l);
      high[i] = Math.max(high[i], h);
    }
  }
  const boxes = [];
  for (let f = 0; f < count; f++) {
    const b = [box(f, 0), box(f, 1), box(f, 2)];
    if (b.every(([l, h], i) => l <= high[i] && h >= low[i]) && !flatFacets({ points, corners }, [f]).length) boxes.push({ f, b });
  }
  boxes.sort((x, y) => x.b[0][0] - y.b[0][0]);
  const found = [];
  for (let i = 0; i < boxes.length; i++) {
    for (let j = i + 1; j < boxes.length && boxes[j].b[0][0] <= boxes[i].b[0][1]; j++) {
      const [x, y] = [boxes[i], boxes[j]];
      if (!inFocus[x.f] && !inFocus[y.f]) continue;
      if (x.b[1][0] > y.b[1][1] || y.b[1][0] > x.b[1][1] || x.b[2][0] > y.b[2][1] || y.b[2][0] > x.b[2][1]) continue;
      if (meet(points, corners, x.f, y.f)) found.push([x.f, y.f]);
    }
  }
  return found;
}

function meet(points, corners, f, g) {
  const a = [0, 1, 2].map((k) => 3 * corners[3 * f + k]);
  const b = [0, 1, 2].map((k) => 3 * corners[3 * g + k]);
  const shared = a.filter((v) => b.includes(v));
  if (shared.length === 3) return true;
  if (shared.length === 2) return folded(points, a, b, shared);
  const own = (edgesOf, tri) => edges(edgesOf).filter(([s, t]) => !shared.includes(s) && !shared.includes(t)).some(([s, t]) => pierces(points, s, t, tri));
  if (own(a, b) || own(b, a)) return true;
  return false;
}
const edges = ([a, b, c]) => [[a, b], [b, c], [c, a]];

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
