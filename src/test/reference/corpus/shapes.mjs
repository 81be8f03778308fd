// Building blocks of the cases: the rings of bores, the roofs that an ideal run cuts above them, and
// the record that states the truth about one bore. Part frame: millimetres, z up, bores along +y
// before the part is turned.

import { common, loft, minus, pieces, prism, turned } from './kernel.mjs';
import {
  add, apply, applyVector, cross, dot, mul, norm, rad, sectionFrame, sub, tiltDeg, unit,
} from './vec.mjs';

/** Settings that the truth assumes: the defaults of the program. */
export const DEFAULTS = { slopeDeg: 45, smallestBore: 4, leastRoof: 1.2, longestBridge: 5 };

/** Counter-clockwise regular ring with its corners on the radius; phase in facets. */
export const ring = (n, radius, phase = 0) =>
  Array.from({ length: n }, (_, k) => {
    const angle = (2 * Math.PI * (k + phase)) / n;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });

/** Ring with uneven facets: each corner is moved along the circle by up to 0.35 facets. */
export const unevenRing = (n, radius, random) =>
  Array.from({ length: n }, (_, k) => {
    const angle = (2 * Math.PI * (k + random.between(-0.35, 0.35))) / n;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });

export const scaled = (polygon, factor) => polygon.map(([u, v]) => [u * factor, v * factor]);

/** In-section angle of the roof planes: cos(angle) = cos(slope) / cos(tilt); none when too steep. */
export function sectionAngle(slopeDeg, tilt) {
  const c = Math.cos(rad(slopeDeg)) / Math.cos(rad(tilt));
  return c < 1 ? Math.acos(c) : undefined;
}

/**
 * Roof over a ring: the supporting lines of the polygon at the in-section angle meet in the ridge.
 * bridge > 0 cuts the ridge off flat at that width. Returns { left, right, ridge, top, outline }:
 * the outline reaches down to the axis, which lies in the void of the bore. Derived: for direction
 * (sin a, cos a) the supporting corner maximises the scalar product.
 */
export function roofOver(polygon, angle, bridge = 0) {
  const support = (nu, nv) => polygon.reduce((a, b) => (b[0] * nu + b[1] * nv > a[0] * nu + a[1] * nv ? b : a));
  const [s, c] = [Math.sin(angle), Math.cos(angle)];
  const right = support(s, c);
  const left = support(-s, c);
  const hRight = right[0] * s + right[1] * c;
  const hLeft = -left[0] * s + left[1] * c;
  const ridge = [(hRight - hLeft) / (2 * s), (hRight + hLeft) / (2 * c)];
  const top = ridge[1] - (bridge / 2) * Math.tan(angle);
  const peak = bridge > 0 ? [[ridge[0] + bridge / 2, top], [ridge[0] - bridge / 2, top]] : [ridge];
  return { left, right, ridge, top, outline: [[0, 0], right, ...peak, left] };
}

/** Area that a roof adds to the polygon's own outline (shoelace over both). */
export function roofArea(polygon, roof) {
  const outline = roof.outline;
  const chain = between(polygon, roof.right, roof.left);
  return shoelace(outline) - shoelace([[0, 0], ...chain]);
}
const shoelace = (p) =>
  p.reduce((sum, [x, y], i) => {
    const [nx, ny] = p[(i + 1) % p.length];
    return sum + (x * ny - y * nx) / 2;
  }, 0);
/** The ring's corners from one to another, counter-clockwise, both included. */
function between(polygon, from, to) {
  const out = [];
  for (let k = polygon.indexOf(from); ; k = (k + 1) % polygon.length) {
    out.push(polygon[k]);
    if (polygon[k] === to) return out;
  }
}

/**
 * Truth about one bore. `wall` is the stretch of w (along d, from p) where its wall lies, used to
 * measure the ends; `reach` is how far the ideal roof may go: far past an open mouth, exactly to
 * a closed end. `exact` tells whether there is one ideal roof; `rough` that wall or rim are such
 * that a flank may have to stand a hair inside the wall.
 */
export function bore({ p = [0, 0, 0], d = [0, 1, 0], r, polygon, wall, reach, ends, ...rest }) {
  return {
    kind: 'bore', find: 'must', p, d: unit(d), r, polygon, wall, reach: reach ?? [wall[0] - 200, wall[1] + 200],
    ends: ends ?? ['open', 'open'], exact: true, ...rest,
  };
}

