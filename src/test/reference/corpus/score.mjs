// Runs the program over the scored corpus and judges every result.
//
//   node score.mjs --corpus DIR --work DIR [--jar JAR] [--classes DIR] [--jobs 2] [--only TEXT] [--table FILE]
//
// Prints the table by family and every fault; ends with 1 when a bar is missed. The calls are those of
// the command line, made by a test class (in --classes) that keeps one Java process for many of them.

import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { createInterface } from 'node:readline';
import { options } from './options.mjs';
import { judge } from './judge.mjs';
import { orderFaults } from './twins.mjs';
import { markdown, missedBars, summed } from './table.mjs';

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
    const [code, said] = line.split('\t');
    waiting.shift()({ code: Number(code), said });
  });
  child.on('close', (code) => waiting.splice(0).forEach((answer) => answer({ code: 70, said: `the process ended with ${code}` })));
  return {
    call: (args) => new Promise((answer) => {
      waiting.push(answer);
      child.stdin.write(`${args.join('\t')}\n`);
    }),
    end: () => child.stdin.end(),
  };
}
const readOr = (file) => (existsSync(file) ? readFileSync(file) : undefined);

async function run(name, { call }) {
  const [input, output, again, json] = [join(corpus, `${name}.3mf`), ...['.3mf', '.again.3mf', '.json'].map((e) => join(work, name + e))];
  const { code, said } = await call(['reshape', input, '-o', output, '--json', json, '--quiet']);
  if (existsSync(output)) await call(['reshape', output, '-o', again, '--quiet']);
  const text = readOr(json)?.toString('utf8');
  return {
    truth: JSON.parse(readFileSync(join(corpus, `${name}.truth.json`), 'utf8')), input: readFileSync(input),
    output: readOr(output), again: readOr(again), report: text ? JSON.parse(text) : undefined, exit: code, said,
  };
}

const verdicts = [];
const reports = new Map();
const queue = [...names];
await Promise.all(Array.from({ length: Number(options.jobs ?? 2) }, async () => {
  const java = worker();
  for (let name = queue.shift(); name; name = queue.shift()) {
    const done = await run(name, java);
    reports.set(name, done.report);
    verdicts.push(judge(done));
  }
  java.end();
}));
orderFaults(verdicts, reports);
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
