// Judges one case: truth, input, output and report in, a record of what was right and wrong out.

import { release } from './kernel.mjs';
import { claimedRoof, flatArea, geometryFaults, healthFaults, nearBores, textFaults } from './compare.mjs';
import { errors, matched } from './match.mjs';
import { placements, printed, readPackage } from './model3mf.mjs';

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
  const refused = truth.input === 'flawed' && exit === 5;
  if (truth.input === 'unsound' || truth.input === 'joinable' || refused) {
    closedDoor(truth, input, output, report, fault);
    return verdict;
  }
  if (!report) {
    fault('run', 'no report');
    return verdict;
  }
  const pairs = finding(truth, report, verdict);
  if (truth.input === 'flawed') verdict.faults = verdict.faults.filter((f) => f.kind === 'run');
  try {
    result(truth, input, output, again, pairs, verdict, fault);
  } finally {
    release();
  }
  return verdict;
}

/** A mesh that is not closed as it stands must come out as it went in, or not at all. */
function closedDoor(truth, input, output, report, fault) {
  const touched = (report?.features ?? []).filter((f) => f.outcome === 'reshaped');
  if (touched.length && truth.input === 'unsound') fault('identity', 'a mesh that is not closed was reshaped');
  if (!touched.length && output && !input.equals(output)) fault('identity', 'nothing was reshaped, yet the file differs');
}

/** Finding and outcomes, by truth. */
function finding(truth, report, verdict) {
  const bores = (report.features ?? []).filter((f) => f.kind === 'bore');
  const { pairs, missed, ghosts } = matched(truth.features, bores);
  const must = truth.features.filter((t) => t.find === 'must');
  verdict.bores = must.length;
  verdict.found = must.length - missed.length;
  verdict.named = bores.length;
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
  if (truth.kind === 'bore' && truth.find === 'must' && !part) {
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
  if (!done && !report.reason?.code) verdict.faults.push({ kind: 'reason', text: `${report.id} was left without a reason` });
}

/** The written file: health, text, geometry, slopes, second run. */
function result(truth, input, output, again, pairs, verdict, fault) {
  const reshaped = pairs.filter((p) => p.report.outcome === 'reshaped').map((p) => ({ ...p, change: roofChange(p.report) }));
  if (!output) return fault('run', 'no output');
  if (!again || !output.equals(again)) fault('again', 'the second run changes the file');
  if (!reshaped.length && !verdict.ghosts) {
    if (!input.equals(output)) fault('identity', 'nothing was reshaped, yet the file differs');
    return undefined;
  }
  const [before, after] = [readPackage(input), readPackage(output)];
  frameFaults(truth, before, after, fault);
  const [wasPlaced, isPlaced] = [placements(before), placements(after)];
  if (wasPlaced.length !== isPlaced.length) return fault('identity', 'placements were added or lost');
  wasPlaced.forEach((was, i) => {
    const is = isPlaced[i];
    const bores = reshaped.filter((p) => p.truth.item === was.item && p.truth.ring)
      .map((p) => ({ truth: { ...p.truth, rough: p.truth.rough || ROUGH.includes(truth.treatment) }, roof: claimedRoof(p.truth, p.change) })).filter((b) => b.roof);
    instance(truth, before.objects.get(was.object), after.objects.get(is.object), was.toPrint, bores, verdict, fault);
  });
  for (const [id, object] of before.objects) {
    if (!object.mesh || wasPlaced.some((p) => p.object === id)) continue;
    if (textFaults(object.mesh, after.objects.get(id)?.mesh, [1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0], () => false).length) fault('identity', `object ${id}, which is not printed, changed`);
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
  if (clones > 0 && !truth.placement.endsWith('OtherWays')) fault('identity', 'objects were added');
  for (const [name, bytes] of before.parts) {
    if (!name.endsWith('.model') && !after.parts.get(name)?.equals(bytes)) fault('identity', `part ${name} changed`);
  }
}

function instance(truth, was, is, toPrint, bores, verdict, fault) {
  if (was.type !== 'model') return;
  for (const text of textFaults(was.mesh, is.mesh, toPrint, nearBores(bores, verdict.noise)).slice(0, 3)) fault('identity', text);
  const health = healthFaults(was.mesh, is.mesh);
  health.faults.forEach((text) => fault('health', text));
  if (!bores.length || truth.input !== 'sound' || health.faults.length) return;
  const [inPrint, outPrint] = [printed(was.mesh, toPrint), printed(is.mesh, toPrint)];
  try {
    const g = geometryFaults(inPrint, outPrint, bores, verdict.noise);
    verdict.relative = Math.max(verdict.relative, g.exact ? g.relative : 0);
    g.faults.forEach((text) => fault('geometry', text));
    // A roof over a bore of its own changes no topology; only where bores meet may it.
    if (g.exact && health.euler !== 0) fault('health', `Euler number changed by ${health.euler}`);
  } catch (e) {
    fault('health', `the reference kernel refuses a mesh: ${e.message}`);
  }
  for (const b of bores) {
    const flat = flatArea(outPrint, b, 45, verdict.noise);
    verdict.flat = Math.max(verdict.flat, flat);
    if (flat > FLAT_SHARE * b.truth.diameterMm ** 2) fault('slope', `${flat.toPrecision(3)} mm2 flatter than the limit left at d ${b.truth.diameterMm}`);
  }
}
/** Treatments after which walls are no longer made of rulings from end to end. */
const ROUGH = ['slivers', 'decimated', 'fine', 'finer'];
/** Share of d^2 that rounding may leave too flat; a whole crown is about 0.7 d times its length. */
const FLAT_SHARE = 1e-4;
