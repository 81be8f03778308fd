// Exact signs of determinants: double arithmetic behind an error bound, whole-number arithmetic
// when the bound does not decide. Bounds: Shewchuk 1997, Discrete & Computational Geometry 18.

const EPSILON = 2 ** -53;
const BOUND_2D = (3 + 16 * EPSILON) * EPSILON;
const BOUND_3D = (7 + 56 * EPSILON) * EPSILON;
/** Numbers of a part in millimetres have no bit below 2^-110 as a rule, and never one below 2^-400. */
const USUAL = { least: 2 ** -57, by: 110n };
const UTMOST = { least: 2 ** -347, by: 400n };
const view = new DataView(new ArrayBuffer(8));

/** The double times 2^by as a whole number. */
function whole(x, by) {
  if (x === 0) return 0n;
  view.setFloat64(0, x);
  const bits = view.getBigUint64(0);
  const exponent = (bits >> 52n) & 0x7ffn;
  const mantissa = (bits & 0xfffffffffffffn) | (exponent ? 0x10000000000000n : 0n);
  const size = mantissa << ((exponent || 1n) - 1075n + by);
  return x < 0 ? -size : size;
}
/** By how many bits all coordinates of some points must be shifted to be whole. */
function scale(p, points) {
  let least = Infinity;
  for (const a of points) for (let i = 0; i < 3; i++) if (p[a + i] !== 0) least = Math.min(least, Math.abs(p[a + i]));
  if (least >= USUAL.least) return USUAL.by;
  if (least < UTMOST.least) throw new RangeError(`${least} is too small for exact signs`);
  return UTMOST.by;
}
/** Do the points lie in a plane of two axes? Most faces of parts do. */
const level = (p, a, b, c, d, i) => p[a + i] === p[b + i] && p[b + i] === p[c + i] && p[c + i] === p[d + i];
const signOf = (big) => (big > 0n ? 1 : big < 0n ? -1 : 0);

/** +1 when d lies on the side of abc from which it looks clockwise (below its normal), -1 above, 0 on it. */
export function orient3(p, a, b, c, d) {
  const [ax, ay, az] = [p[a] - p[d], p[a + 1] - p[d + 1], p[a + 2] - p[d + 2]];
  const [bx, by, bz] = [p[b] - p[d], p[b + 1] - p[d + 1], p[b + 2] - p[d + 2]];
  const [cx, cy, cz] = [p[c] - p[d], p[c + 1] - p[d + 1], p[c + 2] - p[d + 2]];
  const [m1, m2, m3, m4, m5, m6] = [bx * cy, cx * by, cx * ay, ax * cy, ax * by, bx * ay];
  const det = az * (m1 - m2) + bz * (m3 - m4) + cz * (m5 - m6);
  const size =
    (Math.abs(m1) + Math.abs(m2)) * Math.abs(az) +
    (Math.abs(m3) + Math.abs(m4)) * Math.abs(bz) +
    (Math.abs(m5) + Math.abs(m6)) * Math.abs(cz);
  if (Math.abs(det) > BOUND_3D * size) return Math.sign(det);
  return exact3(p, a, b, c, d);
}
function exact3(p, a, b, c, d) {
  if (level(p, a, b, c, d, 0) || level(p, a, b, c, d, 1) || level(p, a, b, c, d, 2)) return 0;
  const bits = scale(p, [a, b, c, d]);
  const [dx, dy, dz] = [whole(p[d], bits), whole(p[d + 1], bits), whole(p[d + 2], bits)];
  const row = (i) => [whole(p[i], bits) - dx, whole(p[i + 1], bits) - dy, whole(p[i + 2], bits) - dz];
  const [[ax, ay, az], [bx, by, bz], [cx, cy, cz]] = [row(a), row(b), row(c)];
  return signOf(az * (bx * cy - cx * by) + bz * (cx * ay - ax * cy) + cz * (ax * by - bx * ay));
}

/** Sign of the area of abc in the plane of coordinates i and j. */
export function orient2(p, a, b, c, i, j) {
  const left = (p[a + i] - p[c + i]) * (p[b + j] - p[c + j]);
  const right = (p[a + j] - p[c + j]) * (p[b + i] - p[c + i]);
  const det = left - right;
  if (Math.abs(det) > BOUND_2D * (Math.abs(left) + Math.abs(right))) return Math.sign(det);
  if (level(p, a, b, c, c, i) || level(p, a, b, c, c, j)) return 0;
  const by = scale(p, [a, b, c]);
  const [cx, cy] = [whole(p[c + i], by), whole(p[c + j], by)];
  return signOf((whole(p[a + i], by) - cx) * (whole(p[b + j], by) - cy) - (whole(p[a + j], by) - cy) * (whole(p[b + i], by) - cx));
}
