// Checks of the judge's own parts on meshes whose answers are known by construction.

import assert from 'node:assert/strict';
import { box, fromMesh, minus, prism, release, toMesh } from './kernel.mjs';
import { settledDifferences } from './compare.mjs';
import { crossings, flatFacets, topology } from './health.mjs';
import { placements, printed, readPackage, writePackage } from './model3mf.mjs';
import { bore, cutter, legOf, measuredShare, ring, roofArea, roofOver, sectionAngle, tipRing, withRoofs } from './shapes.mjs';
import { deg, inverse, rad, chained, sectionFrame, turn, shift } from './vec.mjs';
import { orient3 } from './signs.mjs';
import { doubtful, slowOnes } from './times.mjs';

const all = (mesh) => Array.from({ length: mesh.corners.length / 3 }, (_, f) => f);
const near = (a, b, by) => assert.ok(Math.abs(a - b) <= by, `${a} is not ${b}`);

// Roof of a polygon: derived values (n 32 and n 12, r 4 and 1, slope 45; shoelace).
const over = (polygon) => roofArea(polygon, roofOver(polygon, rad(45)));
near(over(ring(32, 4)), 3.514219, 1e-6);
near(over(ring(12, 1)), 0.183013, 1e-6);
near(over(ring(24, 4, 3 / 15)), 3.532861, 1e-6);
near(deg(sectionAngle(45, 20)), 41.1937, 1e-4);
assert.equal(sectionAngle(45, 45.001), undefined);

// A bore 6 mm long that leans by 10 degrees, ridge 8 mm up: (8 + 2.4) sin 10 = 1.805941 from the mouth (derived).
near(measuredShare(8, 3, 10), 1 - 1.805941 / 3, 1e-6);
assert.deepEqual([measuredShare(8, 10, 0), measuredShare(8, 10, 10), measuredShare(8, 1, 19)], [0.5, 0.5, 0.1]);

// Block with a bore of 32 facets: 17001.137551 before, 16930.853163 with its roof (derived).
const b = bore({ p: [0, 0, 0], r: 4, polygon: ring(32, 4), wall: [-10, 10] });
const block = minus(box([-15, -10, -15], [15, 10, 15]), cutter(b, -20, 20));
near(block.volume(), 17001.137551, 2e-5);
near(withRoofs(block, [{ b, angle: rad(45) }]).volume(), 16930.853163, 2e-5);

// Chamfer of a pin, leg 0.8 square to the sides of 32 facets: P c^2 / 2 - n tan(pi / n) c^3 / 3 (derived).
const perimeter = 2 * 32 * 3 * Math.sin(Math.PI / 32);
const pin = prism(sectionFrame([0, 1, 0]), [0, 0, 0], ring(32, 3), 0, 10);
const eased = minus(pin, tipRing({ p: [0, 0, 0], d: [0, 1, 0], r: 3, polygon: ring(32, 3), leg: 0.8, end: 10 }));
near(pin.volume() - eased.volume(), perimeter * 0.32 - (32 * Math.tan(Math.PI / 32) * 0.512) / 3, 2e-5);
assert.deepEqual([0.5, 1.2, 2, 3, 8].map((r) => +legOf(r).toFixed(6)), [0.2, 0.4, 0.6, 0.9, 1.5]);

// A package comes back as it was written; a transform and its inverse cancel.
const mesh = toMesh(block);
const map = chained(turn([1, 2, 3], 77), shift(3, 4, 5));
const back = readPackage(writePackage({ unit: 'inch', objects: [{ id: 4, mesh }], items: [{ object: 4, transform: map }], spelling: 'exact' }));
assert.deepEqual(back.objects.get(4).mesh.points, mesh.points);
assert.deepEqual(back.objects.get(4).mesh.corners, mesh.corners);
const [{ toPrint }] = placements(back);
const there = printed(mesh, toPrint);
near(topology(there).volume / 25.4 ** 3, block.volume(), 1e-6);
chained(map, inverse(map)).forEach((x, i) => near(x, [1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0][i], 1e-12));

