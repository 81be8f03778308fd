// Threads, inside and outside, and what looks like one and is none. Helices are rows of points, one
// row for each step about the axis, as CAD programs and scripts write them.

import { box, common, fromMesh, keep, Manifold, minus, place, prism, union } from '../kernel.mjs';
import { bore, other, ring } from '../shapes.mjs';
import { fromFrame, rad, sectionFrame } from '../vec.mjs';

const ALONG_Y = sectionFrame([0, 1, 0]);
const AT = [0, 0, 0];
const block = (r, length) => box([-r - 6, -length / 2, -r - 5], [r + 6, length / 2, r + 7]);

/**
 * Profiles over one pitch: [share of the pitch, share of the depth from crest to root of an inside
 * thread], and the depth in pitches. ISO 68-1 (metric, 5/8 H, flats P/4 and P/8), ISO 2901
 * (trapezoidal, 0.5 P), DIN 513 (buttress, 3 and 30 degrees), sharp and square ones as scripts make
 * them, a knuckle thread as on caps; figures from memory.
 */
const PROFILES = {
  metric: { depth: 0.5413, points: [[0, 0], [0.25, 0], [0.5625, 1], [0.6875, 1]] },
  sharp: { depth: 0.75, points: [[0, 0], [0.5, 1]] },
  trapezoid: { depth: 0.5, points: [[0, 0], [0.366, 0], [0.5, 1], [0.866, 1]] },
  square: { depth: 0.5, points: [[0, 0], [0.5, 0], [0.5, 1], [1, 1]] },
  buttress: { depth: 0.75, points: [[0, 0], [0.264, 0], [0.3033, 1], [0.567, 1]] },
  knuckle: { depth: 0.45, points: Array.from({ length: 12 }, (_, k) => [k / 12, (1 - Math.cos((2 * Math.PI * k) / 12)) / 2]) },
};

/**
 * A rod with a thread about w from low to high: crest radius r of the inside thread that it cuts, n
 * steps in a turn, grow: radius added for each millimetre of w, fade: share of the depth at w.
 */
function helix({ r, pitch, depth, points, n, starts = 1, left = false, low, high, grow = 0, fade = () => 1 }) {
  const lead = starts * pitch;
  const columns = Array.from({ length: starts }, (_, s) => points.map(([at, share]) => [(s + at) * pitch, share])).flat();
  const m = columns.length;
  const rows = Math.ceil(((high - low) / lead + 1) * n);
  const xyz = [];
  for (let i = 0; i <= rows + n; i++) {
    for (let c = 0; c < (i <= rows ? m : 1); c++) {
      const w = low - lead + (lead * i) / n + columns[c][0];
      const radius = r + w * grow + columns[c][1] * depth * fade(w);
      const a = ((left ? -2 : 2) * Math.PI * i) / n;
      xyz.push([radius * Math.cos(a), radius * Math.sin(a), w]);
    }
  }
  // past the last column a row goes on in the first column of the row a turn later
  const at = (i, c) => (c === m ? at(i + n, 0) : i <= rows ? i * m + c : (rows + 1) * m + i - rows - 1);
  const facets = [];
  for (let i = 0; i < rows; i++) {
    for (let c = 0; c < m; c++) facets.push([at(i, c), at(i + 1, c), at(i + 1, c + 1)], [at(i, c), at(i + 1, c + 1), at(i, c + 1)]);
  }
  const [bottom, top] = [xyz.push([0, 0, low - 2 * lead]) - 1, xyz.push([0, 0, high + 3 * lead]) - 1];
  for (let i = 0; i < n; i++) facets.push([bottom, at(i + 1, 0), at(i, 0)], [top, at(rows - n + i, m), at(rows - n + i + 1, m)]);
  for (let c = 0; c < m; c++) facets.push([bottom, at(0, c), at(0, c + 1)], [top, at(rows, c + 1), at(rows, c)]);
  const turned = left ? facets.map(([a, b, c]) => [a, c, b]) : facets;
  const rod = fromMesh({ points: Float64Array.from(xyz.flat()), corners: Uint32Array.from(turned.flat()) });
  return place(rod, fromFrame(ALONG_Y, AT));
}

