// Writes one large part with its truth: a plate with a field of bores, its faces and walls subdivided.
//
//   node big.mjs --out DIR/NAME.3mf --triangles 1000000 --bores 200
//
// For benchmarks and for showing that time stays linear: score.mjs --corpus DIR judges it. Not part of
// the fixed set.

import { writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import { truthOf, truthText } from './cases.mjs';
import { box, keep, minus, release, toMesh } from './kernel.mjs';
import { writePackage } from './model3mf.mjs';
import { options } from './options.mjs';
import { bore, cutter, ring } from './shapes.mjs';

const [triangles, bores] = [Number(options.triangles ?? 1e6), Number(options.bores ?? 200)];
const columns = Math.ceil(Math.sqrt(bores));
const pitch = 10;
// Above each bore there are 7.5 mm to the next one or to the top, so that each gets its full peak.
// Over some hundred ideal roofs one by one take the judging kernel too long.
const features = Array.from({ length: bores }, (_, i) => {
  const p = [(i % columns) * pitch, 0, Math.floor(i / columns) * pitch + pitch];
  return bore({
    r: 2.5, p, polygon: ring(24, 2.5, (i % 7) / 7), wall: [-4, 4], range: [[-4, -4], [4, 4]],
    expect: 'reshape', why: ['peak'], exact: bores <= 200, rough: true,
  });
});
const rows = Math.ceil(bores / columns);
const plate = box([-pitch, -4, 0], [columns * pitch, 4, (rows + 1) * pitch]);
const solid = minus(plate, ...features.map((b) => cutter(b, -9, 9)));
// Equilateral triangles of side s have the area s^2 sqrt(3) / 4; the kernel halves until no edge is
// longer than asked, which comes out near twice as many.
const length = Math.sqrt((2 * 4 * solid.surfaceArea()) / (Math.sqrt(3) * triangles));
const mesh = toMesh(triangles > 0 ? keep(solid.refineToLength(length)) : solid);
const name = basename(options.out, '.3mf');
writeFileSync(options.out, writePackage({ title: name, objects: [{ id: 1, mesh }], items: [{ object: 1 }] }));
writeFileSync(options.out.replace(/3mf$/, 'truth.json'), truthText(truthOf({ name, family: 'large', treatment: 'none', placement: 'plain', seed: 0 }, { features })));
console.log(`${options.out}: ${mesh.corners.length / 3} triangles, ${mesh.points.length / 3} vertices, ${bores} bores`);
release();
