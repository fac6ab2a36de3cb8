import type { AssemblyKind, KindPoint, Sketch } from '../assemblyKinds.ts';
import { bushedJoint, greasedPin, jointAt } from './kindPoint.ts';
import { circle, face, item, line, pin, ram, rect, shape } from './sketchShapes.ts';
import { pickUpHitchStripDown } from './stripDownSteps.ts';

/** Telescopic pick-up hitch: a carrier sliding on nylon strips in a frame under the tractor, with a hook at its end. */
export const pickUpHitch: AssemblyKind = {
  name: 'Telescopic pick-up hitch',
  positions: [
    { item: 1, name: 'Slide strip, top front', safety: false, group: 'carrier', points: [slideStrip(12)] },
    { item: 2, name: 'Slide strip, top rear', safety: false, group: 'carrier', points: [slideStrip(12)] },
    { item: 3, name: 'Slide strip, bottom front', safety: false, group: 'carrier', points: [slideStrip(12)] },
    { item: 4, name: 'Slide strip, bottom rear', safety: false, group: 'carrier', points: [slideStrip(12)] },
    {
      item: 5,
      name: 'Side pad, left',
      safety: false,
      group: 'carrier',
      points: [{ ...slideStrip(8), stations: ['front', 'rear'] }],
    },
    {
      item: 6,
      name: 'Side pad, right',
      safety: false,
      group: 'carrier',
      points: [{ ...slideStrip(8), stations: ['front', 'rear'] }],
    },
    { item: 7, name: 'Ram pin, rod end', safety: false, group: 'carrier', points: [greasedPin(30)] },
    { item: 8, name: 'Ram pin, cap end', safety: false, group: 'frame', points: [greasedPin(30)] },
    { item: 9, name: 'Latch pin, left', safety: true, group: 'frame', points: [latchPin()] },
    { item: 10, name: 'Latch pin, right', safety: true, group: 'frame', points: [latchPin()] },
    {
      item: 11,
      name: 'Hook-frame pivot, left',
      safety: true,
      group: 'carrier',
      points: bushedJoint(40),
    },
    {
      item: 12,
      name: 'Hook-frame pivot, right',
      safety: true,
      group: 'carrier',
      points: bushedJoint(40),
    },
    { item: 13, name: 'Hook', safety: true, mustStayStandard: true, group: 'carrier', points: [throatSeat()] },
    { item: 14, name: 'Keeper', safety: true, group: 'carrier', points: [keeperGap()] },
  ],
  joints: [jointAt(11), jointAt(12)],
  sketch: drawing(),
  stripDown: pickUpHitchStripDown,
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

/** Cut along the middle: frame hatched one way, carrier the other, strips between them; the ram inside is whole. */
function drawing(): Sketch {
  const ramCap = [36, 81] as const;
  const ramRod = [136, 81] as const;
  const pivot = [184, 81] as const;
  return {
    width: 240,
    height: 164,
    shapes: [
      // frame, bolted under the tractor
      shape('section', 'M12 38H154V50H24V112H154V124H12Z'),
      rect('nylon', 32, 50, 66, 57),
      rect('nylon', 116, 50, 150, 57),
      rect('nylon', 32, 105, 66, 112),
      rect('nylon', 116, 105, 150, 112),
      // carrier
      rect('outline', 30, 57, 178, 105),
      rect('section-other', 30, 57, 178, 66),
      rect('section-other', 30, 96, 178, 105),
      ...ram(ramCap, ramRod, 14, 0.56),
      face('outline', [24, 74], [38, 74], [38, 88], [24, 88]),
      face('outline', [130, 66], [142, 66], [142, 96], [130, 96]),
      rect('hidden', 70, 69, 98, 93),
      // latch: plunger through frame and carrier, spring above
      rect('outline', 84, 22, 102, 38),
      rect('outline', 89, 26, 97, 63),
      line('thin', [84, 27], [102, 30], [84, 33], [102, 36]),
      // hook on its frame, keeper above, ring (thin) in the throat
      shape('outline', 'M172 78L190 116A20 20 0 0 0 229 108L224 102L218.6 112.6A9 9 0 0 1 200.6 116L195 80Z'),
      circle('thin', [209.6, 114], 7),
      face('outline', [176, 57], [190, 54], [220, 88], [218, 99], [211, 97], [178, 66]),
      face('outline', [168, 66], [182, 66], [194, 74], [194, 90], [182, 96], [168, 96]),
      ...pin(pivot, 8, 4.5),
      ...pin(ramCap, 5, 2.8),
      ...pin(ramRod, 5, 2.8),
      line('centre', [4, 81], [202, 81]),
      line('centre', [93, 14], [93, 68]),
    ],
    items: [
      item(1, [46, 16], [49, 53.5]),
      item(2, [138, 16], [133, 53.5]),
      item(3, [49, 148], [49, 108.5]),
      item(4, [133, 148], [133, 108.5]),
      item(5, [80, 148], [84, 90]),
      item(6, [101, 148], [84, 90]),
      item(7, [164, 144], ramRod),
      item(8, [16, 148], ramCap),
      item(9, [77, 12], [93, 45]),
      item(10, [109, 12], [93, 45]),
      item(11, [178, 28], pivot),
      item(12, [199, 28], pivot),
      item(13, [206, 150], [209.6, 125]),
      item(14, [226, 62], [215, 92]),
    ],
  };
}
