// Reads a package with the consortium's reference library, strictly unless told otherwise, and flattens the
// build into meshes in millimetres as they lie on the plate.
import lib3mf from '@3mfconsortium/lib3mf';
import { readFileSync } from 'node:fs';

const library = await lib3mf();
const wrapper = new library.CWrapper();
// Core specification 3.4, attribute unit; the library numbers the units in this order from 0.
const MILLIMETRES = [0.001, 1, 10, 25.4, 304.8, 1000];

/** What the library says of a file: {error, warnings[], meshes[]}; error is '' when it reads. */
export function read(path, strict = true) {
  library.FS.writeFile('/model.3mf', readFileSync(path));
  const model = wrapper.CreateModel();
  const reader = model.QueryReader('3mf');
  reader.SetStrictModeActive(strict);
  let error = '';
  try {
    reader.ReadFromFile('/model.3mf');
  } catch (thrown) {
    error = String(thrown.message ?? thrown).split('\n')[0];
  }
  const warnings = [];
  for (let k = 0; k < reader.GetWarningCount(); k++) warnings.push(warningText(reader.GetWarning(k)));
  const meshes = error === '' ? flatten(model) : [];
  reader.delete();
  model.delete();
  library.FS.unlink('/model.3mf');
  return { error, warnings, meshes };
}

function warningText(warning) {
  return warning.return ?? JSON.stringify(warning);
}

function flatten(model) {
  const scale = MILLIMETRES[model.GetUnit().value];
  const toPrint = [[scale, 0, 0], [0, scale, 0], [0, 0, scale], [0, 0, 0]];
  const found = [];
  const items = model.GetBuildItems();
  while (items.MoveNext()) {
    const item = items.GetCurrent();
    const object = item.GetObjectResource();
    const turn = item.HasObjectTransform() ? matrix(item.GetObjectTransform()) : null;
    place(model, object, turn ? [turn, toPrint] : [toPrint], found);
    object.delete();
    item.delete();
  }
  items.delete();
  return found;
}

function place(model, object, chain, found) {
  const id = object.GetUniqueResourceID();
  if (object.IsMeshObject()) {
    const mesh = model.GetMeshObjectByID(id);
    found.push(placed(mesh, chain));
    mesh.delete();
    return;
  }
  const group = model.GetComponentsObjectByID(id);
  for (let k = 0; k < group.GetComponentCount(); k++) {
    const component = group.GetComponent(k);
    const child = component.GetObjectResource();
    const turn = component.HasTransform() ? [matrix(component.GetTransform())] : [];
    place(model, child, [...turn, ...chain], found);
    child.delete();
    component.delete();
  }
  group.delete();
}

function placed(mesh, chain) {
  const points = new Float64Array(3 * mesh.GetVertexCount());
  for (let v = 0; 3 * v < points.length; v++) {
    const at = mesh.GetVertex(v);
    let p = [at.get_Coordinates0(), at.get_Coordinates1(), at.get_Coordinates2()];
    at.delete();
    for (const map of chain) p = apply(map, p);
    points.set(p, 3 * v);
  }
  const corners = new Uint32Array(3 * mesh.GetTriangleCount());
  for (let f = 0; 3 * f < corners.length; f++) {
    const at = mesh.GetTriangle(f);
    corners.set([at.get_Indices0(), at.get_Indices1(), at.get_Indices2()], 3 * f);
    at.delete();
  }
  const mirrored = chain.reduce((sign, map) => sign * Math.sign(determinant(map)), 1) < 0;
  if (mirrored) {
    for (let f = 0; f < corners.length; f += 3) [corners[f], corners[f + 1]] = [corners[f + 1], corners[f]];
  }
  return { points, corners };
}

// Row vectors, p' = (x y z 1) M: core specification 3.3.
function apply(map, [x, y, z]) {
  return [0, 1, 2].map((k) => x * map[0][k] + y * map[1][k] + z * map[2][k] + map[3][k]);
}

function determinant([a, b, c]) {
  return (
    a[0] * (b[1] * c[2] - b[2] * c[1]) -
    a[1] * (b[0] * c[2] - b[2] * c[0]) +
    a[2] * (b[0] * c[1] - b[1] * c[0])
  );
}

function matrix(transform) {
  const rows = [0, 1, 2, 3].map((r) => [0, 1, 2].map((k) => transform[`get_Fields_${r}_${k}`]()));
  transform.delete();
  return rows;
}
