import { RefusedError } from '../outcome.ts';
import { stripDownsSince } from '../record/stripDownStore.ts';
import type { Day } from '../units/day.ts';
import { type Context, recordOf } from './context.ts';

type Sheet = {
  machineId: number;
  takenOn: string;
  afterStripDownId?: number | null | undefined;
  /** a second one of that day is meant */
  anotherSure: boolean;
};

/** A sheet left open in another window would go in a second time. @throws RefusedError measured-meanwhile */
export function refuseSavedMeanwhile(
  context: Context,
  { machineId, takenOn, afterStripDownId, anotherSure }: Sheet,
): void {
  if (afterStripDownId === undefined || anotherSure) return;
  const of = { machineId, takenOn: takenOn as Day, afterStripDownId: afterStripDownId ?? 0 };
  const [first] = stripDownsSince(recordOf(context), of);
  if (!first) return;
  const { id: stripDownId, fitter, madeAt } = first;
  throw new RefusedError({ code: 'measured-meanwhile', facts: { stripDownId, takenOn, fitter, madeAt } });
}
