// Judges one written file against its input and the report that came with it.
import { readFileSync } from 'node:fs';
import { read } from './package3mf.mjs';
import { same, solidOf, volumeSlack, welded, without } from './solid.mjs';

/** The faults of a pair, as sentences; empty when there is none. */
export function judge(inputPath, outputPath, reportPath) {
  const before = read(inputPath);
  const after = read(outputPath);
  const report = JSON.parse(readFileSync(reportPath, 'utf8'));
  const faults = packageFaults(before, after);
  if (report.result === 'unchanged' && !readFileSync(inputPath).equals(readFileSync(outputPath))) {
    faults.push('called unchanged, but its bytes differ from the input');
  }
  if (faults.length > 0 || before.error !== '') return faults;
  if (before.meshes.length !== after.meshes.length) {
    return [`${before.meshes.length} placed meshes became ${after.meshes.length}`];
  }
  return solidFaults(before.meshes, after.meshes, reportedVolumes(report));
}

function packageFaults(before, after) {
  const faults = [];
  if (before.error === '' && after.error !== '') {
    faults.push(`the reference library no longer reads it: ${after.error}`);
  }
  if (after.warnings.length > before.warnings.length) {
    faults.push(
      `${after.warnings.length} warnings of the reference library, the input has ` +
        `${before.warnings.length}: ${after.warnings.join('; ')}`,
    );
  }
  return faults;
}

/** Volumes in mm^3 that the report says were taken away and added, over all placements. */
export function reportedVolumes(report) {
  const changes = (report.features ?? [])
    .flatMap((feature) => feature.changes ?? [])
    .filter((change) => change.outcome === 'reshaped');
  const sum = (name) => changes.reduce((total, change) => total + (change[name] ?? 0), 0);
  return { removed: sum('removedVolumeMm3'), added: sum('addedVolumeMm3') };
}

function solidFaults(before, after, reported) {
  const faults = [];
  let removed = 0;
  let added = 0;
  let slack = 0;
  before.forEach((mesh, k) => {
    const found = compareMeshes(mesh, after[k], `mesh ${k}`);
    faults.push(...found.faults);
    removed += found.removed;
    added += found.added;
    slack += found.slack;
  });
  if (faults.length === 0 && !(Math.abs(removed - reported.removed) <= slack)) {
    faults.push(`${removed} mm^3 are gone, the report says ${reported.removed} (slack ${slack})`);
  }
  if (faults.length === 0 && !(Math.abs(added - reported.added) <= slack)) {
    faults.push(`${added} mm^3 were added, the report says ${reported.added} (slack ${slack})`);
  }
  return faults;
}

/** Output may repeat vertices only where the input does; what is no solid must stay as it is. */
function compareMeshes(mesh, after, name) {
  let was = solidOf(mesh);
  const is = was.solid === null ? solidOf(welded(after)) : solidOf(after);
  if (was.solid === null) was = solidOf(welded(mesh));
  try {
    if (was.solid !== null) return compare(was.solid, is, name);
    const faults = same(mesh, after) ? [] : [`${name}: ${was.status} before, and was changed`];
    return { faults, removed: 0, added: 0, slack: 0 };
  } finally {
    was.solid?.delete();
    is.solid?.delete();
  }
}

function compare(was, is, name) {
  if (is.status !== 'NoError') {
    return { faults: [`${name}: the boolean kernel says ${is.status}`], removed: 0, added: 0, slack: 0 };
  }
  const faults = [];
  const gone = without(was, is.solid);
  const come = without(is.solid, was);
  const removed = gone.volume;
  const added = come.volume;
  const difference = was.volume() - is.solid.volume();
  if (was.genus() !== is.solid.genus()) {
    faults.push(`${name}: genus ${was.genus()} became ${is.solid.genus()}`);
  }
  const whole = volumeSlack(was) + volumeSlack(is.solid);
  if (!(Math.abs(removed - added - difference) <= whole)) {
    faults.push(`${name}: volume fell by ${difference} mm^3, the booleans say ${removed} - ${added}`);
  }
  const slack = volumeSlack(was, gone.surface + come.surface) + volumeSlack(is.solid, gone.surface + come.surface);
  return { faults, removed, added, slack };
}
