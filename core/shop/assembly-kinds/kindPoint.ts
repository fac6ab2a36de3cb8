import type { KindJoint, KindPoint } from '../assemblyKinds.ts';

/*
 * Figures shared by the built-in kinds. New sizes and limits are the common practice of repair shops, no source,
 * unless `limitSource` says otherwise; every one of them is the shop's to change.
 */
const SHOP_RULE = "shop's own rule";

/** A greased pin, micrometer on two axes and the smaller written down; renewed at 2.5 % of its diameter. */
export const greasedPin = (diameterMm: number): KindPoint => ({
  name: 'pin diameter',
  measures: 'diameter',
  wears: 'down',
  partClass: 'Greased pin',
  newSizeMm: diameterMm,
  newSizeTolMm: 0.06,
  renewAtMm: toTenth(diameterMm * 0.975),
  rejectAtMm: toTenth(diameterMm * 0.955),
  limitSource: `${SHOP_RULE}: 2.5 % of the diameter`,
  gaugeErrorMm: 0.01,
  stations: [],
});

/** A greased bush, telescopic gauge on two axes; renewed when a millimetre over. */
export const greasedBush = (boreMm: number): KindPoint => ({
  name: 'bush bore',
  measures: 'bore',
  wears: 'up',
  partClass: 'Greased bush',
  newSizeMm: toTenth(boreMm + 0.1),
  newSizeTolMm: 0.06,
  renewAtMm: toTenth(boreMm + 1.1),
  rejectAtMm: toTenth(boreMm + 1.8),
  limitSource: `${SHOP_RULE}: 1 mm over`,
  gaugeErrorMm: 0.025,
  stations: ['A', 'B'],
});

/** Play of a pin in its bores, dial gauge and bar. */
export const pivotSlack = (): KindPoint => ({
  name: 'slack',
  measures: 'slack',
  wears: 'up',
  partClass: 'Pivot slack',
  newSizeMm: 0.2,
  newSizeTolMm: 0.2,
  renewAtMm: 1.5,
  rejectAtMm: 2.5,
  limitSource: `${SHOP_RULE}: act at 1.5 mm`,
  gaugeErrorMm: 0.03,
  stations: [],
});

/** Slack of a joint whose pin and bush are measured too: what is left of it new is the bush's clearance. */
const jointSlack = (): KindPoint => ({ ...pivotSlack(), newSizeMm: 0.1, newSizeTolMm: 0.12 });

/** A bushed pin joint: its bush, its pin, and the slack between them, measured where the two were not. */
export const bushedJoint = (diameterMm: number): KindPoint[] => [
  greasedBush(diameterMm),
  greasedPin(diameterMm),
  jointSlack(),
];

/** The joint of the points that {@link bushedJoint} lays out at one position. */
export const jointAt = (item: number): KindJoint => ({
  slack: { item, point: 'slack' },
  pin: { item, point: 'pin diameter' },
  bores: [{ item, point: 'bush bore' }],
});

const toTenth = (sizeMm: number): number => Math.round(sizeMm * 10) / 10;
