import { existsSync } from 'node:fs';
import { isAbsolute } from 'node:path';
import type { Handler } from '../contract/operation.ts';
import type { recordStartEmpty } from '../contract/record.ts';
import { RefusedError } from '../outcome.ts';
import { layDownWhole } from '../record/folderOnDisk.ts';
import { openRecord, RECORD_EXTENSION } from '../record/openRecord.ts';
import { refuseField } from './asked.ts';
import { type Context, openInto } from './context.ts';
import { layDownShop } from './newShop.ts';
import { rememberRecord } from './recentRecords.ts';
import { stateOf } from './recordState.ts';

/** Lays down a new shop in a file of its own; a file that is there already is never written over. */
export const recordStartEmptyHandler: Handler<typeof recordStartEmpty, Context> = (context, { path }) => {
  if (path !== undefined && !isAbsolute(path)) refuseField('path', 'a whole path');
  if (path !== undefined && existsSync(path))
    throw new RefusedError({ code: 'file-is-there', facts: { path: 'path', file: path } });
  startEmpty(context, path ?? freePath(context.defaultRecordPath));
  return stateOf(context);
};

/** Laid down under a passing name: a program that ends half way leaves no half-laid record. */
export function startEmpty(context: Context, path: string): void {
  layDownWhole(path, (passing) => {
    const record = openRecord(passing, { create: true });
    try {
      layDownShop(record, context.now(), { isDemo: false });
    } finally {
      record.close();
    }
  });
  openInto(context, path);
  rememberRecord(context, path);
}

/** The default place, or the next one beside it that is free: "workshop 2". */
export function freePath(wanted: string): string {
  const stem = wanted.endsWith(RECORD_EXTENSION) ? wanted.slice(0, -RECORD_EXTENSION.length) : wanted;
  let path = wanted;
  for (let number = 2; existsSync(path); number++) path = `${stem} ${number}${RECORD_EXTENSION}`;
  return path;
}
