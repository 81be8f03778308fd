// Small vectors, seeded chance, and the section frame of an axis. Millimetres, z up.

export const add = (a, b) => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub = (a, b) => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const mul = (a, s) => [a[0] * s, a[1] * s, a[2] * s];
export const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a, b) => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const norm = (a) => Math.hypot(a[0], a[1], a[2]);
export const unit = (a) => mul(a, 1 / norm(a));
export const rad = (deg) => (deg * Math.PI) / 180;
export const deg = (radians) => (radians * 180) / Math.PI;

/** Generator of numbers in [0, 1) from a whole-number seed: the same seed gives the same case for ever. */
export function chance(seed) {
  let state = (seed * 2654435761) >>> 0 || 1;
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    next,
    between: (low, high) => low + (high - low) * next(),
    whole: (low, high) => low + Math.floor(next() * (high - low + 1)),
    pick: (list) => list[Math.floor(next() * list.length)],
    flip: () => next() < 0.5,
  };
}

/**
 * Right-handed frame of an axis: w along it, v the part of +z square to it, u = v x w. A vertical
 * axis has no such v; any fixed one serves.
 */
export function sectionFrame(direction) {
  const w = unit(direction);
  const up = Math.hypot(w[0], w[1]) < 1e-9 ? [1, 0, 0] : [0, 0, 1];
  const v = unit(sub(up, mul(w, dot(up, w))));
  return { u: cross(v, w), v, w };
}

/** Angle of a direction from the horizontal in degrees, never negative. */
export const tiltDeg = (d) => deg(Math.atan2(Math.abs(d[2]), Math.hypot(d[0], d[1])));

// ---- affine maps: 12 numbers, row vectors: p' = [x y z 1] M, as 3MF writes them -----------------

export const IDENTITY = [1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0];

export const apply = (m, p) => [
  p[0] * m[0] + p[1] * m[3] + p[2] * m[6] + m[9],
  p[0] * m[1] + p[1] * m[4] + p[2] * m[7] + m[10],
  p[0] * m[2] + p[1] * m[5] + p[2] * m[8] + m[11],
];
export const applyVector = (m, p) => [
  p[0] * m[0] + p[1] * m[3] + p[2] * m[6],
  p[0] * m[1] + p[1] * m[4] + p[2] * m[7],
  p[0] * m[2] + p[1] * m[5] + p[2] * m[8],
];

/** First a, then b. */
export function chained(a, b) {
  const rows = [a.slice(0, 3), a.slice(3, 6), a.slice(6, 9)].map((row) => applyVector(b, row));
  return [...rows.flat(), ...apply(b, a.slice(9, 12))];
}

export const determinant = (m) => dot(m.slice(0, 3), cross(m.slice(3, 6), m.slice(6, 9)));

export function inverse(m) {
  const [a, b, c] = [m.slice(0, 3), m.slice(3, 6), m.slice(6, 9)];
  const d = determinant(m);
  const [x, y, z] = [cross(b, c), cross(c, a), cross(a, b)].map((col) => mul(col, 1 / d));
  const linear = [x[0], y[0], z[0], x[1], y[1], z[1], x[2], y[2], z[2]];
  const shift = applyVector([...linear, 0, 0, 0], m.slice(9, 12));
  return [...linear, -shift[0], -shift[1], -shift[2]];
}

export const shift = (x, y, z) => [1, 0, 0, 0, 1, 0, 0, 0, 1, x, y, z];
export const scaling = (x, y = x, z = x) => [x, 0, 0, 0, y, 0, 0, 0, z, 0, 0, 0];

/** Turn about an axis through the origin (right-hand rule). */
export function turn(axis, degrees) {
  const [x, y, z] = unit(axis);
  const c = Math.cos(rad(degrees));
  const s = Math.sin(rad(degrees));
  const row = (e) => {
    const along = mul([x, y, z], dot([x, y, z], e) * (1 - c));
    return add(add(mul(e, c), mul(cross([x, y, z], e), s)), along);
  };
  return [...row([1, 0, 0]), ...row([0, 1, 0]), ...row([0, 0, 1]), 0, 0, 0];
}

/** Map whose u, v, w axes and origin are given: local (u, v, w) to the outer frame. */
export const fromFrame = ({ u, v, w }, origin) => [...u, ...v, ...w, ...origin];
