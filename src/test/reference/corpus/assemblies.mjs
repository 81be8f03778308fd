// Assemblies whose joints are known, and decoys that must not be taken for joints. Two parts meet in
// the plane z = 0: part A stands below it with pins upwards, part B above it with bores. Each is then
// laid for printing by a motion of its own, so that nothing but sizes, spacing or position tells what
// belongs together. Seeded: the same seed makes the same files.

import { box, loft, minus, place, prism, release, toMesh, union } from './kernel.mjs';
import { writePackage } from './model3mf.mjs';
import { ring } from './shapes.mjs';
import { apply, applyVector, chained, chance, determinant, IDENTITY, inverse, sectionFrame, shift, turn, unit } from './vec.mjs';

const UP = [0, 0, 1];
const DOWN = [0, 0, -1];

/** A pin with its root at p. */
const pin = (p, r, length, d = UP) => ({ kind: 'pin', p, d, r, length });
/** A bore with its mouth at p, going along d; without a depth it goes through. */
const bore = (p, r, depth, d = UP) => ({ kind: 'bore', p, d, r, depth });
/** The same with a cone of 90 degrees at its mouth, as wide as the head of a screw. */
const countersunk = (p, r, head, d = UP) => ({ ...bore(p, r, undefined, d), head });

/**
 * Screw, medium clearance hole (ISO 273), outer diameter of the seat (ISO 15065; M4 and M6 of DIN 74
 * form A besides): from second-hand copies of the standards.
 */
const SEATS = [[4, 4.5, 9.4], [5, 5.5, 10.4], [6, 6.6, 12.6], [4, 4.5, 8.6], [6, 6.6, 12.4]];

/** A part: a box with pins and bores. */
const part = (low, high, features, more = {}) => ({ low, high, features, ...more });

function solidOf({ low, high, features, n = 32 }) {
  let solid = box(low, high);
  for (const f of features) {
    const frame = sectionFrame(f.d);
    const polygon = ring(n, f.r, 0.5);
    solid = f.kind === 'pin'
      ? union(solid, prism(frame, f.p, polygon, -1, f.length))
      : minus(solid, prism(frame, f.p, polygon, -1, f.depth ?? 200));
    if (f.head) solid = minus(solid, loft(frame, f.p, ring(n, f.head, 0.5), 0, polygon, f.head - f.r));
  }
  return solid;
}

const BELOW = [[-30, -20, -12], [30, 20, 0]];
const ABOVE = [[-30, -20, 0], [30, 20, 16]];
const lower = (...features) => part(...BELOW, features.flat());
const upper = (...features) => part(...ABOVE, features.flat());
/** So wide that a pin without a bore meets solid, however the parts are turned. */
const wide = (...features) => part([-90, -90, 0], [90, 90, 16], features.flat());
/** Places in the plane that are no nearer than 12 mm to each other, without symmetry. */
const TRIANGLE = [[-18, -10], [14, -12], [-6, 11]];
const at = ([x, y], z = 0) => [x, y, z];
const mirrored = (points) => points.map(([x, y]) => [-x, y]);

/** Radii and clearance of a joint as people draw it. */
function fit(random, low = 0.1, high = 0.5) {
  const d = random.pick([4, 5, 6, 8, 10]);
  const clearance = +random.between(low, Math.min(high, 0.19 * d)).toFixed(2);
  return { r: d / 2, R: (d + clearance) / 2, length: +(d * random.between(1, 1.6)).toFixed(1), clearance };
}

const pinsAt = (points, { r, length }) => points.map((p) => pin(at(p), r, length));
const boresAt = (points, { R, length }, more = 1) => points.map((p) => bore(at(p), R, length + more));
/** Pins of part a and bores of part b, one to one; `free` if they may change places. */
const whole = (a, b, free = false) => ({ free, pins: a, bores: b });

// ---- joints -------------------------------------------------------------------------------------

