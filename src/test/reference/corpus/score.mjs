// Runs the tool over the scored corpus and judges every result.
//
//   node score.mjs --corpus DIR --work DIR [--jar target/gable.jar] [--jobs 2] [--only TEXT] [--table FILE]
//   node score.mjs --corpus DIR --work DIR --exits FILE    judges results that are there already; FILE
//                                                          holds {"NAME": {"code": 0}} for each
//
// Prints the table by family and every fault; ends with 1 when a bar is missed.

import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { judge } from './judge.mjs';
import { markdown, missedBars, summed } from './table.mjs';

const options = Object.fromEntries(
  process.argv.slice(2).map((a, i, all) => [a, all[i + 1]]).filter(([a]) => a.startsWith('--')).map(([a, v]) => [a.slice(2), v]),
);
const corpus = options.corpus ?? 'target/corpus';
const work = options.work ?? 'target/corpus-out';
const jar = options.jar ?? 'target/gable.jar';
mkdirSync(work, { recursive: true });

const names = readdirSync(corpus).filter((f) => f.endsWith('.truth.json')).map((f) => f.slice(0, -11))
  .filter((n) => !options.only || n.includes(options.only));

const exits = options.exits && JSON.parse(readFileSync(options.exits, 'utf8'));
const call = (args) => new Promise((done) => {
  const child = spawn('java', ['-jar', jar, ...args], { stdio: ['ignore', 'ignore', 'pipe'] });
  let noise = '';
  child.stderr.on('data', (d) => (noise += d));
  child.on('close', (code) => done({ code, noise }));
});
const readOr = (file) => (existsSync(file) ? readFileSync(file) : undefined);

async function run(name) {
  const [input, output, again, json] = [join(corpus, `${name}.3mf`), ...['.3mf', '.again.3mf', '.json'].map((e) => join(work, name + e))];
  const { code } = exits?.[name] ?? (await call(['reshape', input, '-o', output, '--json', json, '--quiet']));
  if (!exits && existsSync(output)) await call(['reshape', output, '-o', again, '--quiet']);
  const text = readOr(json)?.toString('utf8');
  return {
    truth: JSON.parse(readFileSync(join(corpus, `${name}.truth.json`), 'utf8')), input: readFileSync(input),
    output: readOr(output), again: readOr(again), report: text ? JSON.parse(text) : undefined, exit: code,
  };
}

const verdicts = [];
const queue = [...names];
await Promise.all(Array.from({ length: Number(options.jobs ?? 2) }, async () => {
  for (let name = queue.shift(); name; name = queue.shift()) verdicts.push(judge(await run(name)));
}));
verdicts.sort((a, b) => (a.name < b.name ? -1 : 1));

const table = markdown(summed(verdicts));
console.log(table);
for (const v of verdicts) {
  for (const f of v.faults) console.log(`${v.name}: ${f.kind}: ${f.text}`);
  for (const s of v.shy) console.log(`${v.name}: left: ${s}`);
  for (const s of v.bold) console.log(`${v.name}: wrongly reshaped: ${s}`);
}
if (options.table) writeFileSync(options.table, `${table}\n`);
const missed = missedBars(verdicts);
missed.forEach((m) => console.log(`BAR MISSED: ${m}`));
process.exitCode = missed.length ? 1 : 0;
