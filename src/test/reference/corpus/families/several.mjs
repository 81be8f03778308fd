// Several bores in one part: lugs, rings of holes, neighbours, crossings, other shells.

import { ball, box, keep, Manifold, minus, place, union } from '../kernel.mjs';
import { bore, cutter, other, ring } from '../shapes.mjs';
import { fromFrame, rad, sectionFrame, shift, turn } from '../vec.mjs';
import { everyday } from './basic.mjs';

/** Two or three coaxial lugs on a base; each lug's wall is a bore of its own in one group. */
export function lugs(random, k) {
  const { r, polygon } = everyday(random);
  const count = 2 + (k % 2);
  const [thick, gap] = [random.between(3, 7), random.between(3, 12)];
  const top = 1.45 * r + 3;
  const base = box([-r - 5, -2, -r - 8], [r + 5, count * (thick + gap) - gap + 2, -r - 4]);
  const features = [];
  const plates = [];
  for (let i = 0; i < count; i++) {
    const at = i * (thick + gap);
    plates.push(box([-r - 4, at, -r - 5], [r + 4, at + thick, top]));
    features.push(bore({ r, polygon, wall: [at, at + thick], reach: [at - gap * 0.49, at + thick + gap * 0.49], group: 1 }));
  }
  return { solid: minus(union(base, ...plates), cutter(features[0], -60, 200)), features };
}

/** Lugs with bores of different size in line, as for a stepped pin. */
export function lugsOfTwoSizes(random) {
  const n = random.pick([24, 32, 48]);
  const [r1, r2] = [random.between(2.1, 4), random.between(4.2, 6)];
  const top = 1.45 * r2 + 3;
  const body = union(box([-12, 0, -14], [12, 26, -8]), box([-10, 0, -9], [10, 6, top]), box([-10, 18, -9], [10, 26, top]));
  const a = bore({ r: r1, polygon: ring(n, r1), wall: [0, 6], reach: [-40, 11] });
  const b = bore({ r: r2, polygon: ring(n, r2), wall: [18, 26], reach: [13, 60] });
  return { solid: minus(body, cutter(a, -5, 12), cutter(b, 12, 40)), features: [a, b] };
}

/** Many bores in a row or a field through one plate. */
export function many(random, k) {
  const r = random.between(2.05, 3);
  const columns = 4 + (k % 5);
  const rows = 2 + (k % 3);
  const pitch = 2.9 * r + 2;
  const features = [];
  for (let i = 0; i < columns; i++) {
    for (let j = 0; j < rows; j++) {
      features.push(bore({ r, p: [i * pitch, 0, j * pitch], polygon: ring(24, r, random.next()), wall: [-4, 4] }));
    }
  }
  const body = box([-pitch, -4, -pitch], [columns * pitch, 4, rows * pitch + 2]);
  return { solid: minus(body, ...features.map((b) => cutter(b, -9, 9))), features };
}

/** Ring of small holes around a large bore (a flange): the small ones stay below the least size. */
export function flange(random) {
  const R = random.between(5, 9);
  const small = random.between(0.8, 1.7);
  const circle = R * 1.42 + 3 + small;
  const outer = circle + small + 4;
  const disc = place(keep(Manifold.cylinder(8, outer, outer, 120)), fromFrame(sectionFrame([0, 1, 0]), [0, -4, 0]));
  const main = bore({ r: R, polygon: ring(64, R, 0.3), wall: [-4, 4] });
  const features = [main];
  const count = random.whole(6, 12);
  for (let i = 0; i < count; i++) {
    const a = (2 * Math.PI * (i + 0.5)) / count;
    const p = [circle * Math.cos(a), 0, circle * Math.sin(a)];
    features.push(bore({ r: small, p, polygon: ring(20, small), wall: [-4, 4] }));
  }
  return { solid: minus(disc, ...features.map((b) => cutter(b, -9, 9))), features };
}

