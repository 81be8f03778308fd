// Writes one large part: a plate with a field of bores, its faces and walls subdivided.
//
//   node big.mjs --out FILE.3mf --triangles 1000000 --bores 200
//
// For benchmarks and for showing that time stays linear; not part of the scored set.

import { writeFileSync } from 'node:fs';
import { box, keep, minus, release, toMesh } from './kernel.mjs';
import { writePackage } from './model3mf.mjs';
import { options } from './options.mjs';
import { bore, cutter, ring } from './shapes.mjs';

const [triangles, bores] = [Number(options.triangles ?? 1e6), Number(options.bores ?? 200)];
const columns = Math.ceil(Math.sqrt(bores));
const pitch = 10;
const features = Array.from({ length: bores }, (_, i) => {
  const p = [(i % columns) * pitch, 0, Math.floor(i / columns) * pitch + pitch];
  return bore({ r: 2.5, p, polygon: ring(24, 2.5, (i % 7) / 7), wall: [-4, 4] });
});
const rows = Math.ceil(bores / columns);
const plate = box([-pitch, -4, 0], [columns * pitch, 4, (rows + 1) * pitch]);
const solid = minus(plate, ...features.map((b) => cutter(b, -9, 9)));
// Equilateral triangles of side s have the area s^2 sqrt(3) / 4; the kernel halves until no edge is
// longer than asked, which comes out near twice as many.
const length = Math.sqrt((2 * 4 * solid.surfaceArea()) / (Math.sqrt(3) * triangles));
const mesh = toMesh(triangles > 0 ? keep(solid.refineToLength(length)) : solid);
writeFileSync(options.out, writePackage({ title: 'large plate', objects: [{ id: 1, mesh }], items: [{ object: 1 }] }));
console.log(`${options.out}: ${mesh.corners.length / 3} triangles, ${mesh.points.length / 3} vertices, ${bores} bores`);
release();
