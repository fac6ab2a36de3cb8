import type { Handler } from '../contract/operation.ts';
import type { recordBackUp } from '../contract/record.ts';
import { backUpNow } from './backUps.ts';
import type { Context } from './context.ts';

export const recordBackUpHandler: Handler<typeof recordBackUp, Context> = (context) => backUpNow(context);
