// node crosscheck.mjs INPUTS OUTPUTS: judges OUTPUTS/**/NAME.3mf against INPUTS/**/NAME.3mf and the
// report OUTPUTS/**/NAME.json. Ends with 0 if all are sound, 1 if one is not, 2 if called wrongly.
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { judge } from './judge.mjs';

const [inputs, outputs] = process.argv.slice(2);
if (!inputs || !outputs || !existsSync(inputs) || !existsSync(outputs)) {
  console.error('usage: node crosscheck.mjs INPUTS OUTPUTS');
  process.exit(2);
}
const names = readdirSync(outputs, { recursive: true }).map(String).filter((name) => name.endsWith('.3mf')).sort();
let failed = 0;
for (const name of names) {
  const output = join(outputs, name);
  const faults = judge(join(inputs, name), output, output.replace(/\.3mf$/, '.json'));
  faults.forEach((fault) => console.log(`${name}: ${fault}`));
  if (faults.length > 0) failed++;
}
console.log(`${names.length - failed} passed, ${failed} failed`);
process.exit(failed === 0 && names.length > 0 ? 0 : 1);
