import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { CAUTION_IDS, type CautionId, SAFETY_CAUTIONS } from '#core/repair/cautions/cautions.ts';
import { type CautionFacts, type CautionWork, cautionsFor, plainFacts } from '#core/repair/cautions/cautionsFor.ts';
import { PART_KINDS, STEEL_WORKS, type WorkedPart, workOpen } from '#core/repair/cautions/closedWork.ts';

const rows = Papa.parse<Record<string, string>>(readFileSync(join(import.meta.dirname, 'cautions.csv'), 'utf8'), {
  header: true,
  skipEmptyLines: true,
}).data;

/** Each row of the file, the caution made of it, and a case that brings it up. */
const ROWS: Record<string, { id: CautionId; brings: Partial<CautionFacts> }> = {
  SC01: { id: 'forged-parts', brings: { works: ['weld'], kind: 'hook' } },
  SC02: { id: 'cracked-part', brings: { crack: true, kind: 'ring' } },
  SC03: { id: 'stored-pressure', brings: { works: ['open-rams-or-pipes'] } },
  SC04: { id: 'props', brings: { works: ['draw-pin'] } },
  SC05: { id: 'springs', brings: { works: ['release-springs'] } },
  SC06: { id: 'fume', brings: { works: ['weld'], coated: true } },
  SC07: { id: 'nylon', brings: { works: ['build-up'], nylonNear: true } },
  SC08: { id: 'crack-test', brings: { works: ['crack-test'] } },
  SC09: { id: 'weld-test-levels', brings: { works: ['weld', 'crack-test'] } },
  SC10: { id: 'build-up', brings: { works: ['build-up'] } },
  SC11: { id: 'new-boss', brings: { works: ['new-boss'] } },
  SC12: { id: 'press', brings: { works: ['straighten'] } },
  SC13: { id: 'heat', brings: { works: ['heat-or-freeze'] } },
  SC14: { id: 'oversize', brings: { works: ['oversize-pin'] } },
  SC15: { id: 'hand-over', brings: { works: ['hand-over'] } },
  SC16: { id: 'drawbar', brings: { kind: 'drawbar' } },
  SC17: { id: 'road', brings: { roadCoupling: true } },
  SC18: { id: 'placed-on-market', brings: { substantialModification: true } },
};
const NOTHING: CautionFacts = {
  ...{ works: [], kind: 'other', towingOrLifting: false, crack: false, coated: false },
  ...{ nylonNear: false, roadCoupling: false, substantialModification: false },
};
const idsFor = (facts: Partial<CautionFacts>) => cautionsFor({ ...NOTHING, ...facts }).map(({ id }) => id);

describe('cautions', () => {
  test('every row has its caution, and every caution its row', () => {
    expect(rows.map(({ id }) => id)).toEqual(Object.keys(ROWS));
    expect(
      Object.values(ROWS)
        .map(({ id }) => id)
        .sort(),
    ).toEqual([...CAUTION_IDS].sort());
    expect(SAFETY_CAUTIONS.map(({ id }) => id).sort()).toEqual([...CAUTION_IDS].sort());
  });

  test('no caution claims to be better known than its row', () => {
    const READ = ['published', 'analogy', 'scope'];
    for (const { id = '', status = '' } of rows) {
      const { howKnown } = SAFETY_CAUTIONS.find((caution) => caution.id === ROWS[id]?.id) ?? {};
      if (READ.includes(howKnown ?? '')) expect([id, status]).toEqual([id, expect.stringMatching(/^V/)]);
      if (howKnown === 'published') expect([id, status]).toEqual([id, expect.stringMatching(/^V( \/ P)?$/)]);
    }
  });

  test.each(Object.entries(ROWS))('%s comes up for what it is about, and not for nothing', (_, { id, brings }) => {
    expect(idsFor(brings)).toContain(id);
    expect(idsFor({})).toEqual([]);
  });

  test('what is not known is taken to be there', () => {
    const weld = plainFacts(['weld'], { kind: 'other', towingOrLifting: false, crack: false });
    expect(cautionsFor(weld).map(({ id }) => id)).toEqual(['fume', 'nylon']);
    const hook = plainFacts(['weld'], { kind: 'hook', towingOrLifting: true, crack: true });
    expect(cautionsFor(hook).map(({ id }) => id)).toEqual([
      ...['cracked-part', 'forged-parts', 'fume', 'nylon', 'crack-test', 'weld-test-levels', 'road'],
    ]);
  });

  test('bare metal and no nylon leave their cautions out; more work never takes a caution away', () => {
    expect(idsFor({ works: ['weld'] })).toEqual([]);
    const all: CautionWork[] = ['weld', 'straighten', 'oversize-pin', 'draw-pin'];
    for (const work of all) expect(idsFor({ works: all })).toEqual(expect.arrayContaining(idsFor({ works: [work] })));
  });

  test('no caution calls anything safe', () => {
    for (const { text } of SAFETY_CAUTIONS) expect(text).not.toMatch(/\bsafe(ly)?\b/i);
  });
});

