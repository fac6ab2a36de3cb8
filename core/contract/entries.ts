import { z } from 'zod';
import { operation } from './operation.ts';
import { zDay, zId } from './shapes.ts';

/** How many rows of each sort an entry brought. */
export const zEntryRows = z.object({
  machines: z.int(),
  dialReadings: z.int(),
  assemblies: z.int(),
  points: z.int(),
  limits: z.int(),
  stripDowns: z.int(),
  sizes: z.int(),
  /** of them: put right, struck or answered */
  sizesPutRight: z.int(),
  renewals: z.int(),
  /** packing put in */
  shims: z.int(),
  joints: z.int(),
  findings: z.int(),
  closings: z.int(),
  photos: z.int(),
  owners: z.int(),
  customers: z.int(),
  declines: z.int(),
  moves: z.int(),
  /** positions that went by themselves, as half an assembly was swapped */
  halves: z.int(),
  /** what is known of a meter besides what it shows */
  meters: z.int(),
  /** shares of work, from a day on */
  workShares: z.int(),
  /** where the hours of a machine without a meter come from */
  hoursSources: z.int(),
  /** shop settings, part classes */
  others: z.int(),
});
export type EntryRows = z.infer<typeof zEntryRows>;

/** One act of one person: everything in it came in together, and goes out together when it is undone. */
export const zEntry = z.object({
  entryId: zId,
  madeAt: z.string(),
  madeBy: z.string(),
  /** the operation, "stripDown/save" */
  what: z.string(),
  undoneAt: z.string().nullable(),
  undoneBy: z.string().nullable(),
  rows: zEntryRows,
  /** machines it is about; the first few of an import */
  machines: z.array(z.object({ machineId: zId, name: z.string() })),
  machineCount: z.int(),
  /** customers it is about, where it is about few; erased ones have no name */
  customers: z.array(z.object({ customerId: zId, name: z.string() })),
  /** first and last day of what it brought */
  fromOn: zDay.nullable(),
  toOn: zDay.nullable(),
  /** the sheet, where the entry is one strip-down */
  stripDownId: zId.nullable(),
});
export type Entry = z.infer<typeof zEntry>;

export const entriesList = operation(
  'entries/list',
  z.object({
    /** only what was entered before this one; null: from the newest on */
    beforeEntryId: zId.nullable(),
    limit: z.int().min(1).max(200),
  }),
  z.object({
    entries: z.array(zEntry),
    /** there are older ones */
    more: z.boolean(),
    /** the one that undo would take back; null: none can be */
    undoableEntryId: zId.nullable(),
    /** the one taken back that can be put in again; null: none was, or something was entered since */
    redoable: zEntry.nullable(),
  }),
  { title: 'Who changed what and when, newest first' },
);

export const entriesUndoLast = operation(
  'entries/undoLast',
  z.object({
    /** the last entry that stands, as the person saw it */
    entryId: zId,
    by: z.string().max(120),
  }),
  z.object({ entryId: zId, undoableEntryId: zId.nullable() }),
  { title: 'Take the last entry back: its rows count no more, and stay in the record' },
);

export const entriesRedoLast = operation(
  'entries/redoLast',
  z.object({
    /** the entry to be put in again, as the person saw it */
    entryId: zId,
    by: z.string().max(120),
  }),
  z.object({ entryId: zId }),
  { title: 'Put the entry taken back last in again, if nothing was entered since' },
);