/** Each family: random -> { parts, groups, how }. Features are named by [part, index]. */
export const JOINED = {
  single(random) {
    const f = fit(random);
    return { parts: [lower(pinsAt([[3, -2]], f)), upper(boresAt([[3, -2]], f), bore([-18, 8, 0], 1.6), bore([18, 8, 0], 6, 9))], groups: [whole([[0, 0]], [[1, 0]])] };
  },
  two(random) {
    const f = fit(random);
    const points = [[-15, random.whole(-8, 8)], [random.whole(8, 20), random.whole(-8, 8)]];
    return { parts: [lower(pinsAt(points, f)), upper(boresAt(points, f))], groups: [whole([[0, 0], [0, 1]], [[1, 0], [1, 1]], true)] };
  },
  triangle(random) {
    const f = fit(random);
    return { parts: [lower(pinsAt(TRIANGLE, f)), upper(boresAt(TRIANGLE, f))], groups: [0, 1, 2].map((k) => whole([[0, k]], [[1, k]])) };
  },
  rectangle(random) {
    const f = fit(random);
    const points = [[-20, -12], [20, -12], [20, 12], [-20, 12]];
    const all = (p) => [0, 1, 2, 3].map((k) => [p, k]);
    return { parts: [lower(pinsAt(points, f)), upper(boresAt(points, f))], groups: [whole(all(0), all(1), true)] };
  },
  sizes(random) {
    const [f, g] = [{ r: 2, R: 2.15, length: 6 }, { r: 3.5, R: 3.7, length: 8 }];
    const points = [[-15, 4], [16, random.whole(-9, 2)]];
    return { parts: [lower(pinsAt([points[0]], f), pinsAt([points[1]], g)), upper(boresAt([points[0]], f), boresAt([points[1]], g))], groups: [0, 1].map((k) => whole([[0, k]], [[1, k]])) };
  },
  /** Each half has a pin and a bore. */
  crossed(random) {
    const f = fit(random);
    const down = { ...pin([14, 5, 0], f.r, f.length), d: DOWN };
    return {
      parts: [lower(pinsAt([[-15, -3]], f), bore([14, 5, 0], f.R, f.length + 1, DOWN)), upper(boresAt([[-15, -3]], f), down)],
      groups: [whole([[0, 0]], [[1, 0]]), whole([[1, 1]], [[0, 1]])], free: true,
    };
  },
  /** Pegs of one object in as many bores. */
  copies(random) {
    const f = fit(random);
    const points = [[-20, 0], [0, 6], [19, -5]].slice(0, random.whole(2, 3));
    const peg = part([-8, -8, -4], [8, 8, 0], pinsAt([[0, 0]], f), { copies: points.length });
    return { parts: [peg, upper(boresAt(points, f))], groups: [{ free: true, copies: true, pins: [[0, 0]], bores: points.map((_, k) => [1, k]) }] };
  },
  /** Components of one object, put together; other bores of that size are elsewhere. */
  position(random) {
    const f = fit(random, 0.3, 0.9);
    return {
      parts: [lower(pinsAt([[5, 2]], f)), upper(boresAt([[5, 2], [-17, -6], [-14, 9]], f))], assembled: true,
      groups: [whole([[0, 0]], [[1, 0]])],
    };
  },
  /** A pin through two lugs; the gap between them is wider than the pin's part. */
  lugs(random) {
    const f = { ...fit(random), length: 26 };
    const high = part([-20, -14, 0], [20, 14, 26], [bore([2, 1, 0], f.R)], { gap: [[-21, -15, 8], [14, 15, 18]] });
    return { parts: [lower(pinsAt([[2, 1]], f)), high], groups: [whole([[0, 0]], [[1, 0]])] };
  },
  twoFiles(random) {
    const f = fit(random);
    return { parts: [lower(pinsAt(TRIANGLE, f)), upper(boresAt(TRIANGLE, f))], files: [[0], [1]], groups: [0, 1, 2].map((k) => whole([[0, k]], [[1, k]])) };
  },
  /** A on B by three pins, C on B by one of another size; screw holes besides. */
  three(random) {
    const f = { r: 2.5, R: 2.65, length: 7 };
    const g = { r: 4, R: 4.2, length: 9 };
    const b = upper(boresAt(TRIANGLE, f), bore([2, 1, 16], g.R, 10, DOWN), bore([25, 14, 0], 1.7), bore([-25, 14, 0], 1.7));
    const c = part([-10, -9, -6], [10, 9, 0], pinsAt([[random.whole(-3, 3), 1]], g));
    return { parts: [lower(pinsAt(TRIANGLE, f)), b, c], groups: [...[0, 1, 2].map((k) => whole([[0, k]], [[1, k]])), whole([[2, 0]], [[1, 3]])] };
  },
  /** A pin in a plain bore, beside seats of screws that are as wide. */
  besideSeats(random) {
    const [d, hole, head] = random.pick(SEATS);
    const f = { r: d / 2, R: hole / 2, length: 1.5 * d };
    const seats = [[-18, random.whole(-4, 8)], [18, 6]].map((p) => countersunk(at(p), hole / 2, head / 2));
    return { parts: [lower(pinsAt([[2, -9]], f)), upper(boresAt([[2, -9]], f), seats)], groups: [whole([[0, 0]], [[1, 0]])] };
  },
  /** Bores all over, two pins that fit two of them by spacing only. */
  amongOthers(random) {
    const f = fit(random);
    const points = [[-24, -11], [-9, 9], [6, -4], [23, 12]];
    const two = [1, 3];
    return {
      parts: [lower(pinsAt(two.map((k) => points[k]), f)), upper(boresAt(points, f))],
      groups: [whole([[0, 0], [0, 1]], two.map((k) => [1, k]), true)],
    };
  },
};

