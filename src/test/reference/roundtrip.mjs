// node roundtrip.mjs INPUTS OUTPUTS: reads OUTPUTS/**/NAME.3mf and INPUTS/**/NAME.3mf strictly with the
// consortium's reference library. An output may not fail where its input does not, nor have more warnings.
// Where the library does not read the input strictly, it reads both leniently as well; then an output may
// have no other warnings (a triangle with a fault becomes three with it, so their number says nothing).
// Ends with 0 if all keep to that, 1 if one does not, 2 if called wrongly.
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { read } from './package3mf.mjs';

const [inputs, outputs] = process.argv.slice(2);
if (!inputs || !outputs || !existsSync(inputs) || !existsSync(outputs)) {
  console.error('usage: node roundtrip.mjs INPUTS OUTPUTS');
  process.exit(2);
}
const names = readdirSync(outputs, { recursive: true }).map(String).filter((name) => name.endsWith('.3mf')).sort();
let failed = 0;
let unread = 0;
for (const name of names) {
  const faults = compare(name, true);
  if (read(join(inputs, name)).error !== '') {
    unread++;
    faults.push(...compare(name, false));
  }
  faults.forEach((fault) => console.log(`${name}: ${fault}`));
  if (faults.length > 0) failed++;
}
console.log(`${names.length - failed} passed, ${failed} failed; the library does not read ${unread} of the inputs`);
process.exit(failed === 0 && names.length > 0 ? 0 : 1);

function compare(name, strict) {
  const before = read(join(inputs, name), strict);
  const after = read(join(outputs, name), strict);
  const faults = [];
  if (after.error !== '' && after.error !== before.error) faults.push(`the reference library says ${after.error}`);
  const known = new Set(before.warnings);
  const more = strict ? after.warnings.length > before.warnings.length : after.warnings.some((w) => !known.has(w));
  if (more) faults.push(`more warnings: ${after.warnings.join('; ')}`);
  return faults;
}