/** Two bores side by side or one above the other whose roofs keep apart, nearly meet or meet. */
export function neighbours(random, k) {
  const { r, polygon, length } = everyday(random);
  const stacked = k % 2 === 1;
  const need = stacked ? r + r * Math.SQRT2 : 2 * r;
  const gap = [0.02, 0.1, 0.4, 1.3, 3, 6][(k >> 1) % 6];
  const q = stacked ? [0, 0, need + gap] : [need + gap, 0, 0];
  const a = bore({ r, polygon, wall: [-length / 2, length / 2] });
  const b = bore({ r, p: q, polygon, wall: [-length / 2, length / 2] });
  const body = box([-r - 5, -length / 2, -r - 4], [q[0] + r + 5, length / 2, q[2] + 1.45 * r + 3]);
  return { solid: minus(body, cutter(a, -length, length), cutter(b, -length, length)), features: [a, b] };
}

/** Two different bores whose roofs would meet from both sides (a ridge between them). */
export function bigAndSmall(random) {
  const R = random.between(5, 8);
  const r = random.between(2.05, 3);
  const a = bore({ r: R, polygon: ring(48, R, random.next()), wall: [-5, 5] });
  const dx = (R + r) * random.between(0.8, 0.95);
  const dz = Math.sqrt((R + r + 0.5) ** 2 - dx * dx);
  const b = bore({ r, p: [dx, 0, dz], polygon: ring(32, r), wall: [-5, 5] });
  const body = box([-R - 5, -5, -R - 4], [R + 3 * r + 5, 5, Math.max(1.45 * R, dz + 1.45 * r) + 3]);
  return { solid: minus(body, cutter(a, -9, 9), cutter(b, -9, 9)), features: [{ ...a, exact: false }, { ...b, exact: false }].map((f) => ({ ...f, expect: 'either', why: ['neighbour'] })) };
}

/** Main bore crossed by a smaller one: horizontal, vertical or oblique. */
export function crossed(random, k) {
  const R = random.between(4.5, 7);
  const r = random.between(2.05, 0.5 * R);
  const half = R * 1.5 + random.between(4, 8);
  const main = bore({ r: R, polygon: ring(64, R, random.next()), wall: [-half, half] });
  const way = [[1, 0, 0], [0, 0, 1], [Math.cos(rad(35)), Math.sin(rad(35)), 0], [0, Math.sin(rad(30)), Math.cos(rad(30))]][k % 4];
  const upward = way[2] > 0.1;
  const far = 3 * half;
  const cross = (wall, reach, ends) => bore({ r, d: way, polygon: ring(32, r, random.flip() ? 0 : 0.5), wall, reach, ends, group: 2 });
  const ends = ['open', 'curved'];
  const first = cross([0.1, far], [0, far], ends);
  const second = { ...first, wall: [-far, -0.1], reach: [-far, 0] };
  // A hole that cuts through the crown takes part of the main roof with it; what then is ideal has
  // more than one answer, so only soundness and slopes are judged.
  if (upward) Object.assign(main, { exact: false }, way[1] ? { expect: 'either', why: ['crossing'] } : {});
  const body = box([-half, -half, -R - 5], [half, half, 1.45 * R + 4]);
  const solid = minus(body, cutter(main, -far, far), cutter(first, -far, far));
  return { solid, features: [main, first, second] };
}

/** Bores of the same size crossing at right angles: every piece of wall ends in saddle curves. */
export function crossedEqual(random) {
  const r = random.between(2.5, 5);
  const half = r + random.between(6, 10);
  const polygon = ring(32, r);
  const piece = (d, side) => bore({
    r, d, polygon, wall: side > 0 ? [0, half] : [-half, 0], reach: side > 0 ? [0, half + 50] : [-half - 50, 0],
    ends: ['curved', 'open'], exact: false, rough: true, expect: 'either', why: ['crossing'], find: 'may',
  });
  const features = [[0, 1, 0], [1, 0, 0]].flatMap((d) => [piece(d, 1), piece(d, -1)]);
  const body = box([-half, -half, -r - 4], [half, half, 1.45 * r + 3]);
  return { solid: minus(body, cutter(features[0], -60, 60), cutter(features[2], -60, 60)), features };
}

/** A slot from above or from below through the bore: two pieces of wall on its sides. */
export function slotted(random, k) {
  const { r, polygon } = everyday(random);
  const [side, gap] = [random.between(5, 9), random.between(2, 6)];
  const low = -r - 4;
  const top = 1.45 * r + 3;
  const all = 2 * side + gap;
  const body = box([-r - 5, 0, low], [r + 5, all, top]);
  const down = k % 2 === 0;
  const slot = down ? box([-50, side, -r - 2], [50, side + gap, 50]) : box([-50, side, -50], [50, side + gap, r * 1.45 + 1]);
  const a = bore({ r, polygon, wall: [0, side], reach: [-50, side + gap * 0.49], group: 1 });
  const b = bore({ r, polygon, wall: [side + gap, all], reach: [side + gap * 0.51, all + 50], group: 1 });
  return { solid: minus(body, slot, cutter(a, -9, all + 9)), features: [a, b] };
}

