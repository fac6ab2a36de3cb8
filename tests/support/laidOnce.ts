import { randomUUID } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import Database from 'better-sqlite3';
import { recordOpen, recordStartEmpty } from '#core/contract/record.ts';
import type { Program } from './aProgram.ts';

/** Records laid down in this process, as they then were, and what was told of them. */
const laid = new Map<string, { image: Buffer; told: unknown }>();

/**
 * Lays a record down the first time it is asked for; every later program of the same day gets a copy of that one, at a
 * tenth of the work: a new record runs every migration there ever was.
 *
 * @param lay asks the program, which has no record open yet; what it gives back is plain
 */
export async function laidOnce<T>(program: Program, name: string, lay: () => Promise<T>): Promise<T> {
  const { context } = program;
  const ofDay = `${name} ${context.today()}`;
  const before = laid.get(ofDay);
  if (before && context.record === null) {
    layCopy(before.image, context.defaultRecordPath);
    await program.ask(recordOpen, { path: context.defaultRecordPath });
    return structuredClone(before.told) as T;
  }
  const told = await lay();
  if (context.record) laid.set(ofDay, { image: context.record.sqlite.serialize(), told });
  return told;
}

/** A record of its own, not a backup of the first. */
function layCopy(image: Buffer, path: string): void {
  writeFileSync(path, image);
  const file = new Database(path);
  file.pragma('synchronous = OFF');
  file.prepare('UPDATE record_about SET identity = ?').run(randomUUID());
  file.close();
}

/** A new shop with nothing in it. */
export const anEmptyShop = (program: Program): Promise<void> =>
  laidOnce(program, 'an empty shop', async () => {
    await program.ask(recordStartEmpty, {});
  });
