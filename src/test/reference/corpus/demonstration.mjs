// The part that the README shows: of an invented folding workshop lamp a foot with a latch that is
// printed in place on its pin, the arm that goes onto the foot's lying pin, and the cap that goes onto
// its two standing pins. Two screws with countersunk heads hold the foot to a wall, two to a bench.
// Fixed sizes, no chance.

import { box, minus, prism, release, toMesh, union } from './kernel.mjs';
import { writePackage } from './model3mf.mjs';
import { lathe, ring } from './shapes.mjs';
import { IDENTITY, sectionFrame, shift } from './vec.mjs';

const BACK = [0, 1, 0];
const UP = [0, 0, 1];
const SIDE = [1, 0, 0];
const DOWN = [0, 0, -1];

const rod = (p, d, r, from, to, n = 48) => prism(sectionFrame(d), p, ring(n, r, 0.5), from, to);
/** Clearance hole and 90 degree countersink for an M4 screw: 4.5 (ISO 273, medium), 9.4 (ISO 15065). */
const seat = (p, d) => lathe({ p, d, polygon: ring(48, 2.25, 0.5) }, [[-1, (9.4 / 2 + 1) / 2.25], [2.45, 1], [30, 1]]);

function foot() {
  const body = union(
    box([-44, 0, 0], [44, 60, 6]), box([-44, 0, 0], [44, 9, 46]),
    box([2, 9, 5], [9, 26, 26]), box([19, 9, 5], [26, 26, 26]),
    rod([-24, 9, 30], BACK, 4, -1, 14), rod([9, 18, 17], SIDE, 3, -1, 9.4),
    ...[-30, 30].map((x) => rod([x, 46, 6], UP, 2.5, -1, 8)),
  );
  const screws = [...[[-6, 34], [36, 34]].map(([x, z]) => seat([x, 9, z], [0, -1, 0])), ...[-20, 20].map((x) => seat([x, 52, 6], DOWN))];
  return minus(body, ...screws);
}
const latch = () => minus(union(box([9.6, 10.5, 8], [17.9, 26, 26]), box([9.6, 20, 8], [17.9, 44, 14])), rod([9, 18, 17], SIDE, 3.35, -5, 20));
const arm = () => minus(union(box([0, 0, 0], [30, 18, 40]), box([29, 0, 0], [96, 18, 16])), rod([15, 0, 26], BACK, 4.15, -1, 15));
const cap = () => minus(box([-40, -9, 0], [40, 9, 14]), ...[-30, 30].map((x) => rod([x, 0, 14], DOWN, 2.6, -1, 9)));

/** Bytes of the package. */
export function demonstration() {
  try {
    const meshes = [foot(), latch(), arm(), cap()].map(toMesh);
    const names = ['foot', 'latch', 'arm', 'cap'];
    const objects = meshes.map((mesh, k) => ({ id: k + 1, name: names[k], mesh }));
    objects.push({ id: 5, name: 'foot with latch', components: [{ object: 1 }, { object: 2, transform: IDENTITY }] });
    const items = [{ object: 5, transform: shift(60, 20, 0) }, { object: 3, transform: shift(120, 20, 0) }, { object: 4, transform: shift(160, 70, 0) }];
    return writePackage({ objects, items, spelling: 'six', title: 'folding workshop lamp' });
  } finally {
    release();
  }
}
