// node sabotage.mjs OUTPUTS TARGET: takes the first output that its report calls changed and writes
// TARGET/FAULT/NAME.3mf with its report for several faults, each of which the cross-check must find.
import { copyFileSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { unzip, zip } from './zip.mjs';

const TRIANGLE = /<(?:\w+:)?triangle\b[^>]*\/>/g;

const FAULTS = {
  'triangle-dropped': (text) => replaceLast(text, TRIANGLE, () => ''),
  'triangle-flipped': (text) =>
    replaceLast(text, TRIANGLE, (tag) =>
      tag.replace(/v1="(\d+)"/, 'vX="$1"').replace(/v2="(\d+)"/, 'v1="$1"').replace('vX=', 'v2=')),
  'triangle-twice': (text) => replaceLast(text, TRIANGLE, (tag) => tag + tag),
  'vertex-moved': (text) =>
    replaceLast(text, /<(?:\w+:)?vertex\b[^>]*\/>/g, (tag) =>
      tag.replace(/z="([^"]*)"/, (_, z) => `z="${Number(z) + 0.5}"`)),
  'resource-missing': (text) => replaceLast(text, /objectid="\d+"/g, () => 'objectid="987654"'),
};

const [outputs, target] = process.argv.slice(2);
const name = readdirSync(outputs, { recursive: true }).map(String).sort().find(changed);
if (name === undefined) {
  console.error(`no changed output under ${outputs}`);
  process.exit(2);
}
for (const [fault, spoil] of Object.entries(FAULTS)) {
  const to = join(target, fault, name);
  mkdirSync(dirname(to), { recursive: true });
  writeFileSync(to, zip(unzip(readFileSync(join(outputs, name))).map((entry) => spoiled(entry, spoil))));
  copyFileSync(reportOf(join(outputs, name)), reportOf(to));
}
const lying = join(target, 'report-lies', name);
mkdirSync(dirname(lying), { recursive: true });
copyFileSync(join(outputs, name), lying);
writeFileSync(reportOf(lying), readFileSync(reportOf(join(outputs, name)), 'utf8').replace(/("removedVolumeMm3"\s*:\s*)/, '$110'));
console.log(name);

function changed(path) {
  return path.endsWith('.3mf') && JSON.parse(readFileSync(reportOf(join(outputs, path)), 'utf8')).result === 'changed';
}

function reportOf(path) {
  return path.replace(/\.3mf$/, '.json');
}

function spoiled({ name: entry, data }, spoil) {
  return { name: entry, data: entry.endsWith('.model') ? Buffer.from(spoil(data.toString('utf8')), 'utf8') : data };
}

function replaceLast(text, pattern, change) {
  const last = [...text.matchAll(pattern)].at(-1);
  if (last === undefined) return text;
  return text.slice(0, last.index) + change(last[0]) + text.slice(last.index + last[0].length);
}
