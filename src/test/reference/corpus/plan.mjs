// Which cases a set holds: a fixed one that shows every family, treatment and placement, or any number
// drawn by chance.

import { FAMILIES } from './cases.mjs';
import { PLACEMENTS } from './placements.mjs';
import { TREATMENTS } from './treatments.mjs';
import { chance } from './vec.mjs';

/** Parts on which mesh treatments and placements are tried. */
const HOSTS = ['through', 'blindFlat', 'lugs', 'pipeUpright', 'slanted', 'many'];
/** Families whose parameter k runs through a list of values: that many cases show them all. */
const SWEEPS = {
  bracket: 1, hinge: 1, clamp: 1, gearWall: 1,
  facets: 14, tiltPart: 19, tiltBore: 10, thinRoof: 12, sizes: 11, slanted: 8, neighbours: 12, cavityAbove: 12,
};
const SIMPLE_HOSTS = ['through', 'blindFlat', 'lugs'];

/** Treatments that need a host of their own: square edges to touch, several shells. */
const FITTING = { touchVertex: 'lugs', touchEdge: 'lugs', flippedShell: 'shells' };
/** Treatments that would make too many triangles of some families, or need what only hosts have. */
const ON_HOSTS = ['fine', 'finer', 'decimated', ...Object.keys(FITTING)];
/** Placements that change what is to be done, which is worked out for plain bores only. */
const ON_SIMPLE_HOSTS = ['stretched', ...Object.keys(PLACEMENTS).filter((p) => /Way/.test(p))];

const TREATED = Object.keys(TREATMENTS).filter((t) => t !== 'none');
const PLACED = Object.keys(PLACEMENTS).filter((p) => p !== 'plain');

/** Base of a family's seeds: of its name alone (FNV-1a), so that a new family changes no other's cases. */
const seedOf = (name) => [...name].reduce((hash, letter) => Math.imul(hash ^ letter.charCodeAt(0), 16777619) >>> 0, 2166136261) % 1e4 * 1000;

/**
 * [{ family, k, treatment, placement, seed }]: `rounds` cases of every family, and for the first two of
 * each a twin in another order and one turned about z; `treatedRounds` of every treatment and placement.
 */
export function casesOf(rounds, treatedRounds) {
  const list = [];
  const push = (family, k, more = {}) => list.push({ family, k, seed: seedOf(family) + k, ...more });
  for (const family of Object.keys(FAMILIES)) {
    const count = SWEEPS[family] ? SWEEPS[family] * (SWEEPS[family] === 1 ? 1 : Math.ceil(rounds / SWEEPS[family])) : rounds;
    for (let k = 0; k < count; k++) push(family, k);
    push(family, 0, { treatment: 'shuffled' });
    push(family, Math.min(1, count - 1), { placement: 'aboutZ' });
  }
  const each = (kinds, key, hosts) => kinds.forEach((kind, i) => {
    for (let k = 0; k < treatedRounds; k++) push(FITTING[kind] ?? hosts[(i + k) % hosts.length], k, { [key]: kind });
  });
  each(TREATED.filter((t) => t !== 'shuffled'), 'treatment', HOSTS);
  each(PLACED.filter((p) => p !== 'aboutZ'), 'placement', SIMPLE_HOSTS);
  return list;
}

/**
 * `count` cases drawn by chance: any family; two of five treated, two of five placed; every eighth of
 * the plain ones with both twins.
 */
export function drawnCases(count, seed) {
  const random = chance(seed + 1);
  const list = [];
  for (let k = 1000; list.length < count; k++) {
    const entry = drawn(random, k, seed);
    list.push(entry);
    if (!entry.treatment && !entry.placement && random.whole(1, 8) === 1) list.push({ ...entry, treatment: 'shuffled' }, { ...entry, placement: 'aboutZ' });
  }
  return list;
}

function drawn(random, k, seed) {
  const treatment = random.next() < 0.4 ? random.pick(TREATED) : undefined;
  const placement = random.next() < 0.4 ? random.pick(PLACED) : undefined;
  const families = FITTING[treatment] ? [FITTING[treatment]]
    : ON_SIMPLE_HOSTS.includes(placement) ? SIMPLE_HOSTS
    : ON_HOSTS.includes(treatment) ? HOSTS : Object.keys(FAMILIES).filter((f) => SWEEPS[f] !== 1);
  const family = random.pick(families);
  return { family, k, seed: seedOf(family) + k + 1e7 * (seed % 100), ...(treatment ? { treatment } : {}), ...(placement ? { placement } : {}) };
}
