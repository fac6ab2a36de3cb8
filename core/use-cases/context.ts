import { existsSync, mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type Refusal, RefusedError } from '../outcome.ts';
import { readAbout } from '../record/aboutStore.ts';
import { boundMachines } from '../record/boundMachines.ts';
import { type Clock, clockFixedOn, systemClock } from '../record/clock.ts';
import { type EntryMade, recordRevision } from '../record/entry.ts';
import { loadShopLife } from '../record/loadShopLife.ts';
import { openRecord, RECORD_EXTENSION } from '../record/openRecord.ts';
import { finishPuttingInPlace } from '../record/putInPlace.ts';
import { faultOfSqlite, faultOfSystem } from '../record/recordFault.ts';
import type { OpenRecord, ReadableRecord } from '../record/recordFile.ts';
import { recordIdOf } from '../record/recordIdOf.ts';
import { sameLife } from '../shop/sameLife.ts';
import type { ShopLife } from '../shop/shopLife.ts';
import { type Day, isDay } from '../units/day.ts';
import { type BackupTrouble, backUpBeforeMigrating } from './backUps.ts';
import { noteIdentity } from './backupFolders.ts';

/** What every use case has in hand: the record that is open, the clock, and where the program keeps its files. */
export type Context = {
  /** null: none is open yet */
  record: OpenRecord | null;
  /** why the record the program was started with is not open; null: nothing is wrong, or another was opened since */
  trouble: Refusal | null;
  /** the day forecasts are made for */
  today(): Day;
  /** ISO instant, for "made at" */
  now(): string;
  /** backups, the demo record and the list of recent records live here */
  readonly dataFolder: string;
  /** where a new record is laid down */
  readonly defaultRecordPath: string;
  readonly kept: Kept;
  /** nothing is noted beside the record */
  readonly onlyLooks: boolean;
  /** what came of the last backup */
  readonly backups: BackupTrouble;
  close(): void;
};

type Kept = { revision: string; values: Map<string, unknown> };

type ContextOptions = {
  /** whole path; null: the default place. It need not exist yet */
  recordPath: string | null;
  /** ISO day taken as today; absent: the clock's */
  asOf?: string | undefined;
  clock?: Clock;
  /** absent: the folder of the record */
  dataFolder?: string | undefined;
  /** the record is only looked at: nothing is noted beside it */
  onlyLooks?: boolean;
};

/**
 * Opens the record if it is there. One that cannot be opened (made by a later program, damaged, in use) stays as it is:
 * the context then has no record, and its trouble says why.
 *
 * @throws RefusedError not-a-day for an asOf that does not exist
 */
export function openContext(options: ContextOptions): Context {
  const dataFolder = options.dataFolder ?? (options.recordPath ? dirname(options.recordPath) : '.');
  const clock = options.asOf === undefined ? (options.clock ?? systemClock) : clockFixedOn(dayOf(options.asOf));
  const context: Context = {
    record: null,
    trouble: null,
    today: clock.today,
    now: clock.now,
    dataFolder,
    defaultRecordPath: options.recordPath ?? join(dataFolder, `workshop${RECORD_EXTENSION}`),
    kept: { revision: '', values: new Map() },
    onlyLooks: options.onlyLooks ?? false,
    backups: { failed: null, notAlso: null },
    close: () => setRecord(context, null),
  };
  openAtStart(context);
  return context;
}

function openAtStart(context: Context): void {
  const path = context.defaultRecordPath;
  try {
    finishPuttingInPlace(path);
    if (path === ':memory:' || existsSync(path)) openInto(context, path);
  } catch (thrown) {
    if (!(thrown instanceof RefusedError)) throw thrown;
    context.trouble = thrown.refusal;
  }
}

function dayOf(asOf: string): Day {
  if (isDay(asOf)) return asOf;
  throw new RefusedError({ code: 'not-a-day', facts: { path: 'asOf', asOf } });
}

/** Opens a record in place of the one that is open; that one stays open when the new one is refused. */
export function openInto(context: Context, path: string, create = false): OpenRecord {
  if (create && path !== ':memory:') mkdirSync(dirname(path), { recursive: true });
  const record = openRecord(path, { create, beforeMigrating: (file) => backUpBeforeMigrating(context, file) });
  setRecord(context, record);
  const about = readAbout(record);
  if (about && !context.onlyLooks) keepingGoing(() => noteIdentity(context, path, about.identity));
  return record;
}

/** What only makes a later step easier keeps nobody from the record, on a full disk or in a folder that is read-only. */
function keepingGoing(run: () => void): void {
  try {
    run();
  } catch (thrown) {
    if (!faultOfSystem(thrown, '')) throw thrown;
  }
}

