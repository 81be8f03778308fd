// node sabotage.mjs OUTPUTS TARGET: takes the first output in which a bore was changed, and the first
// in which a pin was, and writes TARGET/FAULT/NAME.3mf (for the pin TARGET/pin-FAULT) with its report
// for several faults, each of which the cross-check must find.
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
  // by a millimetre, aslant: a vertex that moves along the face in which it lies leaves the solid as it
  // is, and of four small facets half a millimetre changes less than rounding may on a part of four bodies
  'vertex-moved': (text) =>
    replaceLast(text, /<(?:\w+:)?vertex\b[^>]*\/>/g, (tag) =>
      tag.replace(/([xyz])="([^"]*)"/g, (_, axis, value) => `${axis}="${Number(value) + 1}"`)),
  'resource-missing': (text) => replaceLast(text, /objectid="\d+"/g, () => 'objectid="987654"'),
};

const [outputs, target] = process.argv.slice(2);
const names = readdirSync(outputs, { recursive: true }).map(String).sort();
for (const [kind, prefix] of [['bore', ''], ['pin', 'pin-']]) {
  const name = names.find((path) => changed(path, kind));
  if (name === undefined) {
    console.error(`no output under ${outputs} in which a ${kind} was changed`);
    process.exit(2);
  }
  spoil(name, prefix);
  console.log(name);
}

function spoil(name, prefix) {
  for (const [fault, how] of Object.entries(FAULTS)) {
    const to = join(target, prefix + fault, name);
    mkdirSync(dirname(to), { recursive: true });
    writeFileSync(to, zip(unzip(readFileSync(join(outputs, name))).map((entry) => spoiled(entry, how))));
    copyFileSync(reportOf(join(outputs, name)), reportOf(to));
  }
  const lying = join(target, `${prefix}report-lies`, name);
  mkdirSync(dirname(lying), { recursive: true });
  copyFileSync(join(outputs, name), lying);
  writeFileSync(reportOf(lying), readFileSync(reportOf(join(outputs, name)), 'utf8').replace(/("removedVolumeMm3"\s*:\s*)/, '$110'));
}

function changed(path, kind) {
  if (!path.endsWith('.3mf')) return false;
  const report = JSON.parse(readFileSync(reportOf(join(outputs, path)), 'utf8'));
  return report.result === 'changed' && report.features.some((f) => f.kind === kind && f.outcome === 'reshaped');
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
