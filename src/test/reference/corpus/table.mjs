// Sums verdicts up by family and checks the bars.

import { readFileSync, writeFileSync } from 'node:fs';

const FAULTS = ['missed', 'ghost', 'size', 'unsaid', 'reason', 'health', 'identity', 'geometry', 'slope', 'again', 'order', 'shifted', 'run'];
/** Inputs whose bores must be reshaped if the truth says so. */
const DUE = ['sound', 'joinable'];
const percent = (a, b) => (b === 0 ? '–' : `${((100 * a) / b).toFixed(a === b ? 0 : 1)}`);
const micrometres = (x) => (x * 1000).toFixed(x * 1000 < 10 ? 2 : 0);

/** Row key of a verdict: its treatment or placement when it has one, else its family. */
const keyOf = (v) => (v.treatment !== 'none' ? `mesh: ${v.treatment}` : v.placement !== 'plain' ? `placed: ${v.placement}` : v.family);

export function summed(verdicts) {
  const rows = new Map();
  for (const v of verdicts) {
    for (const key of [keyOf(v), 'ALL']) {
      const row = rows.get(key) ?? { key, cases: 0, bores: 0, found: 0, named: 0, ghosts: 0, due: 0, done: 0, shy: 0, bold: 0, left: 0, diameter: 0, angle: 0, axis: 0, ends: 0, relative: 0, flat: 0, faults: {} };
      row.cases++;
      if (v.input !== 'flawed') {
        for (const k of ['bores', 'found', 'named', 'ghosts', 'left']) row[k] += v[k];
        row.bold += v.bold.length;
      }
      if (DUE.includes(v.input)) {
        for (const k of ['due', 'done']) row[k] += v[k];
        row.shy += v.shy.length;
      }
      for (const k of ['diameter', 'angle', 'axis', 'ends', 'relative', 'flat']) row[k] = Math.max(row[k], v[k]);
      v.faults.forEach((f) => (row.faults[f.kind] = (row.faults[f.kind] ?? 0) + 1));
      rows.set(key, row);
    }
  }
  const all = rows.get('ALL');
  rows.delete('ALL');
  return [...rows.values(), ...(all ? [all] : [])];
}

export function markdown(rows) {
  const head = ['family', 'cases', 'bores', 'recall %', 'precision %', 'due', 'roofed %', 'wrongly roofed', 'diameter um', 'axis um', 'axis deg', 'ends um', 'volume rel', 'flat mm2', 'faults'];
  const lines = [head, head.map(() => '---')];
  for (const r of rows) {
    const faults = FAULTS.filter((k) => r.faults[k]).map((k) => `${k} ${r.faults[k]}`).join(', ') || '–';
    lines.push([r.key, r.cases, r.bores, percent(r.found, r.bores), percent(r.named - r.ghosts, r.named), r.due, percent(r.done, r.due), r.bold,
      micrometres(r.diameter), micrometres(r.axis), r.angle.toFixed(4), micrometres(r.ends), r.relative.toExponential(1), r.flat.toPrecision(2), faults]);
  }
  return lines.map((cells) => `| ${cells.join(' | ')} |`).join('\n');
}

/** Puts a table between the two marks in a file. */
export function inserted(file, table) {
  const parts = readFileSync(file, 'utf8').split(MARK);
  if (parts.length !== 3) throw new Error(`${file} has not two marks ${MARK}`);
  writeFileSync(file, [parts[0], `\n${table}\n`, parts[2]].join(MARK));
}
const MARK = '<!-- score -->';

/** Meshes for which every bore must be found; for the noisy ones 99 of 100 suffice. */
const NOISY = ['rounded2', 'jitter2', 'jitter5'];
const NO_BAR = ['jitter10', 'decimated'];

/** The bars, each as a sentence when it is missed. */
export function missedBars(verdicts) {
  const out = [];
  const part = (test) => verdicts.filter((v) => ['sound', 'joinable', 'rough'].includes(v.input) && test(v));
  const sum = (list, key) => list.reduce((s, v) => s + v[key], 0);
  const clean = part((v) => ![...NOISY, ...NO_BAR].includes(v.treatment));
  const noisy = part((v) => NOISY.includes(v.treatment));
  if (sum(clean, 'found') < sum(clean, 'bores')) out.push(`clean meshes: ${sum(clean, 'found')} of ${sum(clean, 'bores')} bores found, all are due`);
  if (sum(noisy, 'found') < 0.99 * sum(noisy, 'bores')) out.push(`noisy meshes: ${sum(noisy, 'found')} of ${sum(noisy, 'bores')} bores found, 99 % are due`);
  const ghosts = sum([...clean, ...noisy], 'ghosts');
  if (ghosts) out.push(`${ghosts} features that are none`);
  const sized = clean.filter((v) => v.faults.some((f) => f.kind === 'size')).length;
  if (sized) out.push(`${sized} clean cases with sizes or axes off by more than the bar`);
  const sound = [...clean, ...noisy].filter((v) => DUE.includes(v.input));
  const [due, done] = [sum(sound, 'due'), sum(sound, 'done')];
  if (done < 0.99 * due) out.push(`${done} of ${due} bores that can be reshaped are, 99 % are due`);
  const bold = verdicts.filter((v) => v.bold.length).length;
  if (bold) out.push(`${bold} cases where a hole was reshaped that must be left`);
  for (const kind of ['health', 'identity', 'geometry', 'slope', 'again', 'order', 'run', 'reason', 'unsaid']) {
    const bad = verdicts.filter((v) => v.faults.some((f) => f.kind === kind)).length;
    if (bad) out.push(`${bad} cases with faults of ${kind}`);
  }
  return out;
}