const STEPS = [8, 12, 16, 24, 36, 48, 64];

/** Size and mesh of a thread by chance, with what ISO 261 and ISO 2904 give as pitch for its size. */
function drawn(random, k) {
  const form = Object.keys(PROFILES)[k % 6];
  const r = +random.between(2.6, 8).toFixed(2);
  const coarse = form === 'metric' || form === 'sharp' ? random.between(0.07, 0.2) : random.between(0.1, 0.2);
  const pitch = +(2 * r * coarse).toFixed(2);
  const { depth, points } = PROFILES[form];
  return { form, r, pitch, depth: depth * pitch, points, n: random.pick(STEPS), left: random.next() < 0.25, length: +(pitch * random.between(5, 11)).toFixed(1) };
}
const said = ({ r, length, from = -length / 2 }) => other('thread', { r, wall: [from, length / 2], why: ['thread'], shape: 'thread' });
const slab = (low, high) => box([-50, low, -50], [50, high, 50]);

/** Through thread of each form; every other part stands or leans. */
export function threadThrough(random, k) {
  const t = drawn(random, k);
  const tool = helix({ ...t, low: -t.length / 2, high: t.length / 2 });
  return { solid: minus(block(t.r + t.depth, t.length), tool), features: [said(t)], lean: [0, 90, 0, 30][k % 4] };
}

/** Blind thread with a drilled end, cut off sharply or running out over a turn. */
export function threadBlind(random, k) {
  const t = drawn(random, k);
  const end = -t.length / 2;
  const fade = k % 2 ? (w) => Math.min(1, Math.max(0, (w - end) / t.pitch)) : () => 1;
  const screw = common(helix({ ...t, low: end, high: t.length / 2 + 2, fade }), slab(end, t.length));
  const drill = prism(ALONG_Y, AT, ring(t.n, t.r - 0.01), end - 2, t.length);
  const solid = minus(box([-t.r - 6, end - 6, -t.r - 5], [t.r + 6, t.length / 2, t.r + 7]), screw, drill);
  return { solid, features: [said(t), bore({ p: AT, r: t.r - 0.01, polygon: ring(t.n, t.r - 0.01), wall: [end - 2, end], range: [[end - 2, end - 2], [end, end]], reach: [end - 2, end], find: 'may', expect: 'either', why: ['drill'], exact: false, rough: true })], lean: [0, 0, 90][k % 3] };
}

/** Two to four starts, left-handed ones among them. */
export function threadStarts(random, k) {
  const t = { ...drawn(random, k), starts: 2 + (k % 3) };
  t.length = +(t.pitch * t.starts * random.between(1.6, 3)).toFixed(1);
  const tool = helix({ ...t, low: -t.length / 2, high: t.length / 2 });
  return { solid: minus(block(t.r + t.depth, t.length), tool), features: [said(t)] };
}

/** Pipe thread: 1:16 on the diameter (ISO 7-1), 55 degrees, rounded depth 0.64 P. */
export function threadTapered(random, k) {
  const t = { ...drawn(random, 0), form: 'pipe', points: PROFILES[k % 2 ? 'sharp' : 'metric'].points };
  t.depth = 0.64 * t.pitch;
  const tool = helix({ ...t, low: -t.length / 2, high: t.length / 2, grow: 1 / 32 });
  return { solid: minus(block(t.r + t.depth, t.length), tool), features: [said(t)], lean: [0, 90][k % 2] };
}

