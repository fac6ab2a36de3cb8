import type { AssemblyKind, KindPoint, Sketch } from '../assemblyKinds.ts';
import { bushedJoint, greasedPin, jointAt, pivotSlack } from './kindPoint.ts';
import { breakLine, circle, cross, face, item, pin, ram, rect, shape } from './sketchShapes.ts';
import { openStripDown } from './stripDownSteps.ts';

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
    { item: 9, name: 'Carrier pivot, left', safety: false, points: bushedJoint(35) },
    { item: 10, name: 'Carrier pivot, right', safety: false, points: bushedJoint(35) },
    { item: 11, name: 'Tool lock pin, left', safety: true, points: [lockPin()] },
    { item: 12, name: 'Tool lock pin, right', safety: true, points: [lockPin()] },
  ],
  joints: [jointAt(9), jointAt(10)],
  sketch: drawing(),
  stripDown: openStripDown(12, 'Boom down or propped, pressure off', 'Loader worked through its range'),
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

/** Seen from the left, carrier down, tool (thin) broken off; bolted to the chassis rail (cut). */
function drawing(): Sketch {
  const boomFoot = [192, 52] as const;
  const liftFoot = [190, 114] as const;
  const liftRod = [116, 78] as const;
  const tiltBoom = [124, 30] as const;
  const tiltCarrier = [32, 90] as const;
  const carrierPivot = [48, 128] as const;
  const lockPin = [24, 138] as const;
  return {
    width: 240,
    height: 176,
    shapes: [
      rect('section', 170, 138, 238, 154),
      face('outline', [180, 148], [180, 104], [176, 62], [182, 40], [202, 40], [208, 62], [208, 148]),
      circle('thin', [186, 142], 2),
      circle('thin', [202, 142], 2),
      ...ram(liftFoot, liftRod, 12),
      shape(
        'outline',
        'M196 41L112 38Q96 38 87 51L40 122Q42 136 56 136L102 76Q106 69 114 68L196 63Q204 61 204 52Q204 43 196 41Z',
      ),
      shape('outline', 'M104 69L132 66L123 82A8 8 0 0 1 109 82Z'),
      shape('outline', 'M108 42L117 27A8 8 0 0 1 131 27L138 42Z'),
      face('outline', [18, 82], [38, 79], [45, 98], [60, 124], [57, 136], [44, 145], [18, 145]),
      ...ram(tiltBoom, tiltCarrier, 12),
      shape('thin', 'M4 70L12 76V150L4 156M12 84H18M12 96H18M12 132H18M12 144H18'),
      breakLine([4, 70], [4, 156]),
      ...pin(boomFoot, 8, 4.5),
      ...pin(liftFoot, 6, 3.5),
      ...pin(liftRod, 6, 3.5),
      ...pin(tiltBoom, 6, 3.5),
      ...pin(tiltCarrier, 6, 3.5),
      ...pin(carrierPivot, 7, 4),
      circle('outline', lockPin, 4),
      cross(lockPin, 7),
    ],
    items: [
      item(1, [178, 14], boomFoot),
      item(2, [199, 14], boomFoot),
      item(3, [228, 96], liftFoot),
      item(4, [228, 117], liftFoot),
      item(5, [112, 128], liftRod),
      item(6, [133, 128], liftRod),
      item(7, [148, 14], tiltBoom),
      item(8, [34, 58], tiltCarrier),
      item(9, [74, 162], carrierPivot),
      item(10, [95, 162], carrierPivot),
      item(11, [20, 166], lockPin),
      item(12, [41, 166], lockPin),
    ],
  };
}
