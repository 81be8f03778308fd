// What changed between two packages: text that must be the same, geometry against the ideal, area
// that is still too flat.

import { common, fromMesh, minus, prism, union } from './kernel.mjs';
import { crossings, flatFacets, topology } from './health.mjs';
import { printed } from './model3mf.mjs';
import { roofOver, sectionAngle, tipRing, withRoofs } from './shapes.mjs';
import { cross, deg, dot, norm, rad, sectionFrame, sub } from './vec.mjs';

/** Facets of the output whose corners differ from the input's facet of the same number. */
export function newFacets(before, after) {
  const list = [];
  for (let f = 0; f < after.corners.length / 3; f++) {
    if (after.triangleTexts[f] !== before.triangleTexts[f] && !samePlaces(before, after, f)) list.push(f);
  }
  return list;
}

/** Has facet f its corners where it had them, whatever their numbers? */
const samePlaces = (before, after, f) => f < before.triangleTexts.length && [0, 1, 2].every((k) => {
  const [a, b] = [before, after].map((m) => 3 * m.corners[3 * f + k]);
  return [0, 1, 2].every((i) => before.points[a + i] === after.points[b + i]);
});

/**
 * Text of one object's lists before and after. Every vertex keeps place and spelling; a triangle that
 * differs must have lain at a reshaped bore (`near` says so of a printed triangle), unless its corners
 * are only to be joined.
 */
export function textFaults(before, after, toPrint, near, joining = false) {
  const faults = [];
  before.vertexTexts.forEach((t, v) => after.vertexTexts[v] !== t && faults.push(`vertex ${v} changed`));
  if (after.triangleTexts.length < before.triangleTexts.length) faults.push('triangles are missing from the list');
  const inPrint = printed(before, toPrint);
  before.triangleTexts.forEach((t, f) => {
    if (after.triangleTexts[f] === t || (joining && samePlaces(before, after, f))) return;
    const corners = [0, 1, 2].map((k) => inPrint.corners[3 * f + k]).map((v) => inPrint.points.slice(3 * v, 3 * v + 3));
    if (!near(corners)) faults.push(`triangle ${f} changed away from every reshaped bore`);
  });
  return faults;
}

/**
 * Does a printed triangle reach into the box around the roof of one of the bores, in its own frame? A
 * wall that strays by h is met by a flank set h inside it up to sqrt(2 r h) below the contact of the
 * ideal one (derived: the circle falls away from its tangent by x^2 / 2r), below the lowest corner
 * that lies within h of the flank: a whole facet may.
 */
export const nearBores = (bores, noise) => (corners) =>
  bores.some(({ truth, roof }) => {
    const stray = 2 * noise + HAIR;
    const margin = Math.sqrt(truth.diameterMm * stray) + 1e-3;
    const [s, c] = [Math.sin(roof.angle), Math.cos(roof.angle)];
    const feet = truth.ring.filter(([x, y]) => Math.abs(x - roof.ridge[0]) * s + y * c >= roof.ridge[1] * c - stray);
    const { u, v, w } = sectionFrame(truth.direction);
    const q = corners.map((c) => sub(c, truth.point)).map((c) => [dot(c, u), dot(c, v), dot(c, w)]);
    const box = [
      [Math.min(...feet.map(([x]) => x)), Math.max(...feet.map(([x]) => x))],
      [Math.min(...feet.map(([, y]) => y)), roof.top],
      // Past a mouth the tool follows the mouth's surface as far as the roof is wide.
      [truth.range[0][0] - truth.diameterMm * 2, truth.range[1][1] + truth.diameterMm * 2],
    ];
    return box.every(([low, high], i) => Math.max(...q.map((c) => c[i])) >= low - margin && Math.min(...q.map((c) => c[i])) <= high + margin);
  });

const tipOf = (t) => ({ p: t.point, d: t.direction, r: t.diameterMm / 2, polygon: t.ring, leg: t.legMm, end: t.range[1][1] });

