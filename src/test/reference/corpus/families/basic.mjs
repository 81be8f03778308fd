// Through and blind bores, facets, walls that are no prisms, tilt, the plate, thin roofs.

import { ball, box, fromMesh, minus, place, union } from '../kernel.mjs';
import { bore, cutter, lathe, ring, unevenRing } from '../shapes.mjs';
import { fromFrame, rad, sectionFrame, shift } from '../vec.mjs';

const FACETS = [10, 12, 16, 20, 24, 32, 36, 48, 64, 72, 96, 128];

/** A block around a bore along y, with room for a full peak above it. */
const block = (r, length, above) => box([-r - 5, -length / 2, -r - 4], [r + 5, length / 2, above ?? 1.45 * r + 3]);

/** Radius, length and ring of an everyday bore. */
export function everyday(random) {
  const r = +random.between(2.05, 7).toFixed(2);
  const n = random.pick(FACETS);
  return { r, n, length: +random.between(6, 30).toFixed(1), polygon: ring(n, r, random.pick([0, 0.5, random.next()])) };
}

export function through(random) {
  const { r, length, polygon } = everyday(random);
  const b = bore({ r, polygon, wall: [-length / 2, length / 2] });
  return { solid: minus(block(r, length), cutter(b, -length, length)), features: [b] };
}

/** As few and as many facets as the finder must take: 8 to 256, any phase. */
export function facets(random, k) {
  const n = [8, 9, 10, 11, 12, 13, 15, 17, 24, 40, 90, 180, 200, 256][k % 14];
  const r = +random.between(2.5, 6).toFixed(2);
  const length = 12;
  const b = bore({ r, polygon: ring(n, r, random.next()), wall: [-6, 6] });
  // Eight facets and an octagonal hole are the same mesh: both answers are right.
  if (n < 10) Object.assign(b, { find: n === 8 ? 'may' : 'must', expect: 'either', why: ['polygon'] });
  return { solid: minus(block(r, length), cutter(b, -length, length)), features: [b] };
}

export function uneven(random) {
  const { r, n, length } = everyday(random);
  const b = bore({ r, polygon: unevenRing(Math.max(n, 16), r, random), wall: [-length / 2, length / 2] });
  return { solid: minus(block(r, length), cutter(b, -length, length)), features: [b] };
}

/**
 * Wall of an isotropic remesher: staggered rows of vertices on the true circle, no ruling from end to
 * end. `polygon` is the finest ring that any row has; facets lie inside it by at most its sagitta.
 */
export function staggered(random) {
  const r = +random.between(2.5, 7).toFixed(2);
  const n = random.pick([24, 36, 48, 64]);
  const length = random.between(6, 20);
  const rows = Math.max(3, Math.round(length / ((2 * Math.PI * r) / n)));
  const points = [];
  for (let j = 0; j <= rows; j++) {
    for (let k = 0; k < n; k++) {
      const a = (2 * Math.PI * (k + (j % 2) / 2 + random.between(-0.15, 0.15))) / n;
      const w = -length / 2 + (length * j) / rows + (j % rows ? random.between(-0.2, 0.2) * (length / rows) : 0);
      points.push([r * Math.cos(a), w, r * Math.sin(a)]);
    }
  }
  const facets = [];
  for (let j = 0; j < rows; j++) {
    for (let k = 0; k < n; k++) {
      const at = (row, step) => row * n + ((k + step + n) % n);
      const shift = j % 2;
      facets.push([at(j, 0), at(j + 1, shift), at(j, 1)], [at(j, 1), at(j + 1, shift), at(j + 1, 1 + shift)]);
    }
  }
  const tool = solidOfTube(points, facets, n, rows);
  const b = bore({ r, polygon: ring(4 * n, r), wall: [-length / 2, length / 2], exact: false, sagitta: r * (1 - Math.cos(Math.PI / n)) * 1.7, range: [[-length / 2, -length / 2], [length / 2, length / 2]] });
  return { solid: minus(block(r, length), tool), features: [b] };
}

/** Closed cutter from a tube of rows: pushed out a little past both faces and capped. */
function solidOfTube(points, facets, n, rows) {
  const out = [...points];
  const all = [...facets];
  for (const [row, y] of [[0, -1], [rows, 1]]) {
    const base = out.length;
    for (let k = 0; k < n; k++) out.push([out[row * n + k][0], out[row * n + k][1] + y, out[row * n + k][2]]);
    const hub = out.push([0, out[row * n][1] + y, 0]) - 1;
    for (let k = 0; k < n; k++) {
      const [a, b, c, d] = [row * n + k, row * n + ((k + 1) % n), base + k, base + ((k + 1) % n)];
      const ribbon = y < 0 ? [[a, b, c], [b, d, c], [c, d, hub]] : [[a, c, b], [b, c, d], [c, hub, d]];
      all.push(...ribbon);
    }
  }
  return fromMesh({ points: Float64Array.from(out.flat()), corners: Uint32Array.from(all.flat()) });
}

export function blindFlat(random) {
  const { r, length, polygon } = everyday(random);
  const end = length / 2 - random.between(1.5, length * 0.6);
  const b = bore({ r, polygon, wall: [-length / 2, end], reach: [-length / 2 - 50, end], ends: ['open', 'flat'] });
  return { solid: minus(block(r, length), cutter(b, -length, end)), features: [b] };
}

