import type { Handler } from '../contract/operation.ts';
import type { recordBackUp } from '../contract/record.ts';
import { backUpNow } from './backUps.ts';
import type { Context } from './context.ts';

export const recordBackUpHandler: Handler<typeof recordBackUp, Context> = async (context) => {
  const { notAlso, ...backup } = await backUpNow(context);
  return { ...backup, notAlso: notAlso && { code: notAlso.code, facts: notAlso.facts ?? {} } };
};
