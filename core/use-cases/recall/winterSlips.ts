import type { MadeSlips, WinterSlips } from '../../contract/recall.ts';
import type { Slip } from '../../contract/slip.ts';
import { zipOf } from '../../exchange/zipFiles.ts';
import { RefusedError } from '../../outcome.ts';
import { insertContact } from '../../record/contactStore.ts';
import { writeEntry, writePlain } from '../../record/entry.ts';
import type { ReadableRecord, WritableRecord } from '../../record/recordFile.ts';
import { insertSlip, nextSlipNumber } from '../../record/slipStore.ts';
import type { Day } from '../../units/day.ts';
import { type Context, recordOf } from '../context.ts';
import { keepForecasts, type StandingForecast, standingForecasts } from '../keepForecasts.ts';
import { learningKept, shopLearning } from '../learning/shopLearning.ts';
import { seriesAround } from '../seriesNow.ts';
import { nowOf } from '../shopNow.ts';
import { slipFileName } from '../slipMake.ts';
import { slipOfMachine } from '../slipOfMachine.ts';
import { ownersToReach } from './recallFacts.ts';

/** The facts of the slips, not yet numbered. */
type SlipsToMake = {
  slips: { slip: Slip; machineId: number; customerId: number; standing: StandingForecast[] }[];
  leftOut: number;
};

/** Whose slips are made: a farm that asked not to be contacted gets none, whoever asks; nor does a machine that is nobody's. @throws RefusedError */
export function ownersOfSlips(record: ReadableRecord, asOf: Day, machineIds: readonly number[]): Map<number, number> {
  const owners = ownersToReach(record, asOf);
  const asked = new Map([...new Set(machineIds)].flatMap((id) => (owners.has(id) ? [[id, owners.get(id)!]] : [])));
  if (asked.size === 0) throw new RefusedError({ code: 'no-slips-to-make', facts: { path: 'job.ask.machineIds' } });
  return asked;
}

/** Lays the slips out, machine by machine, with what the classes have taught so far. */
function slipsToMake(context: Context, machineIds: readonly number[], told: Told): SlipsToMake {
  const record = recordOf(context);
  const learning = learningKept(record) ?? shopLearning(context, context.today());
  const owners = ownersOfSlips(record, context.today(), machineIds);
  const slips = [...owners].map(([machineId, customerId], done) => {
    told('forecasting', done / owners.size);
    const now = nowOf(context, seriesAround(context, machineId), learning);
    const slip = slipOfMachine(record, now, machineId, context.today());
    return { slip, machineId, customerId, standing: standingForecasts(now, machineId) };
  });
  return { slips, leftOut: new Set(machineIds).size - slips.length };
}

type Told = (step: string, share: number) => void;

/** Slips made meanwhile by others take numbers: printed anew with later ones, at most so often. */
const MOST_TRIES = 3;

/**
 * Numbers, prints and keeps slips: all of them in one transaction after the last is printed, or none.
 * @param told how far it is; what it throws breaks the work off
 */
export async function makeWinterSlips(
  context: Context,
  { machineIds, noteAsSent, by }: WinterSlips,
  madeAt: string,
  told: Told,
): Promise<MadeSlips> {
  const record = recordOf(context);
  const asOf = context.today();
  const { printSlips } = await import('../../papers/printSlip.ts');
  const { slips, leftOut } = slipsToMake(context, machineIds, told);
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const numbers = numbersFrom(nextSlipNumber(record, asOf), slips.length);
    const numbered = slips.map(({ slip, ...of }, i) => ({ ...of, slip: { ...slip, number: numbers[i]! } }));
    const [first, ...others] = numbered.map(({ slip }) => slip) as [Slip, ...Slip[]];
    const { each, all } = await printSlips([first, ...others], (done) => told('printing', done / slips.length));
    told('writing', 0);
    const write = (w: WritableRecord, entryId: number | null): boolean => {
      if (nextSlipNumber(w, asOf) !== numbers[0]) return false;
      for (const { slip, machineId, customerId, standing } of numbered) {
        const row = { number: slip.number, machineId, customerId, madeOn: asOf, madeAt, madeBy: by, slip };
        const slipId = insertSlip(w, row);
        keepForecasts(w, standing, { why: 'slip', slipId }, madeAt);
        if (entryId !== null) insertContact(w, entryId, { ...sent(asOf), machineId, customerId, slipId });
      }
      return true;
    };
    if (nextSlipNumber(record, asOf) !== numbers[0]) continue;
    const entry = { madeAt, madeBy: by, what: 'slips/makeMany' };
    const kept = noteAsSent ? writeEntry(record, entry, write) : writePlain(record, (w) => write(w, null));
    if (!kept) continue;
    const files = numbered.map(({ slip }, i) => ({
      name: slipFileName(slip.number, slip.machine.name),
      bytes: each[i]!,
    }));
    return {
      ...{ count: slips.length, leftOut },
      pdfName: `forecast-slips-${numbers[0]}-to-${numbers.at(-1)}.pdf`,
      pdfBase64: Buffer.from(all).toString('base64'),
      zipName: `forecast-slips-${numbers[0]}-to-${numbers.at(-1)}.zip`,
      zipBase64: Buffer.from(zipOf(files)).toString('base64'),
    };
  }
  throw new RefusedError({ code: 'slip-numbers-taken' });
}

const sent = (madeOn: Day) => ({
  ...{ madeOn, way: 'slip' as const, saidBy: '', note: '' },
  ...{ answer: null, answerOn: null, callBackOn: null },
});

/** "2026-014" and those after it. */
function numbersFrom(first: string, count: number): string[] {
  const [year, number = ''] = first.split('-');
  return Array.from({ length: count }, (_, i) => `${year}-${String(Number(number) + i).padStart(3, '0')}`);
}
