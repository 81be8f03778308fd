// Holes that must be left, and round bores that are no longer quite round.

import { box, keep, loft, Manifold, minus, place, prism, union } from '../kernel.mjs';
import { bore, cutter, other, ring, roofOver, scaled } from '../shapes.mjs';
import { fromFrame, rad, sectionFrame } from '../vec.mjs';
import { everyday } from './basic.mjs';

const ALONG_Y = sectionFrame([0, 1, 0]);
const hole = (polygon, low, high) => prism(ALONG_Y, [0, 0, 0], polygon, low, high);
const block = (r, length) => box([-r - 6, -length / 2, -r - 5], [r + 6, length / 2, 1.45 * r + 4]);

/** A part with one hole of the given outline, which is not a round bore. */
function shaped(kind, outline, random, extra = {}) {
  const { r, length } = everyday(random);
  const feature = other(kind, { r, wall: [-length / 2, length / 2], ...extra });
  return { solid: minus(block(1.6 * r, length), hole(outline(r), -length, length)), features: [feature] };
}

export const hex = (random) => shaped('hex', (r) => ring(6, r, random.pick([0, 0.5, random.next()])), random);
export const square = (random) => shaped('square', (r) => ring(4, r, random.pick([0, 0.5])), random);
export const octagon = (random) => {
  const { r, length } = everyday(random);
  const polygon = ring(8, r, random.pick([0, 0.5]));
  return { solid: minus(block(1.6 * r, length), hole(polygon, -length, length)), features: [nearlyRound('octagon', r, length, polygon)] };
};
export const oval = (random) => shaped('oval', (r) => ring(48, r, 0).map(([u, v]) => [u * random.pick([1.15]), v]), random);

/** Slot with two half-round ends, lying, standing or leaning. */
export const stadium = (random) =>
  shaped('slot', (r) => {
    const lean = random.pick([0, 90, 30]);
    const gap = 0.5 * r;
    return ring(48, 1, 0.5).map(([u, v]) => {
      const [x, y] = [u * 0.8 * r + Math.sign(u) * gap, v * 0.8 * r];
      return [x * Math.cos(rad(lean)) - y * Math.sin(rad(lean)), x * Math.sin(rad(lean)) + y * Math.cos(rad(lean))];
    });
  }, random);

/** Bores that carry a roof of some kind already: named, and left for that reason. */
const PEAKED = { shape: 'peaked', why: ['peaked'] };
export const peaked = (random) => shaped('peaked', (r) => roofed(ring(48, r, 0), rad(random.pick([45, 50, 60]))), random, PEAKED);
export const flatTopped = (random) =>
  shaped('peaked', (r) => roofed(ring(48, r, 0), rad(45), 0.5 * r), random, PEAKED);
export const roundTopped = (random) =>
  shaped('peaked', (r) => {
    const small = 0.4 * r;
    const centre = (r - small) / Math.cos(rad(45));
    const low = ring(64, r, 0).filter(([u, v]) => v <= r * Math.cos(rad(45)) + 1e-9);
    const top = ring(64, small, 0).filter(([u, v]) => v >= small * Math.cos(rad(45)) - 1e-9).map(([u, v]) => [u, v + centre]);
    return [...low, ...top].sort((a, b) => Math.atan2(a[1], a[0]) - Math.atan2(b[1], b[0]));
  }, random, PEAKED);

/** The ring with its crown replaced by a roof. */
export function roofed(polygon, angle, bridge = 0) {
  const roof = roofOver(polygon, angle, bridge);
  const kept = [];
  for (let k = polygon.indexOf(roof.left); ; k = (k + 1) % polygon.length) {
    kept.push(polygon[k]);
    if (polygon[k] === roof.right) break;
  }
  return [...kept, ...roof.outline.slice(2, -1)];
}

/** D-shaped bore: a flat up, down or aside. The arc covers 250 to 310 degrees. */
export function dShape(random, k) {
  const { r, length } = everyday(random);
  const way = rad([90, 270, 0, 180][k % 4]);
  const level = r * random.between(0.7, 0.85);
  const turned = ([u, v], a) => [u * Math.cos(a) - v * Math.sin(a), u * Math.sin(a) + v * Math.cos(a)];
  const polygon = ring(64, r, 0.5).map((q) => turned(q, -way)).map(([along, across]) => turned([Math.min(along, level), across], way));
  return { solid: minus(block(1.6 * r, length), hole(polygon, -length, length)), features: [nearlyRound('d-shape', r, length, polygon)] };
}

/** A hole of which a roof makes sense as well as leaving it; what is made is still judged. */
const nearlyRound = (kind, r, length, polygon) => other(kind, {
  r, polygon, expect: 'either', why: ['partial'], exact: false,
  wall: [-length / 2, length / 2], reach: [-length / 2 - 50, length / 2 + 50], range: [[-length / 2, -length / 2], [length / 2, length / 2]],
});

/** Round bore with a keyway up, down or aside. */
export function keyway(random, k) {
  const { r, length, polygon } = everyday(random);
  const way = [[0, 0, 1], [0, 0, -1], [1, 0, 0]][k % 3];
  const w = 0.25 * r;
  const key = k % 3 === 2 ? box([0, -length, -w], [1.3 * r, length, w]) : box([-w, -length, Math.min(0, way[2] * 1.3 * r)], [w, length, Math.max(0, way[2] * 1.3 * r)]);
  const feature = other('keyway', { r, wall: [-length / 2, length / 2], expect: 'either', why: ['partial'] });
  const round = prism(ALONG_Y, [0, 0, 0], polygon, -length, length);
  return { solid: minus(block(1.5 * r, length), round, key), features: [feature] };
}

