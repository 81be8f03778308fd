// Runs the program over the scored corpus and judges every result.
//
//   node score.mjs --corpus DIR --work DIR [--jar JAR] [--classes DIR] [--jobs 2] [--only TEXT]
//       [--table FILE] [--keep no] [--failing DIR]
//
// Prints the table by family, the time by size, and every fault; ends with 1 when a bar is missed. With
// --table both tables replace what stands in FILE between the marks `<!-- score -->`. With --keep no the
// outputs of cases without a fault are removed. Inputs and truths of cases with one are copied to
// --failing DIR (target/failing). The calls are those of the command line, made by a test
// class (in --classes) that keeps one Java process for many of them.

import { spawn } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { createInterface } from 'node:readline';
import { options } from './options.mjs';
import { judge } from './judge.mjs';
import { plainName, orderFaults } from './twins.mjs';
import { inserted, markdown, missedBars, summed } from './table.mjs';
import { doubtful, slowOnes, timeTable } from './times.mjs';

const { corpus = 'target/corpus', work = 'target/corpus-out', jar = 'target/gable.jar', classes = 'target/test-classes' } = options;
const names = readdirSync(corpus).filter((f) => f.endsWith('.truth.json')).map((f) => f.slice(0, -11))
  .filter((n) => !options.only || n.includes(options.only));
if (!names.length) throw new Error(`no cases in ${corpus}`);
rmSync(work, { recursive: true, force: true });
mkdirSync(work, { recursive: true });

/** One Java process that answers calls in their order: { call(args) -> {code, said}, end() }. */
function worker() {
  const child = spawn('java', ['-cp', [jar, classes].join(delimiter), 'gable.cli.Batch'], { stdio: ['pipe', 'pipe', 'inherit'] });
  const waiting = [];
  createInterface({ input: child.stdout }).on('line', (line) => {
    const [code, said, ms] = line.split('\t');
    waiting.shift()({ code: Number(code), said, ms: Number(ms) });
  });
  child.on('close', (code) => waiting.splice(0).forEach((answer) => answer({ code: 70, said: `the process ended with ${code}`, ms: 0 })));
  return {
    call: (args) => new Promise((answer) => {
      waiting.push(answer);
      child.stdin.write(`${args.join('\t')}\n`);
    }),
    end: () => child.stdin.end(),
  };
}
const readOr = (file) => (existsSync(file) ? readFileSync(file) : undefined);

const files = (name) => [join(corpus, `${name}.3mf`), ...['.3mf', '.again.3mf', '.json'].map((e) => join(work, name + e))];
const truthOf = (name) => JSON.parse(readFileSync(join(corpus, `${name}.truth.json`), 'utf8'));

async function run(name, { call }) {
  const truth = truthOf(name);
  const [input, output, again, json] = files(name);
  const args = truth.args ?? [];
  const { code, said, ms } = await call(['reshape', input, '-o', output, '--json', json, '--quiet', ...args]);
  if (existsSync(output)) await call(['reshape', output, '-o', again, '--quiet', ...args]);
  const text = readOr(json)?.toString('utf8');
  return { truth, input: readFileSync(input), output: readOr(output), again: readOr(again), report: text ? JSON.parse(text) : undefined, exit: code, said, ms };
}

const ROUNDS = 5;
const verdicts = [];
const results = new Map();
const twinned = new Set(names.flatMap((name) => (plainName(name) ? [name, plainName(name)] : [])));
const queue = [...names];
const workers = Array.from({ length: Number(options.jobs ?? 2) }, worker);
await Promise.all(workers.map(async (java) => {
  for (let name = queue.shift(); name; name = queue.shift()) {
    const done = await run(name, java);
    const verdict = { ...judge(done), ms: done.ms };
    if (twinned.has(name)) results.set(name, { report: done.report, points: verdict.points });
    verdicts.push(verdict);
    if (options.keep === 'no' && !verdict.faults.length && !verdict.shy.length && !verdict.bold.length) files(name).slice(1).forEach((f) => rmSync(f, { force: true }));
  }
}));
orderFaults(verdicts, results);
verdicts.sort((a, b) => (a.name < b.name ? -1 : 1));

// What may be slow is timed again by the same call in a process that is warm by then. The mean counts:
// processors' clocks tick every 10 ms, which a sum of several smooths and the least would not.
const again = doubtful(verdicts);
const timed = join(work, 'timed-again.3mf');
const spent = new Map(again.map((v) => [v, 0]));
for (let round = 0; round < ROUNDS; round++) {
  for (const v of again) {
    const { ms } = await workers[0].call(['reshape', join(corpus, `${v.name}.3mf`), '-o', timed, '--quiet', ...(truthOf(v.name).args ?? [])]);
    spent.set(v, spent.get(v) + ms);
  }
}
spent.forEach((ms, v) => (v.ms = ms / ROUNDS));
rmSync(timed, { force: true });
workers.forEach((java) => java.end());

const table = `${markdown(summed(verdicts))}\n\n${timeTable(verdicts)}`;
console.log(table);
for (const v of verdicts) {
  for (const f of v.faults) console.log(`${v.name}: ${f.kind}: ${f.text}`);
  for (const s of v.shy) console.log(`${v.name}: left${v.input === 'rough' ? ' (rough input)' : ''}: ${s}`);
  for (const s of v.bold) console.log(`${v.name}: wrongly reshaped: ${s}`);
}
for (const v of slowOnes(verdicts)) console.log(`${v.name}: slow: ${v.ms.toFixed(0)} ms, more than 5 times the median of its size`);
if (options.table) inserted(options.table, table);
const failing = verdicts.filter((v) => v.bold.length || (v.shy.length && v.input !== 'rough') || v.faults.some((f) => f.kind !== 'shifted'));
if (failing.length) {
  const folder = options.failing ?? 'target/failing';
  mkdirSync(folder, { recursive: true });
  for (const { name } of failing) for (const e of ['.3mf', '.truth.json']) copyFileSync(join(corpus, name + e), join(folder, name + e));
  console.log(`${failing.length} cases that failed are in ${folder}`);
}
const missed = missedBars(verdicts);
missed.forEach((m) => console.log(`BAR MISSED: ${m}`));
process.exitCode = missed.length ? 1 : 0;
