import type { AssemblyKind, KindPoint, Sketch } from '../assemblyKinds.ts';
import { greasedPin } from './kindPoint.ts';
import { bar, breakLine, circle, cross, face, item, line, pin, rect, shape } from './sketchShapes.ts';
import { openStripDown } from './stripDownSteps.ts';

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
    { item: 9, name: 'Lower link hook, left', safety: true, mustStayStandard: true, points: [hookSeat()] },
    { item: 10, name: 'Lower link hook, right', safety: true, mustStayStandard: true, points: [hookSeat()] },
    { item: 11, name: 'Top link pin', safety: true, points: [greasedPin(25.4)] },
    { item: 12, name: 'Top link eye', safety: false, points: [linkEye(26)] },
  ],
  sketch: drawing(),
  stripDown: openStripDown(12, 'Links down, pressure off, top link off', 'Linkage lifted and lowered'),
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

/** Seen from the left: tractor housing (cut) at the left, lower link and top link out to the rear. */
function drawing(): Sketch {
  const shaft = [68, 46] as const;
  const armEnd = [132, 36] as const;
  const rodFoot = [128, 118] as const;
  const linkFront = [52, 122] as const;
  const topFront = [84, 80] as const;
  const topEye = [206, 66] as const;
  return {
    width: 240,
    height: 172,
    shapes: [
      face('section', [10, 26], [78, 26], [92, 50], [92, 92], [70, 136], [10, 136]),
      breakLine([10, 24], [10, 138]),
      // lift shaft in its bush, lift arm
      circle('section-other', shaft, 15),
      bar('outline', shaft, armEnd, 22, 11),
      circle('outline', shaft, 9),
      cross(shaft, 18),
      // lower link with its hook
      bar('outline', linkFront, [196, 128], 13, 11),
      shape('outline', 'M190 122L198 122A12 12 0 0 0 221 119L228 112Q234 132 216 138Q204 142 190 134Z'),
      circle('thin', [209.5, 121], 8),
      // top link: two threaded ends in a tube
      bar('outline', topFront, topEye, 6),
      bar('outline', [108, 77.2], [180, 69], 12),
      // lift rod, nearer
      bar('outline', armEnd, rodFoot, 7),
      rect('outline', 123, 64, 137, 96),
      ...pin(armEnd, 6, 3.2),
      ...pin(rodFoot, 6, 3.2),
      ...pin(linkFront, 8, 4),
      ...pin(topFront, 6, 3.2),
      ...pin(topEye, 7, 4),
      line('centre', [44, 121.7], [236, 129.7]),
    ],
    items: [
      item(1, [36, 13], [56, 48]),
      item(2, [57, 13], [56, 48]),
      item(3, [128, 13], armEnd),
      item(4, [149, 13], armEnd),
      item(5, [118, 158], rodFoot),
      item(6, [139, 158], rodFoot),
      item(7, [40, 158], linkFront),
      item(8, [61, 158], linkFront),
      item(9, [196, 158], [209, 132]),
      item(10, [217, 158], [209, 132]),
      item(11, [108, 58], topFront),
      item(12, [222, 42], topEye),
    ],
  };
}
