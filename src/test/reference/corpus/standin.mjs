// An honest result made by hand, so that the judge can be tried without the program: the roof of a
// square-mouthed through bore, cut into the mesh with every untouched vertex and triangle in place.

import { roofOver } from './shapes.mjs';
import { add, cross, dot, mul, norm, sectionFrame, sub } from './vec.mjs';

/**
 * { points, corners } of the input with the roof of `b` cut in. New triangles take the places of
 * removed ones, the rest goes to the end; the two ridge ends are appended.
 */
export function roofed({ points, corners }, b, angle) {
  const roof = roofOver(b.polygon, angle);
  const { u, v, w } = sectionFrame(b.d);
  const at = Array.from(points);
  const local = (i) => {
    const q = sub(at.slice(3 * i, 3 * i + 3), b.p);
    return [dot(q, u), dot(q, v), dot(q, w)];
  };
  const facets = Array.from({ length: corners.length / 3 }, (_, f) => Array.from(corners.slice(3 * f, 3 * f + 3)));
  const gone = new Set();
  const fresh = [];
  const ridge = b.wall.map((end) => at.push(...add(b.p, add(mul(u, roof.ridge[0]), add(mul(v, roof.ridge[1]), mul(w, end))))) / 3 - 1);
  const find = ([x, y], end) => {
    for (let i = 0; i < points.length / 3; i++) {
      const [p, q, r] = local(i);
      if (Math.hypot(p - x, q - y) < 1e-6 && Math.abs(r - end) < 1e-6) return i;
    }
    throw new Error('a contact corner is missing');
  };
  const [left, right] = [roof.left, roof.right].map((c) => b.wall.map((end) => find(c, end)));
  const above = ([x, y]) => (y - roof.right[1]) * (roof.left[0] - roof.right[0]) - (x - roof.right[0]) * (roof.left[1] - roof.right[1]) < 1e-6;
  b.wall.forEach((end, side) => face(end, side));
  facets.forEach((f, i) => {
    const q = f.map(local);
    if (q.every(([x, y]) => Math.hypot(x, y) <= b.r + 1e-6 && above([x, y]) && y > 0) && new Set(q.map((c) => Math.round(c[2]))).size > 1) gone.add(i);
  });
  fresh.push([right[0], right[1], ridge[1]], [right[0], ridge[1], ridge[0]], [ridge[0], ridge[1], left[1]], [ridge[0], left[1], left[0]]);
  return filled(at, facets, [...gone].sort((x, y) => x - y), fresh);

  /** Takes out the end face's triangles that reach into the roof and fills what is left around it. */
  function face(end, side) {
    const outline = [roof.right, roof.ridge, roof.left];
    const hit = facets.map((_, i) => i).filter((i) => facets[i].every((c) => Math.abs(local(c)[2] - end) < 1e-6) && overlaps(facets[i].map((c) => local(c).slice(0, 2)), outline));
    hit.forEach((i) => gone.add(i));
    const next = new Map();
    const edges = new Set(hit.flatMap((i) => facets[i].map((a, k) => `${a},${facets[i][(k + 1) % 3]}`)));
    for (const e of edges) {
      const [a, c] = e.split(',').map(Number);
      if (!edges.has(`${c},${a}`)) next.set(a, c);
    }
    // Along the crown the loop runs from one contact to the other; there the ridge takes its place.
    const chain = new Set([...next.keys()].filter((i) => Math.abs(Math.hypot(...local(i).slice(0, 2)) - b.r) < 1e-6 && above(local(i)) && ![left[side], right[side]].includes(i)));
    const loop = [];
    for (let i = left[side], n = 0; n <= next.size; i = next.get(i), n++) {
      if (n && i === left[side]) break;
      if (chain.has(i)) {
        if (loop[loop.length - 1] !== ridge[side]) loop.push(ridge[side]);
      } else loop.push(i);
    }
    fresh.push(...ears(loop, (i) => local(i), side));
  }
}

/** Removed places are filled in order, what remains is appended; too few are split at their middles. */
function filled(points, facets, gone, fresh) {
  const size = ([a, b, c]) => norm(cross(sub(at(b), at(a)), sub(at(c), at(a))));
  const at = (i) => points.slice(3 * i, 3 * i + 3);
  while (fresh.length < gone.length) {
    const k = fresh.reduce((best, f, i) => (size(f) > size(fresh[best]) ? i : best), 0);
    const [a, b, c] = fresh[k];
    const m = points.push(...mul(add(at(a), add(at(b), at(c))), 1 / 3)) / 3 - 1;
    fresh.splice(k, 1, [a, b, m], [b, c, m], [c, a, m]);
  }
  gone.forEach((i, k) => (facets[i] = fresh[k]));
  return { points: Float64Array.from(points), corners: Uint32Array.from([...facets, ...fresh.slice(gone.length)].flat()) };
}

/** Do two convex polygons of a plane overlap by more than a touch? Separating lines. */
function overlaps(p, q) {
  const apart = (a, b) => a.some(([x, y], k) => {
    const [nx, ny] = a[(k + 1) % a.length];
    const out = (m) => (ny - y) * (m[0] - x) - (nx - x) * (m[1] - y);
    const own = Math.max(...a.map(out));
    const low = Math.min(...a.map(out));
    return Math.min(...b.map(out)) >= own - 1e-9 || Math.max(...b.map(out)) <= low + 1e-9;
  });
  return !apart(p, q) && !apart(q, p);
}

/** Ear clipping of a simple loop seen along the axis. */
function ears(loop, local, side) {
  const sign = side ? 1 : -1;
  const area = (a, b, c) => sign * cross(sub(local(b), local(a)), sub(local(c), local(a)))[2];
  const rest = [...loop];
  const out = [];
  while (rest.length > 3) {
    const k = rest.findIndex((b, i) => {
      const [a, c] = [rest[(i + rest.length - 1) % rest.length], rest[(i + 1) % rest.length]];
      return area(a, b, c) > 1e-9 && rest.every((p) => [a, b, c].includes(p) || area(a, b, p) < 0 || area(b, c, p) < 0 || area(c, a, p) < 0);
    });
    if (k < 0) throw new Error('the loop has no ear');
    out.push([rest[(k + rest.length - 1) % rest.length], rest[k], rest[(k + 1) % rest.length]]);
    rest.splice(k, 1);
  }
  return [...out, rest];
}
