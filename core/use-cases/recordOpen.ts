import { isAbsolute } from 'node:path';
import type { Handler } from '../contract/operation.ts';
import type { recordOpen } from '../contract/record.ts';
import { refuseField } from './asked.ts';
import { type Context, openInto } from './context.ts';
import { rememberRecord } from './recentRecords.ts';
import { stateOf } from './recordState.ts';

export const recordOpenHandler: Handler<typeof recordOpen, Context> = (context, { path }) => {
  if (!isAbsolute(path)) refuseField('path', 'a whole path');
  openInto(context, path);
  rememberRecord(context, path);
  return stateOf(context);
};
