import { relative } from 'node:path';
import { BaseSequencer, type TestSpecification } from 'vitest/node';
import { top } from './runScript.ts';

/** Files that take longer than the rest, the longest first; a name that is missing here costs a little time, no more. */
const LONGEST = [
  'tests/app/everyScreen.test.ts',
  'tests/app/longList.test.ts',
  'tests/app/coldList.test.ts',
  'tests/app/oldSheets.test.ts',
  'tests/app/mainJob.test.ts',
  'tests/app/repair.test.ts',
  'tests/app/packed.test.ts',
  'tests/app/help.test.ts',
  'tests/app/hoursFacts.test.ts',
  'tests/app/exchange.test.ts',
  'tests/app/recall.test.ts',
  'tests/app/start.test.ts',
  'tests/app/stripDown.test.ts',
  'tests/app/marksPage.test.ts',
  'tests/app/fits.test.ts',
  'tests/app/doNotUse.test.ts',
  'tests/app/jobs.test.ts',
  'tests/app/firstStart.test.ts',
  'tests/app/plan.test.ts',
  'tests/reference/plain-model/agreement.test.ts',
  'tests/record/plan.test.ts',
  'tests/record/kill.test.ts',
  'tests/door/acceptsAll.test.ts',
  'tests/way/demoWorkshop.test.ts',
  'tests/record/roundTrip.test.ts',
  'tests/record/longImport.test.ts',
  'tests/accuracy/winter-shops/winterCells.test.ts',
  'tests/record/edgeCases/hours.test.ts',
  'tests/record/largeShop.test.ts',
  'tests/way/sameNumbers.test.ts',
  'tests/door/exchangeSheet.test.ts',
  'tests/door/refuses.test.ts',
  'core/fit/workTypeWord.test.ts',
  'tests/record/recall.test.ts',
  'core/fit/learnShop.test.ts',
  'tests/record/faults.test.ts',
  'tests/way/caughtUp.test.ts',
  'tests/reference/gaas-laser/foretell.test.ts',
  'core/plan/weeks/planWeeks.test.ts',
  'core/forecast/extremes.test.ts',
  'tests/door/call.test.ts',
  'tests/record/disk.test.ts',
];

/**
 * Those that run alone before all else: a process ends where one of them is next. Then the windows, and of each kind the longest
 * files first: what is left for the end is small, and keeps all processors busy.
 */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = (file: TestSpecification) => {
      const path = relative(top, file.moduleId).replaceAll('\\', '/');
      const kind = file.project.name === 'alone' ? 0 : path.startsWith('tests/app/') ? 1 : 2;
      const place = LONGEST.indexOf(path);
      return kind * (LONGEST.length + 1) + (place < 0 ? LONGEST.length : place);
    };
    return files.toSorted((a, b) => rank(a) - rank(b));
  }
}