describe('what may be welded, built up or straightened', () => {
  const plain: WorkedPart = {
    ...{ kind: 'other', towingOrLifting: false, crack: false, forgedOrHeatTreated: false },
    ...{ straightenedBefore: false, procedure: null },
  };
  const procedure = { by: 'Maker’s technical office, A. Brandt', reference: 'WPS 114-B, 3 Mar 2026' };
  const because = (work: (typeof STEEL_WORKS)[number], change: Partial<WorkedPart>) => {
    const found = workOpen(work, { ...plain, ...change });
    return found.open ? 'open' : found.because.join(' ');
  };

  test.each(STEEL_WORKS)('plain steel of a frame: %s is open', (work) => {
    expect(because(work, {})).toBe('open');
    expect(because(work, { kind: 'other', towingOrLifting: true })).toBe('open');
  });

  test.each(['hook', 'ring', 'ball', 'chain', 'piton', 'clevis-pin'] as const)(
    'a %s is closed to all three',
    (kind) => {
      for (const work of STEEL_WORKS)
        expect(because(work, { kind, towingOrLifting: true })).toBe('forged-or-heat-treated');
    },
  );

  test.each(STEEL_WORKS)('a crack in a part that tows or lifts closes: %s', (work) => {
    expect(because(work, { crack: true, towingOrLifting: true })).toBe('crack');
    expect(because(work, { crack: true, kind: 'drawbar' })).toBe('crack');
    expect(because(work, { crack: true })).toBe(work === 'straighten' ? 'crack' : 'open');
  });

  test('steel nobody knows closes a part that tows; a plain one asks less', () => {
    expect(because('weld', { kind: 'drawbar', forgedOrHeatTreated: null })).toBe('steel-not-known');
    expect(because('weld', { forgedOrHeatTreated: null })).toBe('open');
    expect(because('weld', { forgedOrHeatTreated: true })).toBe('forged-or-heat-treated');
  });

  test('what was straightened once is not straightened again', () => {
    expect(because('straighten', { straightenedBefore: true })).toBe('straightened-before');
    expect(because('weld', { straightenedBefore: true })).toBe('open');
  });

  test('the maker’s written procedure opens it, only with who and what reference', () => {
    for (const kind of PART_KINDS)
      expect(workOpen('weld', { ...plain, kind, crack: true, procedure })).toMatchObject({ open: true });
    expect(workOpen('weld', { ...plain, kind: 'hook', procedure })).toEqual({ open: true, openedBy: procedure });
    expect(because('weld', { kind: 'hook', procedure: { ...procedure, by: ' ' } })).toBe('forged-or-heat-treated');
    expect(because('weld', { kind: 'hook', procedure: { ...procedure, reference: '' } })).toBe(
      'forged-or-heat-treated',
    );
  });
});
