import type { AssemblyKind, KindPoint } from '../assemblyKinds.ts';
import { greasedBush, greasedPin } from './kindPoint.ts';

/** Telescopic pick-up hitch: a carrier sliding on nylon strips in a frame under the tractor, with a hook at its end. */
export const pickUpHitch: AssemblyKind = {
  name: 'Telescopic pick-up hitch',
  positions: [
    { item: 1, name: 'Slide strip, top front', safety: false, points: [slideStrip(12)] },
    { item: 2, name: 'Slide strip, top rear', safety: false, points: [slideStrip(12)] },
    { item: 3, name: 'Slide strip, bottom front', safety: false, points: [slideStrip(12)] },
    { item: 4, name: 'Slide strip, bottom rear', safety: false, points: [slideStrip(12)] },
    { item: 5, name: 'Side pad, left', safety: false, points: [{ ...slideStrip(8), stations: ['front', 'rear'] }] },
    { item: 6, name: 'Side pad, right', safety: false, points: [{ ...slideStrip(8), stations: ['front', 'rear'] }] },
    { item: 7, name: 'Ram pin, rod end', safety: false, points: [greasedPin(30)] },
    { item: 8, name: 'Ram pin, cap end', safety: false, points: [greasedPin(30)] },
    { item: 9, name: 'Latch pin, left', safety: true, points: [latchPin()] },
    { item: 10, name: 'Latch pin, right', safety: true, points: [latchPin()] },
    { item: 11, name: 'Hook-frame pivot, left', safety: true, points: [greasedBush(40), greasedPin(40)] },
    { item: 12, name: 'Hook-frame pivot, right', safety: true, points: [greasedBush(40), greasedPin(40)] },
    { item: 13, name: 'Hook', safety: true, points: [throatSeat()] },
    { item: 14, name: 'Keeper', safety: true, points: [keeperGap()] },
  ],
  sketch: null,
};

/** Nylon strip: 2.5 mm worn, or sooner where the screw heads come near. */
function slideStrip(thicknessMm: number): KindPoint {
  return {
    name: 'thickness',
    measures: 'thickness',
    wears: 'down',
    partClass: 'Nylon slide strip',
    newSizeMm: thicknessMm,
    newSizeTolMm: 0.2,
    renewAtMm: thicknessMm - 2.5,
    rejectAtMm: thicknessMm - 3.5,
    limitSource: "shop's own rule: 2.5 mm worn",
    gaugeErrorMm: 0.05,
    stations: ['front', 'middle', 'rear'],
  };
}

function latchPin(): KindPoint {
  return {
    name: 'tip diameter',
    measures: 'diameter',
    wears: 'down',
    partClass: 'Latch and lock pin',
    newSizeMm: 32,
    newSizeTolMm: 0.1,
    renewAtMm: 31,
    rejectAtMm: 30.5,
    limitSource: "shop's own rule: 1 mm worn",
    gaugeErrorMm: 0.025,
    stations: [],
  };
}

/** Depth worn into the throat, against a template. No figure fits every hook: the shop enters its maker's. */
function throatSeat(): KindPoint {
  return {
    name: 'throat seat depth',
    measures: 'depth',
    wears: 'up',
    partClass: 'Towing hook and keeper',
    newSizeMm: 0,
    newSizeTolMm: 0.4,
    renewAtMm: null,
    rejectAtMm: null,
    limitSource: null,
    gaugeErrorMm: 0.12,
    stations: [],
  };
}

function keeperGap(): KindPoint {
  return {
    name: 'gap to ring',
    measures: 'slack',
    wears: 'up',
    partClass: 'Towing hook and keeper',
    newSizeMm: 4,
    newSizeTolMm: 1,
    renewAtMm: null,
    rejectAtMm: null,
    limitSource: null,
    gaugeErrorMm: 0.1,
    stations: [],
  };
}
