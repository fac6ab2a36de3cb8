import type { AssemblyKind, KindPoint } from '../assemblyKinds.ts';
import { greasedBush, greasedPin, pivotSlack } from './kindPoint.ts';

/** Front loader: boom pair on the tractor frame, lift and tilt rams, tool carrier. */
export const frontLoader: AssemblyKind = {
  name: 'Front loader',
  positions: [
    { item: 1, name: 'Boom foot pin, left', safety: false, points: [pivotSlack()] },
    { item: 2, name: 'Boom foot pin, right', safety: false, points: [pivotSlack()] },
    { item: 3, name: 'Lift ram pin, foot end, left', safety: false, points: [greasedPin(40)] },
    { item: 4, name: 'Lift ram pin, foot end, right', safety: false, points: [greasedPin(40)] },
    { item: 5, name: 'Lift ram pin, rod end, left', safety: false, points: [greasedPin(40)] },
    { item: 6, name: 'Lift ram pin, rod end, right', safety: false, points: [greasedPin(40)] },
    { item: 7, name: 'Tilt ram pin, boom end', safety: false, points: [pivotSlack()] },
    { item: 8, name: 'Tilt ram pin, carrier end', safety: false, points: [pivotSlack()] },
    { item: 9, name: 'Carrier pivot, left', safety: false, points: [greasedBush(35), greasedPin(35)] },
    { item: 10, name: 'Carrier pivot, right', safety: false, points: [greasedBush(35), greasedPin(35)] },
    { item: 11, name: 'Tool lock pin, left', safety: true, points: [lockPin()] },
    { item: 12, name: 'Tool lock pin, right', safety: true, points: [lockPin()] },
  ],
  sketch: null,
};

/** The pin that keeps bucket or bale spike on the carrier: let go, the load falls. */
function lockPin(): KindPoint {
  return {
    name: 'pin diameter',
    measures: 'diameter',
    wears: 'down',
    partClass: 'Latch and lock pin',
    newSizeMm: 25,
    newSizeTolMm: 0.1,
    renewAtMm: 24,
    rejectAtMm: 23.5,
    limitSource: "shop's own rule: 1 mm worn",
    gaugeErrorMm: 0.025,
    stations: [],
  };
}