/** The bore runs through a closed cavity: two pieces, each opening into the cavity. */
export function throughCavity(random) {
  const { r, polygon } = everyday(random);
  const side = random.between(4, 8);
  const room = random.between(6, 14);
  const wide = 1.45 * r + 2;
  const all = 2 * side + room;
  const body = box([-wide - 4, 0, -wide - 4], [wide + 4, all, wide + 4]);
  const cavity = box([-wide, side, -wide], [wide, side + room, wide]);
  const a = bore({ r, polygon, wall: [0, side], reach: [-50, side + room * 0.45], group: 1 });
  const b = bore({ r, polygon, wall: [side + room, all], reach: [side + room * 0.55, all + 50], group: 1 });
  return { solid: minus(body, cavity, cutter(a, -9, all + 9)), features: [a, b] };
}

/** A closed cavity right above the bore: material between them decides, not the outside. */
export function cavityAbove(random, k) {
  const { r, length, polygon } = everyday(random);
  const web = [0.5, 1, 1.5, 2.5][k % 4] + 0.42 * r;
  const b = bore({ r, polygon, wall: [-length / 2, length / 2] });
  const body = box([-r - 5, -length / 2, -r - 4], [r + 5, length / 2, r + web + 8]);
  const cavity = k % 3 === 0
    ? place(ball(2.5, 48), shift(0, 0, r + web + 2.5))
    : box([-2, -length / 2 + 1.5, r + web], [2, length / 2 - 1.5, r + web + 4]);
  return { solid: minus(body, cavity, cutter(b, -length, length)), features: [b] };
}

/** A hinge printed in place: a loose pin inside the bore, as a second shell or a second object. */
export function loosePin(random, k) {
  const { r, length, n, polygon } = everyday(random);
  const play = random.between(0.25, 0.5);
  const b = bore({ r, polygon, wall: [-length / 2, length / 2] });
  const body = minus(box([-r - 5, -length / 2, -r - 4], [r + 5, length / 2, 1.45 * r + 3]), cutter(b, -length, length));
  const pinTruth = other('pin', { r: r - play, wall: [-length / 2 - 3, length / 2 + 3] });
  const pin = cutter({ ...b, polygon: ring(n, r - play, random.next()) }, -length / 2 - 3, length / 2 + 3);
  const how = ['shell', 'item', 'component'][k % 3];
  return how === 'shell'
    ? { solid: union(body, pin), host: body, features: [b, pinTruth] }
    : { solid: body, extra: { how, solid: pin }, features: [b, pinTruth] };
}

/** Several shells in one mesh: separate blocks with a bore each, and a block with a hollow. */
export function shells(random) {
  const { r, length, polygon } = everyday(random);
  const step = 2 * r + 14;
  const at = (i) => bore({ r, p: [i * step, 0, 0], polygon, wall: [-length / 2, length / 2] });
  const features = [at(0), at(1), at(2)];
  const bodies = features.map((b, i) => {
    const body = box([i * step - r - 5, -length / 2, -r - 8], [i * step + r + 5, length / 2, 1.45 * r + 3]);
    const hollow = place(ball(1.2, 24), shift(i * step, 0, -r - 4));
    return minus(body, cutter(b, -length, length), ...(i ? [hollow] : []));
  });
  return { solid: union(...bodies), features };
}

/** A second shell lies in the room that the roof would take: it would plug the roof. */
export function plug(random) {
  const { r, length, polygon } = everyday(random);
  const b = bore({ r, polygon, wall: [-length / 2, length / 2], expect: 'either', why: ['plugged'], exact: false });
  const body = minus(box([-r - 5, -length / 2, -r - 4], [r + 5, length / 2, 1.45 * r + 3]), cutter(b, -length, length));
  const inside = box([-0.2 * r, -length / 4, 1.1 * r], [0.2 * r, length / 4, 1.3 * r]);
  return { solid: body, overlay: inside, features: [b] };
}

export { turn };
