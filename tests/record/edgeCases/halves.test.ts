import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { entriesList, entriesUndoLast } from '#core/contract/entries.ts';
import { assemblyHalves, assemblyMove, assemblyMoveHalf } from '#core/contract/machine.ts';
import { findingAdd, stripDownSave, stripDownSheet } from '#core/contract/stripDown.ts';
import { aHitchInHalves, aShopWithAHitch, aSize } from '#tests/support/aHitch.ts';
import { aProgram, type Program } from '#tests/support/aProgram.ts';

let program: Program;
beforeEach(() => {
  program = aProgram('2026-11-09');
});
afterEach(() => {
  expect(program.defects).toEqual([]);
  program.end();
});

type Hitch = Awaited<ReturnType<typeof aHitchInHalves>>;

/** Two tractors with hitches of one kind: one at 1000 h on 10 Jan 2022, the other at 5000 h. */
async function twoHitches(): Promise<{ one: Hitch; other: Hitch }> {
  await aShopWithAHitch(program);
  const dial = (dialHours: number) => ({ takenOn: '2022-01-10', dialHours, estimate: false, saidBy: 'Bo' });
  return {
    one: await aHitchInHalves(program, 'Tarrow 90', dial(1000)),
    other: await aHitchInHalves(program, 'Harrod 118', dial(5000)),
  };
}

const stripDown = ({ machineId }: Hitch, takenOn: string, dialHours: number, pointId: number, sizeMm: number) =>
  program.ask(stripDownSave, {
    machineId,
    takenOn,
    dialHours,
    fitter: 'Bo',
    note: '',
    sizes: [aSize(pointId, sizeMm, 'front')],
    renewals: [],
    findings: [],
    dialSure: false,
  });

/** The carriers change places on 1 Feb 2024, at 2000 h and 6500 h. */
const exchange = (one: Hitch, other: Hitch) =>
  program.ask(assemblyMoveHalf, {
    positionIds: one.carrier,
    takenOn: '2024-02-01',
    dialHours: 2000,
    toAssemblyId: other.assemblyId,
    toDialHours: 6500,
    theirs: 'in-exchange',
  });

const pointOn = async (hitch: Hitch, pointId: number) =>
  (await hitch.sheet()).points.find((point) => point.pointId === pointId);

