// How a part is put on the plate: units, transforms, components, repeats. A placement either hides
// the same printed part behind a transform (the mesh is stored through its inverse) or prints it more
// than once.

import { place, toMesh } from './kernel.mjs';
import { UNIT_MM } from './model3mf.mjs';
import { expectation, moved } from './shapes.mjs';
import { apply, determinant, IDENTITY, inverse, scaling, shift, chained, turn, unit } from './vec.mjs';

export function placed(base, name, random) {
  const make = PLACEMENTS[name];
  if (!make) throw new Error(`no placement ${name}`);
  const done = { ...base, ...make(base, random) };
  // a treatment may stand or fall with how its coordinates are spelled
  return { ...done, model: { spelling: base.spelling, ...done.model } };
}

/** One object in one item; a loose second solid as an item or a component of its own. */
function plain({ mesh, extra, spelling }) {
  const objects = [{ id: 1, mesh, name: 'part' }];
  const items = [{ object: 1 }];
  if (extra) objects.push({ id: 2, mesh: extra.mesh, name: 'loose' });
  if (extra?.how === 'item') items.push({ object: 2 });
  if (extra?.how === 'component') {
    objects.push({ id: 3, name: 'assembly', components: [{ object: 1 }, { object: 2 }] });
    items[0].object = 3;
  }
  return { model: { objects, items, spelling } };
}

/** The mesh that a map brings to where the given one is. */
function behind(mesh, map) {
  const back = inverse(map);
  const points = new Float64Array(mesh.points.length);
  for (let v = 0; v < points.length; v += 3) points.set(apply(back, mesh.points.slice(v, v + 3)), v);
  const corners = Uint32Array.from(mesh.corners);
  if (determinant(map) < 0) {
    for (let f = 0; f < corners.length; f += 3) [corners[f + 1], corners[f + 2]] = [corners[f + 2], corners[f + 1]];
  }
  return { points, corners };
}

const anyTurn = (random) => turn(unit([random.between(-1, 1), random.between(-1, 1), random.between(-1, 1) + 1e-3]), random.between(20, 340));
const anyShift = (random) => shift(random.between(-50, 50), random.between(-50, 50), random.between(-5, 50));

/** Stored through the inverse of a map, printed through it: the plate sees the same part. */
const through = (mapOf) => ({ mesh }, random) => {
  const map = mapOf(random);
  return { model: { objects: [{ id: 7, mesh: behind(mesh, map), name: 'part' }], items: [{ object: 7, transform: map }], spelling: 'nine' } };
};

/** Two levels of components whose transforms and the item's make up one map. */
function nested({ mesh }, random) {
  const maps = [0, 1, 2].map(() => chained(anyTurn(random), anyShift(random)));
  const map = chained(chained(maps[0], maps[1]), maps[2]);
  const objects = [
    { id: 3, mesh: behind(mesh, map), name: 'part' },
    { id: 5, name: 'inner', components: [{ object: 3, transform: maps[0] }] },
    { id: 9, name: 'outer', components: [{ object: 5, transform: maps[1] }] },
  ];
  return { model: { objects, items: [{ object: 9, transform: maps[2] }], spelling: 'nine' } };
}

const unitOf = (name) => ({ mesh }) => {
  const s = UNIT_MM[name];
  return { model: { unit: name, objects: [{ id: 1, mesh: { ...mesh, points: mesh.points.map((x) => x / s) } }], items: [{ object: 1 }], spelling: 'nine' } };
};

/** Printed taller than drawn: round bores come out oval and must be left. */
function stretched({ mesh, features }) {
  const map = scaling(1, 1, 1.25);
  const oval = (f) => ({
    ...f, kind: 'oval', find: 'may', expect: 'leave', why: ['oval'], p: apply(map, f.p), r: f.r * 1.12, exact: false, polygon: undefined,
  });
  return { model: { objects: [{ id: 1, mesh }], items: [{ object: 1, transform: map }] }, features: features.map(oval) };
}

/** The same object again: what each copy needs is judged as it lies. */
const repeated = (mapsOf) => ({ mesh, features, solid }, random) => {
  const maps = [IDENTITY, ...mapsOf(random)];
  const all = maps.flatMap((map, item) =>
    features.map((f) => {
      if (!item || f.kind !== 'bore') return { ...moved(f, map), item };
      return { ...moved(f, map), ...expectation(toMesh(place(solid, map)), moved(f, map)), item };
    }));
  return { model: { objects: [{ id: 1, mesh }], items: maps.map((m) => ({ object: 1, transform: m })) }, features: all };
};

