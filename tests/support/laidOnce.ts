import { randomUUID } from 'node:crypto';
import { existsSync, writeFileSync } from 'node:fs';
import Database from 'better-sqlite3';
import { recordOpen, recordStartEmpty } from '#core/contract/record.ts';
import type { Program } from './aProgram.ts';
import { forecastCoarsely } from './coarseForecasts.ts';

/** A program without a record: where it would lay one down, its day, and how it is told to open one. */
export type Beginning = { recordPath: string; today: string; open(path: string): Promise<unknown> };

/** Records laid down in this process, as they then were, and what was told of them. */
const laid = new Map<string, { image: Buffer; told: unknown }>();

/**
 * Lays a record down the first time it is asked for; every later program of the same day gets a copy of that one, at a
 * tenth of the work: a new record runs every migration there ever was.
 *
 * @param lay asks the program for it; what it gives back is plain
 */
export async function laidOnce<T>(
  { recordPath, today, open }: Beginning,
  name: string,
  lay: () => Promise<T>,
): Promise<T> {
  const ofDay = `${name} ${today}`;
  const before = laid.get(ofDay);
  if (before && !existsSync(recordPath)) {
    layCopy(before.image, recordPath);
    await open(recordPath);
    return structuredClone(before.told) as T;
  }
  const told = await lay();
  laid.set(ofDay, { image: imageOf(recordPath), told });
  return told;
}

/** What was committed to it, by a way of its own into the file. */
function imageOf(recordPath: string): Buffer {
  const file = new Database(recordPath, { readonly: true });
  try {
    return file.serialize();
  } finally {
    file.close();
  }
}

/** A record of its own, not a backup of the first. */
function layCopy(image: Buffer, path: string): void {
  writeFileSync(path, image);
  const file = new Database(path);
  file.pragma('synchronous = OFF');
  file.prepare('UPDATE record_about SET identity = ?').run(randomUUID());
  file.close();
}

export const beginningOf = ({ ask, context }: Program): Beginning => ({
  recordPath: context.defaultRecordPath,
  today: context.today(),
  open: (path) => ask(recordOpen, { path }),
});

/** A new shop with nothing in it. */
export const anEmptyShop = (program: Program): Promise<void> =>
  laidOnce(beginningOf(program), 'an empty shop', async () => {
    await program.ask(recordStartEmpty, {});
    forecastCoarsely(program.context.record!);
  });
