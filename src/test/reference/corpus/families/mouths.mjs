// Mouths: slanted, curved, chamfered, filleted, countersunk, counterbored, at the edge of a face.

import { ball, box, keep, Manifold, minus, place, union } from '../kernel.mjs';
import { bore, cone, cutter, lathe, ring, scaled } from '../shapes.mjs';
import { fromFrame, rad, sectionFrame, shift, turn } from '../vec.mjs';
import { everyday } from './basic.mjs';

/** A face that leans by up to 60 degrees forward, backward or sideways at one or both ends. */
export function slanted(random, k) {
  const { r, polygon } = everyday(random);
  const lean = [10, -10, 25, -25, 40, -40, 60, -60][k % 8];
  const axis = random.flip() ? [1, 0, 0] : [0, 0, 1];
  const half = r * Math.tan(rad(60)) * 1.6 + random.between(3, 8);
  const b = bore({ r, polygon, wall: [-2 * half, 2 * half], ends: ['slanted', 'slanted'] });
  const big = 8 * half;
  const raw = box([-r - 6, -2 * half, -r - 5], [r + 6, 2 * half, 1.45 * r + 4]);
  const slab = (degrees, side) => place(box([-big, 0, -big], [big, big, big]), [...turn(axis, degrees + side * 180).slice(0, 9), 0, side ? -half : half, 0]);
  const ends = [slab(lean, 0)];
  if (random.flip()) ends.push(slab(-lean, 1));
  return { solid: minus(raw, ...ends, cutter(b, -big, big)), features: [b] };
}

/** Bore through an upright round bar, across its axis. */
export function pipeUpright(random) {
  const { r, polygon } = everyday(random);
  const R = r * random.between(1.6, 3);
  const bar = place(keep(Manifold.cylinder(3.4 * r + 8, R, R, random.pick([64, 96, 180]))), shift(0, 0, -1.7 * r - 3));
  const b = bore({ r, polygon, wall: [-R - 1, R + 1], ends: ['curved', 'curved'] });
  return { solid: minus(bar, cutter(b, -R - 5, R + 5)), features: [b] };
}

/** Bore through a lying round bar, across its axis. */
export function pipeLying(random) {
  const { r, polygon } = everyday(random);
  const R = r * random.between(1.5, 2.6) + 2.5;
  const length = 2 * r + 12;
  const bar = place(keep(Manifold.cylinder(length, R, R, random.pick([64, 96, 180]))), fromFrame(sectionFrame([1, 0, 0]), [-length / 2, 0, 0]));
  const b = bore({ r, polygon, wall: [-R - 1, R + 1], ends: ['curved', 'curved'] });
  return { solid: minus(bar, cutter(b, -R - 5, R + 5)), features: [b] };
}

/** Bore through a hollow bar: two pieces of wall, one on each side. */
export function pipeHollow(random) {
  const { r, polygon } = everyday(random);
  const R = r * 1.6 + 5;
  const inner = R - random.between(2.2, 3.5);
  const high = 3.4 * r + 8;
  const tube = minus(keep(Manifold.cylinder(high, R, R, 96)), place(keep(Manifold.cylinder(high + 2, inner, inner, 96)), shift(0, 0, -1)));
  const bar = place(tube, shift(0, 0, -1.7 * r - 3));
  const far = bore({ r, polygon, wall: [1, R + 1], reach: [1, R + 50], ends: ['curved', 'curved'], group: 1 });
  const near = bore({ r, polygon, wall: [-R - 1, -1], reach: [-R - 50, -1], ends: ['curved', 'curved'], group: 1 });
  const inside = bore({ r: inner, d: [0, 0, 1], polygon: ring(96, inner), wall: [-1.7 * r - 3, 1.7 * r + 5] });
  return { solid: minus(bar, cutter(far, -R - 5, R + 5)), features: [far, near, inside] };
}

export function sphere(random) {
  const { r, polygon } = everyday(random);
  const R = r * random.between(1.9, 2.6) + 2.5;
  const b = bore({ r, polygon, wall: [-R - 1, R + 1], ends: ['curved', 'curved'] });
  return { solid: minus(ball(R, 96), cutter(b, -R - 5, R + 5)), features: [b] };
}

/**
 * A plate with a bore whose mouths carry something. `profile` is what stands at a mouth in the face at
 * 0: [[w, share of the radius], ...] from the wall outwards, past the face.
 */
function dressed(random, { b: [r, polygon], depth, profile, kind, room = 0, make = lathe }) {
  const half = random.between(4, 9) + depth;
  const both = random.flip();
  const b = bore({
    r, polygon, wall: both ? [-half + depth, half - depth] : [-half, half - depth],
    reach: [-half - 60, half + 60], ends: both ? [kind, kind] : ['open', kind], exact: false, rough: true,
  });
  const body = box([-r - 6 - room, -half, -r - 5 - room], [r + 6 + room, half, 1.45 * r + 3.5 + room]);
  const far = profile.map(([w, share]) => [w + half, share]);
  const near = both ? far.map(([w, share]) => [-w, share]).reverse() : [[-2 * half, 1]];
  return { solid: minus(body, ...[make(b, [...near, ...far])].flat()), features: [b] };
}
const size = (random) => {
  const { r, polygon } = everyday(random);
  return [r, polygon];
};

