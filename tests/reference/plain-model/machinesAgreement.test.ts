import { describe, expect, it } from 'vitest';
import { agrees } from '#tests/accuracy/agreement.ts';
import { compareSharing, sharedTerms, sharingMachines } from '#tests/accuracy/machinesAgreement.ts';
import { longRun } from '#tests/support/counts.ts';

/** Sums over all figures, harshness and errors take a while. */
const LONG_MS = 3_600_000;

/** Half a per cent of every hours figure and 0.002 of every chance. */
describe('production against the plain model extended by what parts of a machine share, class figures learned on both sides', () => {
  for (const { title, shared } of longRun ? sharedTerms : sharedTerms.slice(1, 2))
    it(title, { timeout: LONG_MS }, () => {
      const machines = longRun ? 3 : 2;
      const found = (longRun ? [90, 91] : [90]).flatMap((seed) =>
        compareSharing(sharingMachines(seed, machines, shared), shared),
      );
      expect(found.length).toBeGreaterThan(2 * machines);
      expect(found.filter(agrees).length).toBe(found.length);
    });
});
