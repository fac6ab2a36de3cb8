import type { ImportAccount } from '../../contract/record.ts';
import type { Plan } from '../../exchange/plan.ts';
import { planFolder } from '../../exchange/planFolder.ts';
import { type FileBytes, type ReadFolder, readFolder } from '../../exchange/readFolder.ts';
import type { Remark } from '../../exchange/remark.ts';
import { type EntryMade, recordRevision } from '../../record/entry.ts';
import { writeEntryIfUnchanged } from '../../record/entryIfUnchanged.ts';
import type { ReadableRecord } from '../../record/recordFile.ts';
import { judgePointSizes } from '../../series/judgeSize.ts';
import type { Day } from '../../units/day.ts';
import { knownShop } from './knownShop.ts';
import { type Brought, writePlan } from './writePlan.ts';

const NOTHING: Brought = {
  customers: 0,
  machines: 0,
  dialReadings: 0,
  points: 0,
  sizes: 0,
  renewals: 0,
  moves: 0,
  findings: 0,
  classes: 0,
};

/** Leaves the transaction of a dry run with nothing kept. */
class DryRunEnds extends Error {}

/**
 * Brings a folder of CSV files into the record: all of it, or nothing when there is a fault.
 *
 * @param asOf rows dated later are brought in all the same, and noted
 * @param dryRun nothing is kept; the account says what would have been
 */
export function bringIn(
  record: ReadableRecord,
  files: readonly FileBytes[],
  made: EntryMade,
  { asOf, dryRun }: { asOf: Day; dryRun: boolean },
): ImportAccount {
  return bringInRows(record, readFolder(files), made, { asOf, dryRun });
}

/** How far an import is; what `told` throws ends it, and leaves the record as it was. */
export type Told = (step: 'reading' | 'planning' | 'writing', share: number) => void;

/** Rows that were read, from whatever file: fitted to the record, and brought in whole or not at all. */
export function bringInRows(
  record: ReadableRecord,
  read: ReadFolder,
  made: EntryMade,
  { asOf, dryRun, told = () => {} }: { asOf: Day; dryRun: boolean; told?: Told },
): ImportAccount {
  const revision = recordRevision(record);
  const known = knownShop(record);
  const classTolMm = new Map(
    known.life.partClasses.map(({ name, newSizeTolMm }) => [name.toLowerCase(), newSizeTolMm]),
  );
  const planning = planFolder(
    read,
    known,
    asOf,
    (point, partClass) => judgePointSizes(point, classTolMm.get(partClass.toLowerCase()) ?? null),
    (share) => told('planning', share),
  );
  const faults = [...read.faults, ...planning.faults].sort(byPlace);
  const account = {
    done: false,
    brought: NOTHING,
    faults,
    cautions: planning.cautions.sort(byPlace),
    notes: [...read.notes, ...planning.notes].sort(byPlace),
  };
  if (faults.length > 0) return account;

  let brought = NOTHING;
  try {
    writeEntryIfUnchanged(record, made, revision, (w, entryId) => {
      const written = writePlan(w, entryId, planning.plan, tellsEvery(1000, rowsToWrite(planning.plan), told));
      brought = written.brought;
      // a file brought in again has nothing new: it leaves no entry behind either
      if (dryRun || !written.anything) throw new DryRunEnds();
    });
  } catch (thrown) {
    if (!(thrown instanceof DryRunEnds)) throw thrown;
  }
  return { ...account, done: !dryRun, brought };
}

const rowsToWrite = ({ machines, visits }: Plan): number =>
  machines.reduce((sum, { newDials }) => sum + newDials.size, 0) +
  visits.reduce((sum, { sizes, renewals, shims }) => sum + sizes.length + renewals.length + shims.length, 0);

function tellsEvery(rows: number, all: number, told: Told): () => void {
  let written = 0;
  return () => {
    if (written++ % rows === 0) told('writing', written / all);
  };
}

const byPlace = (a: Remark, b: Remark): number =>
  a.file < b.file ? -1 : a.file > b.file ? 1 : (a.row ?? 0) - (b.row ?? 0);
