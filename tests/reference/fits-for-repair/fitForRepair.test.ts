import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { isoFit } from '#core/iso286/isoFit.ts';
import { classText } from '#core/iso286/toleranceClass.ts';
import { orRefuse } from '#core/outcome.ts';
import { fitForRepair, REPAIR_USES, type RepairUse, S6_UP_TO_MM } from '#core/repair/fit-for-repair/fitForRepair.ts';

const rows = Papa.parse<Record<string, string>>(readFileSync(join(import.meta.dirname, 'fits.csv'), 'utf8'), {
  header: true,
  skipEmptyLines: true,
}).data;

const ROW_OF: Record<RepairUse, string> = {
  'greased-pivot': 'greased pivot pin, ordinary',
  'close-pivot': 'closer pivot, new bush',
  'latch-pin': 'latch pin sliding by hand',
  'bush-in-boss': 'bush OD in boss',
  'fixed-pin': 'fixed pin in outer lugs',
};

describe('the fit a repair has when the shop says nothing else', () => {
  test.each(REPAIR_USES)('%s is one of the row’s, and claims no more than the row', (use) => {
    const row = rows.find((one) => one.use === ROW_OF[use]);
    const fit = fitForRepair(use, 50);
    expect(row?.hole).toContain(classText(fit.hole));
    expect(row?.shaft).toContain(classText(fit.shaft));
    expect(['common-practice', 'from-memory']).toContain(fit.howKnown);
    expect(fit.howKnown === 'from-memory').toBe(row?.status?.startsWith('M'));
  });

  test('clearances at 50 mm as the rows name them', () => {
    const range = (use: RepairUse) => {
      const { hole, shaft } = fitForRepair(use, 50);
      const { leastClearanceUm, mostClearanceUm } = orRefuse(isoFit(50, hole, shaft));
      return [leastClearanceUm / 1000, mostClearanceUm / 1000];
    };
    expect(range('greased-pivot')).toEqual([0.08, 0.204]);
    expect(range('close-pivot')).toEqual([0.025, 0.089]);
  });

  test('bushes are held by s6 up to 120 mm and by r6 above, and always by interference', () => {
    const bush = (nominalMm: number) => fitForRepair('bush-in-boss', nominalMm);
    expect(classText(bush(S6_UP_TO_MM).shaft)).toBe('s6');
    expect(classText(bush(S6_UP_TO_MM + 0.5).shaft)).toBe('r6');
    for (const nominalMm of [10, 25, 50, 80, 120, 130, 200])
      expect(orRefuse(isoFit(nominalMm, bush(nominalMm).hole, bush(nominalMm).shaft)).kind).toBe('interference');
  });
});
