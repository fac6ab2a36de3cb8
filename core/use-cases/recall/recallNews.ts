import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import type { Handler } from '../../contract/operation.ts';
import type { recallNews, recallSeen } from '../../contract/recall.ts';
import { type DueFarm, farmsDue, inUrgency, standingAs } from '../../recall/recallList.ts';
import type { RecallReason } from '../../recall/recallReasons.ts';
import { readAbout } from '../../record/aboutStore.ts';
import { customersKnown } from '../../record/customerStore.ts';
import { recordRevision } from '../../record/entry.ts';
import { readKeptFile, writeKeptFile } from '../../record/keptFile.ts';
import { faultOfSystem } from '../../record/recordFault.ts';
import { type Day, isDay } from '../../units/day.ts';
import { type Context, recordOf } from '../context.ts';
import { forecastsInTurn } from '../forecastsStanding.ts';
import { namesOfSome } from '../machineNamesNow.ts';
import { farmsOn, ownersOn, recallGround } from './recallFacts.ts';

/** What stood on the list when it was last looked at on this computer, by record. */
type Seen = Record<string, { on: Day; due: string[] }>;

const fileOf = (context: Context): string => join(context.dataFolder, 'recall-seen.json');

/** What stands on the list that did not when it was last looked at. The first time nothing is news: it is only noted. */
export const recallNewsHandler: Handler<typeof recallNews, Context> = async (context) => {
  const toContact = await toContactNow(context);
  if (!toContact) return { since: null, became: [], toContact: 0, learning: true };
  const seen = seenOf(context)[identityOf(context)];
  if (!seen) noteSeen(context, toContact);
  const before = new Set(seen?.due ?? keysOf(toContact));
  const isNews = (machineId: number) => (reason: RecallReason) => !before.has(keyOf(machineId, reason.code));
  const became = inUrgency(
    toContact.filter(({ due }) => due.some(({ machine, reasons }) => reasons.some(isNews(machine.machineId)))),
  );
  const machines = became.flatMap(({ farm, due }) =>
    due.map(({ machine: { machineId }, reasons }) => ({ farm, machineId, reason: reasons.find(isNews(machineId)) })),
  );
  const names = namesOfSome(
    context,
    machines.map(({ machineId }) => machineId),
  );
  return {
    since: seen?.on ?? null,
    became: machines.flatMap(({ farm, machineId, reason }) =>
      reason ? [{ machineId, machine: names.get(machineId)?.name ?? '', farm: farm.name, reason }] : [],
    ),
    toContact: toContact.length,
    learning: false,
  };
};

export const recallSeenHandler: Handler<typeof recallSeen, Context> = async (context) => {
  const toContact = await toContactNow(context);
  return { seen: toContact !== null && noteSeen(context, toContact) };
};

/** So many machines are looked through before whoever asks something else has their turn. */
const AT_ONCE = 300;

/**
 * Farms to be contacted, in no order. A large shop is gone through a part at a time, others being answered between.
 * @returns null: figures are not what they will be, or something was entered meanwhile; to be asked again
 */
async function toContactNow(context: Context): Promise<DueFarm[] | null> {
  const record = recordOf(context);
  const revision = recordRevision(record);
  const { asOf, learning, dues } = await forecastsInTurn(context, true);
  if (learning) return null;
  const step = async <T>(work: () => T): Promise<T> => {
    await setImmediate();
    if (context.record !== record || recordRevision(record) !== revision) throw new EnteredMeanwhile();
    return work();
  };
  try {
    const known = await step(() => customersKnown(record));
    const owners = await step(() => ownersOn(record, asOf, known));
    const ground = await step(() => recallGround(record, asOf, known, owners));
    const found: DueFarm[] = [];
    for (const machineIds of byWholeFarms(owners))
      found.push(
        ...(await step(() => standingAs('to-contact', farmsDue(farmsOn(ground, dues(machineIds)).farms, ground.shop)))),
      );
    return found;
  } catch (thrown) {
    if (thrown instanceof EnteredMeanwhile) return null;
    throw thrown;
  }
}

class EnteredMeanwhile extends Error {}

/** Machines part by part, all of a farm's in one. */
function* byWholeFarms(owners: ReadonlyMap<number, number>): Generator<number[]> {
  let part: number[] = [];
  for (const its of Map.groupBy(owners.keys(), (machineId) => owners.get(machineId)).values()) {
    part.push(...its);
    if (part.length < AT_ONCE) continue;
    yield part;
    part = [];
  }
  yield part;
}

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
