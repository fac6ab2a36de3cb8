import type { ModelSettings } from '#core/fit/modelSettings.ts';
import { forecastSet } from '../forecastSet.ts';
import { lineForecast } from '../lineForecast.ts';
import { places, printTable } from '../printTable.ts';
import { type HoursCase, scoreHours } from '../scores.ts';
import { inSmallShops, shopH, workshopA, workshopH } from '../shopSets.ts';
import { withoutVisitErrors } from '../withoutVisitErrors.ts';

/** Hours at limit of simulated shops: machines worked hard and softly, visits with an error of their own. */
export function shopTable(settings: ModelSettings): void {
  const rows: (string | number)[][] = [];
  const add = (title: string, cases: readonly HoursCase[], line: readonly HoursCase[] | null, bar: string) => {
    const score = scoreHours(cases);
    const lineScore = line === null || line.length === 0 ? null : scoreHours(line);
    rows.push([
      title,
      score.parts,
      lineScore ? `${places(lineScore.mae, 0)} (${lineScore.parts})` : '-',
      places(score.mae, 0),
      places(score.cover, 2),
      places(score.belowLow, 2),
      places(score.aboveHigh, 2),
      places(score.pinball, 1),
      bar,
    ]);
  };
  for (const [title, set, bar] of [
    ['workshop H: 45 machines', workshopH(), 'pinball 300, cover 0.74 to 0.88'],
    ['shop H: 60 machines, renewals', shopH(), 'pinball 315, cover 0.74 to 0.88'],
    ['workshop A: 3 classes, machines not told', workshopA(), 'plain: 943 / 0.91 / 327'],
  ] as const) {
    const { cases } = forecastSet(set, settings);
    add(title, cases, lineForecast(set), bar);
    const unread = cases.filter((one) => one.series.readings.length === 0);
    if (unread.length > 0) add('  its parts never read', unread, null, '');
  }
  add(
    'workshop H, before: sizes of a visit share no error',
    forecastSet(workshopH(), withoutVisitErrors(settings)).cases,
    null,
    'KNOWN LOSS of the plain model, repaired above: many points of one visit with a shared error',
  );
  const small = inSmallShops(workshopH(), 3);
  add(
    'workshop H, 3 machines at a time',
    small.flatMap((set) => forecastSet(set, settings).cases),
    null,
    'plain: 1044 / 0.88 / 377',
  );
  printTable(
    'Hours at limit, simulated shops (gamma process; no setting was chosen by what came)',
    ['shop', 'n', 'line mae (n)', 'mae h', 'cover', 'below low', 'above high', 'pinball h', 'bar'],
    rows,
  );
}
