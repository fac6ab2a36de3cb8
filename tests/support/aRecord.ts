import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FileBytes } from '#core/exchange/readFolder.ts';
import { openRecord } from '#core/record/openRecord.ts';
import type { OpenRecord, ReadableRecord } from '#core/record/recordFile.ts';
import { type Day, day } from '#core/units/day.ts';
import { bringIn } from '#core/use-cases/bring-in/bringIn.ts';
import { layDownShop } from '#core/use-cases/newShop.ts';

export const MADE_AT = '2026-11-09T08:00:00.000Z';

/** A new shop in memory, or in the file given. */
export function aRecord(path = ':memory:'): OpenRecord {
  const record = openRecord(path, { create: true });
  layDownShop(record, MADE_AT, { isDemo: false });
  return record;
}

/** A CSV folder from its files' texts, as bytes. */
export const aFolder = (texts: Record<string, string | Uint8Array>): FileBytes[] =>
  Object.entries(texts).map(([name, text]) => ({
    name,
    bytes: typeof text === 'string' ? new TextEncoder().encode(text) : text,
  }));

export const filesOf = (folder: string): FileBytes[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.csv'))
    .map((name) => ({ name, bytes: readFileSync(join(folder, name)) }));

export const brought = (
  record: ReadableRecord,
  files: readonly FileBytes[],
  { asOf = day('2026-11-09') as Day, dryRun = false, madeAt = MADE_AT } = {},
) => bringIn(record, files, { madeAt, madeBy: 'test', what: 'record/bringIn' }, { asOf, dryRun });

/** Every row of every table, as text: equal before and after means that nothing was written. */
export function dump(record: Pick<ReadableRecord, 'sqlite'>, leaveOut: readonly string[] = []): string {
  const tables = record.sqlite
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' ORDER BY name")
    .pluck()
    .all() as string[];
  return tables
    .filter((table) => !leaveOut.includes(table))
    .map((table) => `${table}\n${JSON.stringify(record.sqlite.prepare(`SELECT * FROM "${table}"`).all())}`)
    .join('\n');
}