/** Turned about the upright: everything must come out as without it, turned. */
function aboutZ({ mesh, features, extra }, random) {
  const map = chained(turn([0, 0, 1], random.between(5, 85)), shift(20, -30, 0));
  const { model } = plain({ mesh, extra });
  model.items.forEach((item) => (item.transform = map));
  return { model, features: features.map((f) => moved(f, map)) };
}

/** Beside the printed part: an object that nothing builds and a support. */
function withUnprinted({ mesh, extra }) {
  const { model } = plain({ mesh, extra });
  const away = { ...mesh, points: mesh.points.map((x, i) => (i % 3 === 0 ? x + 500 : x)) };
  model.objects.push({ id: 20, mesh, name: 'kept aside' }, { id: 21, type: 'support', mesh: away, name: 'support' });
  model.items.push({ object: 21 });
  return { model };
}

/** Identifiers of the production extension on objects, items and build. */
const production = (make) => (base, random) => {
  const { model, ...rest } = make(base, random);
  const id = (n) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`;
  model.objects.forEach((o, i) => (o.uuid = id(100 + i)));
  model.items.forEach((o, i) => (o.uuid = id(200 + i)));
  return { ...rest, model: { ...model, uuid: id(1) } };
};
const otherWays = repeated((random) => [
  chained(turn([1, 0, 0], 180), shift(150, 0, 60)),
  chained(turn([random.next(), random.next(), 0.1], 90), shift(0, 200, 60)),
  chained(turn([0, 1, 0], 90), shift(-200, 0, 60)),
]);


/** Objects in a model part of their own, the build in the root part. */
const apart = (make) => (base, random) => {
  const { model, ...rest } = make(base, random);
  const part = '/3D/Objects/shapes.model';
  const objects = model.objects.map((o) => ({ ...o, part }));
  return { ...rest, model: { ...model, objects, items: model.items.map((i) => ({ ...i, path: part })) } };
};

/** Materials: one for the object, others for some triangles. */
const coloured = (make) => (base, random) => {
  const { model, ...rest } = make(base, random);
  const resources = '<basematerials id="90"><base name="grey" displaycolor="#808080"/><base name="red" displaycolor="#C00000"/><base name="blue" displaycolor="#0000C0FF"/></basematerials>';
  const objects = model.objects.map((o) => (o.mesh ? {
    ...o, more: ' pid="90" pindex="0"',
    mesh: { ...o.mesh, marks: Array.from({ length: o.mesh.corners.length / 3 }, () => random.pick(['', ' pid="90" p1="1"', ' pid="90" p1="2"'])) },
  } : o));
  return { ...rest, model: { ...model, resources, objects } };
};

/** Objects that lie several ways up are left as they are when the caller says so. */
const left = (make) => (base, random) => {
  const done = make(base, random);
  const features = done.features.map((f) => ({ ...f, expect: 'leave', why: ['mixed'], exact: false }));
  return { ...done, features, args: ['--mixed-orientation', 'leave'] };
};

export const PLACEMENTS = {
  plain, nested, stretched, aboutZ, withUnprinted,
  production: production(plain), productionOtherWays: production(otherWays),
  apart: production(apart(plain)), apartOtherWays: production(apart(otherWays)),
  coloured: coloured(plain), colouredOtherWays: coloured(otherWays), leftOtherWays: left(otherWays),
  turned: through((random) => chained(anyTurn(random), anyShift(random))),
  mirrored: through((random) => chained(chained(scaling(-1, 1, 1), anyTurn(random)), anyShift(random))),
  scaled: through((random) => chained(scaling(random.pick([0.1, 0.5, 2.5, 25.4])), anyTurn(random))),
  ovalInFile: through((random) => chained(scaling(1.3, 0.8, 1.1), anyTurn(random))),
  inch: unitOf('inch'), micron: unitOf('micron'), metre: unitOf('meter'),
  twiceOneWay: repeated((random) => [shift(120, 0, 0), chained(turn([0, 0, 1], random.pick([90, 37])), shift(-150, 20, 0))]),
  twiceOtherWays: otherWays,
};
