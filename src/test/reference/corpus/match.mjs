// Which reported feature is which true one, and how far its numbers are off.

import { add, cross, deg, dot, mul, norm, sub, unit } from './vec.mjs';

/**
 * Pairs true and reported bores, best overlap first. Both axes nearly parallel, close together, radii
 * alike, stretches overlapping. Returns { pairs: [{ truth, report }], missed, ghosts }.
 */
export function matched(truths, reports) {
  const candidates = [];
  for (const truth of truths) {
    for (const report of reports) {
      const score = likeness(truth, report);
      if (score > 0) candidates.push({ truth, report, score });
    }
  }
  candidates.sort((a, b) => b.score - a.score);
  const pairs = [];
  const [seenTruth, seenReport] = [new Set(), new Set()];
  for (const { truth, report } of candidates) {
    if (seenTruth.has(truth) || seenReport.has(report)) continue;
    seenTruth.add(truth);
    seenReport.add(report);
    pairs.push({ truth, report });
  }
  // A hole that is no bore may be named in parts (the two arcs of a slot, the flats of a hexagon).
  const parts = candidates.filter(({ truth, report }) => truth.find === 'may' && !seenReport.has(report));
  for (const { truth, report } of parts) {
    if (seenReport.has(report)) continue;
    seenReport.add(report);
    pairs.push({ truth, report, part: true });
  }
  return {
    pairs,
    missed: truths.filter((t) => t.find === 'must' && !seenTruth.has(t)),
    ghosts: reports.filter((r) => !seenReport.has(r)),
  };
}

function likeness(truth, report) {
  if (truth.item !== report.item) return 0;
  const strict = ['bore', 'pin'].includes(truth.kind) && truth.find === 'must';
  const cosine = Math.abs(dot(truth.direction, unit(report.axisDirection)));
  if (cosine < Math.cos((strict ? 2 : 8) * (Math.PI / 180))) return 0;
  const ratio = report.diameterMm / truth.diameterMm;
  if (strict ? Math.abs(ratio - 1) > 0.06 : ratio < 0.4 || ratio > 2) return 0;
  const off = distanceToAxis(truth, report.axisPoint);
  if (off > (strict ? 0.05 : 1) * truth.diameterMm + 0.02) return 0;
  const [low, high] = truth.range ? [truth.range[0][0], truth.range[1][1]] : truth.wall;
  const [from, to] = stretch(truth, report);
  const overlap = Math.min(high, to) - Math.max(low, from);
  return overlap / Math.max(high - low, to - from, 1e-9);
}

const distanceToAxis = (truth, point) => norm(cross(sub(point, truth.point), truth.direction));

/** Where the reported start and end lie along the true axis, smaller first. */
function stretch(truth, report) {
  const along = (p) => dot(sub(p, truth.point), truth.direction);
  return [along(report.start), along(report.end)].sort((a, b) => a - b);
}

/**
 * Errors of one pair, mm and degrees: diameter, angle, axis (largest distance of the reported axis
 * from the true one within the true wall), ends (how far outside the true span of each rim).
 */
export function errors({ truth, report }) {
  const d = unit(report.axisDirection);
  const [low, high] = truth.range ? [truth.range[0][1], truth.range[1][0]] : truth.wall;
  const axis = Math.max(...[low, high].map((w) => {
    const p = add(truth.point, mul(truth.direction, w));
    return norm(cross(sub(p, report.axisPoint), d));
  }));
  const [from, to] = stretch(truth, report);
  const outside = (x, [a, b]) => Math.max(0, a - x, x - b);
  return {
    diameter: Math.abs(report.diameterMm - truth.diameterMm),
    angle: deg(Math.asin(Math.min(1, norm(cross(d, truth.direction))))),
    axis,
    ends: truth.range ? Math.max(outside(from, truth.range[0]), outside(to, truth.range[1])) : 0,
  };
}
