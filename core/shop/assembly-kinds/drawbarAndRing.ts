import type { AssemblyKind, KindPoint } from '../assemblyKinds.ts';
import { greasedBush, greasedPin } from './kindPoint.ts';

const RING: Pick<KindPoint, 'partClass' | 'newSizeTolMm' | 'renewAtMm' | 'rejectAtMm' | 'limitSource'> = {
  partClass: 'Towing ring',
  newSizeTolMm: 0.4,
  // The limit belongs to the ring's part number, not to its nominal size: the shop enters the maker's.
  renewAtMm: null,
  rejectAtMm: null,
  limitSource: null,
};

/** Sprung drawbar of a trailer or baler, with a bolted swivel ring. */
export const drawbarAndRing: AssemblyKind = {
  name: 'Drawbar and ring',
  positions: [
    {
      item: 1,
      name: 'Ring',
      safety: true,
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
    { item: 4, name: 'Drawbar pivot, left', safety: true, points: [greasedBush(40), greasedPin(40)] },
    { item: 5, name: 'Drawbar pivot, right', safety: true, points: [greasedBush(40), greasedPin(40)] },
    { item: 6, name: 'Spring eye, front', safety: false, points: [greasedBush(30)] },
    { item: 7, name: 'Spring shackle pin, upper', safety: false, points: [greasedPin(30)] },
    { item: 8, name: 'Spring shackle pin, lower', safety: false, points: [greasedPin(30)] },
  ],
  sketch: null,
};
