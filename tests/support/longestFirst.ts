import { relative } from 'node:path';
import { BaseSequencer, type TestSpecification } from 'vitest/node';
import { top } from './runScript.ts';

/**
 * Files that take longer than the rest, the longest first, as they took in a whole run; a name that is missing here costs a little
 * time, no more. The first learns the demo: none that would wait for it begins beside it.
 */
const LONGEST = [
  'tests/app/everyScreen.test.ts',
  'tests/app/longList.test.ts',
  'tests/app/mainJob.test.ts',
  'tests/app/help.test.ts',
  'tests/app/oldSheets.test.ts',
  'tests/app/recall.test.ts',
  'tests/app/twoWindows.test.ts',
  'tests/app/slips.test.ts',
  'tests/app/doNotUse.test.ts',
  'tests/app/forecastSettings.test.ts',
  'tests/app/check.test.ts',
  'tests/app/exchange.test.ts',
  'tests/app/hoursFacts.test.ts',
  'tests/app/firstStart.test.ts',
  'tests/app/customers.test.ts',
  'tests/app/stripDown.test.ts',
  'tests/app/jobs.test.ts',
  'tests/app/plan.test.ts',
  'tests/app/photos.test.ts',
  'tests/app/machine.test.ts',
  'tests/app/coldList.test.ts',
  'tests/app/repair.test.ts',
  'tests/app/packed.test.ts',
  'tests/app/fits.test.ts',
  'tests/app/start.test.ts',
  'tests/app/parts.test.ts',
  'tests/app/marksPage.test.ts',
  'tests/app/typedText.test.ts',
  'tests/app/takeIn.test.ts',
  'tests/app/helpMarks.test.ts',
  'tests/app/machines.test.ts',
  'tests/app/halves.test.ts',
  'tests/app/builtMain.test.ts',
  'tests/app/farmCalls.test.ts',
  'tests/app/hoursStrip.test.ts',
  'tests/app/opens.test.ts',
  'tests/app/backups.test.ts',
  'tests/reference/plain-model/agreement.test.ts',
  'tests/record/plan.test.ts',
  'tests/accuracy/winter-shops/winterCells.test.ts',
  'tests/record/largeShop.test.ts',
  'tests/way/caughtUp.test.ts',
  'tests/door/acceptsAll.test.ts',
  'core/forecast/extremes.test.ts',
  'tests/reference/plain-model/machinesAgreement.test.ts',
  'tests/record/roundTrip.test.ts',
  'tests/reference/simulated-shops/keptForecasts.test.ts',
  'tests/reference/gaas-laser/foretell.test.ts',
  'tests/record/forecastCommand.test.ts',
  'tests/way/classesCatchUp.test.ts',
  'core/fit/workTypeWord.test.ts',
  'tests/door/exchangeSheet.test.ts',
  'tests/way/sameNumbers.test.ts',
  'tests/record/versions.test.ts',
  'tests/record/faults.test.ts',
  'tests/door/exchange.test.ts',
  'tests/reference/simulated-shops/hoursAtLimit.test.ts',
  'tests/record/longImport.test.ts',
  'tests/way/heardMachines.test.ts',
  'tests/door/forecastSettings.test.ts',
  'tests/record/customers.test.ts',
  'tests/record/edgeCases/hours.test.ts',
  'tests/way/hoursLeft.test.ts',
  'core/plan/weeks/planWeeks.test.ts',
  'tests/accuracy/dates.test.ts',
  'tests/record/kill.test.ts',
  'tests/record/backups.test.ts',
  'tests/way/slipPaper.test.ts',
  'core/forecast/dateAtLimit.test.ts',
  'tests/record/edgeCases/halfLives.test.ts',
  'core/way.test.ts',
  'core/fit/learnShop.test.ts',
  'tests/record/moved.test.ts',
  'tests/record/disk.test.ts',
  'tests/record/edgeCases/parts.test.ts',
  'tests/record/fuzzExchange.test.ts',
  'tests/record/oldSheets.test.ts',
  'tests/way/slipOnRecord.test.ts',
  'core/way/classCoverage.test.ts',
  'tests/way/learnedFirst.test.ts',
  'core/way/classLooks.test.ts',
  'tests/record/recall.test.ts',
  'tests/door/call.test.ts',
  'tests/record/keptList.test.ts',
  'tests/record/bringIn.test.ts',
  'core/papers/printMeasuringSheet.test.ts',
  'tests/record/migrations.test.ts',
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
