import { join } from 'node:path';
import type { Handler } from '../../contract/operation.ts';
import type { recallNews, recallSeen } from '../../contract/recall.ts';
import { type DueFarm, recallList } from '../../recall/recallList.ts';
import type { RecallReason } from '../../recall/recallReasons.ts';
import { readAbout } from '../../record/aboutStore.ts';
import { readKeptFile, writeKeptFile } from '../../record/keptFile.ts';
import { faultOfSystem } from '../../record/recordFault.ts';
import { type Day, isDay } from '../../units/day.ts';
import { type Context, recordOf } from '../context.ts';
import { type ForecastsStanding, forecastsStanding } from '../forecastsStanding.ts';
import { machineNamesNow } from '../machineNamesNow.ts';
import { recallFacts } from './recallFacts.ts';

/** What stood on the list when it was last looked at on this computer, by record. */
type Seen = Record<string, { on: Day; due: string[] }>;

const fileOf = (context: Context): string => join(context.dataFolder, 'recall-seen.json');

/** What stands on the list that did not when it was last looked at. The first time nothing is news: it is only noted. */
export const recallNewsHandler: Handler<typeof recallNews, Context> = (context) => {
  const standing = forecastsStanding(context, true);
  if (standing.learning) return { since: null, became: [], toContact: 0, learning: true };
  const names = machineNamesNow(context);
  const { toContact } = toContactNow(context, standing);
  const seen = seenOf(context)[identityOf(context)];
  if (!seen) noteSeen(context, toContact);
  const before = new Set(seen?.due ?? keysOf(toContact));
  return {
    since: seen?.on ?? null,
    became: toContact.flatMap(({ farm, due }) =>
      due.flatMap(({ machine: { machineId }, reasons }) => {
        const reason = reasons.find(({ code }) => !before.has(keyOf(machineId, code)));
        const machine = names.get(machineId)?.name ?? '';
        return reason ? [{ machineId, machine, farm: farm.name, reason }] : [];
      }),
    ),
    toContact: toContact.length,
    learning: false,
  };
};

export const recallSeenHandler: Handler<typeof recallSeen, Context> = (context) => {
  const standing = forecastsStanding(context, true);
  if (standing.learning) return { seen: false };
  return { seen: noteSeen(context, toContactNow(context, standing).toContact) };
};

const toContactNow = (context: Context, { asOf, dues }: ForecastsStanding) => {
  const { farms, shop } = recallFacts(recordOf(context), asOf, dues());
  return recallList(farms, shop);
};

/** A machine is news again when it is due for another thing. */
const keyOf = (machineId: number, code: RecallReason['code']): string => `${machineId} ${code}`;
const keysOf = (farms: readonly DueFarm[]): string[] =>
  farms.flatMap(({ due }) =>
    due.flatMap(({ machine, reasons }) => reasons.map(({ code }) => keyOf(machine.machineId, code))),
  );

const identityOf = (context: Context): string => readAbout(recordOf(context))?.identity ?? '';

function seenOf(context: Context): Seen {
  const read = readKeptFile(fileOf(context));
  if (typeof read !== 'object' || read === null) return {};
  return Object.fromEntries(Object.entries(read).filter((entry): entry is [string, Seen[string]] => isSeen(entry[1])));
}

const isSeen = (value: unknown): value is Seen[string] => {
  const { on, due } = (value ?? {}) as Record<string, unknown>;
  return typeof on === 'string' && isDay(on) && Array.isArray(due) && due.every((key) => typeof key === 'string');
};

/** Only a convenience: where it cannot be written down, it is told again at the next start. */
function noteSeen(context: Context, toContact: readonly DueFarm[]): boolean {
  if (context.onlyLooks) return false;
  try {
    const seen = { on: context.today(), due: keysOf(toContact) };
    writeKeptFile(fileOf(context), { ...seenOf(context), [identityOf(context)]: seen });
    return true;
  } catch (thrown) {
    if (!faultOfSystem(thrown, fileOf(context))) throw thrown;
    return false;
  }
}
