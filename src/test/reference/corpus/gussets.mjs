// Joints by chance, each a pin in the air and the bore that it goes into: webs and slots that the
// program makes against those that the boolean kernel makes from radius, length and settings alone.
//
//   node gussets.mjs [--count 40] [--seed 1] [--work DIR] [--launcher target/gable]
//
// Judged for each: web and slot are made; the symmetric difference of each part with the ideal is
// within what the grid of written numbers allows; genus kept; the pin with its web fits into the
// bore with its slot (the parts put together have no volume in common); with roof, lead-in and tip
// besides, pin and bore still do not meet; a second run changes nothing; in a file each, with the other
// as partner, they come out alike, also if the pin's file was reshaped before. The judge itself is tried on
// an ideal that is 0.02 mm off. Ends with 1 where anything is wrong.

import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { box, common, fromMesh, hull, minus, prism, release, toMesh, union } from './kernel.mjs';
import { placements, printed, readPackage, writePackage } from './model3mf.mjs';
import { options } from './options.mjs';
import { ring } from './shapes.mjs';
import { chance, sectionFrame, turn } from './vec.mjs';

const { count = '40', seed = '1', work = 'target/gussets', launcher = 'target/gable' } = options;
mkdirSync(work, { recursive: true });

const ALONG = [0, 1, 0];
const WEB = 0.8; // two lines of 0.4
const CLEARANCE = 0.2;
const REST = 0.25;
/** Step of numbers written with six decimals, and of single precision at 100 mm. */
const GRID = 1e-5;

/** Where the underside of the web meets the pin: the leg of a tip before its end, and a rest. */
const endOf = (r, length) => length - Math.min(Math.max(0.4, Math.min(1.5, 0.3 * r)), 0.4 * r) - REST;

/** Everything above a line at 45 degrees from (end, r) down to the wall, from `top` below the axis on. */
function wedge(end, r, half, top, back, front) {
  const points = [];
  for (const x of [-half, half]) {
    const cut = Math.min(front, end + r - top);
    points.push([x, back, -top], [x, cut, -top], [x, back, -(r + end - back)]);
    if (cut < end + r - top) points.push([x, cut, -(r + end - cut)]);
  }
  return hull(points);
}

function drawn(k) {
  const random = chance(1000 * Number(seed) + k);
  const r = +random.between(1.5, 6).toFixed(2);
  const n = random.pick([16, 24, 32, 48, 64]);
  const length = +(r * random.between(1.2, 3) + 1).toFixed(2);
  const polygon = ring(n, r, random.pick([0, 0.5, random.next()]));
  const R = +((r + random.between(0.08, 0.25)) / Math.cos(Math.PI / n)).toFixed(3);
  const through = k % 3 === 2;
  return { k, r, n, length, polygon, R, hole: ring(n, R, random.next()), through, over: k % 2 === 1, depth: through ? 200 : length + 1 };
}

function partsOf(c) {
  const tall = c.r + c.length + 8;
  const frame = sectionFrame(ALONG);
  const pin = union(box([-12, -6, -tall], [12, 0, c.r + 6]), prism(frame, [0, 0, 0], c.polygon, -1, c.length));
  const block = box([-14, 0, -tall - 4], [14, c.length + 8, tall + 4]);
  return { pin, block: minus(block, prism(frame, [0, 0, 0], c.hole, -1, c.depth)) };
}

function idealOf(c, { pin, block }, off = 0) {
  const end = endOf(c.r, c.length);
  const leg = c.length - REST - end;
  const web = wedge(end, c.r, WEB / 2 + off, c.r - leg - 0.1, -0.3, c.length);
  const far = end + CLEARANCE * Math.SQRT2;
  const half = WEB / 2 + CLEARANCE + off;
  const top = 0.6 * c.r;
  const slot = c.through
    ? box([-half, -1, -(c.r + far)], [half, c.length + 9, -top])
    : wedge(far, c.r, half, top, -1, c.depth - 0.01);
  return { pin: union(pin, web), block: minus(block, slot) };
}

/** The block is laid for printing beside the pin's part, every other one upside down. */
const layOf = (c) => [...turn(ALONG, c.over ? 180 : 0).slice(0, 9), 60, 0, 0];

function write(c, parts, file) {
  writeFileSync(file, writePackage({
    unit: 'millimeter', spelling: 'six',
    objects: [{ id: 1, mesh: toMesh(parts.pin) }, { id: 2, mesh: toMesh(parts.block) }],
    items: [{ object: 1 }, { object: 2, transform: layOf(c) }],
  }));
}

function writeHalves(c, parts, pin, block) {
  const one = (mesh, transform) => writePackage({ unit: 'millimeter', spelling: 'six', objects: [{ id: 1, mesh }], items: [{ object: 1, transform }] });
  writeFileSync(pin, one(toMesh(parts.pin)));
  writeFileSync(block, one(toMesh(parts.block), layOf(c)));
}

