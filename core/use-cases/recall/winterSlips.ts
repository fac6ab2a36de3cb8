import type { MadeSlips, WinterSlips } from '../../contract/recall.ts';
import type { Slip } from '../../contract/slip.ts';
import { zipOf } from '../../exchange/zipFiles.ts';
import { RefusedError } from '../../outcome.ts';
import { printSlips } from '../../papers/printSlip.ts';
import { insertContact } from '../../record/contactStore.ts';
import { writeEntry, writePlain } from '../../record/entry.ts';
import type { ReadableRecord, WritableRecord } from '../../record/recordFile.ts';
import { insertSlip, nextSlipNumber } from '../../record/slipStore.ts';
import type { Day } from '../../units/day.ts';
import { type Context, recordOf } from '../context.ts';
import { keepForecasts, type StandingForecast, standingForecasts } from '../keepForecasts.ts';
import { shopNow } from '../shopNow.ts';
import { slipFileName } from '../slipMake.ts';
import { slipOfMachine } from '../slipOfMachine.ts';
import { recallFacts } from './recallFacts.ts';

/** The facts of the slips, not yet numbered. */
export type SlipsToMake = {
  slips: { slip: Slip; machineId: number; customerId: number; standing: StandingForecast[] }[];
  leftOut: number;
  noteAsSent: boolean;
  by: string;
};

/** A farm that asked not to be contacted gets none, whoever asks; nor does a machine that is nobody's. @throws RefusedError */
export function slipsToMake(context: Context, { machineIds, noteAsSent, by }: WinterSlips): SlipsToMake {
  const record = recordOf(context);
  const now = shopNow(context);
  const { farms } = recallFacts(record, now);
  const ownerOf = new Map(
    farms
      .filter(({ terms }) => !terms.noContact)
      .flatMap(({ customerId, machines }) => machines.map(({ machineId }) => [machineId, customerId] as const)),
  );
  const asked = [...new Set(machineIds)];
  const slips = asked.flatMap((machineId) => {
    const slip = slipOfMachine(record, now, machineId, context.today());
    const customerId = ownerOf.get(machineId);
    const standing = standingForecasts(now, machineId);
    return customerId === undefined ? [] : [{ slip, machineId, customerId, standing }];
  });
  if (slips.length === 0) throw new RefusedError({ code: 'no-slips-to-make', facts: { path: 'job.ask.machineIds' } });
  return { slips, leftOut: asked.length - slips.length, noteAsSent, by };
}

/** Slips made meanwhile by others take numbers: printed anew with later ones, at most so often. */
const MOST_TRIES = 3;

/**
 * Numbers, prints and keeps slips: all of them in one transaction after the last is printed, or none.
 * @param told how far it is; what it throws breaks the work off
 */
export async function makeWinterSlips(
  record: ReadableRecord,
  { slips, leftOut, noteAsSent, by }: SlipsToMake,
  { asOf, madeAt }: { asOf: Day; madeAt: string },
  told: (step: string, share: number) => void,
): Promise<MadeSlips> {
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