/** Does a printed triangle reach into the box around the tip of one of the pins, in its own frame? */
export const nearPins = (pins) => (corners) =>
  pins.some((t) => {
    const { u, v, w } = sectionFrame(t.direction);
    const q = corners.map((c) => sub(c, t.point)).map((c) => [dot(c, u), dot(c, v), dot(c, w)]);
    const r = t.diameterMm / 2 + 1e-3;
    const box = [[-r, r], [-r, r], [t.range[1][0] - 2 * t.legMm, t.range[1][1] + 1e-3]];
    return box.every(([low, high], i) => Math.max(...q.map((c) => c[i])) >= low && Math.min(...q.map((c) => c[i])) <= high);
  });

/**
 * The chamfer may start up to HAIR inside the wall, which shifts its faces and its ledge by as much;
 * noise shifts both, too.
 */
const tipAllowance = (t, noise) => Math.PI * t.diameterMm * t.legMm * 2 * (HAIR + 2 * noise) + GRID * t.diameterMm ** 2;

/**
 * Facets of the chamfer of an exact pin stand at 45 degrees to its axis, from a leg below the tip on.
 * Facets that noise may turn by more than the allowance may belong to the chamfer or not: they count
 * for what is there, and tell nothing by themselves.
 */
export function tipFaults(mesh, t, noise) {
  if (!t.exact) return [];
  const [r, end] = [t.diameterMm / 2, t.range[1][1]];
  let [low, lowest, area] = [Infinity, Infinity, 0];
  const faults = [];
  for (let f = 0; f < mesh.corners.length; f += 3) {
    const c = [0, 1, 2].map((k) => sub(mesh.points.slice(3 * mesh.corners[f + k], 3 * mesh.corners[f + k] + 3), t.point));
    const w = c.map((q) => dot(q, t.direction));
    if (Math.min(...w) < end - 1.5 * t.legMm || Math.max(...w) > end + 1e-3 || c.some((q) => norm(cross(q, t.direction)) > r + 1e-3)) continue;
    const n = cross(sub(c[1], c[0]), sub(c[2], c[0]));
    const size = norm(n);
    const longest = Math.max(norm(sub(c[1], c[0])), norm(sub(c[2], c[1])), norm(sub(c[0], c[2])));
    // a needle may be turned by the grid of its corners; half a degree is 0.0087
    if (size === 0) continue;
    if ((2 * (GRID + 2 * noise) * longest) / size > 0.0087) {
      lowest = Math.min(lowest, ...w);
      area += noise > 0 ? size / 2 : 0;
      continue;
    }
    const angle = deg(Math.acos(Math.min(1, dot(n, t.direction) / size)));
    if (angle < 5) continue;
    if (Math.abs(angle - 45) > 0.5) faults.push(`a facet of the tip stands at ${angle.toFixed(2)} degrees to the axis`);
    low = Math.min(low, ...w);
    area += size / 2;
  }
  if (noise === 0) lowest = low;
  const [least, most] = [end - low, end - Math.min(low, lowest)];
  if (least > 1.02 * t.legMm || most < 0.98 * t.legMm) faults.push(`the leg is ${most.toFixed(4)} mm, not ${t.legMm.toFixed(4)}`);
  const whole = Math.PI * (2 * r - t.legMm) * t.legMm * Math.SQRT2;
  // a polygon of ten sides has 0.984 of the circle's length; two legs of 100 may be missing
  if (area < 0.95 * whole) faults.push(`the chamfer has ${area.toFixed(3)} mm2, not ${whole.toFixed(3)}`);
  return faults.slice(0, 3);
}

/** The roof that a report claims over the true ring. */
export function claimedRoof(truth, change) {
  const angle = sectionAngle(change.slopeDeg ?? 45, truth.tiltDeg);
  return angle === undefined ? undefined : { angle, bridge: change.bridgeMm ?? 0, ...roofOver(truth.ring, angle, change.bridgeMm ?? 0) };
}