/** Thread with a keyway through it, and one crossed by a bore. */
export function threadCut(random, k) {
  const t = drawn(random, k);
  const w = 0.25 * t.r;
  const way = [[-w, w, 0, 1.4 * t.r], [-w, w, -1.4 * t.r, 0], [0, 1.4 * t.r, -w, w]][k % 3];
  const key = box([way[0], -50, way[2]], [way[1], 50, way[3]]);
  const tool = helix({ ...t, low: -t.length / 2, high: t.length / 2 });
  return { solid: minus(block(t.r + t.depth, t.length), tool, key), features: [said(t)] };
}

/** Bolts and threaded rods: nothing there is a pin or a bore. */
export function threadOutside(random, k) {
  const t = drawn(random, k);
  const rod = common(helix({ ...t, starts: k % 4 === 3 ? 2 : 1, low: -2, high: t.length + 2 }), slab(-1, t.length));
  const shank = prism(ALONG_Y, AT, ring(t.n, k % 2 ? t.r + t.depth : t.r), -8, 0);
  const head = prism(ALONG_Y, AT, ring(6, 1.8 * (t.r + t.depth), 0.5), -14, -7);
  return { solid: k % 3 === 0 ? rod : union(rod, shank, head), features: [], lean: [0, 90, 0, 30][k % 4] };
}

/** Rounds with knurls outside, straight and crossed, as on knobs. */
export function knurled(random, k) {
  const r = random.between(6, 14);
  const teeth = random.whole(24, 48);
  const outline = Array.from({ length: 2 * teeth }, (_, i) => {
    const q = r - (i % 2 ? 0.6 : 0);
    return [q * Math.cos((Math.PI * i) / teeth), q * Math.sin((Math.PI * i) / teeth)];
  });
  const length = random.between(8, 16);
  const spun = (twist) => place(keep(Manifold.extrude([outline], length, 24, twist)), fromFrame(ALONG_Y, AT));
  return { solid: k % 2 ? common(spun(60), spun(-60)) : spun(0), features: [] };
}

/** Helical gears: teeth outside, and a ring with teeth inside, 15 to 30 degrees from the axis. */
export function helicalGear(random, k) {
  const r = random.between(8, 14);
  const teeth = random.whole(10, 20);
  const length = random.between(8, 20);
  const twist = (180 / Math.PI) * (length / r) * Math.tan(rad(random.between(15, 30)));
  const outline = Array.from({ length: 8 * teeth }, (_, i) => {
    const wave = Math.max(-0.7, Math.min(0.7, 1.3 * Math.sin((2 * Math.PI * i) / 8))) * ((1.2 * r) / teeth);
    const a = (2 * Math.PI * i) / (8 * teeth);
    return [(r + wave) * Math.cos(a), (r + wave) * Math.sin(a)];
  });
  const gear = place(keep(Manifold.extrude([outline], length, 16, twist)), fromFrame(ALONG_Y, [0, -length / 2, 0]));
  if (k % 2 === 0) return { solid: gear, features: [] };
  const feature = other('gear', { r, wall: [-length / 2, length / 2], why: ['partial'] });
  const blank = prism(ALONG_Y, AT, ring(64, 1.4 * r), -length / 2 + 0.5, length / 2 - 0.5);
  return { solid: minus(blank, gear), features: [feature] };
}

