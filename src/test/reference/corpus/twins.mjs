// Cases that differ only in the order of vertices and triangles, or by a turn about z, must come out
// alike: same kinds, outcomes and sizes to the digits of the report, same ids where the order is all
// that differs, and the same new points in the numbers of the file.

import { cross, dot, mul, norm, sub } from './vec.mjs';

const TWINS = ['-shuffled', '-about-z'];

/** The name of the case that a twin must be like; undefined when it is none. */
export const plainName = (name) => {
  const ending = TWINS.find((t) => name.endsWith(t));
  return ending && name.slice(0, -ending.length);
};

const seen = (feature) => [feature.outcome, feature.shape, feature.reason?.code ?? '', feature.changes?.map((c) => c.profile ?? '').join(), rounded(feature.diameterMm), rounded(feature.tiltDeg)].join(' ');
/** Reports give six decimals; a turn costs the last one. */
const rounded = (x) => (x ?? 0).toFixed(5).replace(/^-0\.0+$/, '0.00000');

/** Adds a fault to the verdict of each twin that differs from the plain case; results: name -> { report, points }. */
export function orderFaults(verdicts, results) {
  for (const verdict of verdicts) {
    const plain = results.get(plainName(verdict.name));
    if (!plain) continue;
    const twin = results.get(verdict.name);
    const text = difference(plain.report, twin.report, verdict.name.endsWith(TWINS[0]));
    const shift = text ? undefined : displacement(plain.points, twin.points);
    if (text) verdict.faults.push({ kind: 'order', text });
    if (shift) verdict.faults.push({ kind: 'shifted', text: shift });
  }
}

/** What differs, in words; a turn may change the order and with it the ids. */
export function difference(plain, twin, sameIds) {
  const list = (report) => (report?.features ?? []).map((f) => (sameIds ? `${f.id} ${seen(f)}` : seen(f))).sort();
  const [a, b] = [list(plain), list(twin)];
  const k = a.findIndex((x, i) => x !== b[i]);
  if (k < 0 && a.length === b.length) return undefined;
  return k < 0 ? `${b.length} features instead of ${a.length}` : `"${b[k]}" instead of "${a[k]}"`;
}

/** One step of the numbers that are written, mm, and what adding two of them costs. */
const STEP = 1e-6 * 1.001;

/**
 * New points of one that have none at their place in the other, but for those that halve an edge: they
 * change no shape, and of edges equally long any may be halved. Both hold { fresh, all, beside } for
 * each object, in its frame: new vertices, all vertices, and which of these share an edge.
 */
export function displacement(plain = {}, twin = {}) {
  for (const key of Object.keys(plain)) {
    const [one, other] = [plain[key], twin[key] ?? { fresh: [], all: [], beside: [] }];
    const lost = unmatched(one.fresh, other.fresh).filter((p) => !halves(p, one));
    const added = unmatched(other.fresh, one.fresh).filter((p) => !halves(p, other));
    const first = lost[0] ?? added[0];
    if (first) return `${lost.length} of ${one.fresh.length} new points are elsewhere, ${added.length} are new, such as ${first.map((x) => x.toFixed(6))}`;
  }
  return undefined;
}

/** Is a point midway between two others, and joined to what lies towards either along the same line? */
function halves(p, { all, beside }) {
  const near = [...beside[all.indexOf(p)]].map((v) => sub(all[v], p));
  const towards = (d) => near.some((e) => dot(d, e) > 0 && norm(cross(d, e)) <= 3 * STEP * Math.max(norm(d), norm(e)));
  return all.some((a) => {
    const d = sub(a, p);
    if (norm(d) <= 1e-3 || !towards(d) || !towards(mul(d, -1))) return false;
    const b = sub(p, d);
    return all.some((q) => q.every((x, i) => Math.abs(x - b[i]) <= 3 * STEP));
  });
}
const unmatched = (list, other) => list.filter((p) => !other.some((q) => p.every((x, i) => Math.abs(x - q[i]) <= STEP)));