/** Three to six ribs that grip a pin. */
export function crushRibs(random) {
  const { r, length, polygon } = everyday(random);
  const count = random.whole(3, 6);
  const ribs = Array.from({ length: count }, (_, i) => {
    const a = rad(90 + ((i + 0.5) * 360) / count);
    const at = (radius, off) => [radius * Math.cos(a) - off * Math.sin(a), radius * Math.sin(a) + off * Math.cos(a)];
    return prism(ALONG_Y, [0, 0, 0], [at(r * 1.1, -0.45), at(r * 1.1, 0.45), at(r - 0.4, 0)], -length / 2, length / 2);
  });
  const feature = other('ribs', { r, wall: [-length / 2, length / 2], expect: 'either', why: ['partial'] });
  const solid = union(minus(block(r, length), prism(ALONG_Y, [0, 0, 0], polygon, -length, length)), ...ribs);
  return { solid, features: [feature] };
}

/** Half-round channel along the top: an open arc. */
export const channel = (random) => {
  const { r, length, polygon } = everyday(random);
  const solid = minus(box([-r - 5, -length / 2, -r - 4], [r + 5, length / 2, random.between(-0.3, 0) * r]), prism(ALONG_Y, [0, 0, 0], polygon, -length, length));
  return { solid, features: [other('channel', { r, wall: [-length / 2, length / 2], why: ['partial'] })] };
};

/** An inside corner rounded by a quarter of a cylinder, and an arch of half a one. */
export const insideFillet = (random) => {
  const { r, length } = everyday(random);
  const pocket = [...ring(64, r, 0).filter(([u, v]) => u <= 1e-9 && v >= -1e-9), [-r, -r], [2 * r, -r], [2 * r, r]];
  const solid = minus(block(2.2 * r, length), hole(pocket, -length, length));
  return { solid, features: [other('fillet', { r, wall: [-length / 2, length / 2], why: ['partial'] })] };
};

export const arch = (random) =>
  shaped('arch', (r) => [[-r, -r], [r, -r], ...ring(64, r, 0).filter(([, v]) => v >= -1e-9)], random, { why: ['partial'] });

/** Tapered bore: a cone of 1:50 to 1:5, which is not a cylinder. */
export function tapered(random, k) {
  const { r, length, polygon } = everyday(random);
  const taper = [1 / 50, 1 / 20, 1 / 10, 1 / 5][k % 4];
  const grow = (taper * length * 1.2) / 2 / r;
  const feature = other('taper', { r, wall: [-length / 2, length / 2], why: ['taper'], expect: taper < 0.05 ? 'either' : 'leave' });
  const solid = minus(block(1.3 * r + grow, length), loft(ALONG_Y, [0, 0, 0], polygon, -0.6 * length, scaled(polygon, 1 + grow), 0.6 * length));
  return { solid, features: [feature] };
}

/** Internal thread: one start, trade-like pitch, from a turned profile. */
export function thread(random) {
  const r = random.between(2.5, 6);
  const pitch = random.between(0.8, 1.75);
  const length = random.between(6, 14);
  const depth = 0.54 * pitch;
  const n = 48;
  const outline = Array.from({ length: n }, (_, k) => {
    const share = Math.abs(((k / n + 0.5) % 1) - 0.5) * 2;
    const q = r - depth * Math.min(1, Math.max(0, 1.2 * share - 0.1));
    return [q * Math.cos((2 * Math.PI * k) / n), q * Math.sin((2 * Math.PI * k) / n)];
  });
  const long = length + 4;
  const twisted = keep(Manifold.extrude([outline], long, Math.round((long / pitch) * 16), (360 * long) / pitch));
  const tool = place(twisted, fromFrame(ALONG_Y, [0, -long / 2, 0]));
  return { solid: minus(block(r, length), tool), features: [other('thread', { r, wall: [-length / 2, length / 2], why: ['thread'], shape: 'thread' })] };
}

/** Hollow pin standing out of a wall: its inside is a bore, its outside is not. */
export function boss(random) {
  const { r, n, polygon } = everyday(random);
  const wall = 0.42 * r + random.between(1.6, 3);
  const outer = ring(n, r + wall, random.next());
  const length = random.between(6, 14);
  const body = union(box([-3 * r - 8, -4, -3 * r], [3 * r + 8, 0, 3 * r]), prism(ALONG_Y, [0, 0, 0], outer, -1, length));
  const b = bore({ r, polygon, wall: [-4, length] });
  const solid = minus(body, cutter(b, -20, 60));
  return { solid, features: [b, other('pin', { r: r + wall, wall: [0, length] })] };
}

/** Parts without any round hole: a sphere, a ring, a stepped block. Nothing may be found. */
export function none(random, k) {
  const r = random.between(4, 12);
  if (k % 3 === 0) return { solid: keep(Manifold.sphere(r, random.pick([16, 32, 64]))), features: [] };
  if (k % 3 === 1) {
    const circle = ring(24, r / 3, 0.2).map(([x, y]) => [x + r, y]);
    return { solid: keep(Manifold.revolve([circle], 48)), features: [] };
  }
  const solid = union(box([0, 0, 0], [20, 10, 5]), box([0, 0, 5], [12, 10, 9]), box([3, 3, 9], [6, 7, 14]));
  return { solid, features: [] };
}
