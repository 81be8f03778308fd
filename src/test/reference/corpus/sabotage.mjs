// Shows that the judge catches what it is there for: an honest result passes without a fault, and
// each way of spoiling it is named. The honest result is the stand-in's.

import assert from 'node:assert/strict';
import { judge } from './judge.mjs';
import { makeCase } from './cases.mjs';
import { writePackage } from './model3mf.mjs';
import { roofed } from './standin.mjs';
import { missedBars } from './table.mjs';
import { joinedByPlace } from './health.mjs';
import { difference, displacement } from './twins.mjs';
import { add, mul, rad } from './vec.mjs';

const { model, truth } = makeCase({ family: 'nearPlate', k: 0, seed: 7 });
const [feature] = truth.features;
const b = { p: feature.point, d: feature.direction, r: feature.diameterMm / 2, polygon: feature.ring, wall: [feature.range[0][0], feature.range[1][0]] };
const input = writePackage({ ...model, spelling: 'exact' });
const mesh = model.objects[0].mesh;
const honest = roofed(mesh, b, rad(45));
const pack = (m) => writePackage({ ...model, objects: [{ ...model.objects[0], mesh: m }], spelling: 'exact' });
const report = {
  notices: [],
  features: [{
    id: 'B1', kind: 'bore', shape: 'round', item: 0, axisPoint: b.p, axisDirection: b.d, diameterMm: 2 * b.r, outcome: 'reshaped',
    start: add(b.p, mul(b.d, b.wall[0])), end: add(b.p, mul(b.d, b.wall[1])), changes: [{ by: 'roof', outcome: 'reshaped', profile: 'peak', slopeDeg: 45, bridgeMm: 0 }],
  }],
};
const verdictOf = (m, over = {}) => {
  const output = over.output ?? pack(m);
  return judge({ truth, input, output, again: output, report, exit: 0, ...over });
};
const copy = () => ({ points: Float64Array.from(honest.points), corners: Uint32Array.from(honest.corners) });
const spoiled = (edit) => {
  const m = copy();
  return edit(m) ?? m;
};
const kinds = (v) => [...new Set(v.faults.map((f) => f.kind))].sort();

const good = verdictOf(honest);
assert.deepEqual(good.faults, [], 'the honest result passes');
assert.deepEqual(missedBars([good]), []);
assert.ok(good.relative < 1e-9 && good.flat === 0);