/** Drill points: 118 and 140 degrees, and steeper ones. The roof may end before or in the cone. */
export function blindConical(random) {
  const { r, polygon } = everyday(random);
  const half = rad(random.pick([118, 140, 90, 60]) / 2);
  const depth = random.between(4, 12);
  const b = bore({ r, polygon, wall: [0, depth], reach: [-50, depth], ends: ['open', 'cone'], exact: false, rough: true });
  const point = depth + r / Math.tan(half);
  const hole = lathe(b, [[-1, 1], [depth, 1], [point, 0]]);
  return { solid: minus(place(block(r, point + 4), shift(0, (point + 4) / 2, 0)), hole), features: [b] };
}

/**
 * Half a ball at the end: its rings in line with those of the wall, or turned against them, as where
 * a modeller joins two bodies; then a step as thin as the facets' sagitta stays between the two.
 */
export function blindRound(random, k) {
  const { r, polygon } = everyday(random);
  const depth = random.between(4, 12);
  const b = bore({ r, polygon, wall: [0, depth], reach: [-50, depth], ends: ['open', 'round'], exact: false, rough: true });
  const n = polygon.length;
  const rings = Math.max(3, Math.round(n / 4));
  const arc = Array.from({ length: rings }, (_, j) => (j * Math.PI) / 2 / rings).map((a) => [depth + r * Math.sin(a), Math.cos(a)]);
  const inLine = () => lathe(b, [[-1, 1], ...arc, [depth + r, 0]]);
  // The kernel's ball has its poles on z; laid along y its equator need not meet the ring, so its
  // radius is the ring's in-circle.
  const turned = () => union(cutter(b, -1, depth), place(ball(r * Math.cos(Math.PI / n), n + (4 - (n % 4)) % 4), fromFrame(sectionFrame(b.d), [0, depth, 0])));
  const hole = k % 4 === 3 ? turned() : inLine();
  return { solid: minus(place(block(r, depth + r + 4), shift(0, (depth + r + 4) / 2, 0)), hole), features: [b] };
}

/** The whole part leans: square mouths, tilted axis, 0 to 90 degrees. */
export function tiltPart(random, k) {
  const { r, polygon } = everyday(random);
  const length = 5 * r;
  const tilt = [0, 2, 5, 8, 12, 17, 23, 30, 36, 40, 43, 44.5, 45.5, 48, 55, 65, 75, 85, 90][k % 19] * (random.flip() ? 1 : -1);
  const b = bore({ r, polygon, wall: [-length / 2, length / 2] });
  const solid = minus(block(r, length), cutter(b, -length, length));
  return { solid, features: [b], lean: tilt };
}

/** Only the bore leans: the mouths are slanted ellipses in upright faces. */
export function tiltBore(random, k) {
  const { r, polygon } = everyday(random);
  const tilt = rad([1, 4, 9, 15, 22, 29, 35, 40, 50, 60][k % 10] * (random.flip() ? 1 : -1));
  const d = [0, Math.cos(tilt), Math.sin(tilt)];
  const half = random.between(4, 10);
  const reach = (half + r * Math.abs(Math.sin(tilt))) / Math.cos(tilt) + 1;
  const height = half * Math.abs(Math.tan(tilt)) + (1.5 * r + 4) / Math.cos(tilt);
  const b = bore({ r, d, polygon, wall: [-reach, reach], ends: ['slanted', 'slanted'] });
  const body = box([-r - 5, -half, -height], [r + 5, half, height]);
  return { solid: minus(body, cutter(b, -60, 60)), features: [b] };
}

/** Bore close to the plate: material below it is as thin as 0.4 mm. */
export function nearPlate(random) {
  const { r, length, polygon } = everyday(random);
  const b = bore({ r, polygon, wall: [-length / 2, length / 2] });
  const body = box([-r - 5, -length / 2, -r - random.between(0.4, 1.2)], [r + 5, length / 2, 1.45 * r + 3]);
  return { solid: minus(body, cutter(b, -length, length)), features: [b] };
}

/** Material above the bore runs from none to enough: full peak, flat top, left. */
export function thinRoof(random, k) {
  const { r, length, polygon } = everyday(random);
  const b = bore({ r, polygon, wall: [-length / 2, length / 2] });
  const above = r + 0.3 + ((k % 12) / 11) * (0.42 * r + 1.2);
  return { solid: minus(block(r, length, above), cutter(b, -length, length)), features: [b] };
}

/** Smallest and largest: pin holes of 0.5 mm, bores of 3.9 and 4.1 mm, a tube of 400 mm. */
export function sizes(random, k) {
  const r = [0.25, 0.5, 1, 1.5, 1.95, 2.05, 3, 12, 40, 100, 200][k % 11];
  const length = Math.max(2, 2 * r);
  const b = bore({ r, polygon: ring(48, r, random.next()), wall: [-length / 2, length / 2] });
  const body = box([-2 * r, -length / 2, -2 * r], [2 * r, length / 2, 1.5 * r + 3]);
  return { solid: minus(body, cutter(b, -length, length)), features: [b] };
}
