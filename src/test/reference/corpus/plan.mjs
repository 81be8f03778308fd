// Which cases a set holds. 'ci' is fixed and small; 'all' repeats it over many seeds.

import { FAMILIES } from './cases.mjs';
import { PLACEMENTS } from './placements.mjs';
import { TREATMENTS } from './treatments.mjs';

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

/** [{ family, k, treatment, placement, seed }]; `rounds` cases of every family. */
export function casesOf(rounds, treatedRounds, offset = 0) {
  const list = [];
  const push = (family, k, more = {}) => list.push({ family, k, seed: seedOf(family) + k + offset, ...more });
  for (const family of Object.keys(FAMILIES)) {
    const count = SWEEPS[family] ? SWEEPS[family] * (SWEEPS[family] === 1 ? 1 : Math.ceil(rounds / SWEEPS[family])) : rounds;
    for (let k = 0; k < count; k++) push(family, k);
  }
  const each = (kinds, key, hosts) => kinds.forEach((kind, i) => {
    for (let k = 0; k < treatedRounds; k++) push(FITTING[kind] ?? hosts[(i + k) % hosts.length], k, { [key]: kind });
  });
  each(Object.keys(TREATMENTS).filter((t) => t !== 'none'), 'treatment', HOSTS);
  each(Object.keys(PLACEMENTS).filter((p) => p !== 'plain'), 'placement', SIMPLE_HOSTS);
  return list;
}

/** Base of a family's seeds: of its name alone (FNV-1a), so that a new family changes no other's cases. */
const seedOf = (name) => [...name].reduce((hash, letter) => Math.imul(hash ^ letter.charCodeAt(0), 16777619) >>> 0, 2166136261) % 1e4 * 1000;
