// Parts that look like things people print: the pieces of an invented folding workshop lamp with a
// hand winch. Fixed sizes, no chance.

import { box, minus, prism, union } from '../kernel.mjs';
import { bore, cutter, lathe, other, ring } from '../shapes.mjs';
import { sectionFrame } from '../vec.mjs';

/** L-shaped foot: two bores through the upright leg, one through a rib, four bolt holes in the base. */
export function bracket() {
  const base = box([-30, 0, 0], [30, 50, 6]);
  const leg = box([-30, 0, 0], [30, 8, 48]);
  const rib = prism(sectionFrame([1, 0, 0]), [-4, 0, 0], [[7, 5], [44, 5], [7, 44]], 0, 8);
  const d = [0, 1, 0];
  const features = [
    bore({ p: [-17, 4, 30], d, r: 5, polygon: ring(48, 5), wall: [-4, 4] }),
    bore({ p: [17, 4, 30], d, r: 5, polygon: ring(48, 5), wall: [-4, 4] }),
    bore({ p: [0, 17, 14], d: [1, 0, 0], r: 3, polygon: ring(32, 3, 0.5), wall: [-4, 4] }),
    ...[[-22, 20], [22, 20], [-22, 42], [22, 42]].map(([x, y]) => bore({ p: [x, y, 3], d: [0, 0, 1], r: 2.25, polygon: ring(32, 2.25), wall: [-3, 3] })),
  ];
  const solid = minus(union(base, leg, rib), ...features.map((b) => cutter(b, -7, 7)));
  return { solid, features, fixed: true };
}

/** Hinge printed in place: three knuckles on two leaves, a loose pin through them, countersunk leaves. */
export function hinge() {
  const [r, outer, play] = [3.2, 7.5, 0.35];
  const d = [0, 1, 0];
  const knuckle = (from, to) => prism(sectionFrame(d), [0, 0, outer], ring(64, outer, 0.25), from, to);
  const leaf = (side, spans) => union(
    box(side < 0 ? [-38, 0, 0] : [9, 0, 0], side < 0 ? [-9, 45, 4] : [38, 45, 4]),
    ...spans.flatMap(([a, b]) => [knuckle(a, b), box(side < 0 ? [-9.1, a, 0] : [0, a, 0], side < 0 ? [0, b, 4] : [9.1, b, 4])]),
  );
  const spans = [[0, 14.6], [15, 30], [30.4, 45]];
  const features = spans.map(([a, b]) => bore({ p: [0, 0, outer], d, r, polygon: ring(48, r), wall: [a, b], reach: [a - 0.19, b + 0.19], group: 1 }));
  features[0].reach[0] = -60;
  features[2].reach[1] = 100;
  const screws = [[-26, 10], [-26, 35], [26, 10], [26, 35]].map(([x, y]) => bore({ p: [x, y, 0], d: [0, 0, 1], r: 2.1, polygon: ring(32, 2.1), wall: [0, 2.6], exact: false }));
  const holes = [cutter(features[0], -5, 50), ...screws.map((b) => lathe(b, [[-1, 1], [2.6, 1], [5.4, (2.1 + 2.8) / 2.1]]))];
  const body = minus(union(leaf(-1, [spans[0], spans[2]]), leaf(1, [spans[1]])), ...holes);
  const pin = prism(sectionFrame(d), [0, 0, outer], ring(48, r - play), -1.5, 46.5);
  return { solid: union(body, pin), host: body, features: [...features, ...screws, other('pin', { p: [0, 0, outer], d, r: r - play, wall: [-1.5, 46.5] })], fixed: true };
}

/** Split clamp for a 22 mm tube: the big bore is cut open on one side, two screws cross the ears. */
export function clamp() {
  const d = [0, 1, 0];
  const body = union(prism(sectionFrame(d), [0, 0, 18], ring(96, 18), -10, 10), box([-18, -10, 0], [18, 10, 18]), box([12, -10, 11], [36, 10, 25]));
  const tube = prism(sectionFrame(d), [0, 0, 18], ring(96, 11), -20, 20);
  const slit = box([0, -20, 17], [50, 20, 19]);
  const screw = (z0, z1, y) => bore({ p: [29, y, 18], d: [0, 0, 1], r: 2.2, polygon: ring(32, 2.2), wall: [z0 - 18, z1 - 18] });
  const screws = [screw(11, 17, -5), screw(19, 25, -5), screw(11, 17, 5), screw(19, 25, 5)];
  const dowel = bore({ p: [-15.5, 0, 5], d, r: 2.1, polygon: ring(24, 2.1), wall: [-10, 10] });
  const solid = minus(body, tube, slit, cutter(screws[0], -9, 9), cutter(screws[2], -9, 9), cutter(dowel, -12, 12));
  return { solid, features: [other('split', { p: [0, 0, 18], d, r: 11, wall: [-10, 10], expect: 'either', why: ['partial'] }), ...screws, dowel], fixed: true };
}

/** Wall of a winch: two stepped bearing seats, a shaft bore, small screws around, a leaning oil bore. */
export function gearWall() {
  const d = [0, 1, 0];
  const wall = box([-50, 0, 0], [50, 14, 62]);
  const rim = minus(box([-50, -6, 0], [50, 0, 62]), box([-44, -7, 6], [44, 1, 56]));
  const seat = (x, z) => [
    bore({ p: [x, 0, z], d, r: 11, polygon: ring(96, 11), wall: [7, 14], reach: [7, 70], ends: ['narrowing', 'open'], group: x }),
    bore({ p: [x, 0, z], d, r: 6, polygon: ring(64, 6), wall: [0, 7], reach: [-40, 7], ends: ['open', 'step'], group: x }),
  ];
  const main = [...seat(-22, 30), ...seat(20, 30)];
  const shaft = bore({ p: [-1, 0, 13], d, r: 2.5, polygon: ring(36, 2.5), wall: [0, 14] });
  const screws = [[-36, 48], [-8, 48], [6, 48], [34, 48], [-36, 12], [34, 12]].map(([x, z]) => bore({ p: [x, 0, z], d, r: 1.6, polygon: ring(20, 1.6), wall: [0, 14] }));
  const lean = Math.PI / 9;
  const oil = bore({ p: [42, 7, 38], d: [0, Math.cos(lean), Math.sin(lean)], r: 2.25, polygon: ring(32, 2.25), wall: [-9, 9], ends: ['slanted', 'slanted'] });
  const holes = [
    ...main.map((b) => (b.r > 10 ? cutter(b, 7, 20) : cutter(b, -9, 7))),
    cutter(shaft, -9, 20), ...screws.map((b) => cutter(b, -9, 20)), cutter(oil, -8.9, 20),
  ];
  return { solid: minus(union(wall, rim), ...holes), features: [...main, shaft, ...screws, oil], fixed: true };
}