/** Health of an output mesh in the coordinates of its object, as written and in single precision. */
export function healthFaults(before, after) {
  const faults = [];
  const [was, is] = [topology(before), topology(after)];
  if (is.open > was.open) faults.push(`${is.open} open edges`);
  if (is.bad > was.bad) faults.push(`${is.bad} bad edges`);
  if (is.shells !== was.shells) faults.push(`${is.shells} shells instead of ${was.shells}`);
  const fresh = newFacets(before, after);
  const all = Array.from({ length: before.corners.length / 3 }, (_, f) => f);
  const single = (m) => ({ points: m.points.map(Math.fround), corners: m.corners });
  for (const [name, a, b] of [['', before, after], [' in single precision', single(before), single(after)]]) {
    const flat = flatFacets(b, fresh).length;
    if (flat > 0 && flat > flatFacets(a, all).length) faults.push(`${flat} new triangles without area${name}`);
    const crossing = crossings(b, fresh).length;
    if (crossing > 0 && crossing > crossings(a, all).length) faults.push(`${crossing} crossings${name}`);
  }
  return { faults, euler: is.euler - was.euler };
}

const bore = (t) => ({ p: t.point, d: t.direction, r: t.diameterMm / 2, polygon: t.ring, wall: t.wall, reach: t.reach });

/**
 * Geometry of one printed output against the ideal. Exact bores: the whole symmetric difference with
 * input minus ideal roofs. Others: nothing added, nothing taken outside the roofs' prisms, nothing
 * left inside them along the wall. Allowance, derived: the area of the roofs' planes times how far
 * they may be off, which is the noise of the input (twice: it tilts the planes), the sagitta of a
 * wall that is no prism, and the grid of written numbers; at least 1e-9 of the solid.
 */
export function geometryFaults(before, after, bores, noise, pins = []) {
  const input = fromMesh(before);
  const output = fromMesh(after);
  const exact = bores.every(({ truth }) => truth.exact) && pins.every((t) => t.exact);
  const tips = pins.map((t) => [t, tipRing(tipOf(t))]);
  const roofed = withRoofs(input, bores.map(({ truth, roof }) => ({ b: bore(truth), angle: roof.angle, bridge: roof.bridge })));
  const ideal = tips.length ? minus(roofed, ...tips.map(([, ring]) => ring)) : roofed;
  const least = 1e-9 * input.volume() + pins.reduce((sum, t) => sum + tipAllowance(t, noise), 0);
  const allowed = bores.reduce((sum, { truth, roof }) => sum + allowance(truth, roof, noise), least);
  const volumes = exact
    ? exactDifferences(output, ideal, allowed)
    : Object.fromEntries(Object.entries(looseDifferences(input, output, bores, pins)).map(([name, solid]) => [name, solid.volume()]));
  const faults = Object.entries(volumes).filter(([, v]) => v > allowed)
    .map(([name, v]) => `${v.toPrecision(3)} mm3 ${name}, allowed ${allowed.toPrecision(3)}`);
  const worst = Math.max(...Object.values(volumes)) / input.volume();
  return { faults, relative: worst, exact };
}

/** Volumes by which a solid goes beyond its ideal and falls short of it. */
function exactDifferences(output, ideal, allowed) {
  const [more, less] = [minus(output, ideal).volume(), minus(ideal, output).volume()];
  const said = { output: output.volume(), ideal: ideal.volume(), more, less };
  const shared = consistent(said, allowed) ? {} : { both: common(output, ideal).volume(), either: union(output, ideal).volume() };
  const agreed = settledDifferences({ ...said, ...shared }, allowed);
  return { 'more than ideal': agreed.more, 'less than ideal': agreed.less };
}

/** For any two bodies |A - B| - |B - A| = |A| - |B|; a kernel that says otherwise has lost a piece. */
const consistent = ({ output, ideal, more, less }, allowed) => Math.abs(more - less - (output - ideal)) <= allowed;

/**
 * The kernel loses a piece now and then where faces of both bodies nearly coincide, as these do. Its
 * differences count if they agree with the volumes of the bodies. If not, common part and union are
 * asked, and count if they agree: |A and B| + |A or B| = |A| + |B|. If neither does, the differences
 * count as they are.
 */
export function settledDifferences(said, allowed) {
  const { output, ideal, both, either, more, less } = said;
  if (consistent(said, allowed) || !(Math.abs(both + either - output - ideal) <= allowed)) return { more, less };
  return { more: output - both, less: ideal - both };
}

