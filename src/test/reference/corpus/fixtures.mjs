// Makes the committed cases: parts that look real (fixtures/parts) and a small cut of the corpus
// (fixtures/truth), so that the tests have truth from another kernel without Node.
//
//   node fixtures.mjs           writes them
//   node fixtures.mjs --check   compares: every part of every package, every truth; 1 when one differs

import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { truthText, writtenCase } from './cases.mjs';
import { demonstration } from './demonstration.mjs';
import { unzip } from './zip.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '../../../../fixtures');
const small = (family, k, seed, more = {}) => ({ family, k, seed, ...more });
const LIST = [
  ...['bracket', 'hinge', 'clamp', 'gearWall'].map((family) => ['parts', { family, k: 0, seed: 1 }]),
  ...[
    small('through', 0, 3), small('blindFlat', 0, 6), small('blindConical', 0, 1), small('slanted', 4, 7), small('pipeUpright', 0, 10),
    small('lugs', 0, 3), small('counterbored', 0, 4), small('crossed', 1, 3), small('slotted', 0, 0), small('loosePin', 0, 3),
    small('thinRoof', 6, 3), small('thinRoof', 2, 3), small('tiltBore', 4, 3), small('neighbours', 3, 3),
    small('hex', 0, 2), small('stadium', 0, 2), small('peaked', 0, 2), small('dShape', 0, 2),
    small('through', 0, 11, { treatment: 'jitter2' }), small('lugs', 0, 11, { treatment: 'rounded2' }),
    small('through', 0, 6, { treatment: 'slivers' }), small('through', 0, 3, { placement: 'mirrored' }),
    small('blindFlat', 0, 6, { placement: 'twiceOtherWays' }), small('through', 0, 3, { placement: 'ovalInFile' }),
  ].map((entry) => ['truth', entry]),
];

const check = process.argv.includes('--check');
const same = (a, b) => {
  const [x, y] = [unzip(a), unzip(b)];
  return x.size === y.size && [...x].every(([name, bytes]) => y.get(name)?.equals(bytes));
};
const lamp = join(root, 'parts', 'lamp.3mf');
if (!check) writeFileSync(lamp, demonstration());
else if (!existsSync(lamp) || !same(readFileSync(lamp), demonstration())) {
  console.error(`${lamp} is not what the generator makes`);
  process.exitCode = 1;
}
for (const [folder, entry] of LIST) {
  const { name, bytes, truth } = writtenCase(entry);
  const base = join(root, folder, folder === 'parts' ? name.replace(/-0$/, '') : name);
  if (check) {
    const ok = existsSync(`${base}.3mf`) && same(readFileSync(`${base}.3mf`), bytes) && readFileSync(`${base}.truth.json`, 'utf8') === truthText(truth);
    if (!ok) {
      console.error(`${base} is not what the generator makes`);
      process.exitCode = 1;
    }
    continue;
  }
  mkdirSync(dirname(base), { recursive: true });
  writeFileSync(`${base}.3mf`, bytes);
  writeFileSync(`${base}.truth.json`, truthText(truth));
}