// ---- decoys -------------------------------------------------------------------------------------

export const DECOYS = {
  pitch(random) {
    const f = fit(random);
    const off = f.clearance + random.between(0.5, 3);
    return { parts: [lower(pinsAt([[-12, 0], [12, 0]], f)), upper(boresAt([[-12, 0], [12 + off, 0]], f))] };
  },
  /** The spacing of a mirror: a reflection would join them, no motion does. */
  mirror(random) {
    const f = fit(random);
    return { parts: [lower(pinsAt(TRIANGLE, f)), wide(boresAt(mirrored(TRIANGLE), f))] };
  },
  loose(random) {
    const f = fit(random);
    return { parts: [lower(pinsAt([[-12, 0], [12, 3]], f)), upper(boresAt([[-12, 0], [12, 3]], { ...f, R: f.r + random.between(0.55, 0.9) }))] };
  },
  tight(random) {
    const f = fit(random);
    return { parts: [lower(pinsAt([[-12, 0], [12, 3]], f)), upper(boresAt([[-12, 0], [12, 3]], { ...f, R: f.r - random.between(0.1, 0.4) }))] };
  },
  shallow(random) {
    const f = { ...fit(random), length: 10 };
    return { parts: [lower(pinsAt([[-12, 0], [12, 3]], f)), upper(boresAt([[-12, 0], [12, 3]], f, -random.between(0.5, 5)))] };
  },
  /** One pin, several bores alike. */
  several(random) {
    const f = fit(random);
    return { parts: [lower(pinsAt([[0, 0]], f)), upper(boresAt([[-12, 0], [12, 3]], f))], told: true };
  },
  /** Two pins on a row of bores of their pitch. */
  row(random) {
    const f = fit(random);
    return { parts: [lower(pinsAt([[-6, 0], [6, 0]], f)), upper(boresAt([-24, -12, 0, 12, 24].map((x) => [x, 0]), f))], told: true };
  },
  /** A pin of the screw's nominal diameter and its medium clearance hole (ISO 273). */
  screw(random) {
    const [d, hole] = random.pick([[4, 4.5], [5, 5.5], [6, 6.6]]);
    return { parts: [lower(pinsAt([[0, 0]], { r: d / 2, length: d })), upper(bore([9, 4, 0], hole / 2))], told: true };
  },
  /** Pins that fit the holes of seats by width and by pattern. */
  seat(random) {
    const [d, hole, head] = random.pick(SEATS);
    const points = [[-14, random.whole(-6, 6)], [14, random.whole(-6, 6)]];
    return { parts: [lower(pinsAt(points, { r: d / 2, length: 1.5 * d })), upper(points.map((p) => countersunk(at(p), hole / 2, head / 2)))] };
  },
  /** Three pins, two bores: the third pin would stand in solid. */
  third(random) {
    const f = fit(random);
    return { parts: [lower(pinsAt(TRIANGLE, f)), wide(boresAt(TRIANGLE.slice(0, 2), f))], told: true };
  },
  /** Pins and bores side by side on one part. */
  alone(random) {
    const f = fit(random);
    return { parts: [part(...BELOW, [...pinsAt([[-12, 0]], f), bore([12, 0, 0], f.R, 8, DOWN)])] };
  },
};

