import type { AssemblyKind, KindPoint, Sketch } from '../assemblyKinds.ts';
import { bushedJoint, greasedBush, greasedPin, jointAt } from './kindPoint.ts';

const RING: Pick<KindPoint, 'partClass' | 'newSizeTolMm' | 'renewAtMm' | 'rejectAtMm' | 'limitSource'> = {
  partClass: 'Towing ring',
  newSizeTolMm: 0.4,
  // The limit belongs to the ring's part number, not to its nominal size: the shop enters the maker's.
  renewAtMm: null,
  rejectAtMm: null,
  limitSource: null,
};

import { breakLine, circle, face, item, line, pin, rect, type SketchShape } from './sketchShapes.ts';
import { openStripDown } from './stripDownSteps.ts';

/** Sprung drawbar of a trailer or baler, with a bolted swivel ring. */
export const drawbarAndRing: AssemblyKind = {
  name: 'Drawbar and ring',
  positions: [
    {
      item: 1,
      name: 'Ring',
      safety: true,
      mustStayStandard: true,
      points: [
        {
          ...RING,
          name: 'eye bore',
          measures: 'bore',
          wears: 'up',
          newSizeMm: 50,
          gaugeErrorMm: 0.06,
          stations: ['along', 'across'],
        },
        {
          ...RING,
          name: 'least section',
          measures: 'section',
          wears: 'down',
          newSizeMm: 30,
          gaugeErrorMm: 0.05,
          stations: ['front', 'rear'],
        },
      ],
    },
    {
      item: 2,
      name: 'Swivel collar',
      safety: true,
      points: [
        {
          name: 'gap',
          measures: 'slack',
          wears: 'up',
          partClass: 'Swivel collar',
          newSizeMm: 0.5,
          newSizeTolMm: 0.4,
          renewAtMm: 3,
          rejectAtMm: 4,
          limitSource: "shop's own rule, after a coupling maker's 3 mm",
          gaugeErrorMm: 0.04,
          stations: [],
        },
      ],
    },
    { item: 3, name: 'Ring shank', safety: true, points: [{ ...greasedPin(45), name: 'neck diameter' }] },
    { item: 4, name: 'Drawbar pivot, left', safety: true, points: bushedJoint(40) },
    { item: 5, name: 'Drawbar pivot, right', safety: true, points: bushedJoint(40) },
    { item: 6, name: 'Spring eye, front', safety: false, points: [greasedBush(30)] },
    { item: 7, name: 'Spring shackle pin, upper', safety: false, points: [greasedPin(30)] },
    { item: 8, name: 'Spring shackle pin, lower', safety: false, points: [greasedPin(30)] },
  ],
  joints: [jointAt(4), jointAt(5)],
  sketch: drawing(),
  stripDown: openStripDown(8, 'Drawbar unhitched and on stands', 'Hitched and turned both ways'),
};

/** Ring and head cut along the middle, the shank whole; drawbar on its pivot under the chassis (cut), spring below. */
function drawing(): Sketch {
  const pivot = [198, 74] as const;
  const springEye = [128, 120] as const;
  const shackleUpper = [226, 90] as const;
  const shackleLower = [226, 116] as const;
  return {
    width: 256,
    height: 160,
    shapes: [
      rect('section', 168, 30, 246, 44),
      // bracket of pivot and spring
      face('outline', [178, 44], [218, 44], [208, 92], [206, 124], [178, 124], [184, 92]),
      face('outline', [219, 44], [234, 44], [232, 96], [220, 96]),
      // drawbar and its head
      face('outline', [132, 54], [200, 62], [208, 74], [200, 87], [132, 96]),
      face('outline', [118, 92], [138, 92], [134, 126], [122, 126]),
      rect('section-other', 92, 50, 134, 64),
      rect('section-other', 92, 86, 134, 100),
      // shank with its shoulder, neck and nut
      rect('outline', 68, 66, 152, 84),
      rect('outline', 80, 58, 89, 92),
      rect('outline', 136, 60, 148, 90),
      line('thin', [136, 70], [148, 70]),
      line('thin', [136, 80], [148, 80]),
      // ring, cut
      circle('section', [62, 75], 10),
      circle('section', [16, 75], 10),
      line('thin', [16, 65], [62, 65]),
      line('thin', [16, 85], [62, 85]),
      line('centre', [2, 75], [166, 75]),
      line('centre', [39, 56], [39, 94]),
      // spring
      leaf(132, 222, 0),
      leaf(156, 219, 5.5),
      leaf(168, 212, 11),
      rect('outline', 180, 121, 204, 126),
      rect('outline', 180, 138, 204, 144),
      line('thin', [184, 118], [184, 148]),
      line('thin', [200, 118], [200, 148]),
      face('outline', [221, 90], [231, 90], [231, 116], [221, 116]),
      ...pin(pivot, 8, 5),
      ...pin(springEye, 6, 3.2),
      ...pin(shackleUpper, 5, 2.8),
      ...pin(shackleLower, 5, 2.8),
      breakLine([246, 27], [246, 47]),
    ],
    items: [
      item(1, [28, 34], [18, 68]),
      item(2, [76, 28], [90.5, 56]),
      item(3, [62, 118], [76, 80]),
      item(4, [146, 16], pivot),
      item(5, [167, 16], pivot),
      item(6, [104, 146], springEye),
      item(7, [245, 72], shackleUpper),
      item(8, [240, 146], shackleLower),
    ],
  };
}

/** One leaf of the spring from `left` to `right`, bowed down a little, `below` the main leaf. */
function leaf(left: number, right: number, below: number): SketchShape {
  const y = (x: number) => 121 + below + 6 * Math.sin((Math.PI * (x - 128)) / 98) - (x - 128) * 0.04;
  const xs = Array.from({ length: 13 }, (_, i) => left + ((right - left) * i) / 12);
  return face(
    'outline',
    ...xs.map((x) => [x, y(x) - 2.7] as const),
    ...xs.reverse().map((x) => [x, y(x) + 2.7] as const),
  );
}
