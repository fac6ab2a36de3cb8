import type { Handler } from '../../contract/operation.ts';
import type { PhoneMachine, phoneFind, phoneRead } from '../../contract/recall.ts';
import { letterFacts } from '../../papers/letters/letterFacts.ts';
import { spokenAnswer } from '../../papers/letters/spokenAnswer.ts';
import { listContacts } from '../../record/contactStore.ts';
import { customersKnown } from '../../record/customerStore.ts';
import { listMachines } from '../../record/machineStore.ts';
import { listRebuilds } from '../../record/rebuildStore.ts';
import type { ReadableRecord } from '../../record/recordFile.ts';
import { listSlips } from '../../record/slipStore.ts';
import { stripDownsOf } from '../../record/stripDownStore.ts';
import type { Day } from '../../units/day.ts';
import { openFindings } from '../../way/openFindings.ts';
import { type Context, recordOf } from '../context.ts';
import { customerOrRefuse } from '../customerOrRefuse.ts';
import { findingSheet } from '../findingSheet.ts';
import { machineNamesNow } from '../machineNamesNow.ts';
import { shopAround } from '../shopNow.ts';
import { slipOfMachine } from '../slipOfMachine.ts';
import { comeInBy } from './dueOf.ts';
import { contactSheets, farmSheet, ownersOn, reachOf } from './recallFacts.ts';

const MOST_FOUND = 12;

/** Found by any part of what a caller may say, letters in whatever case; of a telephone number its figures alone. */
export const phoneFindHandler: Handler<typeof phoneFind, Context> = (context, { text }) => {
  const sought = text.trim().toLowerCase();
  if (sought === '') return { farms: [], more: 0 };
  const record = recordOf(context);
  const found = callers(record, context.today()).filter((caller) => isMeant(caller, sought));
  const farms = found.slice(0, MOST_FOUND).map(({ numbers: _, ...farm }) => farm);
  return { farms, more: found.length - farms.length };
};

type Caller = ReturnType<typeof callers>[number];

function isMeant({ name, place, phone, machines, numbers }: Caller, sought: string): boolean {
  const figures = sought.replace(/\D/g, '');
  const texts = [name, place, ...machines.flatMap((machine) => [machine.name, machine.serial]), ...numbers];
  return (
    texts.some((one) => one.toLowerCase().includes(sought)) ||
    (figures.length >= 3 && /^[\d\s()+/-]+$/.test(sought) && phone.replace(/\D/g, '').includes(figures))
  );
}

/** Every customer, with the machines that are theirs now and the numbers of their slips and jobs. */
function callers(record: ReadableRecord, asOf: Day) {
  const known = customersKnown(record);
  const owner = ownersOn(record, asOf, known);
  const machines = Map.groupBy(listMachines(record), ({ id }) => owner.get(id));
  const papers = [...listSlips(record), ...listRebuilds(record)];
  const numbers = Map.groupBy(papers, ({ machineId }) => owner.get(machineId));
  return [...known.own.values()]
    .filter(({ id, erased }) => known.survivorOf(id) === id && !erased)
    .sort((a, b) => a.name.localeCompare(b.name, 'en') || a.id - b.id)
    .map(({ id, name, place, phone }) => ({
      ...{ customerId: id, name, place, phone },
      machines: (machines.get(id) ?? []).map((one) => ({ machineId: one.id, name: one.name, serial: one.serial })),
      numbers: (numbers.get(id) ?? []).map(({ number }) => number),
    }));
}

/** A farm that asked not to be contacted is answered when it rings. */
export const phoneReadHandler: Handler<typeof phoneRead, Context> = (context, { customerId }) => {
  const record = recordOf(context);
  const customer = customerOrRefuse(record, customerId);
  const asOf = context.today();
  const known = customersKnown(record);
  const owner = ownersOn(record, asOf, known);
  const theirs = [...machineNamesNow(context).keys()].filter((machineId) => owner.get(machineId) === customerId);
  const rows = listContacts(record).filter((row) => !row.struck && known.survivorOf(row.customerId) === customerId);
  return {
    asOf,
    farm: farmSheet(reachOf(record, customer)),
    machines: theirs.map((machineId) => phoneMachine(context, record, machineId)),
    contacts: contactSheets(record, rows).reverse(),
  };
};

function phoneMachine(context: Context, record: ReadableRecord, machineId: number): PhoneMachine {
  const now = shopAround(context, machineId);
  const slip = slipOfMachine(record, now, machineId, context.today());
  const findings = openFindings(now.shop.life, now.asOf).ofMachine(machineId);
  return {
    machineId,
    name: slip.machine.name,
    makeModel: slip.machine.makeModel,
    serial: slip.machine.serial,
    spoken: spokenAnswer(letterFacts(slip)),
    comeInBy: comeInBy(now.shop, machineId, now.ofMachine(machineId).points),
    openFindings: findings.map((finding) => findingSheet(finding, now.shop.life)) as PhoneMachine['openFindings'],
    visits: visitsOf(record, machineId),
  };
}

/** Newest first, booked ones before all. */
function visitsOf(record: ReadableRecord, machineId: number): PhoneMachine['visits'] {
  const stripDowns = stripDownsOf(record, machineId).map(({ takenOn, fitter }) => ({
    ...{ on: takenOn, kind: 'strip-down' as const, text: fitter },
  }));
  const jobs = listRebuilds(record)
    .filter((job) => job.machineId === machineId)
    .map(({ takenInOn, number }) => ({ on: takenInOn, kind: 'job' as const, text: number }));
  const booked = listContacts(record)
    .filter((row) => row.machineId === machineId && !row.struck && row.answer === 'booked')
    .flatMap(({ answerOn, note }) =>
      answerOn === null ? [] : [{ on: answerOn, kind: 'booked' as const, text: note }],
    );
  return [...stripDowns, ...jobs, ...booked].sort((a, b) => (a.on < b.on ? 1 : a.on > b.on ? -1 : 0));
}
