import type { MeasuringSheet } from '#core/contract/measuringSheet.ts';

type Point = MeasuringSheet['assemblies'][number]['points'][number];

/** A point of a blank sheet: a nylon strip read at three stations before, unless said otherwise. */
export const aSheetPoint = (item: number, its: Partial<Point> = {}): Point => ({
  positionId: item,
  item,
  position: `Slide strip ${item}`,
  point: 'thickness',
  measures: 'thickness',
  wears: 'down',
  newSizeMm: 12,
  renewAtMm: 9.5,
  rejectAtMm: 8.5,
  gauge: 'Vernier calliper',
  gaugeErrorMm: 0.05,
  decimals: 2,
  stations: [
    { station: 'front', lastSizeMm: 10.98 },
    { station: 'middle', lastSizeMm: 11.32 },
    { station: 'rear', lastSizeMm: null },
  ],
  ...its,
});

/** A blank measuring sheet of a hitch; everything in it is invented. */
export const aMeasuringSheet = (its: Partial<MeasuringSheet> = {}): MeasuringSheet => ({
  shop: {
    name: 'Fenwater Works',
    headLines: ['Agricultural engineers, Osmere'],
    phone: '05550 4471',
    email: '',
    writing: '.',
  },
  customer: { name: 'Hollin Top', place: 'Osmere' },
  machine: { name: 'Vessel 118', makeModel: 'Harrod V118', serial: 'V118-2207' },
  printedOn: '2026-11-06' as MeasuringSheet['printedOn'],
  meterDigits: 5,
  dialHours: 6870,
  lastTakenOn: '2024-12-12' as MeasuringSheet['printedOn'],
  assemblies: [
    { name: 'Pick-up hitch', serial: 'H-2207', sketch: null, points: [1, 2, 3, 4].map((n) => aSheetPoint(n)) },
  ],
  openFindings: [],
  ...its,
});
