// The solid kernel that makes the cases and judges the results: manifold-3d, which shares no code
// with Gable. Thin names over it, and reading and writing its vertices in double precision (its
// mesh arrays are single precision, its inside is not).

import Module from 'manifold-3d';
import { apply, fromFrame } from './vec.mjs';

const kernel = await Module();
kernel.setup();
export const { Manifold, CrossSection, Mesh } = kernel;

let alive = [];
/** Remembers a solid so that release() frees it: the kernel's memory is not collected. */
export const keep = (solid) => {
  alive.push(solid);
  return solid;
};
export function release() {
  const done = new Set(alive);
  alive = [];
  for (const solid of done) solid.delete();
}

/** 4x4 column-major matrix of the kernel from a row-vector map. */
const matrix = (m) => [m[0], m[1], m[2], 0, m[3], m[4], m[5], 0, m[6], m[7], m[8], 0, m[9], m[10], m[11], 1];

export const place = (solid, map) => keep(solid.transform(matrix(map)));
export const box = (low, high) =>
  keep(
    keep(Manifold.cube([high[0] - low[0], high[1] - low[1], high[2] - low[2]])).translate(low),
  );
export const union = (...solids) => keep(Manifold.union(solids.flat()));
export const minus = (a, ...b) => keep(Manifold.difference([a, ...b.flat()]));
export const common = (...solids) => keep(Manifold.intersection(solids.flat()));
export const ball = (radius, n) => keep(Manifold.sphere(radius, n));
export const hull = (points) => keep(Manifold.hull(points));
export const pieces = (solid) => solid.decompose().map(keep);

/** Prism over a counter-clockwise polygon in the (u, v) plane of a frame, from w = low to high. */
export function prism(frame, origin, polygon, low, high) {
  const straight = keep(Manifold.extrude([polygon], high - low));
  return place(keep(straight.translate([0, 0, low])), fromFrame(frame, origin));
}

/** Solid of two polygons with equally many corners at two heights (frustum, cone when small). */
export function loft(frame, origin, polygonLow, low, polygonHigh, high) {
  const points = [
    ...polygonLow.map(([u, v]) => [u, v, low]),
    ...polygonHigh.map(([u, v]) => [u, v, high]),
  ];
  return place(hull(points), fromFrame(frame, origin));
}

/**
 * Solid with one ring of corners at each of several heights, all of one shape in different sizes, as
 * on a lathe: profile [[w, scale], ...] with w ascending; 0 as the last scale is a point. Made in one
 * piece, because a boolean of a prism and a cone that share a ring leaves needles there.
 */
export function turned(frame, origin, polygon, profile) {
  const map = fromFrame(frame, origin);
  const n = polygon.length;
  const pointed = profile[profile.length - 1][1] === 0;
  const rings = pointed ? profile.slice(0, -1) : profile;
  const points = rings.flatMap(([w, scale]) => polygon.flatMap(([u, v]) => apply(map, [u * scale, v * scale, w])));
  const facets = [];
  for (let j = 0; j + 1 < rings.length; j++) {
    for (let k = 0; k < n; k++) {
      const [a, b] = [j * n + k, j * n + ((k + 1) % n)];
      facets.push([a, b, a + n], [b, b + n, a + n]);
    }
  }
  const last = (rings.length - 1) * n;
  const tip = pointed ? points.push(...apply(map, [0, 0, profile[rings.length][0]])) / 3 - 1 : last;
  for (let k = 1; k + 1 < n; k++) facets.push([0, k + 1, k]);
  if (pointed) for (let k = 0; k < n; k++) facets.push([last + k, last + ((k + 1) % n), tip]);
  else for (let k = 1; k + 1 < n; k++) facets.push([last, last + k, last + k + 1]);
  return fromMesh({ points: Float64Array.from(points), corners: Uint32Array.from(facets.flat()) });
}

/** Plain mesh with double coordinates: { points: Float64Array, corners: Uint32Array }. */
export function toMesh(solid) {
  const raw = solid.getMesh();
  if (raw.numProp !== 3) throw new Error('a mesh with extra vertex properties was not expected');
  const points = new Float64Array(raw.vertProperties.length);
  let at = 0;
  const probe = solid.warp((vertex) => {
    for (const x of vertex) {
      if (Math.fround(x) !== raw.vertProperties[at]) throw new Error('vertex orders differ');
      points[at++] = x;
    }
  });
  probe.delete();
  if (at !== points.length) throw new Error('vertex counts differ');
  return { points, corners: Uint32Array.from(raw.triVerts) };
}

/**
 * Solid from a closed mesh, in double precision. Throws when the kernel does not accept it. Points
 * that fall together in single precision keep one of their double values.
 */
export function fromMesh({ points, corners }) {
  const raw = new Mesh({
    numProp: 3,
    vertProperties: Float32Array.from(points),
    triVerts: Uint32Array.from(corners),
  });
  const rough = keep(Manifold.ofMesh(raw));
  if (rough.status() !== 'NoError') throw new Error(`the kernel refuses the mesh: ${rough.status()}`);
  const exact = new Map();
  for (let v = 0; v < points.length; v += 3) {
    exact.set(points.slice(v, v + 3).map(Math.fround).join(), v);
  }
  return keep(
    rough.warp((vertex) => {
      const at = exact.get(vertex.map(Math.fround).join());
      if (at !== undefined) for (let i = 0; i < 3; i++) vertex[i] = points[at + i];
    }),
  );
}
