// 3MF packages of the corpus: written from a plain description, read back into placed meshes.
// Only what the corpus needs: one or more model parts, objects with a mesh or with components.

import { apply, determinant, IDENTITY, chained } from './vec.mjs';
import { unzip, zip } from './zip.mjs';

const CORE = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02';
const PRODUCTION = 'http://schemas.microsoft.com/3dmanufacturing/production/2015/06';
const START = 'http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel';

/** Millimetres in one unit (3MF core specification, table of units). */
export const UNIT_MM = { micron: 0.001, millimeter: 1, centimeter: 10, inch: 25.4, foot: 304.8, meter: 1000 };

/** How a coordinate is spelled: shortest single precision, fixed decimals, or nine significant digits. */
export const SPELLINGS = {
  float: (x) => String(+Math.fround(x).toPrecision(9) === 0 ? 0 : shortestFloat(x)),
  nine: (x) => String(+x.toPrecision(9)),
  six: (x) => String(+x.toFixed(6)),
  three: (x) => String(+x.toFixed(3)),
  two: (x) => String(+x.toFixed(2)),
  exact: (x) => String(x),
};
function shortestFloat(x) {
  const single = Math.fround(x);
  for (let digits = 6; digits <= 9; digits++) {
    const text = single.toPrecision(digits);
    if (Math.fround(+text) === single) return +text;
  }
  return single;
}

const transformText = (m) => m.map((x) => String(+x.toPrecision(15))).join(' ');
const transformAttribute = (m) => (m ? ` transform="${transformText(m)}"` : '');
const pathAttribute = (path) => (path ? ` p:path="${path}"` : '');

function meshText({ points, corners, marks }, spell) {
  const lines = ['<mesh>', '<vertices>'];
  for (let v = 0; v < points.length; v += 3) {
    lines.push(`<vertex x="${spell(points[v])}" y="${spell(points[v + 1])}" z="${spell(points[v + 2])}"/>`);
  }
  lines.push('</vertices>', '<triangles>');
  for (let f = 0; f < corners.length; f += 3) {
    lines.push(`<triangle v1="${corners[f]}" v2="${corners[f + 1]}" v3="${corners[f + 2]}"${marks?.[f / 3] ?? ''}/>`);
  }
  lines.push('</triangles>', '</mesh>');
  return lines.join('\n');
}

function objectText(object, spell) {
  const uuid = object.uuid ? ` p:UUID="${object.uuid}"` : '';
  const head = `<object id="${object.id}" type="${object.type ?? 'model'}" name="${object.name ?? 'part'}"${object.more ?? ''}${uuid}>`;
  const body = object.mesh
    ? meshText(object.mesh, spell)
    : ['<components>', ...object.components.map((c) => `<component objectid="${c.object}"${pathAttribute(c.path)}${transformAttribute(c.transform)}/>`), '</components>'].join('\n');
  return `${head}\n${body}\n</object>`;
}

/**
 * Bytes of a package. Model: { unit, resources, objects: [{id, name, type, more, mesh | components,
 * uuid, part}], items: [{object, path, transform, uuid}], spelling }. `resources` is text that stands
 * before the objects, `more` text among the attributes of one, `part` the path of another model part
 * in which it stands (production extension); `mesh.marks` holds further attributes of its triangles.
 */
export function writePackage(model) {
  const spell = SPELLINGS[model.spelling ?? 'float'];
  const production = model.objects.some((o) => o.uuid || o.part);
  const extra = production ? ` xmlns:p="${PRODUCTION}" requiredextensions="p"` : '';
  const build = production ? ` p:UUID="${model.uuid}"` : '';
  const items = model.items.map(
    (i) => `<item objectid="${i.object}"${pathAttribute(i.path)}${transformAttribute(i.transform)}${i.uuid ? ` p:UUID="${i.uuid}"` : ''}/>`,
  );
  const part = (objects, itemTexts, title) => [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<model unit="${model.unit ?? 'millimeter'}" xml:lang="en-US" xmlns="${CORE}"${extra}>`,
    ...(title ? [`<metadata name="Title">${title}</metadata>`] : []),
    '<resources>', ...(model.resources ? [model.resources] : []), ...objects.map((o) => objectText(o, spell)), '</resources>',
    `<build${title ? build : ''}>`, ...itemTexts, '</build>', '</model>', '',
  ].join('\n');
  const others = [...new Set(model.objects.flatMap((o) => o.part ?? []))];
  const relationships = (targets) => `<?xml version="1.0" encoding="UTF-8"?>\n<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${targets.map((t, i) => `<Relationship Target="${t}" Id="rel${i}" Type="${START}"/>`).join('')}</Relationships>\n`;
  return zip([
    ['[Content_Types].xml', `<?xml version="1.0" encoding="UTF-8"?>\n<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>\n`],
    ['_rels/.rels', relationships(['/3D/3dmodel.model'])],
    ['3D/3dmodel.model', part(model.objects.filter((o) => !o.part), items, model.title ?? 'case')],
    ...(others.length ? [['3D/_rels/3dmodel.model.rels', relationships(others)]] : []),
    ...others.map((path) => [path.slice(1), part(model.objects.filter((o) => o.part === path), [])]),
  ]);
}

const attribute = (text, name) => new RegExp(`(?:^|\\s)${name}="([^"]*)"`).exec(text)?.[1];
const transformOf = (text) => {
  const value = attribute(text, 'transform');
  return value ? value.trim().split(/\s+/).map(Number) : IDENTITY;
};