function allowance(truth, roof, noise) {
  const legs = 2 * norm([roof.ridge[0] - roof.right[0], roof.ridge[1] - roof.right[1], 0]);
  const long = truth.range[1][1] - truth.range[0][0] + truth.diameterMm;
  const hair = noise > 0 || truth.rough ? HAIR : 0;
  return legs * long * (2 * noise + truth.sagittaMm + hair + GRID) + 4 * noise * truth.diameterMm ** 2;
}
/**
 * How far inside a wall that is no clean prism, or whose rim runs into a cone or a rounding, a flank
 * may be set so that it cuts at a real angle, mm: a tenth of the thinnest usual layer, 0.1 (common
 * practice).
 */
const HAIR = 0.01;
/** Steps of written numbers and of single precision at 300 mm, mm. */
const GRID = 2e-5;

function looseDifferences(input, output, bores, pins) {
  const whole = bores.map(({ truth, roof }) => prism(sectionFrame(truth.direction), truth.point, grown(roof.outline), truth.range[0][0] - 2 * truth.diameterMm, truth.range[1][1] + 2 * truth.diameterMm));
  whole.push(...pins.map((t) => prism(sectionFrame(t.direction), t.point, grown(t.ring), t.range[1][0] - 2 * t.legMm, t.range[1][1] + 1)));
  const needed = bores.map(({ truth, roof }) => [truth, prism(sectionFrame(truth.direction), truth.point, shrunk(roof.outline, truth.sagittaMm), truth.range[0][1], truth.range[1][0])]);
  const along = needed.filter(([truth]) => truth.range[0][1] < truth.range[1][0]).map(([, tool]) => tool);
  return {
    'added': minus(output, input),
    'taken outside the roofs': minus(minus(input, output), ...whole),
    ...(along.length ? { 'left inside the roofs': minus(output, minus(output, ...along)) } : {}),
  };
}
const about = (outline, by) => outline.map(([u, v]) => [u * (1 + by), v * (1 + by)]);
const grown = (outline) => about(outline, 1e-4);
const shrunk = (outline, by) => about(outline, -1e-4 - by / outline[1][0]);

/**
 * Area of the output that faces down, is flatter than the limit and lies at the crown or roof of a
 * reshaped bore, less the bridge that was reported. A facet counts only when it would still be too
 * flat with every corner off by the grid and the noise.
 */
export function flatArea(mesh, { truth, roof }, slopeDeg, noise) {
  const { u, v, w } = sectionFrame(truth.direction);
  const slack = GRID + 2 * noise;
  let area = 0;
  const span = [truth.range[0][1], truth.range[1][0]];
  for (let f = 0; f < mesh.corners.length; f += 3) {
    const c = [0, 1, 2].map((k) => mesh.points.slice(3 * mesh.corners[f + k], 3 * mesh.corners[f + k] + 3));
    const n = cross(sub(c[1], c[0]), sub(c[2], c[0]));
    const size = norm(n);
    if (size === 0 || n[2] >= 0) continue;
    const longest = Math.max(norm(sub(c[1], c[0])), norm(sub(c[2], c[1])), norm(sub(c[0], c[2])));
    const slope = deg(Math.acos(Math.min(1, -n[2] / size)));
    if (slope + deg(Math.atan2(2 * slack, size / longest)) >= slopeDeg) continue;
    const q = sub([0, 1, 2].map((i) => (c[0][i] + c[1][i] + c[2][i]) / 3), truth.point);
    const [x, y, z] = [dot(q, u), dot(q, v), dot(q, w)];
    if (z < span[0] || z > span[1] || y < 0 || !atRoof(x, y, truth, roof)) continue;
    area += size / 2;
  }
  return Math.max(0, area - roof.bridge * (span[1] - span[0]) * 1.001);
}

/** At the wall (within the facets' sagitta) or inside the roof's outline. */
function atRoof(x, y, truth, roof) {
  const r = truth.diameterMm / 2;
  const sagitta = Math.max(truth.sagittaMm, r * (1 - Math.cos(Math.PI / truth.ring.length))) * 2 + 1e-3;
  if (Math.hypot(x, y) < r - sagitta) return false;
  const s = rad(45);
  const over = Math.abs(x - roof.ridge[0]) * Math.tan(s) + y;
  return Math.hypot(x, y) < r + sagitta || over <= roof.ridge[1] + 0.1 * r;
}
