import type { WearsWay } from '../shop/measuringPoint.ts';
import type { PlannedPoint } from './plan.ts';

const TOLD_BY: readonly [RegExp, PlannedPoint['measures']][] = [
  [/slack|play|gap|clearance/i, 'slack'],
  [/bore|bush|eye/i, 'bore'],
  [/section|throat/i, 'section'],
  [/depth/i, 'depth'],
  [/pin|diameter|shaft/i, 'diameter'],
];

/**
 * What a point measures, when a file does not say: told by its own name, else by its class, else by the way it wears. It
 * chooses only words and the gauge offered.
 */
export function measuresOf(wears: WearsWay, point: string, partClass: string): PlannedPoint['measures'] {
  for (const name of [point, partClass]) {
    const told = TOLD_BY.find(([word, measures]) => word.test(name) && suits(measures, wears));
    if (told) return told[1];
  }
  return wears === 'up' ? 'bore' : 'thickness';
}

const suits = (measures: PlannedPoint['measures'], wears: WearsWay): boolean =>
  wears === 'up' ? ['slack', 'bore', 'depth', 'section'].includes(measures) : !['slack', 'bore'].includes(measures);