// ---- laying and writing -------------------------------------------------------------------------

const WAYS = [IDENTITY, turn([1, 0, 0], 90), turn([1, 0, 0], -90), turn([0, 1, 0], 90), turn([0, 1, 0], 180), turn([1, 0, 0], 180)];

/** Turned some way, then put onto the plate beside the others. */
function laid(solid, random, number, tips) {
  const map = chained(tips ? random.pick(WAYS) : IDENTITY, turn([0, 0, 1], random.between(0, 360)));
  const low = place(solid, map).boundingBox().min;
  return chained(map, shift(200 * number - low[0], 7 * number - low[1], -low[2]));
}

/** The mesh of a part behind a map that may mirror it: through the map it prints as it should. */
function stored(mesh, map) {
  const back = inverse(map);
  const points = Float64Array.from(mesh.points);
  for (let v = 0; v < points.length; v += 3) points.set(apply(back, mesh.points.slice(v, v + 3)), v);
  const corners = Uint32Array.from(mesh.corners);
  if (determinant(map) < 0) for (let f = 0; f < corners.length; f += 3) [corners[f + 1], corners[f + 2]] = [corners[f + 2], corners[f + 1]];
  return { points, corners };
}

/** { name, files: [bytes], truth } of one assembly. */
export function assembly(family, seed) {
  const random = chance(seed);
  try {
    const decoy = !JOINED[family];
    const { parts, groups = [], files = [parts.map((_, k) => k)], assembled, told, free } = (JOINED[family] ?? DECOYS[family])(random);
    const models = files.map(() => ({ objects: [], items: [], spelling: 'nine' }));
    const features = [];
    const common = assembled && laid(union(...parts.map(solidOf)), random, 0, true);
    parts.forEach((p, k) => {
      const file = files.findIndex((list) => list.includes(k));
      const solid = p.gap ? minus(solidOf(p), box(...p.gap)) : solidOf(p);
      const map = common ?? laid(solid, random, k, true);
      const model = models[file];
      const id = model.objects.length + 1;
      const mirror = !assembled && random.next() < 0.2 ? [-1, 0, 0, 0, 1, 0, 0, 0, 1, 3, 0, 0] : IDENTITY;
      model.objects.push({ id, name: `part ${k}`, mesh: stored(toMesh(place(solid, map)), mirror) });
      for (let copy = 0; copy < (p.copies ?? 1); copy++) {
        const aside = chained(turn([0, 0, 1], copy * 35), shift(0, 60 * copy, 0));
        if (!assembled) model.items.push({ object: id, transform: chained(mirror, aside) });
      }
      features.push(p.features.map((f) => ({ kind: f.kind, file, point: apply(map, f.p), direction: unit(applyVector(map, f.d)), diameterMm: 2 * f.r })));
    });
    if (assembled) {
      const id = parts.length + 1;
      models[0].objects.push({ id, name: 'assembly', components: parts.map((_, k) => ({ object: k + 1 })) });
      models[0].items.push({ object: id });
    }
    const name = `${family}-${seed}`;
    const named = (list) => list.map(([p, f]) => features[p][f]);
    return {
      name, files: models.map((m) => writePackage({ ...m, title: name })),
      truth: { name, family, decoy, told: told ?? false, groups: groups.map((g) => ({ ...g, pins: named(g.pins), bores: named(g.bores) })), free: free ?? false },
    };
  } finally {
    release();
  }
}