describe('9 half a hitch swapped from another machine', () => {
  test('9 the history follows the part, with dates on each machine', async () => {
    const { one, other } = await twoHitches();
    await stripDown(one, '2023-01-10', 1500, one.strip.pointId, 11.6);
    await exchange(one, other);
    expect(await pointOn(one, one.strip.pointId)).toBeUndefined();
    await stripDown(other, '2025-02-01', 7000, one.strip.pointId, 11.1);

    const strip = await pointOn(other, one.strip.pointId);
    expect(strip?.assemblyId).toBe(other.assemblyId);
    // 2000 h on the first tractor, and 500 h on the second since
    expect(strip?.visits.map(({ takenOn, partHours }) => [takenOn, partHours])).toEqual([
      ['2023-01-10', 1500],
      ['2025-02-01', 2500],
    ]);
    // the frame stayed where it was, and the other carrier came: 6500 h on its own tractor
    const first = await one.sheet();
    expect(first.points.map(({ pointId }) => pointId)).toContain(one.latch.pointId);
    expect(first.points.map(({ pointId }) => pointId)).toContain(other.strip.pointId);
    expect(first.points.every(({ assemblyId }) => assemblyId === one.assemblyId)).toBe(true);
    const sheet = await program.ask(stripDownSheet, { machineId: one.machineId });
    expect(sheet.rows.map(({ pointId, assemblyId }) => [pointId, assemblyId])).toContainEqual([
      other.strip.pointId,
      one.assemblyId,
    ]);
    // the dials read then are readings of their machines
    expect(first.dialRows.map(({ takenOn, dialHours }) => [takenOn, dialHours])).toContainEqual(['2024-02-01', 2000]);
    const second = await other.sheet();
    expect(second.dialRows.map(({ takenOn, dialHours }) => [takenOn, dialHours])).toContainEqual(['2024-02-01', 6500]);
  });

  test('9 a finding at the half goes with it, one on the frame stays', async () => {
    const { one, other } = await twoHitches();
    const crack = {
      kind: 'crack' as const,
      severity: 'do-not-use' as const,
      note: '',
      takenOn: '2024-01-10',
      by: 'Bo',
    };
    await program.ask(findingAdd, { ...crack, assemblyId: one.assemblyId, positionId: one.strip.positionId });
    await exchange(one, other);
    expect((await one.sheet()).findings).toEqual([]);
    expect((await other.sheet()).findings).toMatchObject([
      { machineId: other.machineId, assemblyId: other.assemblyId, positionId: one.strip.positionId },
    ]);
    expect((await pointOn(other, one.strip.pointId))?.role).toBe('stop');
  });

  test('9 to the shelf and on to another machine: hours stand still on the shelf', async () => {
    const { one, other } = await twoHitches();
    const move = { positionIds: one.carrier, dialHours: null, toDialHours: null, theirs: null };
    await program.ask(assemblyMoveHalf, { ...move, takenOn: '2023-01-10', dialHours: 1500, toAssemblyId: null });
    const halves = await program.ask(assemblyHalves, { assemblyId: other.assemblyId });
    expect(halves.shelf).toMatchObject([{ group: 'carrier', since: '2023-01-10', last: { machine: 'Tarrow 90' } }]);
    expect(halves.halves.map(({ group, positions }) => [group, positions.length])).toEqual([
      ['carrier', 2],
      ['frame', 1],
    ]);
    await expect(
      program.ask(assemblyMoveHalf, { ...move, takenOn: '2025-01-10', toAssemblyId: other.assemblyId }),
    ).rejects.toThrow('half-is-there');
    await program.ask(assemblyMoveHalf, {
      ...move,
      takenOn: '2025-01-10',
      toAssemblyId: other.assemblyId,
      toDialHours: 7000,
      theirs: 'shelf',
    });
    await stripDown(other, '2026-01-10', 7400, one.strip.pointId, 11);
    expect((await pointOn(other, one.strip.pointId))?.visits.map(({ partHours }) => partHours)).toEqual([1900]);
    const theirs = await pointOn(other, other.strip.pointId);
    expect(theirs?.forecast.cautions).toContain('on-the-shelf');
  });

  test('9 the half goes on with the assembly it is in now', async () => {
    const { one, other } = await twoHitches();
    await exchange(one, other);
    await program.ask(assemblyMove, {
      assemblyId: other.assemblyId,
      takenOn: '2025-02-01',
      dialHours: 7000,
      toMachineId: null,
      toDialHours: null,
    });
    const strip = await pointOn(other, one.strip.pointId);
    expect(strip?.forecast.partHours).toBe(2500);
    expect(strip?.forecast.cautions).toContain('on-the-shelf');
  });

  test('9 taken back, everything is as it was; the history names the move', async () => {
    const { one, other } = await twoHitches();
    await stripDown(one, '2023-01-10', 1500, one.strip.pointId, 11.6);
    const before = [await one.sheet(), await other.sheet()];
    await exchange(one, other);
    const { entries, undoableEntryId } = await program.ask(entriesList, { beforeEntryId: null, limit: 1 });
    expect(entries[0]).toMatchObject({
      what: 'assembly/moveHalf',
      rows: { halves: 4, dialReadings: 2 },
      machineCount: 2,
    });
    await program.ask(entriesUndoLast, { entryId: undoableEntryId!, by: 'Bo' });
    expect([await one.sheet(), await other.sheet()]).toEqual(before);
  });

  test('9 refuses what cannot be: part of a half, another kind, a day before its last move', async () => {
    const { one, other } = await twoHitches();
    const { rows } = await program.ask(stripDownSheet, { machineId: 1 });
    const asked = {
      positionIds: one.carrier,
      takenOn: '2024-02-01',
      dialHours: null,
      toAssemblyId: other.assemblyId,
      toDialHours: null,
      theirs: 'in-exchange' as const,
    };
    const refused = async (change: object) =>
      (await program.answer(assemblyMoveHalf, { ...asked, ...change })) as { fault?: { code: string; path?: string } };
    expect((await refused({ positionIds: one.carrier.slice(1) })).fault?.path).toBe('positionIds');
    expect((await refused({ positionIds: [one.latch.positionId, ...one.carrier] })).fault?.path).toBe('positionIds');
    expect((await refused({ positionIds: [99_999] })).fault?.code).toBe('unknown-position');
    expect((await refused({ toAssemblyId: rows[0]!.assemblyId })).fault?.code).toBe('other-kind');
    expect((await refused({ toAssemblyId: one.assemblyId })).fault?.code).toBe('already-there');
    expect((await refused({ takenOn: '2026-12-01' })).fault?.path).toBe('takenOn');
    await exchange(one, other);
    expect((await refused({ takenOn: '2024-01-31', toAssemblyId: one.assemblyId })).fault?.path).toBe('takenOn');
  });
});
