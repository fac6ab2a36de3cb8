import { describe, expect, test } from 'vitest';
import { orRefuse } from '../../outcome.ts';
import { pickUpHitchStripDown } from '../../shop/assembly-kinds/stripDownSteps.ts';
import type { WornBore } from '../clean-up/wornOutline.ts';
import { ROUND_BARS_MM } from '../cut-list/stockSize.ts';
import { USUAL_SHOP_FIGURES, workHoursOf } from '../shopFigures.ts';
import type { RepairChoice, StateAfter } from './repairOption.ts';
import { repairOptions } from './repairOptions.ts';
import type { WornJoint } from './wornJoint.ts';

const slot = (wearMm: number): WornBore => ({
  ...{ by: 'slot', newBoreMm: 40, lengthMm: 40 + wearMm, widthMm: 40, wornTowardsDeg: 0, oppositeMm: 0 },
});

/** A pivot of 40 mm in a boss of 80, worn 1.2 mm to the rear, of a part that is no coupling. */
const pivot: WornJoint = {
  name: 'pivot, right',
  use: 'greased-pivot',
  standardMm: 40,
  cleanUp: { run: 'across', bosses: [slot(1.2)], aSideMm: 0.15, mayMoveMm: 1, datum: 'unworn-lip' },
  boss: {
    ...{ outsideMm: 80, lengthMm: 50, offMiddleMm: 0, centreToEdgeMm: null, material: 'structural-steel' },
    ...{ yieldMpa: null, split: false, weldsNear: false, plateThinOrUnknown: false },
  },
  pin: { measuredMm: 39.6, lengthMm: 160, material: 'steel', renewed: true, sizesToHadMm: null },
  asDrawn: {
    worn: 'eye',
    joint: {
      pinMm: 40,
      eye: { boreMm: 40, thicknessMm: 50, widthMm: 80, endMm: 40 },
      fork: { boreMm: 40, thicknessMm: 25, widthMm: 90, endMm: 45 },
      gapEachSideMm: 1,
    },
  },
  mustStayStandard: false,
  oversizes: 0,
  rejectSlackMm: 2,
  doNotUse: false,
  part: {
    ...{ kind: 'other', towingOrLifting: false, crack: false, forgedOrHeatTreated: false },
    ...{ straightenedBefore: false, procedure: null },
  },
  nylonNear: false,
  opened: { tree: pickUpHitchStripDown, item: 12, already: [], works: [] },
  shop: {
    ...{ workHours: workHoursOf(USUAL_SHOP_FIGURES), pressN: 300_000, lubrication: 'oiled', alignmentBar: true },
    ...{ figures: USUAL_SHOP_FIGURES, roundBarsMm: ROUND_BARS_MM.value },
  },
};
type Changes = Partial<Omit<WornJoint, 'boss' | 'pin' | 'part' | 'shop' | 'cleanUp'>> & {
  [K in 'boss' | 'pin' | 'part' | 'shop' | 'cleanUp']?: Partial<WornJoint[K]>;
};
const joint = (more: Changes = {}): WornJoint => ({
  ...pivot,
  ...more,
  boss: { ...pivot.boss, ...more.boss },
  pin: { ...pivot.pin, ...more.pin },
  part: { ...pivot.part, ...more.part },
  shop: { ...pivot.shop, ...more.shop },
  cleanUp: { ...pivot.cleanUp, ...more.cleanUp },
});
const option = (choice: RepairChoice, more: Changes = {}) => {
  const found = orRefuse(repairOptions(joint(more), () => null)).options.find((one) => one.choice === choice);
  if (!found) throw new Error(`no ${choice}`);
  return found;
};
const closed = (choice: RepairChoice, more: Changes = {}) => option(choice, more).closed.map(({ code }) => code);
const cautions = (choice: RepairChoice, more: Changes = {}) => option(choice, more).cautions.map(({ code }) => code);

