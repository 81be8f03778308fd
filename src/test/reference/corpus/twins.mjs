// Cases that differ only in the order of vertices and triangles, or by a turn about z, must come out
// alike: same ids, kinds and outcomes, same sizes to the digits of the report.

const TWINS = ['-shuffled', '-about-z'];

const seen = (feature) => [feature.outcome, feature.shape, feature.reason?.code ?? '', feature.changes?.map((c) => c.profile ?? '').join(), rounded(feature.diameterMm), rounded(feature.tiltDeg)].join(' ');
/** Reports give six decimals; a turn costs the last one. */
const rounded = (x) => (x ?? 0).toFixed(5).replace(/^-0\.0+$/, '0.00000');

/** Adds a fault to the verdict of each twin that differs from the plain case. */
export function orderFaults(verdicts, reports) {
  for (const verdict of verdicts) {
    const ending = TWINS.find((t) => verdict.name.endsWith(t));
    const plain = ending && reports.get(verdict.name.slice(0, -ending.length));
    if (!plain) continue;
    const text = difference(plain, reports.get(verdict.name), ending === '-shuffled');
    if (text) verdict.faults.push({ kind: 'order', text });
  }
}

/** What differs, in words; a turn may change the order and with it the ids. */
export function difference(plain, twin, sameIds) {
  const list = (report) => (report?.features ?? []).map((f) => (sameIds ? `${f.id} ${seen(f)}` : seen(f))).sort();
  const [a, b] = [list(plain), list(twin)];
  const k = a.findIndex((x, i) => x !== b[i]);
  if (k < 0 && a.length === b.length) return undefined;
  return k < 0 ? `${b.length} features instead of ${a.length}` : `"${b[k]}" instead of "${a[k]}"`;
}
