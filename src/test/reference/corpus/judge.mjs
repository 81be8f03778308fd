// Judges one case: truth, input, output and report in, a record of what was right and wrong out.

import { release } from './kernel.mjs';
import { claimedRoof, flatArea, geometryFaults, healthFaults, nearBores, nearPins, textFaults, tipFaults } from './compare.mjs';
import { joinedByPlace, topology } from './health.mjs';
import { errors, matched } from './match.mjs';
import { placements, printed, readPackage } from './model3mf.mjs';
import { dot } from './vec.mjs';

/**
 * { truth, input, output, again, report, exit }: input, output and again are bytes of packages
 * (output or again undefined when none was written), report the tool's JSON object.
 */
export function judge({ truth, input, output, again, report, exit, said = '' }) {
  const verdict = {
    name: truth.name, family: truth.family, treatment: truth.treatment, placement: truth.placement, input: truth.input,
    bores: 0, found: 0, named: 0, ghosts: 0, due: 0, done: 0, shy: [], bold: [], left: 0, trueReasons: 0, faults: [],
    diameter: 0, angle: 0, axis: 0, ends: 0, relative: 0, flat: 0, noise: truth.noiseMm + truth.features.reduce((m, f) => Math.max(m, f.sagittaMm ?? 0), 0),
  };
  const fault = (kind, text) => verdict.faults.push({ kind, text });
  if (![0, 5].includes(exit)) fault('run', `exit code ${exit} ${said}`);
  verdict.triangles = [...readPackage(input).objects.values()].reduce((n, o) => n + (o.mesh?.triangleTexts.length ?? 0), 0);
  const refused = truth.input === 'flawed' && exit === 5;
  if (truth.input === 'unsound' || refused) {
    closedDoor(input, output, report, exit, fault);
    return verdict;
  }
  if (!report) {
    fault('run', 'no report');
    return verdict;
  }
  const pairs = finding(truth, report, verdict);
  if (truth.input === 'flawed') verdict.faults = verdict.faults.filter((f) => f.kind === 'run');
  try {
    result(truth, input, output, again, pairs, report, verdict, fault);
  } finally {
    release();
  }
  return verdict;
}

/**
 * A mesh that is no solid is refused with its reason. Where it is all there is, nothing is written;
 * beside a solid the file is, and that mesh in it as it was.
 */
function closedDoor(input, output, report, exit, fault) {
  const solids = printedSolids(readPackage(input));
  const reshaped = (report?.features ?? []).filter((f) => f.outcome === 'reshaped');
  if (exit !== (solids.length ? 0 : 5)) fault('run', `a mesh that is no solid ${solids.length ? 'beside a solid ' : ''}ended with exit code ${exit}`);
  if (output && !solids.length) fault('identity', 'a mesh that is no solid was written');
  if (!output && solids.length) fault('run', 'a solid was not written because of a mesh that is none');
  if (output && solids.length) besideSolids(input, output, reshaped, fault);
  if (reshaped.some((f) => !solids.some((o) => String(o.id) === String(f.objectId)))) fault('identity', 'a mesh that is no solid was reshaped');
  if (!(report?.notices ?? []).some((n) => n.level === 'error')) fault('reason', 'refused without a reason');
}

const isClosed = (mesh) => {
  const { open, bad, volume } = topology(mesh);
  return open === 0 && bad === 0 && volume > 0; // less when it is inside out
};
const isSolid = (mesh) => isClosed(mesh) || isClosed(joinedByPlace(mesh));
const printedSolids = (pack) => {
  const placed = new Set(placements(pack).map(({ object }) => object));
  return [...pack.objects.values()].filter((o) => o.mesh && o.type === 'model' && placed.has(o.key) && isSolid(o.mesh));
};

function besideSolids(input, output, reshaped, fault) {
  if (!reshaped.length && !input.equals(output)) fault('identity', 'nothing was reshaped, yet the file differs');
  const [before, after] = [readPackage(input), readPackage(output)];
  for (const [key, { mesh }] of before.objects) {
    if (mesh && !isSolid(mesh) && textFaults(mesh, after.objects.get(key)?.mesh, WHERE_IT_IS, () => false).length) {
      fault('identity', `object ${key}, which is no solid, changed`);
    }
  }
}
const WHERE_IT_IS = [1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0];

