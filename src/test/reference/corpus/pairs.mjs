// Makes the assemblies, has the program pair them, and scores what it says.
//
//   node pairs.mjs [--out DIR] [--rounds 3] [--jar JAR] [--classes DIR] [--only TEXT] [--table FILE]
//
// Prints a table by family and every fault; ends with 1 when a bar is missed: no pair that is none, at
// least 98 of 100 pairs found, and where several fit alike, the program must say so. With --table the
// table replaces what stands in FILE between the marks `<!-- pairs -->`.

import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { createInterface } from 'node:readline';
import { assembly, DECOYS, JOINED } from './assemblies.mjs';
import { options } from './options.mjs';
import { cross, dot, norm, sub } from './vec.mjs';

const { out = 'target/assemblies', jar = 'target/gable.jar', classes = 'target/test-classes', rounds = 3, only = '' } = options;
rmSync(out, { recursive: true, force: true });
mkdirSync(out, { recursive: true });

const child = spawn('java', ['-cp', [jar, classes].join(delimiter), 'gable.cli.Batch'], { stdio: ['pipe', 'pipe', 'inherit'] });
const waiting = [];
createInterface({ input: child.stdout }).on('line', (line) => waiting.shift()(Number(line.split('\t')[0])));
child.on('close', () => waiting.splice(0).forEach((answer) => answer(70)));
const call = (...args) => new Promise((answer) => {
  waiting.push(answer);
  child.stdin.write(`${args.join('\t')}\n`);
});
const json = (file) => JSON.parse(readFileSync(file, 'utf8'));

/** Which feature of the truth has an id: [file, id] -> the truth's kind, axis and diameter match. */
function isFeature(truth, file, report) {
  const off = cross(sub(report.axisPoint, truth.point), truth.direction);
  return truth.file === file && truth.kind === report.kind && Math.abs(report.diameterMm - truth.diameterMm) < 0.01
    && norm(off) < 0.05 && Math.abs(dot(truth.direction, report.axisDirection)) > 0.999;
}

function judged({ truth, pairs, reports }) {
  const verdict = { family: truth.family, decoy: truth.decoy, due: 0, found: 0, said: pairs.pairs.length, right: 0, faults: [] };
  const of = (side) => reports[side.file].features.find((f) => side.ids.includes(f.id));
  const said = pairs.pairs.map((p) => ({ pin: of(p.pin), bore: of(p.bore), files: [p.pin.file, p.bore.file], used: false, text: `${p.pin.ids} in ${p.bore.ids} by ${p.by}` }));
  for (const group of truth.groups) {
    const taken = new Set();
    for (const bore of group.bores) {
      verdict.due++;
      const match = said.find((s) => {
        const k = group.pins.findIndex((pin) => isFeature(pin, s.files[0], s.pin));
        const fits = k >= 0 && isFeature(bore, s.files[1], s.bore) && (group.copies || !taken.has(k));
        if (fits) taken.add(k);
        return fits && !s.used;
      });
      if (match) {
        match.used = true;
        verdict.found++;
      } else verdict.faults.push(`no pair for the bore of ${bore.diameterMm} mm`);
    }
  }
  verdict.right = said.filter((s) => s.used).length;
  said.filter((s) => !s.used).forEach((s) => verdict.faults.push(`no pair: ${s.text}`));
  if (truth.told && !pairs.ambiguities.length) verdict.faults.push('several ways, and nothing is said of it');
  verdict.untold = truth.told && !pairs.ambiguities.length;
  return verdict;
}

const verdicts = [];
let files = 0;
for (const family of [...Object.keys(JOINED), ...Object.keys(DECOYS)]) {
  for (let round = 0; round < Number(rounds); round++) {
    const { name, files: packages, truth } = assembly(family, 1 + round);
    if (!name.includes(only)) continue;
    const paths = packages.map((bytes, k) => {
      const path = join(out, `${name}${packages.length > 1 ? `-${k}` : ''}.3mf`);
      writeFileSync(path, bytes);
      return path;
    });
    files += paths.length;
    const reports = [];
    for (const path of paths) {
      if (await call('inspect', path, '--quiet', '--json', `${path}.json`)) throw new Error(`${path} cannot be inspected`);
      reports.push(json(`${path}.json`));
    }
    const told = join(out, `${name}.pairs.json`);
    if (await call('pairs', ...paths, '--quiet', '--json', told)) throw new Error(`${name} cannot be paired`);
    const verdict = judged({ truth, pairs: json(told), reports });
    verdicts.push(verdict);
    verdict.faults.forEach((f) => console.log(`${name}: ${f}`));
  }
}
child.stdin.end();

const sum = (list, key) => list.reduce((n, v) => n + v[key], 0);
const percent = (a, b) => (b ? ((100 * a) / b).toFixed(a === b ? 0 : 1) : '–');
const row = (name, list) => [name, list.length, sum(list, 'due'), percent(sum(list, 'found'), sum(list, 'due')), sum(list, 'said'), percent(sum(list, 'right'), sum(list, 'said')), sum(list, 'untold')];
const families = [...new Set(verdicts.map((v) => v.family))];
const table = [
  ['family', 'assemblies', 'pairs', 'recall %', 'told', 'precision %', 'doubts untold'], Array(7).fill('---'),
  ...families.map((name) => row(verdicts.find((v) => v.family === name).decoy ? `decoy: ${name}` : name, verdicts.filter((v) => v.family === name))),
  row('ALL', verdicts),
].map((cells) => `| ${cells.join(' | ')} |`).join('\n');
console.log(`${table}\n${verdicts.length} assemblies in ${files} files`);
if (options.table) {
  const parts = readFileSync(options.table, 'utf8').split('<!-- pairs -->');
  if (parts.length !== 3) throw new Error(`${options.table} has not two marks`);
  writeFileSync(options.table, [parts[0], `\n${table}\n`, parts[2]].join('<!-- pairs -->'));
}
const wrong = sum(verdicts, 'said') - sum(verdicts, 'right');
const missed = [
  ...(wrong ? [`${wrong} pairs are none`] : []),
  ...(sum(verdicts, 'found') < 0.98 * sum(verdicts, 'due') ? ['fewer than 98 of 100 pairs are found'] : []),
  ...(sum(verdicts, 'untold') ? ['doubts are not told'] : []),
];
missed.forEach((m) => console.log(`BAR MISSED: ${m}`));
process.exitCode = missed.length ? 1 : 0;
