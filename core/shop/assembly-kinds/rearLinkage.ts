import type { AssemblyKind, KindPoint } from '../assemblyKinds.ts';
import { greasedPin } from './kindPoint.ts';

/** Rear three-point linkage: lift shaft and arms, lift rods, lower links with hooks, top link. */
export const rearLinkage: AssemblyKind = {
  name: 'Rear linkage',
  positions: [
    { item: 1, name: 'Lift shaft bush, left', safety: false, points: [liftShaftSlack()] },
    { item: 2, name: 'Lift shaft bush, right', safety: false, points: [liftShaftSlack()] },
    { item: 3, name: 'Lift rod pin, upper left', safety: false, points: [greasedPin(28)] },
    { item: 4, name: 'Lift rod pin, upper right', safety: false, points: [greasedPin(28)] },
    { item: 5, name: 'Lift rod pin, lower left', safety: false, points: [greasedPin(28)] },
    { item: 6, name: 'Lift rod pin, lower right', safety: false, points: [greasedPin(28)] },
    { item: 7, name: 'Lower link front eye, left', safety: false, points: [linkEye(33)] },
    { item: 8, name: 'Lower link front eye, right', safety: false, points: [linkEye(33)] },
    { item: 9, name: 'Lower link hook, left', safety: true, points: [hookSeat()] },
    { item: 10, name: 'Lower link hook, right', safety: true, points: [hookSeat()] },
    { item: 11, name: 'Top link pin', safety: true, points: [greasedPin(25.4)] },
    { item: 12, name: 'Top link eye', safety: false, points: [linkEye(26)] },
  ],
  sketch: null,
};

function liftShaftSlack(): KindPoint {
  return {
    name: 'slack',
    measures: 'slack',
    wears: 'up',
    partClass: 'Lift shaft bush',
    newSizeMm: 0.15,
    newSizeTolMm: 0.1,
    renewAtMm: 0.3,
    rejectAtMm: 0.5,
    limitSource: "shop's own rule, after a workshop manual's 0.30 mm",
    gaugeErrorMm: 0.02,
    stations: [],
  };
}

/** The hole of a link, oval in the direction of travel; 2 mm over is what one tractor maker prints for its hitch holes. */
function linkEye(boreMm: number): KindPoint {
  return {
    name: 'eye bore',
    measures: 'bore',
    wears: 'up',
    partClass: 'Linkage eye',
    newSizeMm: boreMm,
    newSizeTolMm: 0.3,
    renewAtMm: boreMm + 2,
    rejectAtMm: boreMm + 3,
    limitSource: "shop's own rule: 2 mm over, in the direction of travel",
    gaugeErrorMm: 0.06,
    stations: ['along', 'across'],
  };
}

/** Depth worn into the hook's seat. No figure fits every hook: the shop enters its maker's. */
function hookSeat(): KindPoint {
  return {
    name: 'seat depth',
    measures: 'depth',
    wears: 'up',
    partClass: 'Linkage hook',
    newSizeMm: 0,
    newSizeTolMm: 0.4,
    renewAtMm: null,
    rejectAtMm: null,
    limitSource: null,
    gaugeErrorMm: 0.12,
    stations: [],
  };
}
