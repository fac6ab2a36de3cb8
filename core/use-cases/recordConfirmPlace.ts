import type { Handler } from '../contract/operation.ts';
import type { recordConfirmPlace } from '../contract/record.ts';
import { type Context, recordOf } from './context.ts';
import { stateOf } from './recordState.ts';
import { confirmPlace } from './recordWarnings.ts';

/** A person's word on the folder of the record, kept for that folder on this computer. */
export const recordConfirmPlaceHandler: Handler<typeof recordConfirmPlace, Context> = (context, { synced }) => {
  confirmPlace(context, recordOf(context).path, synced);
  return stateOf(context);
};
