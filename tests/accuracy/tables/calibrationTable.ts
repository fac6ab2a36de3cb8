import type { ModelSettings } from '#core/fit/modelSettings.ts';
import { calibration } from '../calibration.ts';
import { places, printTable } from '../printTable.ts';
import { ksUniform } from '../scores.ts';

/** Shops drawn from the model itself: forecasts must hold just what they say. */
export function calibrationTable(settings: ModelSettings, full: boolean): void {
  const rows = [
    {
      title: '6 machines, a part each',
      shops: full ? 400 : 80,
      shape: { machines: 6, partsOfMachine: 1 },
      seed: 90_000,
    },
    {
      title: '3 machines, 3 parts each',
      shops: full ? 300 : 60,
      shape: { machines: 3, partsOfMachine: 3 },
      seed: 95_000,
    },
  ].map(({ title, shops, shape, seed }) => {
    const pits = calibration(shops, shape, settings, seed);
    const within = (share: number) => pits.filter((pit) => Math.abs(pit - 0.5) <= share / 2).length / pits.length;
    return [
      title,
      shops,
      pits.length,
      places(within(0.8), 3),
      places(within(0.5), 3),
      places(pits.filter((pit) => pit < 0.1).length / pits.length, 3),
      places(pits.filter((pit) => pit > 0.9).length / pits.length, 3),
      places(ksUniform(pits).p, 3),
    ];
  });
  printTable(
    'Calibration: shops drawn from the model, a reading at 1.6 times the last age',
    [
      'shop',
      'shops',
      'readings',
      '80 % holds',
      '50 % holds',
      'below 10 %',
      'above 90 %',
      'ks p (parts taken as independent)',
    ],
    rows,
  );
}