describe('sizes', () => {
  test('a plain pivot has every choice open', () => {
    for (const choice of ['leave', 'oversize-pin', 'bush', 'weld', 'new-boss', 'reject'] as const)
      expect(closed(choice), choice).toEqual([]);
  });

  test('an oversize pin takes the next half millimetre over what cleans up on the better centre', () => {
    const found = option('oversize-pin');
    expect(found.bore).toMatchObject({ nominalMm: 41.5, toleranceClass: 'H9', centre: 'shifted' });
    expect(found.bore?.toward).toEqual([{ way: 'rear', mm: expect.closeTo(0.6, 6) }]);
    expect(found.bore?.smallestMm).toBeGreaterThanOrEqual(40 + 1.2 + 0.3);
    expect(found.pin).toMatchObject({ nominalMm: 41.5, toleranceClass: 'd9' });
    // 41.5 H9/d9: holes 0 to 62, pins -80 to -142 micrometre
    expect(found.slackMm?.low).toBeCloseTo(0.08, 6);
    expect(found.slackMm?.high).toBeCloseTo(0.204, 6);
    expect(found.wall?.leftMm).toBeCloseTo((80 - 41.5) / 2 - 0.6, 6);
  });

  test('without leave to move the centre the one-sided wear counts twice', () => {
    const found = option('oversize-pin', { cleanUp: { mayMoveMm: null } });
    expect(found.bore).toMatchObject({ nominalMm: 43, centre: 'old', shiftMm: 0 });
  });

  test('a bush keeps the old centre where the boss has the wall, and comes back to standard', () => {
    const found = option('bush');
    expect(found.bore).toMatchObject({ nominalMm: 46, toleranceClass: 'H7', centre: 'old' });
    expect(found.bush).toMatchObject({
      outsideMm: { toleranceClass: 's6' },
      insideBeforeMm: { nominalMm: 40, toleranceClass: 'E6' },
      insideAfterMm: { nominalMm: 40, toleranceClass: 'H8' },
      ...{ lengthMm: 50, wallMm: 3 },
    });
    // H8 0 to 39, d9 -80 to -142
    expect(found.slackMm?.low).toBeCloseTo(0.08, 6);
    expect(found.slackMm?.high).toBeCloseTo(0.181, 6);
    expect(found.bush?.pressed.pressForceN.high).toBeGreaterThan(found.bush?.pressed.pressForceN.low ?? 0);
    expect(found.bush?.pressed.boreAfter?.closesInMm.high).toBeGreaterThan(0);
    expect(found.bush?.pressed.shrink.heatToC).toBeGreaterThan(20);
  });

  test('a worn pin left in keeps its own slack', () => {
    const found = option('bush', { pin: { renewed: false } });
    expect(found.pin).toBeNull();
    expect(found.slackMm?.low).toBeCloseTo(0.4, 6);
    expect(found.toMake.map(({ kind }) => kind)).toEqual(['bush']);
  });

  test('left alone, its slack is what was measured', () => expect(option('leave').slackMm?.high).toBeCloseTo(1.6, 9));
});