// A sound solid is called sound; each flaw is named.
const sound = topology(mesh);
assert.deepEqual([sound.open, sound.bad, sound.shells, sound.euler], [0, 0, 1, 0]);
near(fromMesh(mesh).volume(), sound.volume, 1e-9);
assert.equal(crossings(mesh, all(mesh)).length, 0);
const change = (edit) => {
  const copy = { points: Float64Array.from(mesh.points), corners: Uint32Array.from(mesh.corners) };
  return edit(copy) ?? copy;
};
assert.equal(topology(change((m) => ({ ...m, corners: m.corners.slice(3) }))).open, 3);
assert.ok(topology(change((m) => void ([m.corners[1], m.corners[2]] = [m.corners[2], m.corners[1]]))).bad > 0);
const lowest = all({ corners: mesh.points }).reduce((x, y) => (mesh.points[3 * y + 1] + mesh.points[3 * y + 2] < mesh.points[3 * x + 1] + mesh.points[3 * x + 2] ? y : x));
const spiked = change((m) => void m.points.set([0, 50, 50], 3 * lowest));
assert.ok(crossings(spiked, all(spiked)).length > 0);
const pressed = change((m) => void m.points.set(m.points.slice(3 * m.corners[0], 3 * m.corners[0] + 3), 3 * m.corners[1]));
assert.ok(flatFacets(pressed, all(pressed)).length > 0);

// Contact counts as crossing: a corner on a face, an edge through a face, two faces in one plane.
const two = (...points) => ({ points: Float64Array.from(points.flat()), corners: Uint32Array.from([0, 1, 2, 3, 4, 5]) });
const floor = [[0, 0, 0], [4, 0, 0], [0, 4, 0]];
assert.equal(crossings(two(...floor, [1, 1, 0], [1, 1, 3], [2, 1, 3]), [0]).length, 1);
assert.equal(crossings(two(...floor, [1, 1, -1], [1, 1, 3], [2, 1, 3]), [1]).length, 1);
assert.equal(crossings(two(...floor, [1, 1, 0], [2, 1, 0], [1, 2, 0]), [0]).length, 1);
assert.equal(crossings(two(...floor, [1, 1, 1e-90], [1, 1, 3], [2, 1, 3]), [0]).length, 0);
assert.equal(crossings(two(...floor, [3, 3, 0], [5, 3, 0], [3, 5, 0]), [0]).length, 0);
const fan = { points: Float64Array.from([...floor, [3, 3, 0], [1, 1, 0]].flat()), corners: Uint32Array.from([0, 1, 2, 0, 1, 4]) };
assert.equal(crossings(fan, [0]).length, 1, 'folded over the shared edge');
assert.equal(crossings({ ...fan, corners: Uint32Array.from([0, 1, 2, 1, 3, 2]) }, [0]).length, 0);

// The exact sign decides where doubles cannot: four points of the plane x = y, one moved by an ulp.
const upright = Float64Array.from([0.1, 0.1, 0, 0.7, 0.7, 0, 0.3, 0.3, 1, 0.5, 0.5, 0.5]);
assert.equal(orient3(upright, 0, 3, 6, 9), 0);
upright[9] = 0.5 + 2 ** -53;
const side = orient3(upright, 0, 3, 6, 9);
upright[9] = 0.5 - 2 ** -54;
assert.deepEqual([Math.abs(side), orient3(upright, 0, 3, 6, 9)], [1, -side]);

// A kernel that loses a piece is told by the volumes, and asked in another way.
const told = { output: 100, ideal: 100.001, more: 0.002, less: 3.882 };
const shared = { both: 99.998, either: 100.003 };
const settled = settledDifferences({ ...told, ...shared }, 0.01);
near(settled.more, 0.002, 1e-9);
near(settled.less, 0.003, 1e-9);
assert.equal(settledDifferences({ ...told, both: 99.998, either: 104 }, 0.01).less, 3.882, 'nothing agrees: the fault stands');
assert.equal(settledDifferences({ output: 96.12, ideal: 100, more: 0.002, less: 3.882, ...shared }, 0.01).less, 3.882, 'truly less');

// Time is compared within a size.
const timed = (name, triangles, ms) => ({ name, triangles, ms });
const even = Array.from({ length: 9 }, (_, i) => timed(`even-${i}`, 100 + i, 10 + i));
assert.deepEqual(slowOnes([...even, timed('large', 100000, 900)]), [], 'a size of its own');
assert.deepEqual(slowOnes([...even, timed('slow', 110, 90)]).map((v) => v.name), ['slow']);
assert.deepEqual(doubtful(even), []);
assert.deepEqual(doubtful([...even, timed('slow', 110, 50)]).map((v) => v.name).sort(), [...even.map((v) => v.name), 'slow']);
release();
console.log('The judge answers as known.');
