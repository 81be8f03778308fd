// Writes the scored corpus: for every case NAME.3mf and NAME.truth.json.
//
//   node generate.mjs --out DIR [--rounds N] [--treated N] [--family NAME]    the fixed set
//   node generate.mjs --out DIR --count N --seed S [--family NAME]             N cases by chance
//
// With --only NAME,NAME nothing else is written.

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { nameOf, truthText, writtenCase } from './cases.mjs';
import { options } from './options.mjs';
import { casesOf, drawnCases } from './plan.mjs';

const out = options.out ?? 'target/corpus';
mkdirSync(out, { recursive: true });
const list = options.count
  ? drawnCases(Number(options.count), Number(options.seed ?? 0))
  : casesOf(Number(options.rounds ?? 4), Number(options.treated ?? 4));
let made = 0;
const rough = [];
const only = options.only?.split(',');
for (const entry of list) {
  if (options.family && options.family !== entry.family || only && !only.includes(nameOf(entry))) continue;
  try {
    const { name, bytes, truth } = writtenCase(entry);
    writeFileSync(join(out, `${name}.3mf`), bytes);
    if (truth.input === 'rough' && !entry.treatment) rough.push(name);
    writeFileSync(join(out, `${name}.truth.json`), truthText(truth));
    made++;
  } catch (e) {
    console.error(JSON.stringify(entry), e.stack.split('\n').slice(0, 3).join(' | '));
    process.exitCode = 1;
  }
}
console.log(`${made} cases in ${out}`);
if (rough.length) console.log(`not sound as written: ${rough.join(', ')}`);