/** A hole that is not a bore to be roofed; a finder may name it or not, but must leave it alone. */
export const other = (kind, { p = [0, 0, 0], d = [0, 1, 0], r, wall, ...rest }) => ({
  kind, find: 'may', expect: 'leave', why: [kind], p, d: unit(d), r, wall, ends: ['open', 'open'], ...rest,
});

/** Leg of the chamfer that the defaults ask for: 0.15 d, 0.4 to 1.5 mm, at most 0.4 r. */
export const legOf = (r) => Math.min(Math.max(0.4, Math.min(1.5, 0.3 * r)), 0.4 * r);

/** Truth about one pin that stands on the plane through p, along d; its wall begins at `root`. */
export const rod = ({ p = [0, 0, 0], d, r, polygon, length, root = 0, wall, range, ...rest }) => {
  const [low, high] = wall ?? [root, length];
  return {
    kind: 'pin', find: 'must', expect: 'reshape', why: ['tip'], p, d: unit(d), r, polygon, wall: [low, high],
    range: range ?? [[low, low], [length, length]], reach: [low, length], ends: ['square', 'flat'], exact: true, leg: legOf(r), ...rest,
  };
};

/** Polygon whose sides stand t inside those of a regular one. */
export const inset = (polygon, r, t) => scaled(polygon, 1 - t / (r * Math.cos(Math.PI / polygon.length)));

/** What an ideal chamfer takes from a pin that ends at w: { p, d, r, polygon, leg, end }. */
export function tipRing({ p, d, r, polygon, leg, end }) {
  const frame = sectionFrame(d);
  return minus(
    prism(frame, p, scaled(polygon, 1.01), end - leg, end + leg),
    loft(frame, p, polygon, end - leg, inset(polygon, r, leg), end),
    prism(frame, p, scaled(polygon, 1.02), end, end + 2 * leg),
  );
}

/** The solid that made the bore: a prism over its ring from low to high. */
export const cutter = (b, low, high) => prism(sectionFrame(b.d), b.p, b.polygon, low, high);
export const cone = (b, from, fromScale, to, toScale) =>
  from < to
    ? loft(sectionFrame(b.d), b.p, scaled(b.polygon, fromScale), from, scaled(b.polygon, toScale), to)
    : loft(sectionFrame(b.d), b.p, scaled(b.polygon, toScale), to, scaled(b.polygon, fromScale), from);


/** The bore with whatever its mouth or end has, in one piece: [[w, share of the radius], ...]. */
export const lathe = (b, profile) => turned(sectionFrame(b.d), b.p, b.polygon, profile);

/** A feature carried along by a rigid or uniformly scaling map. */
export function moved(feature, map) {
  const scale = norm(applyVector(map, feature.d));
  const out = { ...feature, p: apply(map, feature.p), d: unit(applyVector(map, feature.d)) };
  if (feature.r) out.r = feature.r * scale;
  for (const key of ['wall', 'reach']) if (feature[key]) out[key] = feature[key].map((w) => w * scale);
  if (feature.range) out.range = feature.range.map((pair) => pair.map((w) => w * scale));
  if (feature.polygon) {
    const old = sectionFrame(feature.d);
    const now = sectionFrame(out.d);
    const turned = feature.polygon.map(([u, v]) => {
      const q = applyVector(map, add(mul(old.u, u), mul(old.v, v)));
      return [dot(q, now.u), dot(q, now.v)];
    });
    out.polygon = shoelace(turned) < 0 ? turned.reverse() : turned;
  }
  return out;
}

/**
 * Where the wall of a bore ends, read off the mesh: on each ring corner's ruling the first and the
 * last vertex within `wall`; the spans of all first and of all last ones. A leaning or curved mouth
 * also has vertices on the chords between the rulings, a little outside these spans.
 */
