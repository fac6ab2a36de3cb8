import type { Finding } from '#core/shop/finding.ts';
import { USUAL_FORECAST_SETTINGS } from '#core/shop/forecastSettings.ts';
import type { DialEvent } from '#core/shop/machineLife.ts';
import type { Size } from '#core/shop/measuringPoint.ts';
import type { MachineOnRecord, PointOnRecord, ShopLife } from '#core/shop/shopLife.ts';
import { day } from '#core/units/day.ts';
import { COARSE } from './coarseForecasts.ts';

/** Makers of a shop's life as plain values: only what a test is about need be said. All of it is invented. */

export const aDial = (takenOn: string, dialHours: number, its: Partial<DialEvent> = {}): DialEvent => ({
  id: Number(takenOn.replaceAll('-', '')),
  takenOn: day(takenOn),
  kind: 'reading',
  dialHours,
  newDialHours: null,
  errorHours: null,
  parked: false,
  ...its,
});

export const aMachine = (its: Partial<MachineOnRecord> = {}): MachineOnRecord => ({
  machineId: 1,
  name: 'Vessel 118',
  makeModel: 'Harrod V118',
  serial: 'V118-2207',
  customer: 'Hollin Top',
  place: 'Osmere',
  meterDigits: 5,
  hoursBefore: null,
  dialEvents: [aDial('2020-11-01', 0), aDial('2023-11-01', 2400), aDial('2026-11-01', 4800)],
  workShares: [],
  ...its,
});

export const aSize = (id: number, takenOn: string, sizeMm: number, its: Partial<Size> = {}): Size => ({
  id,
  takenOn: day(takenOn),
  dialHours: null,
  station: '',
  sizeMm,
  event: 'as-found',
  gaugeErrorMm: null,
  gaugeStepMm: 0,
  parked: false,
  ...its,
});

/** A pin of 40.0 mm, renewed at 39.0 mm, fitted as built. */
export const aPoint = (pointId: number, its: Partial<PointOnRecord> = {}): PointOnRecord => ({
  pointId,
  partClass: 'loader pin',
  wears: 'down',
  safety: false,
  gaugeErrorMm: 0.03,
  fittedMachineHours: 0,
  limits: [{ from: null, newSizeMm: 40, newSizeTolMm: 0.1, renewAtMm: 39, rejectAtMm: 38.5, source: "shop's rule" }],
  sizes: [],
  renewals: [],
  sittings: [{ machineId: 1, from: null, dialHours: null, toDialHours: null }],
  assemblyId: 1,
  positionId: pointId,
  machineId: 1,
  assembly: 'Front loader',
  item: pointId,
  position: `Pin ${pointId}`,
  point: 'diameter',
  ...its,
});

export const aFinding = (its: Partial<Finding> = {}): Finding => ({
  id: 1,
  machineId: 1,
  assemblyId: 1,
  positionId: 1,
  takenOn: day('2026-10-12'),
  kind: 'crack',
  severity: 'do-not-use',
  note: 'At weld toe, 34 mm',
  closedOn: null,
  outcome: null,
  declined: null,
  ...its,
});

export const aShopLife = (its: Partial<ShopLife> = {}): ShopLife => ({
  machines: [aMachine()],
  points: [aPoint(1, { sizes: [aSize(1, '2023-11-01', 39.7), aSize(2, '2026-11-01', 39.4)] }), aPoint(2), aPoint(3)],
  findings: [],
  partClasses: [
    {
      name: 'loader pin',
      tradeWear: { wearFromMm: 0.5, wearToMm: 1, hoursFrom: 4000, hoursTo: 6000, source: 'common practice' },
      newSizeTolMm: null,
    },
  ],
  season: [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1],
  hoursPerYearDefault: 500,
  winterFrom: '11-01',
  winterTo: '02-28',
  forecastSettings: { ...USUAL_FORECAST_SETTINGS, changed: COARSE },
  ...its,
});
