import type { StripDownStep, StripDownTree } from '../stripDownTree.ts';

/*
 * Steps that open and close the built-in kinds, and the order they come in. Hours and order are the common practice of repair shops,
 * no source; every one of them is the shop's to change.
 */
const SOURCE = 'common practice, no source';

type Hours = readonly [low: number, typical: number, high: number];
type Order = { needs?: readonly string[]; brings?: readonly string[] };

const step = (
  when: StripDownStep['when'],
  code: string,
  name: string,
  [low, typical, high]: Hours,
  { needs = [], brings = [] }: Order = {},
): StripDownStep => ({ code, name, when, hours: { low, typical, high }, needs, brings, source: SOURCE });

const wash = step('off', 'wash', 'Wash and read the hours', [0.3, 0.5, 1]);
const test = (name: string): StripDownStep => step('back', 'test', name, [0.8, 1, 2]);

/** Telescopic pick-up hitch, left on the tractor: ram, then carrier rearwards; everything inside follows from that. */
export const pickUpHitchStripDown: StripDownTree = {
  steps: [
    wash,
    step('off', 'ram-out', 'Pressure off, ram drained and its pins out', [0.3, 0.5, 1], { needs: ['wash'] }),
    step('off', 'carrier-out', 'Carrier out of the frame, rearwards', [0.5, 1, 2], {
      needs: ['ram-out'],
      brings: ['put-together'],
    }),
    step('off', 'bench', 'Hitch off the tractor and on the bench', [1, 1.5, 3], { needs: ['wash'] }),
    step('back', 'put-together', 'Carrier, strips and ram back, gaps set', [1, 1.5, 2.5]),
    test('Lift rods set, latch tested'),
  ],
  reach: [
    ...[1, 2, 3, 4, 5, 6].map((item) => ({ item, needs: ['carrier-out'] })),
    ...[7, 8].map((item) => ({ item, needs: ['ram-out'] })),
    ...[9, 10].map((item) => ({ item, needs: ['wash'] })),
    ...[11, 12].map((item) => ({ item, needs: ['carrier-out'] })),
    ...[13, 14].map((item) => ({ item, needs: ['wash'] })),
  ],
  always: ['wash', 'test'],
};

/** Kinds whose pins are reached one by one: wash, make safe, work, try it. */
export const openStripDown = (items: number, madeSafe: string, tried: string): StripDownTree => ({
  steps: [wash, step('off', 'made-safe', madeSafe, [0.3, 0.5, 1], { needs: ['wash'] }), test(tried)],
  reach: Array.from({ length: items }, (_, i) => ({ item: i + 1, needs: ['made-safe'] })),
  always: ['wash', 'test'],
});
