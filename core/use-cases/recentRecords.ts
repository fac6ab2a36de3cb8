import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { readKeptFile, writeKeptFile } from '../record/keptFile.ts';
import { faultOfSystem } from '../record/recordFault.ts';
import type { Context } from './context.ts';

const MOST = 8;
const fileOf = (context: Context): string => join(context.dataFolder, 'recent.json');

/** Whole paths of the records opened last, newest first; those no longer there are left out. */
export function recentRecords(context: Context): string[] {
  const list = readKeptFile(fileOf(context));
  if (!Array.isArray(list)) return [];
  return list.filter((path): path is string => typeof path === 'string' && existsSync(path)).slice(0, MOST);
}

/** It is only a convenience: a list that cannot be written keeps nobody from the record. */
export function rememberRecord(context: Context, path: string): void {
  if (path === ':memory:') return;
  const recent = [path, ...recentRecords(context).filter((other) => other !== path)].slice(0, MOST);
  try {
    writeKeptFile(fileOf(context), recent);
  } catch (thrown) {
    if (!faultOfSystem(thrown, path)) throw thrown;
  }
}