/** Finding and outcomes, by truth. */
function finding(truth, report, verdict) {
  const bores = (report.features ?? []).filter((f) => f.kind === 'bore');
  // The outside of a pin is no bore, so nothing there may be called one.
  const holes = truth.features.filter((t) => t.kind !== 'pin');
  const pins = (report.features ?? []).filter((f) => f.kind === 'pin');
  const rods = truth.features.filter((t) => t.kind === 'pin' && t.find === 'must');
  const [ofBores, ofPins] = [matched(holes, bores), matched(rods, pins)];
  const [pairs, missed, ghosts] = ['pairs', 'missed', 'ghosts'].map((k) => [...ofBores[k], ...ofPins[k]]);
  for (const { truth: t, report: r } of ofPins.pairs) {
    if (dot(t.direction, r.axisDirection) < 0) verdict.faults.push({ kind: 'size', text: `${r.id} points from tip to root` });
    if (t.ends[1] !== r.ends[1] && t.exact) verdict.faults.push({ kind: 'unsaid', text: `a ${t.ends[1]} tip is called ${r.ends[1]}` });
  }
  for (const t of holes.filter((h) => h.shape)) {
    const said = pairs.filter((p) => p.truth === t).map((p) => p.report.shape);
    if (!said.includes(t.shape)) verdict.faults.push({ kind: 'unsaid', text: `a hole of shape ${t.shape} is called ${said.length ? said : 'nothing'}` });
  }
  const must = truth.features.filter((t) => t.find === 'must');
  verdict.bores = must.length;
  verdict.found = must.length - missed.length;
  verdict.named = bores.length + pins.length;
  verdict.ghosts = ghosts.length;
  missed.forEach((t) => verdict.faults.push({ kind: 'missed', text: `d ${t.diameterMm} at ${t.point.map((x) => x.toFixed(2))}` }));
  ghosts.forEach((g) => verdict.faults.push({ kind: 'ghost', text: `${g.id} d ${g.diameterMm} at ${g.axisPoint.map((x) => x.toFixed(2))} ${g.outcome}` }));
  for (const pair of pairs) outcome(pair, verdict);
  verdict.due += missed.filter((t) => t.expect === 'reshape').length;
  return pairs;
}

function outcome(pair, verdict) {
  const { truth, report, part } = pair;
  const done = report.outcome === 'reshaped';
  if (['bore', 'pin'].includes(truth.kind) && truth.find === 'must' && !part) {
    const e = errors(pair);
    for (const key of ['diameter', 'angle', 'axis', 'ends']) verdict[key] = Math.max(verdict[key], e[key]);
    const limits = { diameter: Math.max(1e-3 * truth.diameterMm, 0.002), angle: 0.02, axis: 0.002, ends: 0.01 };
    const loose = 3 * verdict.noise;
    for (const key of Object.keys(limits)) {
      const allowed = limits[key] + (key === 'angle' ? (loose / (truth.range[1][1] - truth.range[0][0])) * 57.3 : loose);
      if (e[key] > allowed) verdict.faults.push({ kind: 'size', text: `${report.id} ${key} off by ${e[key].toPrecision(3)}` });
    }
  }
  const why = `${report.id} d ${report.diameterMm} (${truth.kind} ${truth.why}): ${report.reason?.code ?? report.outcome} ${report.reason?.message ?? ''}`;
  if (truth.expect === 'reshape') {
    verdict.due++;
    if (done) verdict.done++;
    else verdict.shy.push(why);
  } else if (truth.expect === 'leave') {
    verdict.left++;
    if (done) verdict.bold.push(why);
  }
  const code = report.reason?.code;
  if (!done && !code) verdict.faults.push({ kind: 'reason', text: `${report.id} was left without a reason` });
  if (!done && truth.expect === 'leave' && code && !(TRUE_REASONS[truth.why[0]] ?? SHAPED).includes(code)) {
    verdict.faults.push({ kind: 'reason', text: `${report.id} (${truth.kind} ${truth.why}) was left for ${code}` });
  }
}
/** Codes that are true, by what the truth gives as the cause; the rest are holes of another shape. */
const TRUE_REASONS = {
  small: ['below-smallest'], steep: ['steep-enough'], thin: ['thin-roof', 'long-bridge'], mixed: ['mixed-orientation'],
  peaked: ['already-peaked'], thread: ['thread'],
  eased: ['eased-already'], plate: ['on-plate'], near: ['too-close', 'touching'],
};
/** Small and steep ones may be left for that before anybody looks at their shape. */
const SHAPED = ['not-round', 'polygon', 'below-smallest', 'steep-enough'];

