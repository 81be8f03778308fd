// The list of cases: families of parts, each with a seed, a mesh treatment and a placement, and how
// one of them becomes a package and its truth.

import * as basic from './families/basic.mjs';
import * as mouths from './families/mouths.mjs';
import * as negatives from './families/negatives.mjs';
import * as parts from './families/parts.mjs';
import * as pins from './families/pins.mjs';
import * as several from './families/several.mjs';
import * as threads from './families/threads.mjs';
import { crossings, joinedByPlace, topology } from './health.mjs';
import { place, release, toMesh } from './kernel.mjs';
import { readPackage, writePackage } from './model3mf.mjs';
import { placed } from './placements.mjs';
import { DEFAULTS, expectation, measuredEnds, moved, sectionAngle, withRoofs } from './shapes.mjs';
import { treated } from './treatments.mjs';
import { chance, shift, tiltDeg, chained, turn } from './vec.mjs';

export const FAMILIES = { ...pick(basic), ...pick(mouths), ...pick(several), ...pick(negatives), ...pick(parts), ...pick(pins), ...pick(threads) };
function pick(module) {
  const helpers = new Set(['everyday', 'roofed', 'turn', 'scaled', 'union']);
  return Object.fromEntries(Object.entries(module).filter(([name]) => !helpers.has(name)));
}

/**
 * One case: { name, family, model, truth }. The part is built along +y, leaned when the family asks
 * for it, turned about z by a seeded angle, put onto the plate, treated and placed.
 */
export function makeCase({ family, k, treatment = 'none', placement = 'plain', seed }) {
  const random = chance(seed);
  try {
    const sketch = FAMILIES[family](random, k);
    const yaw = sketch.fixed ? 0 : random.pick([0, 90, 30, random.between(0, 360)]);
    let map = chained(turn([1, 0, 0], sketch.lean ?? 0), turn([0, 0, 1], yaw));
    let solid = place(sketch.solid, map);
    const overlay = sketch.overlay && place(sketch.overlay, map);
    const lift = -solid.boundingBox().min[2];
    const middle = sketch.fixed ? shift(60, 60, lift) : shift(random.pick([0, 100]), random.pick([0, 80]), lift);
    solid = place(solid, middle);
    map = chained(map, middle);
    const host = sketch.host ? place(sketch.host, map) : solid;
    const hostMesh = toMesh(host);
    const features = sketch.features.map((f) => withEnds(moved(f, map), hostMesh));
    const extra = sketch.extra && { ...sketch.extra, mesh: toMesh(place(sketch.extra.solid, map)) };
    const base = { mesh: joined(toMesh(solid), overlay && toMesh(place(overlay, middle))), features, extra, solid: host };
    const name = nameOf({ family, k, treatment, placement });
    const done = placed(treated(base, treatment, random), placement, random);
    return { name, model: { ...done.model, title: name }, truth: truthOf({ name, family, treatment, placement, seed }, done, volumes(host, features, placement)) };
  } finally {
    release();
  }
}

/** What a case is called, before it is made. */
export function nameOf({ family, k, treatment = 'none', placement = 'plain' }) {
  return [kebab(family), k, ...(treatment === 'none' ? [] : [kebab(treatment)]), ...(placement === 'plain' ? [] : [kebab(placement)])].join('-');
}

const kebab = (name) => name.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`);

function withEnds(feature, mesh) {
  if (feature.kind !== 'bore') return feature;
  const ranged = feature.range ? feature : { ...feature, range: measuredEnds(mesh, feature) };
  return feature.expect ? ranged : { ...ranged, ...expectation(mesh, ranged) };
}

/** Two meshes as one, shells side by side (they may overlap). */
function joined(a, b) {
  if (!b) return a;
  const base = a.points.length / 3;
  return {
    points: Float64Array.from([...a.points, ...b.points]),
    corners: Uint32Array.from([...a.corners, ...Array.from(b.corners, (c) => c + base)]),
  };
}

/**
 * Volume of the part before and after every bore that needs one has got its full peak, by the
 * kernel's booleans; not stated where some answer is open or the part is printed otherwise.
 */
function volumes(host, features, placement) {
  const settled = features.every((f) => f.expect === 'leave' || (f.expect === 'reshape' && f.exact && f.why[0] === 'peak'));
  if (!settled || placement === 'stretched' || /Way/.test(placement)) return undefined;
  const due = features.filter((f) => f.expect === 'reshape');
  const ideal = withRoofs(host, due.map((b) => ({ b, angle: sectionAngle(DEFAULTS.slopeDeg, tiltDeg(b.d)) })));
  return { before: host.volume(), ideal: ideal.volume() };
}

export function truthOf(head, { features, sound, noise, args }, volumeMm3) {
  return {
    schema: 'corpus-truth/1', ...head,
    // What the input is: sound; rough (closed, meant sound, but facets meet in the written numbers);
    // joinable (closed once equal points are joined); flawed (closed, but with a facet without area,
    // inside out, or touching itself); unsound (not closed).
    input: sound ?? 'sound', noiseMm: noise ?? 0, ...(args ? { args } : {}), ...(volumeMm3 ? { volumeMm3 } : {}),
    features: features.map((f) => ({
      kind: f.kind, find: f.find, expect: f.expect, why: f.why, item: f.item ?? 0,
      point: f.p, direction: f.d, diameterMm: f.r ? 2 * f.r : undefined, tiltDeg: tiltDeg(f.d),
      wall: f.wall, ends: f.ends, range: f.range, reach: f.reach, roofLeftMm: f.roofLeft, group: f.group ?? 0,
      exact: f.exact ?? false, ...(f.rough ? { rough: true } : {}), ...(f.grooved ? { grooved: true } : {}), ...(f.leg ? { legMm: f.leg } : {}), ...(f.shape ? { shape: f.shape } : {}), sagittaMm: f.sagitta ?? 0, ring: f.polygon,
    })),
  };
}

/**
 * A case as it is written: { name, bytes, truth }. Where facets meet once coordinates are spelled
 * (needles of booleans, noise on thin triangles) the input is no sound solid, whatever it was meant
 * to be: its bores must still be found, and it must not come out worse, but a roof may be refused.
 */
export function writtenCase(entry) {
  const { name, model, truth } = makeCase(entry);
  const bytes = writePackage(model);
  const meshes = [...readPackage(bytes).objects.values()].flatMap((o) => (o.mesh ? [o.mesh] : []));
  if (truth.input === 'sound' && meshes.some(meets)) truth.input = 'rough';
  // Corners that a solid keeps apart may be spelled alike. Joined by place, its edges then have more
  // than two triangles, and which of them belong together cannot be told: that is no solid.
  if (truth.input === 'joinable' && !meshes.every(closesJoined)) truth.input = 'unsound';
  return { name, bytes, truth };
}
const closesJoined = (mesh) => {
  const { open, bad } = topology(joinedByPlace(mesh));
  return open === 0 && bad === 0;
};
const meets = (mesh) => crossings(mesh, Array.from({ length: mesh.corners.length / 3 }, (_, f) => f)).length > 0;

/** Truth as text: one line for each feature, numbers to 12 digits. */
export function truthText({ features, ...head }) {
  const text = (value) => JSON.stringify(value, (_, x) => (typeof x === 'number' ? +x.toPrecision(12) : x));
  return `${text(head).slice(0, -1)},"features":[\n${features.map(text).join(',\n')}\n]}\n`;
}
