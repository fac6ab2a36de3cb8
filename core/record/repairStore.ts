import type { Day } from '../units/day.ts';
import { bulk } from './bulk.ts';
import { counting, NOW_KNOWN } from './counting.ts';
import { insertInto } from './insertInto.ts';
import { lastOfChain } from './lastOfChain.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { repairChoices, repairFacts } from './schema.ts';
import { strikeOut, supersede } from './supersede.ts';

/** What the bench says of a position's hole, as it was kept; null: nothing yet. Who reads it checks it against the contract. */
export const repairFactsOf = (db: ReadableRecord, positionId: number): unknown => {
  const kept = bulk<[string]>(
    db,
    `SELECT f.facts FROM repair_facts f WHERE f.position_id = @positionId AND ${counting('repair_facts', 'f')}
     ORDER BY f.id DESC LIMIT 1`,
    { positionId, knownAt: NOW_KNOWN },
  )[0];
  return kept ? JSON.parse(kept[0]) : null;
};

/** Keeps facts in the place of those before. */
export const saveRepairFacts = (w: WritableRecord, entryId: number, positionId: number, facts: unknown): void => {
  const last = lastOfChain(w, 'repair_facts', { column: 'position_id', id: positionId });
  if (last === null) insertInto(w, repairFacts, { positionId, facts, entryId });
  else supersede(w, repairFacts, last, entryId, { facts, struck: false, reason: '' });
};

export type RepairChoiceRow = {
  positionId: number;
  chosenOn: Day;
  chosenBy: string;
  choice: string;
  option: unknown;
};

/** Repairs chosen, one a position at most; of all positions when none is named. */
export const repairChoicesOf = (db: ReadableRecord, positionIds: readonly number[] | null = null): RepairChoiceRow[] =>
  bulk<[number, Day, string, string, string]>(
    db,
    `SELECT c.position_id, c.chosen_on, e.made_by, c.choice, c.option FROM repair_choices c
     JOIN entries e ON e.id = c.entry_id
     WHERE (@ids IS NULL OR c.position_id IN (SELECT value FROM json_each(@ids))) AND ${counting('repair_choices', 'c')}
     ORDER BY c.position_id`,
    { ids: positionIds && JSON.stringify(positionIds), knownAt: NOW_KNOWN },
  ).map(([positionId, chosenOn, chosenBy, choice, option]) => ({
    ...{ positionId, chosenOn, chosenBy, choice },
    option: JSON.parse(option),
  }));

/** Keeps a choice in the place of the one before. */
export const saveRepairChoice = (
  w: WritableRecord,
  entryId: number,
  { positionId, ...row }: { positionId: number; chosenOn: Day; choice: string; option: unknown },
): void => {
  const last = lastOfChain(w, 'repair_choices', { column: 'position_id', id: positionId });
  if (last === null) insertInto(w, repairChoices, { ...row, positionId, entryId });
  else supersede(w, repairChoices, last, entryId, { ...row, struck: false, reason: '' });
};

/** Takes a choice back: none is chosen then. Nothing happens where none was. */
export const strikeRepairChoice = (w: WritableRecord, entryId: number, positionId: number): void => {
  const last = lastOfChain(w, 'repair_choices', { column: 'position_id', id: positionId });
  if (last !== null) strikeOut(w, repairChoices, last, entryId, '');
};