/** The written file: health, text, geometry, slopes, second run. */
function result(truth, input, output, again, pairs, report, verdict, fault) {
  const reshaped = pairs.filter((p) => p.report.outcome === 'reshaped').map((p) => ({ ...p, change: roofChange(p.report) }));
  if (!output) return fault('run', 'no output');
  if (!again || !output.equals(again)) fault('again', 'the second run changes the file');
  const joining = truth.args?.includes('--join-vertices');
  if (truth.input === 'joinable' && !joining && !report.notices.some((n) => n.code === 'vertices-repeated')) fault('reason', 'repeated vertices without a hint');
  if (!reshaped.length && !verdict.ghosts && !joining) {
    if (!input.equals(output)) fault('identity', 'nothing was reshaped, yet the file differs');
    return undefined;
  }
  const [before, after] = [readPackage(input), readPackage(output)];
  frameFaults(truth, before, after, fault);
  const [wasPlaced, isPlaced] = [placements(before), placements(after)];
  verdict.points = newPoints(before, after);
  if (wasPlaced.length !== isPlaced.length) return fault('identity', 'placements were added or lost');
  wasPlaced.forEach((was, i) => {
    const is = isPlaced[i];
    const pins = reshaped.filter((p) => p.truth.item === was.item && p.truth.kind === 'pin').map((p) => p.truth);
    const bores = reshaped.filter((p) => p.truth.item === was.item && p.truth.ring && p.truth.kind !== 'pin')
      .map((p) => ({ truth: { ...p.truth, rough: p.truth.rough || ROUGH.includes(truth.treatment) }, roof: claimedRoof(p.truth, p.change) })).filter((b) => b.roof);
    const [old, now] = [before.objects.get(was.object), after.objects.get(is.object)];
    cloneFaults(old, now, fault);
    instance(truth, old, now, was.toPrint, { bores, pins }, verdict, fault);
  });
  for (const [id, object] of before.objects) {
    if (!object.mesh || wasPlaced.some((p) => p.object === id)) continue;
    if (textFaults(object.mesh, after.objects.get(id)?.mesh, WHERE_IT_IS, () => false).length) fault('identity', `object ${id}, which is not printed, changed`);
  }
  return undefined;
}

/** The roof's own entry among the changes of a feature. */
const roofChange = (report) => (report.changes ?? []).find((c) => c.outcome === 'reshaped' && c.profile) ?? report.change ?? {};

/** Without the identifiers that the production extension wants anew for a changed object. */
const nameless = (frame) => frame.replace(/UUID="[^"]*"/g, 'UUID');

function frameFaults(truth, before, after, fault) {
  const clones = after.objects.size - before.objects.size;
  if (clones === 0 && nameless(before.frame) !== nameless(after.frame)) fault('identity', 'text outside the vertex and triangle lists changed');
  if (clones > 0 && (!truth.placement.endsWith('OtherWays') || truth.placement.startsWith('left'))) fault('identity', 'objects were added');
  for (const [name, bytes] of before.parts) {
    if (!name.endsWith('.model') && !after.parts.get(name)?.equals(bytes)) fault('identity', `part ${name} changed`);
  }
}

/** A clone stands in the same part, under a number and an identifier of its own, and is alike in all else. */
function cloneFaults(was, is, fault) {
  if (was.key === is.key) return;
  const nameless = ({ head }) => head.replace(/(^|\s)(id|p:UUID)="[^"]*"/g, '').trim();
  const uuid = ({ head }) => /UUID="([^"]*)"/.exec(head)?.[1];
  if (was.part !== is.part) fault('identity', `the clone of object ${was.id} stands in ${is.part}`);
  if (nameless(was) !== nameless(is)) fault('identity', `the clone of object ${was.id} has other attributes: ${is.head}`);
  if (uuid(was) ? !uuid(is) || uuid(is) === uuid(was) : uuid(is)) fault('identity', `the clone of object ${was.id} has the identifier ${uuid(is)}`);
}