/** Raw text and values of one mesh: every vertex and triangle element as it is spelled. */
function readMesh(text) {
  const vertexTexts = text.match(/<vertex\s[^>]*>/g) ?? [];
  const triangleTexts = text.match(/<triangle\s[^>]*>/g) ?? [];
  const points = new Float64Array(vertexTexts.length * 3);
  vertexTexts.forEach((t, v) => ['x', 'y', 'z'].forEach((k, i) => (points[3 * v + i] = Number(attribute(t, k)))));
  const corners = new Uint32Array(triangleTexts.length * 3);
  triangleTexts.forEach((t, f) => ['v1', 'v2', 'v3'].forEach((k, i) => (corners[3 * f + i] = Number(attribute(t, k)))));
  return { points, corners, vertexTexts, triangleTexts };
}

/**
 * { parts, unitMm, objects: Map key -> {key, id, part, head, type, mesh | components}, items, frame }.
 * The key of an object of the root part is its number, of another part `path#number`; components and
 * items refer by key; `frame` is the text outside the lists, over all model parts.
 */
export function readPackage(bytes) {
  const parts = unzip(bytes);
  const rels = parts.get('_rels/.rels').toString('utf8');
  const start = (rels.match(/<Relationship\s[^>]*>/g) ?? []).find((r) => attribute(r, 'Type') === START);
  const root = attribute(start, 'Target');
  const model = { parts, root, objects: new Map(), items: [], frame: '' };
  const names = [...parts.keys()].filter((name) => name.endsWith('.model')).map((name) => `/${name}`);
  for (const path of names.sort((a, b) => (b === root) - (a === root))) readPart(model, path);
  return model;
}

function readPart(model, path) {
  const xml = model.parts.get(path.slice(1)).toString('utf8');
  const key = (id, where) => (where === model.root ? id : `${where}#${id}`);
  const target = (text) => key(Number(attribute(text, 'objectid')), attribute(text, 'p:path') ?? path);
  for (const [, head, body] of xml.matchAll(/<object\s([^>]*)>([\s\S]*?)<\/object>/g)) {
    const id = Number(attribute(head, 'id'));
    const components = [...body.matchAll(/<component\s([^>]*)>/g)].map(([, text]) => ({ object: target(text), transform: transformOf(text) }));
    const mesh = body.includes('<mesh') ? readMesh(body) : undefined;
    model.objects.set(key(id, path), { key: key(id, path), id, part: path, head, type: attribute(head, 'type') ?? 'model', mesh, components });
  }
  if (path === model.root) {
    model.items = [...xml.matchAll(/<item\s([^>]*)>/g)].map(([, text]) => ({ object: target(text), transform: transformOf(text) }));
    model.unitMm = UNIT_MM[attribute(/<model\s[^>]*>/.exec(xml)[0], 'unit') ?? 'millimeter'];
  }
  model.frame += xml.replace(/<vertices>[\s\S]*?<\/vertices>/g, '<v/>').replace(/<triangles>[\s\S]*?<\/triangles>/g, '<t/>');
}

/** Every printed mesh: [{ item, object, toPrint }], components unfolded, units folded in. */
export function placements(model) {
  const found = [];
  const walk = (item, id, map) => {
    const object = model.objects.get(id);
    if (object.mesh) found.push({ item, object: id, toPrint: map, type: object.type });
    for (const c of object.components) walk(item, c.object, chained(c.transform, map));
  };
  const s = model.unitMm;
  model.items.forEach((entry, item) => walk(item, entry.object, chained(entry.transform, [s, 0, 0, 0, s, 0, 0, 0, s, 0, 0, 0])));
  return found;
}

/** The mesh in print space, outside kept outside when the placement mirrors. */
export function printed(mesh, toPrint) {
  const points = new Float64Array(mesh.points.length);
  for (let v = 0; v < points.length; v += 3) points.set(apply(toPrint, mesh.points.slice(v, v + 3)), v);
  const corners = Uint32Array.from(mesh.corners);
  if (determinant(toPrint) < 0) {
    for (let f = 0; f < corners.length; f += 3) [corners[f + 1], corners[f + 2]] = [corners[f + 2], corners[f + 1]];
  }
  return { points, corners };
}