export function chamfered(random, _, more = {}) {
  const c = +random.between(0.4, 1.5).toFixed(2);
  const b = size(random);
  return dressed(random, { b, depth: c, profile: [[-c, 1], [c, 1 + (2 * c) / b[0]]], kind: 'chamfered', ...more });
}

/** Rounded edge: a quarter circle of eight straight steps, the last one carried on past the face. */
export function filleted(random, _, more = {}) {
  const c = +random.between(0.6, 2).toFixed(2);
  const b = size(random);
  const step = (k) => [-c + c * Math.sin(rad(11.25 * k)), 1 + (c * (1 - Math.cos(rad(11.25 * k)))) / b[0]];
  const profile = Array.from({ length: 8 }, (_, k) => step(k));
  const [[w7, s7], [w8, s8]] = [step(7), step(8)];
  const on = 1 / (w8 - w7);
  return dressed(random, { b, depth: c, profile: [...profile, [w8 + (w8 - w7) * on * 0.2, s8 + (s8 - s7) * on * 0.2]], kind: 'filleted', room: 2, ...more });
}

/** Countersinks of the trade: 82, 90 and 118 degrees. */
export function countersunk(random, k, more = {}) {
  const angle = [82, 90, 118][k % 3];
  const grow = random.between(1.2, 2.5);
  const depth = grow / Math.tan(rad(angle / 2));
  const b = size(random);
  return dressed(random, { b, depth, profile: [[-depth, 1], [depth, 1 + (2 * grow) / b[0]]], kind: 'countersunk', room: 3, ...more });
}

/**
 * The same mouths as modellers by booleans make them: a prism and a cone for each stretch, which share
 * rings and leave needles there. As written some of these meshes meet themselves.
 */
export function needles(random, k) {
  const stacked = (b, profile) => [
    cutter(b, -60, 60),
    ...profile.slice(1).map(([w, share], i) => [profile[i], [w, share]]).filter(([low, high]) => low[1] !== high[1])
      .map(([low, high]) => cone(b, ...low, ...high)),
  ];
  return [chamfered, filleted, countersunk][k % 3](random, k, { make: stacked });
}

/** One or two coaxial steps: every cylinder is a bore of its own; the smaller opens into the larger. */
export function counterbored(random, k) {
  const n = random.pick([24, 32, 48, 64]);
  const radii = [random.between(2.1, 4)];
  for (let s = 0; s < 1 + (k % 2); s++) radii.push(radii[s] + random.between(0.8, 3));
  const cuts = [0];
  for (let s = 0; s < radii.length; s++) cuts.push(cuts[s] + random.between(4, 8));
  const R = radii[radii.length - 1];
  const total = cuts[cuts.length - 1];
  const features = radii.map((r, s) =>
    bore({
      r, polygon: ring(n, r, 0.25 * s), wall: [cuts[s], cuts[s + 1]], group: 1,
      reach: [s ? cuts[s] : -60, s === radii.length - 1 ? total + 60 : cuts[s + 1]],
      ends: [s ? 'narrowing' : 'open', s === radii.length - 1 ? 'open' : 'step'],
    }));
  const holes = features.map((b, s) => cutter(b, s ? cuts[s] : -5, s === radii.length - 1 ? total + 5 : cuts[s + 1]));
  return { solid: minus(box([-R - 5, 0, -R - 5], [R + 5, total, 1.45 * R + 4]), ...holes), features };
}

/** The mouth nearly touches or touches an edge of its face: aside, or below a step in the top. */
export function edgeOfFace(random, k) {
  const { r, length, polygon } = everyday(random);
  const gap = [0, 0.05, 0.3, 1][k % 4];
  const b = bore({ r, polygon, wall: [-length / 2, length / 2] });
  const side = Math.max(...polygon.map(([u]) => -u));
  if (gap === 0) Object.assign(b, { find: 'may', expect: 'either', why: ['touch'] });
  // Section frame of +y: u points along -x.
  const body = box([-r - 5, -length / 2, -r - 4], [side + gap, length / 2, 1.45 * r + 3]);
  return { solid: minus(body, cutter(b, -length, length)), features: [b] };
}

/** A face so low that the ridge leaves through the slope above it: roof under a bevelled top edge. */
export function bevelAbove(random) {
  const { r, length, polygon } = everyday(random);
  const bevel = random.between(0.5, 0.45 * length);
  const top = 1.45 * r + 3;
  const b = bore({ r, polygon, wall: [-length / 2, length / 2], exact: false });
  const wedge = place(box([-50, 0, 0], [50, 50, 50]), [...turn([1, 0, 0], 45).slice(0, 9), 0, length / 2 - bevel, top]);
  const body = minus(box([-r - 5, -length / 2, -r - 4], [r + 5, length / 2, top]), wedge);
  return { solid: minus(body, cutter(b, -length, length)), features: [b] };
}

export { scaled, union };
