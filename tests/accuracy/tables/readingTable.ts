import type { ModelSettings } from '#core/fit/modelSettings.ts';
import { laserCrossing, laserCrossingForecast } from '../laserCrossing.ts';
import { belt, foretell, type KeptBack, lasers, liners, slidingMetal } from '../lastReadingOut.ts';
import { lineForecast } from '../lineForecast.ts';
import { lineForetell } from '../lineForetell.ts';
import { plainForetell } from '../plainForetell.ts';
import { places, printTable } from '../printTable.ts';
import { type ReadingScore, scoreHours, scoreReadings } from '../scores.ts';
import { withoutVisitErrors } from '../withoutVisitErrors.ts';

/** Published and own bars for a reading kept back, and the cases in which the model is known to lose. */
const sets: { set: () => KeptBack; bar: string; knownLoss?: string; shared?: boolean }[] = [
  { set: () => liners(), bar: 'mae 0.26, crps 0.175, interval 1.15, cover 12 of 17' },
  { set: () => lasers([500, 1250, 2000], 3500), bar: 'crps 0.33, cover 10 of 15' },
  { set: () => lasers([500], 2000), bar: 'crps 0.51, cover 10 of 15' },
  ...['belt_A', 'belt_B', 'belt_C'].map((name) => ({
    set: () => belt(name),
    bar: 'line',
    knownLoss: 'many points of one machine measured in one visit with a shared error',
    shared: true,
  })),
  { set: slidingMetal, bar: 'cover 0.70', knownLoss: 'strong curvature: power about 0.2' },
];

/** Readings kept back, foretold from the rest: the part's own line, the plain model (in full), and the forecast. */
export function readingTable(settings: ModelSettings, full: boolean): void {
  const rows = sets.flatMap(({ set, bar, knownLoss, shared }) => {
    const kept = set();
    const n = kept.keptBack.filter((one) => one !== null).length;
    const line = scoreReadings(lineForetell(kept));
    const found = scoreReadings(foretell(kept, settings));
    const row = (method: string, score: ReadingScore, note: string) => [
      `${kept.title} (n ${n})`,
      method,
      places(score.mae, 3),
      places(score.cover, 2),
      places(score.width, 2),
      places(score.intervalScore, 2),
      places(score.crps, 3),
      note,
    ];
    return [
      row('line, gauge error', line, ''),
      ...(full ? [row('plain model', scoreReadings(plainForetell(kept, settings)), '')] : []),
      ...(shared
        ? [row('before: no shared error', scoreReadings(foretell(kept, withoutVisitErrors(settings))), '')]
        : []),
      row('forecast', found, `${knownLoss ? `KNOWN LOSS: ${knownLoss}` : `bar: ${bar}`}${lineWins(line, found)}`),
    ];
  });
  printTable(
    'Last reading kept back (mm; lasers % of current; sliding metal um)',
    ['set', 'method', 'mae', 'cover', 'width', 'interval', 'crps', ''],
    rows,
  );
  const line = scoreHours(lineForecast(laserCrossing()));
  const model = scoreHours(laserCrossingForecast(settings));
  printTable(
    'Lasers, hours to 5 % from 250/500/750 h',
    ['method', 'mae h', 'cover', 'width h', ''],
    [
      ['line, gauge error', places(line.mae, 0), places(line.cover, 2), places(line.width, 0), ''],
      [
        'forecast',
        places(model.mae, 0),
        places(model.cover, 2),
        places(model.width, 0),
        'KNOWN LOSS: early, gentle curvature; the line is better by mae',
      ],
    ],
  );
}

/** By which scores the part's own line does better: said, not hidden. */
function lineWins(line: ReadingScore, found: ReadingScore): string {
  const by = (['mae', 'crps', 'intervalScore'] as const).filter((score) => line[score] < found[score]);
  const names = { mae: 'mae', crps: 'crps', intervalScore: 'interval' };
  return by.length > 0 ? `; the line is better by ${by.map((score) => names[score]).join(', ')}` : '';
}
