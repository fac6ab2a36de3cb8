import type { Handler } from '../contract/operation.ts';
import type { recordBackups } from '../contract/record.ts';
import { listBackups } from './backupFolders.ts';
import type { Context } from './context.ts';

export const recordBackupsHandler: Handler<typeof recordBackups, Context> = (context) => listBackups(context);
