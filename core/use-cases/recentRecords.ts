import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Context } from './context.ts';

const MOST = 8;
const fileOf = (context: Context): string => join(context.dataFolder, 'recent.json');

/** Whole paths of the records opened last, newest first; those no longer there are left out. */
export function recentRecords(context: Context): string[] {
  try {
    const list: unknown = JSON.parse(readFileSync(fileOf(context), 'utf8'));
    if (!Array.isArray(list)) return [];
    return list.filter((path): path is string => typeof path === 'string' && existsSync(path)).slice(0, MOST);
  } catch {
    return []; // no list yet, or one that cannot be read: it is only a convenience
  }
}

export function rememberRecord(context: Context, path: string): void {
  if (path === ':memory:') return;
  const recent = [path, ...recentRecords(context).filter((other) => other !== path)].slice(0, MOST);
  mkdirSync(context.dataFolder, { recursive: true });
  const file = fileOf(context);
  writeFileSync(`${file}.new`, JSON.stringify(recent));
  renameSync(`${file}.new`, file);
}