export function measuredEnds(mesh, b) {
  const { u, v, w } = sectionFrame(b.d);
  const first = b.polygon.map(() => Infinity);
  const last = b.polygon.map(() => -Infinity);
  const chords = [];
  const sagitta = b.r * (1 - Math.cos((2 * Math.PI) / b.polygon.length)) + ON_RULING;
  for (let i = 0; i < mesh.points.length; i += 3) {
    const q = sub(mesh.points.slice(i, i + 3), b.p);
    const [x, y, at] = [dot(q, u), dot(q, v), dot(q, w)];
    const off = b.r - Math.hypot(x, y);
    if (off < -ON_RULING || off > sagitta || at < b.wall[0] - ON_RULING || at > b.wall[1] + ON_RULING) continue;
    const k = b.polygon.findIndex(([px, py]) => Math.hypot(px - x, py - y) < ON_RULING);
    if (k < 0 && onRing(b.polygon, x, y)) chords.push(at);
    if (k < 0) continue;
    first[k] = Math.min(first[k], at);
    last[k] = Math.max(last[k], at);
  }
  const span = (list) => [Math.min(...list), Math.max(...list)];
  const rims = [span(first.filter(Number.isFinite)), span(last.filter(Number.isFinite))];
  const found = rims.map(([low, high]) => span([low, high, ...chords.filter((at) => at > low - b.r / 4 && at < high + b.r / 4)]));
  if (!found.flat().every(Number.isFinite) || found[1][1] - found[0][0] < ON_RULING) throw new Error('a bore without rulings');
  return found;
}
const onRing = (polygon, x, y) => polygon.some(([ax, ay], k) => {
  const [bx, by] = polygon[(k + 1) % polygon.length];
  const [ex, ey] = [bx - ax, by - ay];
  const along = ((x - ax) * ex + (y - ay) * ey) / (ex * ex + ey * ey);
  return along > 0 && along < 1 && Math.abs(ex * (y - ay) - ey * (x - ax)) < ON_RULING * Math.hypot(ex, ey);
});
/** How far a vertex may lie from a ruling, mm: the kernel merges points up to about 1e-5 mm apart. */
const ON_RULING = 1e-3;

/**
 * Least height of material straight above the roof of a bore: z distance from its ridge (or the
 * edges of its flat) to the next surface. Vertical rays from the axis: the first hit
 * is the crown, the second the other side of the material. Only the middle half of the bore counts (a
 * tenth when it leans by more than 20 degrees): close to a leaning or curved mouth the ridge leaves
 * through the mouth, so nothing is left there by nature.
 */
export function roofLeft(mesh, b, angle, bridge) {
  const roof = roofOver(b.polygon, angle, bridge);
  const { u, w } = sectionFrame(b.d);
  const height = roof.top / Math.cos(rad(tiltDeg(b.d)));
  const [low, high] = b.range ? [b.range[0][1], b.range[1][0]] : b.wall;
  const stretch = tiltDeg(b.d) > 20 ? 0.1 : measuredShare(height, (high - low) / 2, tiltDeg(b.d));
  let least = Infinity;
  for (let k = 0; k <= 20; k++) {
    const at = low + (high - low) * (0.5 + stretch * (k / 20 - 0.5));
    for (const du of bridge > 0 ? [-bridge / 2, 0, bridge / 2] : [0]) {
      const from = add(b.p, add(mul(u, roof.ridge[0] + du), mul(w, at)));
      least = Math.min(least, firstTop(mesh, from) - from[2] - height);
    }
  }
  return least;
}

/**
 * Share of a leaning bore, about its middle, over which the roof counts. Derived: a line straight up
 * goes h sin(tilt) along the axis while it rises by h, so beside a mouth it leaves through the mouth
 * below the ridge, and farther in through a lip that grows from nothing. Told is what is left where
 * the lip of a square mouth has grown to twice the least roof.
 */
export function measuredShare(ridge, half, tilt) {
  const lip = (ridge + 2 * DEFAULTS.leastRoof) * Math.sin(rad(tilt));
  return Math.min(0.5, Math.max(0.1, 1 - lip / half));
}

/** Lowest z above a point at which a vertical line leaves the solid; infinite when it never does. */
const firstTop = (mesh, from) => firstExit(mesh, from).z;

/** Where a vertical line from a point leaves the solid: { z, facet }; z is infinite when it never does. */
function firstExit({ points, corners }, [px, py, pz]) {
  // A little aside, so that the line meets no corner or edge of a part drawn with round numbers.
  const [x, y] = [px + 1.3e-7, py + 0.7e-7];
  let exit = { z: Infinity, facet: -1 };
  for (let f = 0; f < corners.length; f += 3) {
    const [a, b, c] = [3 * corners[f], 3 * corners[f + 1], 3 * corners[f + 2]];
    const part = (s, t) => (points[s] - x) * (points[t + 1] - y) - (points[t] - x) * (points[s + 1] - y);
    const [wc, wa, wb] = [part(a, b), part(b, c), part(c, a)];
    if (wa < 0 || wb < 0 || wc < 0 || wa + wb + wc <= 0) continue;
    const z = (wa * points[a + 2] + wb * points[b + 2] + wc * points[c + 2]) / (wa + wb + wc);
    if (z > pz && z < exit.z) exit = { z, facet: f };
  }
  return exit;
}