/**
 * Vertices of each object, new ones and all, and for each of them those that it shares an edge with:
 * { key: { fresh: [[x, y, z], ...], all, beside } }, in units of the file.
 */
function newPoints(before, after) {
  const found = {};
  for (const [key, { mesh }] of after.objects) {
    const known = before.objects.get(key)?.mesh?.points.length;
    if (known === undefined || !mesh) continue;
    const all = Array.from({ length: mesh.points.length / 3 }, (_, v) => Array.from(mesh.points.slice(3 * v, 3 * v + 3)));
    const beside = all.map(() => new Set());
    mesh.corners.forEach((v, k) => {
      for (const other of [1, 2]) beside[v].add(mesh.corners[k - (k % 3) + ((k + other) % 3)]);
    });
    found[key] = { fresh: all.slice(known / 3), all, beside };
  }
  return found;
}

/** Every property that a triangle names must be there. */
function propertyFaults({ triangleTexts }) {
  const odd = triangleTexts.find((t) => /\sp[123]="/.test(t) && !/\spid="90" p1="[12]"/.test(t));
  return odd ? [`a triangle has a property that nothing else has: ${odd}`] : [];
}

function instance(truth, was, is, toPrint, { bores, pins }, verdict, fault) {
  if (was.type !== 'model') return;
  const joining = truth.args?.includes('--join-vertices');
  const [atBore, atPin] = [nearBores(bores, verdict.noise), nearPins(pins)];
  for (const text of textFaults(was.mesh, is.mesh, toPrint, (c) => atBore(c) || atPin(c), joining).slice(0, 3)) fault('identity', text);
  if (/^coloured/.test(truth.placement)) propertyFaults(is.mesh).forEach((text) => fault('identity', text));
  if (joining && topology(is.mesh).open > 0) fault('health', 'vertices were to be joined, yet edges are open');
  const skin = truth.input === 'joinable' ? joinedByPlace : (mesh) => mesh;
  const [wasSkin, isSkin] = [skin(was.mesh), skin(is.mesh)];
  const health = healthFaults(wasSkin, isSkin);
  health.faults.forEach((text) => fault('health', text));
  if (!bores.length && !pins.length || !['sound', 'joinable'].includes(truth.input) || health.faults.length) return;
  const [inPrint, outPrint] = [printed(wasSkin, toPrint), printed(isSkin, toPrint)];
  try {
    const g = geometryFaults(inPrint, outPrint, bores, verdict.noise, pins);
    verdict.relative = Math.max(verdict.relative, g.exact ? g.relative : 0);
    g.faults.forEach((text) => fault('geometry', text));
    // A roof over a bore of its own changes no topology; only where bores meet may it.
    if (g.exact && health.euler !== 0) fault('health', `Euler number changed by ${health.euler}`);
  } catch (e) {
    fault('health', `the reference kernel refuses a mesh: ${e.message}`);
  }
  for (const pin of pins) tipFaults(outPrint, pin, verdict.noise).forEach((text) => fault('slope', text));
  // the ceiling of a groove in the wall hangs as before
  for (const b of bores.filter((x) => !x.truth.grooved)) {
    const flat = flatArea(outPrint, b, 45, verdict.noise);
    verdict.flat = Math.max(verdict.flat, flat);
    if (flat > FLAT_SHARE * b.truth.diameterMm ** 2) fault('slope', `${flat.toPrecision(3)} mm2 flatter than the limit left at d ${b.truth.diameterMm}`);
  }
}
/** Treatments after which walls are no longer made of rulings from end to end. */
const ROUGH = ['slivers', 'decimated', 'fine', 'finer'];
/** Share of d^2 that rounding may leave too flat; a whole crown is about 0.7 d times its length. */
const FLAT_SHARE = 1e-4;
