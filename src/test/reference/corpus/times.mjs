// Processor time of cases by the size of their meshes. Told, not judged: a time depends on the machine.

/** Sizes go by factors of four. */
const sizeOf = (v) => Math.max(0, Math.floor(Math.log(Math.max(v.triangles, 1) / 64) / Math.log(4)) + 1);
const upTo = (size) => 64 * 4 ** size;
const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];

function bySize(verdicts) {
  const groups = new Map();
  for (const v of verdicts.filter((x) => x.ms && x.triangles)) {
    if (!groups.has(sizeOf(v))) groups.set(sizeOf(v), []);
    groups.get(sizeOf(v)).push(v);
  }
  return [...groups].sort(([a], [b]) => a - b).map(([size, list]) => ({ size, list, middle: median(list.map((v) => v.ms)) }));
}

/** Cases that took more than five times the median of their size. */
export const slowOnes = (verdicts) => bySize(verdicts).flatMap(({ list, middle }) => list.filter((v) => v.ms > 5 * middle));

/**
 * Cases to be timed again before any is called slow: a single time is that of a machine with other work
 * and of code that is compiled meanwhile. Those above three times the median of their size, and of such
 * sizes the cases around the median, so that both sides of the comparison are measured alike.
 */
export const doubtful = (verdicts) => bySize(verdicts).flatMap(({ list, middle }) => {
  const slow = list.filter((v) => v.ms > 3 * middle);
  if (!slow.length) return [];
  const order = [...list].sort((a, b) => a.ms - b.ms);
  const first = Math.max(0, Math.floor(order.length / 2) - AROUND);
  return [...new Set([...order.slice(first, first + 2 * AROUND + 1), ...slow])];
});
/** So many cases on either side of the median. */
const AROUND = 7;

export function timeTable(verdicts) {
  const head = ['triangles up to', 'cases', 'median ms', 'longest ms', 'longest case'];
  const rows = bySize(verdicts).map(({ size, list, middle }) => {
    const worst = list.reduce((a, b) => (b.ms > a.ms ? b : a));
    return [upTo(size), list.length, middle.toFixed(1), worst.ms.toFixed(1), worst.name];
  });
  return [head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');
}