describe('what closes a choice', () => {
  test('something that interchanges closes the oversize pin and nothing else', () => {
    expect(closed('oversize-pin', { mustStayStandard: true })).toEqual(['must-stay-standard']);
    expect(closed('bush', { mustStayStandard: true })).toEqual([]);
  });

  test('two oversizes are enough', () => {
    expect(closed('oversize-pin', { oversizes: 1 })).toEqual([]);
    expect(closed('oversize-pin', { oversizes: 2 })).toEqual(['oversized-before']);
  });

  test('no pin to be had', () => {
    expect(closed('oversize-pin', { pin: { sizesToHadMm: [40, 41] } })).toEqual(['pin-not-to-be-had']);
    expect(option('oversize-pin', { pin: { sizesToHadMm: [40, 42, 45] } }).bore?.nominalMm).toBe(42);
  });

  test('too little wall', () => {
    const thin: Changes = { boss: { outsideMm: 60 } };
    expect(closed('oversize-pin', thin)).toEqual(['boss-wall-too-thin', 'no-room-for-a-bush-after']);
    expect(closed('bush', thin)).toEqual(['boss-wall-too-thin']);
    expect(option('bush', thin).wall?.leftMm).toBeCloseTo(7, 6);
  });

  test('wall for an oversize pin but none for the bush after it', () =>
    expect(closed('oversize-pin', { boss: { outsideMm: 72 } })).toEqual(['no-room-for-a-bush-after']));

  test('an edge too near', () => {
    const near: Changes = { boss: { centreToEdgeMm: 58 } };
    expect(closed('oversize-pin', near)).toEqual(['edge-too-near']);
    expect(closed('bush', near)).toEqual(['edge-too-near']);
  });

  test('a split boss, welds close by', () => {
    expect(closed('bush', { boss: { split: true } })).toEqual(['boss-split']);
    expect(closed('bush', { boss: { weldsNear: true } })).toEqual(['welds-near']);
  });

  test('a bush as thick as its boss cannot be worked out', () => {
    const found = option('bush', { boss: { outsideMm: 46 } });
    expect(found.closed.map(({ code }) => code)).toEqual(['press-no-boss-wall']);
    expect(found.bush).toBeNull();
  });

  test('steel not known, cast iron, nylon near', () => {
    expect(closed('weld', { boss: { material: null } })).toEqual(['steel-work-steel-not-known']);
    expect(closed('weld', { boss: { material: 'cast-iron' } })).toEqual(['steel-work-cast-iron']);
    expect(closed('weld', { nylonNear: true })).toEqual(['nylon-near']);
    expect(closed('new-boss', { boss: { material: null } })).toEqual(['steel-work-steel-not-known']);
    expect(closed('new-boss', { nylonNear: true })).toEqual(['nylon-near']);
  });

  test('the plate a new boss would stand in', () => {
    expect(closed('new-boss', { boss: { plateThinOrUnknown: null } })).toEqual(['plate-not-looked-at']);
    expect(closed('new-boss', { boss: { plateThinOrUnknown: true } })).toEqual(['plate-thin-or-unknown']);
    const pair: Changes = { cleanUp: { bosses: [slot(1.2), slot(0.4)] }, shop: { alignmentBar: false } };
    expect(closed('new-boss', pair)).toEqual(['no-alignment-bar']);
  });

  test('a cracked part that tows is rejected; only the maker’s written procedure opens the rest', () => {
    const hook: Changes = { part: { kind: 'hook', towingOrLifting: true, crack: true, forgedOrHeatTreated: true } };
    for (const choice of ['leave', 'oversize-pin', 'bush'] as const)
      expect(closed(choice, hook), choice).toContain('cracked-towing-part');
    expect(closed('weld', hook)).toEqual(['steel-work-crack', 'steel-work-forged-or-heat-treated']);
    expect(closed('new-boss', hook)).toContain('steel-work-crack');
    expect(closed('reject', hook)).toEqual([]);
    const procedure = { by: 'its maker', reference: 'letter of 3 May' };
    for (const choice of ['oversize-pin', 'bush', 'weld', 'new-boss'] as const)
      expect(closed(choice, { part: { ...hook.part, procedure } }), choice).toEqual([]);
  });

  test('a cracked bore of any part is not welded up without a procedure', () =>
    expect(closed('weld', { part: { crack: true } })).toEqual(['steel-work-crack']));

  test('a towing part of unknown steel is not welded', () =>
    expect(closed('weld', { part: { towingOrLifting: true, forgedOrHeatTreated: null } })).toEqual([
      'steel-work-steel-not-known',
    ]));

  test('past reject, and a finding that it must not be used, close leaving it', () => {
    expect(closed('leave', { rejectSlackMm: 1.5 })).toEqual(['past-reject']);
    expect(closed('leave', { doNotUse: true })).toEqual(['do-not-use']);
  });
});

