import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { orRefuse } from '../../outcome.ts';
import { builtInAssemblyKinds } from '../../shop/assemblyKinds.ts';
import type { StripDownStep, StripDownTree } from '../../shop/stripDownTree.ts';
import { addedHours, jobHours, type PositionWork } from './jobHours.ts';
import { WORK_STEPS } from './labourHours.ts';
import { stepsToReach } from './stepsToReach.ts';

const aStep = (code: string, needs: string[] = [], when: StripDownStep['when'] = 'off'): StripDownStep => ({
  ...{ code, name: code, when, hours: { low: 1, typical: 2, high: 3 }, needs, brings: [], source: 'made up' },
});

/** A tree of some steps, each needing some of those before it, and positions that ask for some of them. */
const someTree: fc.Arbitrary<StripDownTree> = fc
  .array(fc.record({ needs: fc.array(fc.nat(9)), hours: fc.nat(5), reach: fc.array(fc.nat(9)) }), {
    minLength: 1,
    maxLength: 10,
  })
  .map((rows) => ({
    steps: rows.map(({ needs, hours }, i) => ({
      ...aStep(
        `s${i}`,
        needs.filter((j) => j < i).map((j) => `s${j}`),
      ),
      hours: { low: hours, typical: hours, high: hours },
    })),
    reach: rows.map(({ reach }, i) => ({
      item: i + 1,
      needs: reach.filter((j) => j < rows.length).map((j) => `s${j}`),
    })),
    always: [],
  }));
const someWork: fc.Arbitrary<PositionWork[]> = fc.array(
  fc.record({
    item: fc.integer({ min: 1, max: 10 }),
    work: fc.array(
      fc.record(
        { step: fc.constantFrom(...WORK_STEPS), times: fc.integer({ min: 0, max: 3 }) },
        { noNullPrototype: true },
      ),
      { maxLength: 3 },
    ),
  }),
  { maxLength: 5 },
);

describe('hours of a visit', () => {
  test('adding work never takes hours away', () => {
    fc.assert(
      fc.property(someTree, someWork, someWork, (tree, already, more) => {
        expect(orRefuse(addedHours(tree, already, more)).typical).toBeGreaterThanOrEqual(-1e-9);
      }),
    );
  });

  test('two sets of work in one visit never take more than in two', () => {
    fc.assert(
      fc.property(someTree, someWork, someWork, (tree, one, other) => {
        const together = orRefuse(jobHours(tree, [...one, ...other])).all.typical;
        const apart = orRefuse(jobHours(tree, one)).all.typical + orRefuse(jobHours(tree, other)).all.typical;
        expect(together).toBeLessThanOrEqual(apart + 1e-9);
      }),
    );
  });

  test('every step is counted once, after all it needs', () => {
    fc.assert(
      fc.property(someTree, fc.array(fc.integer({ min: 1, max: 10 })), (tree, items) => {
        const steps = orRefuse(stepsToReach(tree, items)).map(({ code }) => code);
        expect(new Set(steps).size).toBe(steps.length);
        for (const { code, needs } of tree.steps.filter((step) => steps.includes(step.code)))
          for (const needed of needs) expect(steps.indexOf(needed)).toBeLessThan(steps.indexOf(code));
      }),
    );
  });

  test('a line-bore set-up is counted once for the holes on its line', () => {
    const tree: StripDownTree = { steps: [], reach: [], always: [] };
    const bore = (item: number): PositionWork => ({
      item,
      work: [
        { step: 'set-up-line-bore', times: 1, oncePer: 'pivot' },
        { step: 'bore-boss', times: 1 },
      ],
    });
    expect(orRefuse(jobHours(tree, [bore(11), bore(12)])).work.typical).toBeCloseTo(1.5 + 2 * 0.7, 9);
  });

  test('nothing to do opens nothing', () => {
    const tree: StripDownTree = { steps: [aStep('wash')], reach: [], always: ['wash'] };
    expect(orRefuse(jobHours(tree, [{ item: 1, work: [] }])).all.typical).toBe(0);
  });
});

describe('trees that cannot be followed', () => {
  const tree = (steps: StripDownStep[]): StripDownTree => ({ steps, reach: [], always: ['a'] });

  test('a step that is not there is named', () =>
    expect(stepsToReach(tree([aStep('a', ['gone'])]), [])).toMatchObject({
      refusal: { code: 'strip-down-step-unknown', facts: { step: 'gone' } },
    }));

  test('a step that needs itself by way of another is named', () =>
    expect(stepsToReach(tree([aStep('a', ['b']), aStep('b', ['a'])]), [])).toMatchObject({
      refusal: { code: 'strip-down-goes-round' },
    }));
});

test.each(builtInAssemblyKinds.map((kind) => [kind.name, kind] as const))(
  '%s: every position can be reached',
  (_, kind) => {
    const tree = kind.stripDown;
    expect(tree?.reach.map(({ item }) => item)).toEqual(kind.positions.map(({ item }) => item));
    if (tree) expect(orRefuse(stepsToReach(tree, [1])).length).toBeGreaterThan(1);
  },
);