function reshape(from, to, ...more) {
  const json = to.replace(/3mf$/, 'json');
  const { status, stderr } = spawnSync(launcher, ['reshape', from, '-o', to, '--json', json, '--quiet', '--with', 'gusset', ...more], { encoding: 'utf8' });
  if (status !== 0) throw new Error(`exit code ${status}: ${stderr}`);
  return JSON.parse(readFileSync(json, 'utf8'));
}

/**
 * The solids of a package, each where its part is in the joint. A single pin may turn in its bore, so
 * the slot is below as the block is printed, whichever way up that is.
 */
function solidsOf(c, file) {
  return { pin: solidOf(file, 0, 0), block: solidOf(file, -60, 1) };
}

/** One of the solids of a package, moved along x. */
function solidOf(file, along, number = 0) {
  const content = readPackage(readFileSync(file));
  const { object, toPrint } = placements(content)[number];
  const { points, corners } = printed(content.objects.get(object).mesh, toPrint);
  const moved = Float64Array.from(points, (value, k) => (k % 3 === 0 ? value + along : value));
  return fromMesh({ points: moved, corners });
}

const difference = (a, b) => minus(a, b).volume() + minus(b, a).volume();
const allowed = (solid) => 1e-9 * solid.volume() + GRID * 0.2 * solid.surfaceArea();
const change = (report, kind) => report.features.filter((f) => f.kind === kind).flatMap((f) => f.changes).find((c) => c.by === 'gusset');

function judge(c) {
  const faults = [];
  const [input, bare, full, again] = ['in', 'bare', 'full', 'again'].map((e) => join(work, `${c.k}-${e}.3mf`));
  write(c, partsOf(c), input);
  const report = reshape(input, bare, '--without', 'roof,lead-in,tip');
  for (const kind of ['pin', 'bore']) {
    const said = change(report, kind);
    if (said?.outcome !== 'reshaped') faults.push(`no change of the ${kind}: ${said?.reason?.message ?? 'nothing said'}`);
  }
  if (faults.length) return faults;
  const [was, is] = [solidsOf(c, input), solidsOf(c, bare)];
  const [ideal, wrong] = [idealOf(c, was), idealOf(c, was, 0.01)];
  for (const part of ['pin', 'block']) {
    const off = difference(is[part], ideal[part]);
    if (!(off <= allowed(was[part]))) faults.push(`the ${part} is ${off.toPrecision(3)} mm3 from the ideal, allowed ${allowed(was[part]).toPrecision(3)}`);
    if (difference(is[part], wrong[part]) <= allowed(was[part])) faults.push(`the judge does not see 0.02 mm on the ${part}`);
    if (is[part].genus() !== was[part].genus()) faults.push(`genus of the ${part} ${is[part].genus()}`);
  }
  const least = change(report, 'bore').leastClearanceMm;
  if (!(least >= 0)) faults.push(`least clearance ${least}`);
  reshape(input, full);
  const whole = solidsOf(c, full);
  for (const [name, joined] of [['gusset', is], ['all', whole]]) {
    // faces that lie on each other may overlap by the grid over the whole wall
    const both = common(joined.pin, joined.block).volume();
    if (!(both <= GRID * 28 * 60)) faults.push(`${name}: pin and bore have ${both.toPrecision(3)} mm3 in common`);
  }
  reshape(full, again);
  if (!readFileSync(full).equals(readFileSync(again))) faults.push('the second run changes the file');
  return [...faults, ...apart(c, whole)];
}

/** The halves in two files, each reshaped with the other as partner: as drawn, then as reshaped. */
function apart(c, whole) {
  const faults = [];
  const [pin, block, pinDone, blockDone, blockLate] = ['pin', 'block', 'pin-done', 'block-done', 'block-late'].map((e) => join(work, `${c.k}-${e}.3mf`));
  writeHalves(c, partsOf(c), pin, block);
  reshape(pin, pinDone, '--partner', block);
  reshape(block, blockDone, '--partner', pin);
  reshape(block, blockLate, '--partner', pinDone);
  const done = { pin: solidOf(pinDone, 0), block: solidOf(blockDone, -60) };
  for (const part of ['pin', 'block']) {
    const off = difference(done[part], whole[part]);
    if (!(off <= allowed(whole[part]))) faults.push(`in a file of its own the ${part} is ${off.toPrecision(3)} mm3 off`);
  }
  if (!readFileSync(blockDone).equals(readFileSync(blockLate))) faults.push('the slot depends on whether the pin has its web already');
  return faults;
}

let bad = 0;
for (let k = 0; k < Number(count); k++) {
  const c = drawn(k);
  const faults = judge(c);
  release();
  bad += faults.length ? 1 : 0;
  faults.forEach((f) => console.log(`${k} (r ${c.r}, ${c.n} sides, ${c.length} long${c.through ? ', through' : ''}${c.over ? ', turned over' : ''}): ${f}`));
}
console.log(`${count} joints, ${bad} with faults`);
process.exit(bad ? 1 : 0);