const caught = (name, kind, verdict) => {
  assert.ok(kinds(verdict).includes(kind), `${name}: expected ${kind}, found ${JSON.stringify(verdict.faults)}`);
  assert.ok(missedBars([verdict]).length > 0, `${name}: no bar is missed`);
  console.log(`caught: ${name} (${kinds(verdict)})`);
};
const last = honest.corners.length - 3;
const ridge = [mesh.points.length, mesh.points.length + 3];
caught('a dropped triangle', 'health', verdictOf(spoiled((m) => ({ ...m, corners: m.corners.slice(0, last) }))));
caught('a flipped triangle', 'health', verdictOf(spoiled((m) => void ([m.corners[last], m.corners[last + 1]] = [m.corners[last + 1], m.corners[last]]))));
caught('a roof moved by 0.05 mm', 'geometry', verdictOf(spoiled((m) => ridge.forEach((i) => (m.points[i + 2] += 0.05)))));
caught('a roof lowered by 0.05 mm', 'slope', verdictOf(spoiled((m) => ridge.forEach((i) => (m.points[i + 2] -= 0.05)))));
caught('an untouched vertex moved by 1e-7 mm', 'identity', verdictOf(spoiled((m) => void (m.points[0] += 1e-7))));
const away = Array.from({ length: mesh.corners.length / 3 }, (_, f) => f).find((f) => [0, 1, 2].every((k) => mesh.points[3 * mesh.corners[3 * f + k] + 2] < b.p[2]));
caught('an untouched triangle turned', 'identity', verdictOf(spoiled((m) => void m.corners.set([honest.corners[3 * away + 1], honest.corners[3 * away + 2], honest.corners[3 * away]], 3 * away))));
caught('a ridge through the top', 'health', verdictOf(spoiled((m) => void (m.points[ridge[0] + 2] += 40))));
caught('a missed bore', 'missed', verdictOf(mesh, { report: { features: [] } }));
caught('a false bore', 'ghost', verdictOf(honest, { report: { features: [...report.features, { ...report.features[0], id: 'B2', axisPoint: add(b.p, [0, 0, -2 * b.r]) }] } }));
caught('a diameter off by 1 %', 'size', verdictOf(honest, { report: { features: [{ ...report.features[0], diameterMm: 2.02 * b.r }] } }));
caught('an axis off by 5 micrometres', 'size', verdictOf(honest, { report: { features: [{ ...report.features[0], axisPoint: add(b.p, [0, 0, 0.005]) }] } }));
caught('an end off by 0.1 mm', 'size', verdictOf(honest, { report: { features: [{ ...report.features[0], end: add(report.features[0].end, mul(b.d, 0.1)) }] } }));
caught('a second run that changes the file', 'again', verdictOf(honest, { again: input }));
caught('a changed file without a reshaped feature', 'identity', verdictOf(honest, { report: { features: [{ ...report.features[0], outcome: 'left', reason: { code: 'x' }, changes: [] }] } }));
caught('a crash', 'run', verdictOf(honest, { exit: 70 }));
const shy = verdictOf(mesh, { report: { features: [{ ...report.features[0], outcome: 'left', reason: { code: 'x' }, changes: [] }] } });
assert.ok(missedBars([shy]).length > 0 && shy.shy.length === 1, 'a bore left without need');
const stubborn = judge({ truth: { ...truth, features: [{ ...feature, expect: 'leave' }] }, input, output: pack(honest), again: pack(honest), report, exit: 0 });
assert.ok(stubborn.bold.length === 1 && missedBars([stubborn]).length > 0, 'a hole reshaped that must be left');
const broken = { ...mesh, corners: mesh.corners.slice(3) };
const open = judge({ truth: { ...truth, input: 'unsound' }, input: pack(broken), output: pack(honest), again: pack(honest), report, exit: 0 });
assert.ok(missedBars([open]).length > 0, 'an open mesh reshaped');
assert.equal(difference(report, report, true), undefined);
const other = { features: [{ ...report.features[0], outcome: 'left' }] };
assert.ok(difference(report, other, false), 'another order of triangles with another outcome');
/** Two old points and new ones, each joined to both old ones, or to none. */
const vertices = (...fresh) => ({ 1: { fresh, all: [[0, 0, 0], [4, 0, 0], ...fresh], beside: [[], [], ...fresh.map(() => [0, 1])] } });
const loose = (...fresh) => ({ 1: { fresh, all: [[0, 0, 0], [4, 0, 0], ...fresh], beside: [[], [], ...fresh.map(() => [])] } });
assert.equal(displacement(vertices([0, 0, 1]), vertices([0, 0, 1.000001])), undefined, 'a step of the grid is none');
assert.equal(displacement(vertices([0, 0, 1], [2, 0, 0]), vertices([0, 0, 1])), undefined, 'a point that halves an edge is none');
assert.ok(displacement(loose([0, 0, 1], [2, 0, 0]), loose([0, 0, 1])), 'a point midway between two that it is not joined to');
assert.ok(displacement(vertices([0, 0, 1]), vertices([0, 0, 1.000002])), 'a new point elsewhere');
assert.ok(displacement(vertices([0, 0, 1]), vertices()), 'a new point less');

// Reasons and names.
const leftFor = (code, more = {}) => judge({
  truth: { ...truth, features: [{ ...feature, expect: 'leave', why: ['thin'], ...more }] }, input, output: input, again: input, exit: 0,
  report: { notices: [], features: [{ ...report.features[0], outcome: 'left', reason: { code, message: '' }, changes: [] }] },
});
assert.deepEqual(leftFor('thin-roof').faults, []);
caught('a reason that is not true', 'reason', leftFor('polygon'));
caught('a pin taken for a bore', 'ghost', leftFor('thin-roof', { kind: 'pin', find: 'may' }));
assert.ok(kinds(leftFor('not-round', { kind: 'thread', why: ['thread'], shape: 'thread' })).includes('unsaid'), 'a thread called round');
assert.ok(missedBars([leftFor('not-round', { kind: 'thread', why: ['thread'], shape: 'thread' })]).some((m) => m.includes('unsaid')), 'the bar for threads');
const door = (over) => judge({ truth: { ...truth, input: 'unsound' }, input: pack(broken), report: { notices: [{ level: 'error', code: 'mesh-open' }], features: [] }, exit: 5, ...over });
assert.deepEqual(door({}).faults, []);
caught('an open mesh written', 'identity', door({ output: pack(broken) }));
caught('an open mesh refused without a word', 'reason', door({ report: { notices: [], features: [] } }));
caught('an open mesh let through', 'run', door({ exit: 0 }));
const turned = { ...mesh, corners: Uint32Array.from(mesh.corners, (_, i) => mesh.corners[i % 3 === 1 ? i + 1 : i % 3 === 2 ? i - 1 : i]) };
assert.deepEqual(door({ input: pack(turned) }).faults, []);
// An open mesh and a solid in one build: the file is written, the open mesh as it was.
const together = (open) => writePackage({
  ...model, objects: [{ ...model.objects[0], mesh: open }, { ...model.objects[0], id: 77, mesh }],
  items: [...model.items, { object: 77, transform: [1, 0, 0, 0, 1, 0, 0, 0, 1, 200, 0, 0] }], spelling: 'exact',
});
const pair = together(broken);
const shared = (over) => door({ input: pair, output: pair, exit: 0, ...over });
assert.deepEqual(shared({}).faults, []);
caught('a solid refused for an open mesh beside it', 'run', shared({ output: undefined, exit: 5 }));
caught('an open mesh beside a solid refused without a word', 'reason', shared({ report: { notices: [], features: [] } }));
caught('an open mesh beside a solid mended unasked', 'identity', shared({ output: together(mesh) }));