/**
 * Does the material straight above the middle of a leaning bore end at a mouth's own face, and is that
 * face square to the bore? Then it tapers to nothing over the whole of the bore, roof or not, and
 * nobody can say how much must be left. Derived: the line leaves through such a face half the length
 * away along the axis; a rim that is not quite square moves that by a few hundredths. The plane of the
 * facet that it leaves through must meet the axis within the rim, or it is another face.
 */
function endsInLip(mesh, b) {
  const [low, high] = b.range ? [b.range[0][1], b.range[1][0]] : b.wall;
  if (leavesBelowCrown(b, high - low)) return true;
  const middle = add(b.p, mul(b.d, (low + high) / 2));
  const { z, facet } = firstExit(mesh, [middle[0], middle[1], middle[2] + b.r]);
  if (facet < 0) return false;
  const along = ((z - middle[2]) * Math.abs(b.d[2])) / (high - low);
  if (along < 0.45 || along > 0.55) return false;
  const [p, q, r] = [0, 1, 2].map((k) => Array.from(mesh.points.slice(3 * mesh.corners[facet + k], 3 * mesh.corners[facet + k] + 3)));
  const normal = cross(sub(q, p), sub(r, p));
  const at = dot(sub(p, b.p), normal) / dot(b.d, normal);
  const rims = b.range ?? [[low, low], [high, high]];
  return rims.some(([from, to]) => at >= from - ON_RULING && at <= to + ON_RULING);
}

/**
 * Is a bore with square mouths so short for its lean that the line straight up from its middle leaves
 * through a mouth before it meets the crown? Then there is no material above the middle at all.
 * Derived: the mouth is half the length away along the axis, which the line has made at the height
 * length / (2 sin tilt); the crown is at r / cos tilt.
 */
function leavesBelowCrown(b, length) {
  const square = (b.range ?? []).every(([from, to]) => to - from < ON_RULING);
  const tilt = rad(tiltDeg(b.d));
  return square && length * Math.cos(tilt) <= 2 * b.r * Math.sin(tilt);
}

/** What the default settings ask for one bore of known tilt and size: { expect, why }. */
export function expectation(mesh, b) {
  const tilt = tiltDeg(b.d);
  const { slopeDeg, smallestBore, leastRoof, longestBridge } = DEFAULTS;
  if (2 * b.r < smallestBore - 1e-6) return { expect: 'leave', why: ['small'] };
  const angle = sectionAngle(slopeDeg, tilt);
  if (angle === undefined) return { expect: 'leave', why: ['steep'] };
  const roof = roofOver(b.polygon, angle);
  if (roofArea(b.polygon, roof) < 1e-4 * b.r * b.r) return { expect: 'either', why: ['steep', 'nothing'] };
  if (endsInLip(mesh, b)) return { expect: 'either', why: ['lip'] };
  const full = roofLeft(mesh, b, angle, 0);
  if (full >= leastRoof + 0.02) return { expect: 'reshape', why: ['peak'], roofLeft: full };
  const widest = Math.min(longestBridge, 2 * b.r * Math.tan(angle / 2));
  const flat = roofLeft(mesh, b, angle, widest * 0.98);
  if (full >= leastRoof - 0.02 || Math.abs(flat - leastRoof) < 0.05) return { expect: 'either', why: ['thin'], roofLeft: full };
  return flat > leastRoof
    ? { expect: 'reshape', why: ['flat'], roofLeft: full }
    : { expect: 'leave', why: ['thin'], roofLeft: full };
}

/**
 * What an ideal run leaves of a solid: minus the roof prisms of `bores` ([{ b, angle, bridge }]), of
 * which only the pieces count that rest on the crown of their bore. A piece rests on it when it meets
 * a thin skin along the crown; a loose pin in the bore does not reach it.
 */
export function withRoofs(solid, bores) {
  const taken = bores.flatMap(({ b, angle, bridge }) => roofPieces(solid, b, roofOver(b.polygon, angle, bridge ?? 0)));
  return taken.length ? minus(solid, ...taken) : solid;
}

function roofPieces(solid, b, roof) {
  const frame = sectionFrame(b.d);
  const taken = common(solid, prism(frame, b.p, roof.outline, b.reach[0], b.reach[1]));
  const chain = between(b.polygon, roof.right, roof.left);
  const skin = prism(frame, b.p, [...scaled(chain, 1 + 1e-3), ...scaled(chain, 1 - 1e-3).reverse()], b.wall[0], b.wall[1]);
  return pieces(taken).filter((piece) => !common(piece, skin).isEmpty());
}
