import { describe, expect, it } from 'vitest';
import { agrees } from '#tests/accuracy/agreement.ts';
import { compareSharing, sharedTerms, sharingMachines } from '#tests/accuracy/machinesAgreement.ts';
import { longRun } from '#tests/support/counts.ts';

/** Sums over all figures, harshness and errors take a while. */
const LONG_MS = 3_600_000;
/** Parts of 7050 hardly differ and are read from one side: as normals alone they were 0.0023 of a chance off. */
const SEEDS = longRun ? [90, 91, 7050] : [7050];
const MACHINES = 3;

/** Half a per cent of every hours figure and 0.002 of every chance. */
describe('production against the plain model extended by what parts of a machine share, class figures learned on both sides', () => {
  for (const { title, shared } of longRun ? sharedTerms : sharedTerms.slice(1, 2))
    it(title, { timeout: LONG_MS }, () => {
      const found = SEEDS.flatMap((seed) => compareSharing(sharingMachines(seed, MACHINES, shared), shared));
      expect(found.length).toBeGreaterThan(2 * MACHINES * SEEDS.length);
      expect(found.filter(agrees).length).toBe(found.length);
    });

  for (const { title, shared } of longRun ? sharedTerms : [])
    it(`${title}, of a class of three parts on two machines`, { timeout: LONG_MS }, () => {
      const [first = [], second = []] = sharingMachines(90, 2, shared);
      const found = compareSharing([first.slice(0, 2), second.slice(0, 1)], shared);
      expect(found.length).toBeGreaterThan(1);
      expect(found.filter(agrees).length).toBe(found.length);
    });
});
