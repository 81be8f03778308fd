// Solids as the boolean kernel Manifold sees them. It takes a mesh only if every edge is shared by
// exactly two triangles that run it in opposite directions; otherwise it answers with a status.
import Module from 'manifold-3d';

const kernel = await Module();
kernel.setup();
const { Manifold, Mesh } = kernel;

/** {status, solid}; the solid is null unless the status is NoError. Coordinates become floats. */
export function solidOf({ points, corners }) {
  const mesh = new Mesh({
    numProp: 3,
    vertProperties: Float32Array.from(points),
    triVerts: Uint32Array.from(corners),
  });
  try {
    const solid = new Manifold(mesh);
    return { status: solid.status(), solid };
  } catch (thrown) {
    return { status: thrown.code ?? String(thrown), solid: null };
  }
}

/** The same mesh with vertices at exactly the same point made one. */
export function welded({ points, corners }) {
  const first = new Map();
  const number = new Uint32Array(points.length / 3);
  for (let v = 0; v < number.length; v++) {
    const key = points.slice(3 * v, 3 * v + 3).join(' ');
    if (!first.has(key)) first.set(key, v);
    number[v] = first.get(key);
  }
  return { points, corners: corners.map((vertex) => number[vertex]) };
}

/** Whether two meshes have the same numbers throughout. */
export function same(a, b) {
  const equal = (p, q) => p.length === q.length && p.every((value, k) => value === q[k]);
  return equal(a.points, b.points) && equal(a.corners, b.corners);
}

/** Volume of a without b in mm^3, and the surface of what that is in mm^2. */
export function without(a, b) {
  const rest = a.subtract(b);
  const found = rest.isEmpty() ? { volume: 0, surface: 0 } : { volume: rest.volume(), surface: rest.surfaceArea() };
  rest.delete();
  return found;
}

/**
 * How far a volume may be off because coordinates are floats: a point moves by at most
 * reach * 2^-24, so a face moves by at most that along its normal (times sqrt 3 for three axes),
 * and two solids were rounded, by the reader and by the kernel. Derived.
 *
 * @param solid gives the reach
 * @param surface what may move, in mm^2: all of the solid, or that of the difference of two solids,
 *     which are rounded alike where they are the same
 */
export function volumeSlack(solid, surface = solid.surfaceArea()) {
  const { min, max } = solid.boundingBox();
  const reach = Math.max(...[...min, ...max].map(Math.abs));
  return 4 * Math.sqrt(3) * reach * 2 ** -24 * surface;
}