// Every triangle with vertices of its own: closed by places only.
const first = new Map();
const soupPoints = Array.from(mesh.corners).flatMap((v, i) => {
  const p = Array.from(mesh.points.slice(3 * v, 3 * v + 3));
  if (!first.has(p.join())) first.set(p.join(), i);
  return p;
});
const soup = { points: Float64Array.from(soupPoints), corners: Uint32Array.from(mesh.corners, (_, i) => i) };
const roofedSoup = () => {
  const points = [...soupPoints];
  const at = (v) => {
    const p = Array.from(honest.points.slice(3 * v, 3 * v + 3));
    if (!first.has(p.join())) first.set(p.join(), points.push(...p) / 3 - 1);
    return first.get(p.join());
  };
  const kept = (f) => f < mesh.corners.length / 3 && [0, 1, 2].every((k) => mesh.corners[3 * f + k] === honest.corners[3 * f + k]);
  const corners = Array.from(honest.corners, (v, i) => (kept(Math.floor(i / 3)) ? i : at(v)));
  return { points: Float64Array.from(points), corners: Uint32Array.from(corners) };
};
const apart = roofedSoup();
const hint = { ...report, notices: [{ code: 'vertices-repeated', level: 'note' }] };
const soupVerdict = (m, args, over = {}) => judge({ truth: { ...truth, input: 'joinable', ...(args ? { args } : {}) }, input: pack(soup), output: pack(m), again: pack(m), report: hint, exit: 0, ...over });
const join = ['--join-vertices'];
assert.deepEqual(soupVerdict(apart).faults, [], 'repeated vertices may stay');
assert.deepEqual(soupVerdict(joinedByPlace(apart), join).faults, [], 'or be joined on request');
caught('repeated vertices without a hint', 'reason', soupVerdict(apart, undefined, { report }));
caught('repeated vertices joined unasked', 'identity', soupVerdict(joinedByPlace(apart)));
caught('repeated vertices not joined in spite of the wish', 'health', soupVerdict(apart, join));
const torn = joinedByPlace(apart);
torn.corners[3 * away] = torn.corners[3 * away + 1];
caught('a corner joined to another place', 'identity', soupVerdict(torn, join));

// Two places of one object that need a copy each.
const beside = [1, 0, 0, 0, 1, 0, 0, 0, 1, 300, 0, 0];
const twoPlaces = (objects, second) => writePackage({ ...model, objects, items: [{ object: 1 }, { object: second, transform: beside }], spelling: 'exact' });
const object = (id, m, more = {}) => ({ ...model.objects[0], id, mesh: m, ...more });
const moved300 = (p) => add(p, [300, 0, 0]);
const twice = {
  truth: { ...truth, placement: 'twiceOtherWays', features: [feature, { ...feature, item: 1, point: moved300(feature.point) }] },
  report: { notices: [], features: [report.features[0], { ...report.features[0], id: 'B1.2', item: 1, axisPoint: moved300(b.p), start: moved300(report.features[0].start), end: moved300(report.features[0].end) }] },
  input: twoPlaces([object(1, mesh)], 1), exit: 0,
};
const cloned = (more) => {
  const output = twoPlaces([object(1, honest), object(2, honest, more)], 2);
  return judge({ ...twice, output, again: output });
};
assert.deepEqual(cloned({}).faults, [], 'a clone for another way up');
caught('a clone with another name', 'identity', cloned({ name: 'copy' }));
caught('a clone of another type', 'identity', cloned({ type: 'support' }));
console.log('Every sabotage was caught.');
