import { existsSync, mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { RefusedError } from '../outcome.ts';
import { type Clock, clockFixedOn, systemClock } from '../record/clock.ts';
import { type EntryMade, recordRevision } from '../record/entry.ts';
import { loadShopLife } from '../record/loadShopLife.ts';
import { openRecord, RECORD_EXTENSION } from '../record/openRecord.ts';
import type { OpenRecord, ReadableRecord } from '../record/recordFile.ts';
import type { ShopLife } from '../shop/shopLife.ts';
import { type Day, isDay } from '../units/day.ts';
import { backUpBeforeMigrating } from './backUps.ts';

/** What every use case has in hand: the record that is open, the clock, and where the program keeps its files. */
export type Context = {
  /** null: none is open yet */
  record: OpenRecord | null;
  /** the day forecasts are made for */
  today(): Day;
  /** ISO instant, for "made at" */
  now(): string;
  /** backups, the demo record and the list of recent records live here */
  readonly dataFolder: string;
  /** where a new record is laid down */
  readonly defaultRecordPath: string;
  readonly kept: Kept;
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
};

/**
 * Opens the record if it is there. A record that cannot be opened (made by a later program, damaged) is refused.
 *
 * @throws RefusedError as openRecord; not-a-day for an asOf that does not exist
 */
export function openContext(options: ContextOptions): Context {
  const dataFolder = options.dataFolder ?? (options.recordPath ? dirname(options.recordPath) : '.');
  const clock = options.asOf === undefined ? (options.clock ?? systemClock) : clockFixedOn(dayOf(options.asOf));
  const context: Context = {
    record: null,
    today: clock.today,
    now: clock.now,
    dataFolder,
    defaultRecordPath: options.recordPath ?? join(dataFolder, `workshop${RECORD_EXTENSION}`),
    kept: { revision: '', values: new Map() },
    close: () => setRecord(context, null),
  };
  if (context.defaultRecordPath === ':memory:' || existsSync(context.defaultRecordPath))
    openInto(context, context.defaultRecordPath);
  return context;
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
  return record;
}

export function setRecord(context: Context, record: OpenRecord | null): void {
  context.record?.close();
  context.record = record;
  context.kept.values.clear();
  context.kept.revision = '';
}

/** The open record. @throws RefusedError no-record */
export function recordOf(context: Context): ReadableRecord {
  if (!context.record) throw new RefusedError({ code: 'no-record' });
  return context.record;
}

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

/** Everything forecasts rest on; loaded once and kept until the record changes. */
export const lifeOf = (context: Context, asked: { asOf?: string; knownAt?: string } = {}): ShopLife =>
  keptInMemory(context, `life ${asked.asOf ?? ''} ${asked.knownAt ?? ''}`, () =>
    loadShopLife(recordOf(context), asked),
  );