describe('what is said beside a choice', () => {
  test('weaker than drawn, by the figure that suffers most', () => {
    const found = option('oversize-pin');
    expect(found.comparison?.notWorse).toBe(false);
    expect(found.cautions.find(({ code }) => code === 'weaker-than-drawn')?.facts).toMatchObject({
      figure: 'eye-tear-out',
    });
    expect(option('weld').comparison?.notWorse).toBe(true);
    expect(cautions('bush', { asDrawn: null })).toContain('other-half-not-known');
  });

  test('a press too small, a boss taken to be structural steel, a boss that yields', () => {
    expect(cautions('bush', { shop: { pressN: 1000 } })).toContain('press-too-small');
    expect(cautions('bush', { boss: { material: null } })).toContain('boss-steel-taken-as-structural');
    expect(cautions('bush', { boss: { yieldMpa: 50 } })).toContain('boss-yields');
  });

  test('a pin nobody measured, a pin of unknown length', () => {
    expect(cautions('leave', { pin: { measuredMm: null } })).toEqual(['pin-not-measured']);
    expect(option('leave', { pin: { measuredMm: null } }).slackMm).toBeNull();
    const unknown = option('oversize-pin', { pin: { lengthMm: null } });
    expect(unknown.cautions.map(({ code }) => code)).toContain('pin-length-not-known');
    expect(unknown.toMake).toEqual([]);
  });

  test('cautions to people come with the work that needs them', () => {
    const ids = (choice: RepairChoice, more: Changes = {}) => option(choice, more).safety.map(({ id }) => id);
    expect(ids('leave')).toEqual([]);
    expect(ids('oversize-pin')).toContain('oversize');
    expect(ids('bush')).toEqual(expect.arrayContaining(['press', 'heat', 'props']));
    expect(ids('weld', { nylonNear: true })).toEqual(expect.arrayContaining(['fume', 'nylon', 'build-up']));
    expect(ids('new-boss')).toContain('new-boss');
    expect(ids('bush', { part: { towingOrLifting: true } })).toContain('hand-over');
  });
});

describe('hours and parts', () => {
  test('strip-down is counted once: what is open already is not opened again', () => {
    const alone = option('bush');
    expect(alone.hoursHere?.typical).toBeCloseTo(1.5 + 0.7 + 0.6 + 0.3 + 1, 9);
    expect(alone.hoursAdded?.typical).toBeCloseTo(
      (alone.hoursHere?.typical ?? Number.NaN) + 0.5 + 0.5 + 1 + 1.5 + 1,
      9,
    );
    const already = [{ item: 4, work: [{ step: 'renew-strip' as const, times: 1 }] }];
    const along = option('bush', { opened: { ...pivot.opened, already } });
    expect(along.hoursAdded?.typical).toBeCloseTo(along.hoursHere?.typical ?? Number.NaN, 9);
    expect(option('leave').hoursAdded?.typical).toBe(0);
  });

  test('two bosses on one bar: two bushes, one set-up', () => {
    const found = option('bush', { cleanUp: { bosses: [slot(1.2), slot(0.8)] } });
    expect(found.work).toEqual(
      expect.arrayContaining([
        { step: 'make-bush', times: 2 },
        { step: 'set-up-line-bore', times: 1, oncePer: 'pivot, right' },
      ]),
    );
    expect(found.toMake.find(({ kind }) => kind === 'bush')?.count).toBe(2);
  });

  test('parts to make carry their limits and the bar they come from', () => {
    const [bush, pin] = option('bush').toMake;
    expect(bush).toMatchObject({ kind: 'bush', stock: { shape: 'round', diameterMm: 50, lengthMm: 52 } });
    expect(bush?.sizes.map(({ of, toleranceClass }) => [of, toleranceClass])).toEqual([
      ['outside', 's6'],
      ['inside', 'E6'],
      ['inside', 'H8'],
      ['length', null],
    ]);
    expect(pin).toMatchObject({ kind: 'pin', stock: { diameterMm: 45, lengthMm: 162 } });
  });
});

test('the hours law is asked for each new state', () => {
  const asked: StateAfter[] = [];
  const { options } = orRefuse(
    repairOptions(joint({ pin: { renewed: false } }), (after) => {
      asked.push(after);
      return `life of ${after.choice}`;
    }),
  );
  expect(options.map(({ life }) => life)).toEqual(options.map(({ choice }) => `life of ${choice}`));
  expect(asked.map(({ bore, pin }) => [bore, pin])).toEqual([
    ['as-found', 'as-found'],
    ['renewed', 'renewed'],
    ['renewed', 'as-found'],
    ['renewed', 'as-found'],
    ['renewed', 'as-found'],
    ['renewed', 'renewed'],
  ]);
});

test('a hole nobody measured is refused', () =>
  expect(repairOptions(joint({ cleanUp: { bosses: [] } }), () => null)).toMatchObject({
    refusal: { code: 'clean-up-no-readings' },
  }));