export function setRecord(context: Context, record: OpenRecord | null): void {
  context.record?.close();
  context.record = record;
  if (record) context.trouble = null;
  context.kept.values.clear();
  context.kept.revision = '';
}

/** The open record. @throws RefusedError no-record; the trouble of the record the program was started with */
export function recordOf(context: Context): ReadableRecord {
  if (!context.record) throw new RefusedError(context.trouble ?? { code: 'no-record' });
  return context.record;
}

/** Which record is open, as a window says it. */
export const whichIsOpen = ({ record }: Context): { recordId: string; path: string | null } => ({
  recordId: recordIdOf(record),
  path: record?.path ?? null,
});

/** Who makes an entry now, through which operation. */
export const entryNow = (context: Context, what: string, madeBy: string): EntryMade => ({
  madeAt: context.now(),
  madeBy,
  what,
});

/**
 * A value worked out from the record, kept in memory until an entry is made or undone, here or by another program.
 * @param key names the value and whatever else it rests on, the as-of day for one
 */
export function keptInMemory<T>(context: Context, key: string, make: () => T): T {
  const revision = recordRevision(recordOf(context));
  if (context.kept.revision !== revision) {
    context.kept.values.clear();
    context.kept.revision = revision;
  }
  if (!context.kept.values.has(key)) context.kept.values.set(key, make());
  return context.kept.values.get(key) as T;
}

/** Everything forecasts rest on; loaded once and kept until the record changes, what did not change being kept beyond that. */
export const lifeOf = (context: Context, asked: { asOf?: string; knownAt?: string } = {}): ShopLife => {
  const key = `life ${asked.asOf ?? ''} ${asked.knownAt ?? ''}`;
  return keptInMemory(context, key, () => {
    const record = recordOf(context);
    const now = loadShopLife(record, asked);
    const before = lastLives.get(record);
    const life = before?.key === key ? sameLife(before.life, now) : now;
    lastLives.set(record, { key, life });
    return life;
  });
};

/** The life last loaded of each record. */
const lastLives = new WeakMap<ReadableRecord, { key: string; life: ShopLife }>();

/** What of single machines is kept at once; what was looked at longest ago gives way. */
const MOST_KEPT_AROUND = 60;
const lastLivesAround = new WeakMap<ReadableRecord, Map<string, ShopLife>>();

/** As {@link keptInMemory}, for what is worked out of one machine: of a large shop not all is kept. */
export function keptAround<T>(context: Context, key: string, make: () => T): T {
  const all = keptInMemory(context, 'around machines', () => new Map<string, unknown>());
  const value = all.has(key) ? (all.get(key) as T) : make();
  keepLast(all, key, value);
  return value;
}

function keepLast<T>(all: Map<string, T>, key: string, value: T): void {
  all.delete(key);
  all.set(key, value);
  const [oldest] = all.keys();
  if (all.size > MOST_KEPT_AROUND && oldest !== undefined) all.delete(oldest);
}

/**
 * What one machine's forecasts rest on, read by itself: the machine, all it is bound to, and the points that ever sat on
 * them. Nobody waits for the rest of the shop.
 */
export const lifeAround = (context: Context, machineId: number, asOf: Day): ShopLife => {
  const record = recordOf(context);
  const within = keptAround(context, `bound to ${machineId}`, () => boundMachines(record, [machineId]));
  const key = `life around ${within.machineIds[0]} ${asOf}`;
  return keptAround(context, key, () => {
    const lives = lastLivesAround.get(record) ?? new Map<string, ShopLife>();
    lastLivesAround.set(record, lives);
    const now = loadShopLife(record, { asOf, within });
    const before = lives.get(key);
    const life = before ? sameLife(before, now) : now;
    keepLast(lives, key, life);
    return life;
  });
};

/** Some machines and all they are bound to, read by themselves; kept until the record changes. @param key names them */
export const lifeOfSome = (context: Context, key: string, machineIds: () => readonly number[]): ShopLife =>
  keptInMemory(context, `life of ${key} as of ${context.today()}`, () => {
    const record = recordOf(context);
    return loadShopLife(record, { asOf: context.today(), within: boundMachines(record, machineIds()) });
  });

/** The refusal that goes with what a record's file threw while it was in use (damaged, gone, full); null: a defect of ours. */
export const faultOfRecord = (context: Context, thrown: unknown): Refusal | null =>
  faultOfSqlite(thrown, context.record?.path ?? context.defaultRecordPath);
