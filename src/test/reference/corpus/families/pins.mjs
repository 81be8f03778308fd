// Pins: lying, standing, with roots and tips of all kinds; and round things that are no pins.

import { box, minus, place, prism, union } from '../kernel.mjs';
import { lathe, legOf, other, ring, rod } from '../shapes.mjs';
import { rad, sectionFrame, turn } from '../vec.mjs';
import { everyday } from './basic.mjs';

const LYING = [0, 1, 0];
const STANDING = [0, 0, 1];
const wall = (r) => box([-2 * r - 4, -6, -r - 4], [2 * r + 4, 0, r + 5]);
const plate = (r) => box([-2 * r - 4, -2 * r - 4, -6], [2 * r + 4, 2 * r + 4, 0]);

/** A rod from a wall or a plate, with what a profile says: [[w, share of the radius], ...]. */
function standing(random, d, profile, more = {}) {
  const { r, polygon } = everyday(random);
  const length = +(r * random.between(1.5, 5)).toFixed(1);
  const pin = rod({ d, r, polygon, length, ...(typeof more === 'function' ? more(r, length) : more) });
  const body = d === LYING ? wall(r) : plate(r);
  return { solid: union(body, lathe(pin, profile(r, length))), features: [pin] };
}
const plain = (r, length) => [[-1, 1], [length, 1]];

export const pinLying = (random) => standing(random, LYING, plain);
export const pinUpright = (random) => standing(random, STANDING, plain);

/** A root rounded by 0.5 to 0.9 of the radius in five to nine steps. */
export function pinFilleted(random) {
  const share = random.between(0.2, 0.5);
  const steps = random.whole(5, 9);
  const fillet = (r) => Array.from({ length: steps + 1 }, (_, k) => {
    const a = (Math.PI / 2) * (k / steps);
    return [share * r * (1 - Math.cos(a)), 1 + share * (1 - Math.sin(a))];
  });
  return standing(random, LYING, (r, length) => [[-1, 1 + share], ...fillet(r), [length, 1]], (r) => ({ root: share * r }));
}

/** Tips that are eased already: left. */
export const pinChamfered = (random) =>
  standing(random, random.pick([LYING, STANDING]), (r, length) => [[-1, 1], [length - 0.3 * r, 1], [length, 0.7]], (r, length) => ({
    wall: [0, length - 0.3 * r], expect: 'leave', why: ['eased'], ends: ['square', 'chamfered'],
  }));
export const pinConical = (random) =>
  standing(random, random.pick([LYING, STANDING]), (r, length) => [[-1, 1], [length - r, 1], [length, 0]], (r, length) => ({
    wall: [0, length - r], expect: 'leave', why: ['eased'], ends: ['square', 'conical'],
  }));

/** A tip cut off at a slant of up to 35 degrees. */
export function pinSlanted(random) {
  const lean = random.between(8, 35);
  let high = 0;
  const { solid, features } = standing(random, STANDING, plain, (r, length) => {
    high = r * Math.tan(rad(lean));
    // Where the low side stands out by less than two legs there may be no room for a chamfer.
    const room = length - 2 * high > 2 * legOf(r);
    return { exact: false, wall: [0, length - high], range: [[0, 0], [length - 2 * high, length]], expect: room ? 'reshape' : 'either' };
  });
  const [{ wall: [, top], r }] = features;
  const big = 20 * r;
  const knife = place(box([-big, -big, 0], [big, big, big]), [...turn([1, 0, 0], lean).slice(0, 9), 0, 0, top]);
  return { solid: minus(solid, knife), features };
}

/** A pin whose underside lies on the plate: left. */
export function pinOnPlate(random) {
  const { r, polygon } = everyday(random);
  const length = 3 * r;
  const lowest = Math.min(...polygon.map(([, v]) => v));
  const pin = rod({ d: LYING, r, polygon, length, expect: 'leave', why: ['plate'] });
  return { solid: union(box([-2 * r - 4, -6, lowest], [2 * r + 4, 0, r + 5]), lathe(pin, plain(r, length))), features: [pin] };
}

/** Two pins side by side, a hair or a hand apart. */
export function pinNeighbours(random, k) {
  const { r, n } = everyday(random);
  const near = k % 2 === 0;
  const gap = near ? 0.1 : 1;
  const pins = [0, 1].map((side) => rod({
    p: [side * (2 * r + gap), 0, 0], d: LYING, r, polygon: ring(n, r), length: 3 * r,
    ...(near && n % 2 === 0 ? { expect: 'leave', why: ['near'] } : near ? { expect: 'either' } : {}),
  }));
  const body = box([-2 * r - 4, -6, -r - 4], [4 * r + 6, 0, r + 5]);
  return { solid: union(body, ...pins.map((pin) => lathe(pin, plain(r, 3 * r)))), features: pins };
}

/** No pins: a wheel, a shaft between two walls, a handle, a boss around a hexagon. */
export function wheel(random) {
  const { r, polygon } = everyday(random);
  const disc = rod({ d: random.pick([LYING, STANDING]), r, polygon, length: 0.6 * r });
  return { solid: union(disc.d === LYING ? wall(r) : plate(r), lathe(disc, plain(r, 0.6 * r))), features: [] };
}
export function shaft(random) {
  const { r, polygon, length } = everyday(random);
  const bar = rod({ d: LYING, r, polygon, length });
  const far = box([-2 * r - 4, length, -r - 4], [2 * r + 4, length + 6, r + 5]);
  return { solid: union(wall(r), far, lathe(bar, [[-1, 1], [length + 1, 1]])), features: [] };
}
export function handle(random) {
  const { r, polygon } = everyday(random);
  const legs = [-4, 4].map((x) => prism(sectionFrame(STANDING), [x * r, 0, 0], polygon, -1, 5 * r));
  return { solid: union(box([-7 * r, -3 * r, -6], [7 * r, 3 * r, 0]), ...legs, box([-6 * r, -1.5 * r, 4.5 * r], [6 * r, 1.5 * r, 7 * r])), features: [] };
}
export function socket(random) {
  const { r, polygon } = everyday(random);
  const length = 3 * r;
  const boss = rod({ d: STANDING, r, polygon, length });
  const solid = minus(union(plate(r), lathe(boss, plain(r, length))), prism(sectionFrame(STANDING), [0, 0, 0], ring(6, 0.6 * r), 0.8 * r, 4 * r));
  return { solid, features: [other('hex', { d: STANDING, r: 0.6 * r, wall: [0.8 * r, length] })] };
}