/** Springs: round and square wire, with gaps between the turns. */
export function spring(random, k) {
  const r = random.between(4, 9);
  const wire = random.between(0.12, 0.25) * r;
  const pitch = 2 * wire * random.between(1.4, 2.5);
  const turns = random.whole(3, 7);
  const [n, sides] = [random.pick([16, 32, 48]), k % 2 ? 4 : 12];
  const xyz = [];
  for (let i = 0; i <= turns * n; i++) {
    const a = (2 * Math.PI * i) / n;
    for (let j = 0; j < sides; j++) {
      const b = (2 * Math.PI * (j + 0.5)) / sides;
      const q = r + wire * Math.cos(b);
      xyz.push([q * Math.cos(a), q * Math.sin(a), (pitch * i) / n + wire * Math.sin(b)]);
    }
  }
  const facets = [];
  for (let i = 0; i < turns * n; i++) {
    for (let j = 0; j < sides; j++) {
      const [p, q] = [i * sides + j, i * sides + ((j + 1) % sides)];
      facets.push([p, p + sides, q + sides], [p, q + sides, q]);
    }
  }
  const last = turns * n * sides;
  for (let j = 1; j + 1 < sides; j++) facets.push([0, j, j + 1], [last, last + j + 1, last + j]);
  const coil = fromMesh({ points: Float64Array.from(xyz.flat()), corners: Uint32Array.from(facets.map(([a, b, c]) => [a, c, b]).flat()) });
  const solid = coil.volume() > 0 ? coil : fromMesh({ points: Float64Array.from(xyz.flat()), corners: Uint32Array.from(facets.flat()) });
  return { solid: place(solid, fromFrame(ALONG_Y, AT)), features: [other('spring', { r, wall: [0, pitch * turns], expect: 'leave', why: ['partial'] })] };
}

/** A hole of which a roof makes sense as well as leaving it: what is made is judged, not that. */
const roundly = (kind, r, length, polygon) => other(kind, {
  r, polygon, expect: 'either', why: ['partial'], exact: false, rough: true,
  wall: [-length / 2, length / 2], reach: [-length / 2 - 50, length / 2 + 50], range: [[-length / 2, -length / 2], [length / 2, length / 2]],
});

/** Bore with a groove for oil: one turn about the axis, or two with much wall between. */
export function spiralGroove(random, k) {
  const r = random.between(3, 7);
  const length = random.between(12, 24);
  const turns = [1, 2, 1, 3][k % 4];
  const n = random.pick([24, 48]);
  const pitch = (0.7 * length) / turns;
  const width = Math.min(0.2 * pitch, 1.2) / pitch;
  const points = [[0, 0], [1 - width, 0], [1 - 0.7 * width, 1], [1 - 0.3 * width, 1]];
  const groove = common(helix({ r: r - 0.3, pitch, depth: 0.9, points, n, low: -0.35 * length, high: 0.35 * length }), slab(-0.35 * length, 0.35 * length));
  const hole = prism(ALONG_Y, AT, ring(n, r, 0.5), -length, length);
  const feature = { ...roundly('grooved', r, length, ring(n, r, 0.5)), grooved: true };
  return { solid: minus(block(r + 1, length), groove, hole), features: [feature] };
}

/** Hose-like bore: rings without a pitch, rounded or sharp. */
export function corrugated(random, k) {
  const { r, pitch, depth, points, n, length } = drawn(random, [5, 1][k % 2]);
  const rings = [];
  for (let w = -length / 2 - pitch; w < length / 2 + pitch; w += pitch) rings.push(...points.map(([at, share]) => [w + at * pitch, r + share * depth]));
  const xyz = rings.flatMap(([w, q]) => ring(n, q).map(([u, v]) => [u, v, w]));
  const facets = [];
  for (let i = 0; i + 1 < rings.length; i++) {
    for (let j = 0; j < n; j++) {
      const [p, q] = [i * n + j, i * n + ((j + 1) % n)];
      facets.push([p, q, q + n], [p, q + n, p + n]);
    }
  }
  const last = (rings.length - 1) * n;
  for (let j = 1; j + 1 < n; j++) facets.push([0, j + 1, j], [last, last + j, last + j + 1]);
  const tool = place(fromMesh({ points: Float64Array.from(xyz.flat()), corners: Uint32Array.from(facets.flat()) }), fromFrame(ALONG_Y, AT));
  const crests = rings.filter(([w, q]) => q < r + 1e-9 && Math.abs(w) < length / 2 - pitch / 8).map(([w]) => w);
  const land = (w) => [w - pitch / 8, w + pitch / 8];
  const features = crests.map((w) => ({ ...roundly('corrugated', r, length, ring(n, r)), wall: land(w), range: land(w).map((x) => [x, x]) }));
  return { solid: minus(block(r + depth, length), tool), features };
}
