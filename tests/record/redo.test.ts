import { afterEach, beforeEach, expect, test } from 'vitest';
import { entriesList, entriesRedoLast, entriesUndoLast } from '#core/contract/entries.ts';
import { findingAdd, stripDownSave } from '#core/contract/stripDown.ts';
import { aShopWithAHitch, aSize } from '#tests/support/aHitch.ts';
import { aProgram, type Program } from '#tests/support/aProgram.ts';

let program: Program;
let shop: Awaited<ReturnType<typeof aShopWithAHitch>>;
beforeEach(async () => {
  program = aProgram('2026-11-09');
  shop = await aShopWithAHitch(program);
});
afterEach(() => {
  expect(program.defects).toEqual([]);
  program.end();
});

const save = (takenOn: string, dialHours: number, sizeMm: number) =>
  program.ask(stripDownSave, {
    ...shop.draft(takenOn, dialHours),
    sizes: [aSize(shop.strip.pointId, sizeMm, 'front')],
    dialSure: false,
  });
const listed = () => program.ask(entriesList, { beforeEntryId: null, limit: 20 });
const undo = async () => {
  const { undoableEntryId } = await listed();
  await program.ask(entriesUndoLast, { entryId: undoableEntryId!, by: 'Bo' });
  return undoableEntryId!;
};
const redo = async () => {
  const { redoable } = await listed();
  await program.ask(entriesRedoLast, { entryId: redoable!.entryId, by: 'Ada' });
  return redoable!.entryId;
};

test('what was taken back is put in again one after another, and everything is as it was', async () => {
  const states = [await shop.sheet()];
  await save('2024-05-01', 2000, 11.6);
  states.push(await shop.sheet());
  await save('2025-05-01', 2600, 11.3);
  states.push(await shop.sheet());
  expect((await listed()).redoable).toBeNull();
  const [second, first] = [await undo(), await undo()];
  expect(await shop.sheet()).toEqual(states[0]);
  expect(await redo()).toBe(first);
  expect(await shop.sheet()).toEqual(states[1]);
  expect(await redo()).toBe(second);
  expect(await shop.sheet()).toEqual(states[2]);
  expect((await listed()).redoable).toBeNull();
  // who took it back and who put it in again stay in the history
  const { entries, undoableEntryId } = await listed();
  expect(entries.slice(0, 4).map(({ what, madeBy }) => [what, madeBy])).toEqual([
    ['entries/redoLast', 'Ada'],
    ['entries/redoLast', 'Ada'],
    ['entries/undoLast', 'Bo'],
    ['entries/undoLast', 'Bo'],
  ]);
  expect(undoableEntryId).toBe(second);
});

test('once something else is entered, what was taken back stays out', async () => {
  await save('2024-05-01', 2000, 11.6);
  const gone = await undo();
  const { assemblyId, positionId } = shop.strip;
  await program.ask(findingAdd, {
    ...{ assemblyId, positionId, kind: 'crack', severity: 'watch', note: '', takenOn: '2026-05-02', by: 'Bo' },
  });
  expect((await listed()).redoable).toBeNull();
  const refused = async (entryId: number) => {
    const answer = await program.answer(entriesRedoLast, { entryId, by: '' });
    return answer.ok ? null : answer.fault.code;
  };
  expect(await refused(gone)).toBe('entered-since');
  expect(await refused((await listed()).undoableEntryId!)).toBe('not-taken-back');
  expect(await refused(99_999)).toBe('unknown-entry');
  // the finding taken back again: what was taken back before it still has something entered after it
  const finding = await undo();
  expect((await listed()).redoable?.entryId).toBe(finding);
  await redo();
  expect((await listed()).redoable).toBeNull();
});
