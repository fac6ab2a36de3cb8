import type { z } from 'zod';
import type { Contact, zQuiet } from '../../contract/recall.ts';
import type { RecallFarm } from '../../recall/recallList.ts';
import type { RecallMachine, RecallShop, RecallTerms } from '../../recall/recallMachine.ts';
import { type AgreedVisit, visitsEverAgreed } from '../../record/calendarStore.ts';
import {
  type ContactRow,
  leadDaysOf,
  listContacts,
  listQuietPeriods,
  listTerms,
  type TermsRow,
} from '../../record/contactStore.ts';
import {
  type CustomerOnRecord,
  type CustomersKnown,
  customersKnown,
  ownedStretches,
} from '../../record/customerStore.ts';
import { entriesOfFindings } from '../../record/findingStore.ts';
import { machineNames } from '../../record/machineStore.ts';
import type { ReadableRecord } from '../../record/recordFile.ts';
import { readSettings } from '../../record/settingsStore.ts';
import { slipNumbers } from '../../record/slipStore.ts';
import { type Winter, type WinterOfYear, wintersFrom } from '../../shop/winter.ts';
import { addDays, type Day, day } from '../../units/day.ts';
import type { Due } from './dueOf.ts';

/** A farm as the rules see it, with who it is. */
export type FarmOnRecord = RecallFarm & {
  customer: CustomerOnRecord;
  words: TermsRow | null;
  quiet: z.input<typeof zQuiet>[];
};

export type RecallFacts = {
  shop: RecallShop & { winterOfYear: WinterOfYear; winters: readonly Winter[] };
  farms: FarmOnRecord[];
  /** machines that are nobody's on record, or whose owner was erased */
  nobodys: readonly RecallMachine[];
};

/**
 * Everything the recall list is made from, as of a day.
 * @param dues what each machine's owner is called for; a machine that is not among them is not looked at
 */
export function recallFacts(record: ReadableRecord, asOf: Day, dues: ReadonlyMap<number, Due>): RecallFacts {
  const known = customersKnown(record);
  const ground = recallGround(record, asOf, known, ownersOn(record, asOf, known));
  return { shop: ground.shop, ...farmsOn(ground, dues) };
}

/** What the recall list is made from beside what machines are due for. */
export type RecallGround = ReturnType<typeof recallGround>;

/** @param owners whose each machine is, by machine */
export function recallGround(
  record: ReadableRecord,
  asOf: Day,
  known: CustomersKnown,
  owners: ReadonlyMap<number, number>,
) {
  const winterOfYear = readSettings(record);
  const shop = { asOf, leadDays: leadDaysOf(record), winterOfYear, winters: wintersFrom(winterOfYear, asOf, 2) };
  const contacts = listContacts(record).filter(({ struck, madeOn }) => !struck && madeOn <= asOf);
  const byCustomer = <T extends { customerId: number }>(rows: readonly T[]) =>
    Map.groupBy(rows, ({ customerId }) => known.survivorOf(customerId));
  return {
    ...{ shop, known, owners },
    contacts: byCustomer(contacts),
    terms: byCustomer(listTerms(record)),
    quiet: byCustomer(listQuietPeriods(record)),
    /** when a finding was entered, by finding */
    entered: entriesOfFindings(record),
    visits: Map.groupBy(visitsEverAgreed(record), ({ machineId }) => machineId),
  };
}

/** Farms with their machines, and the machines that are nobody's: all of a farm's, where all of them are among the dues. */
export function farmsOn(
  { shop, known, owners, contacts, terms, quiet, entered, visits }: RecallGround,
  dues: ReadonlyMap<number, Due>,
): Pick<RecallFacts, 'farms' | 'nobodys'> {
  const machines = [...dues].map(([machineId, due]) => {
    const customerId = owners.get(machineId) ?? null;
    const its = {
      contacts: customerId === null ? [] : (contacts.get(customerId) ?? []),
      visits: visits.get(machineId) ?? [],
    };
    return { customerId, machine: recallMachine(machineId, due, shop.asOf, entered, its) };
  });
  const byOwner = Map.groupBy(machines, ({ customerId }) => customerId);
  const nobodys = (byOwner.get(null) ?? []).map(({ machine }) => machine);
  const farms: FarmOnRecord[] = [];
  for (const [customerId, its] of byOwner) {
    if (customerId === null) continue;
    const customer = known.of(customerId);
    const theirs = its.map(({ machine }) => machine);
    if (!customer || customer.erased) nobodys.push(...theirs);
    else
      farms.push({
        ...farmOf(customer, terms.get(customerId) ?? [], quiet.get(customerId) ?? []),
        machines: theirs,
      });
  }
  return { farms, nobodys };
}

function farmOf(
  customer: CustomerOnRecord,
  terms: readonly TermsRow[],
  quiet: ReturnType<typeof listQuietPeriods>,
): Omit<FarmOnRecord, 'machines'> {
  const words = termsOf(terms);
  return {
    customerId: customer.id,
    name: customer.name,
    customer,
    words,
    quiet: quiet.map(({ id, customerId: _, ...period }) => ({ quietId: id, ...period })),
    terms: recallTerms(words, quiet),
  };
}

/** Of rows of one person that were merged: whoever asked once not to be contacted is not; the rest as said last. */
const termsOf = (rows: readonly TermsRow[]): TermsRow | null => {
  const last = rows.at(-1);
  return last ? { ...last, noContact: rows.some(({ noContact }) => noContact) } : null;
};

const recallTerms = (words: TermsRow | null, quiet: readonly { fromOn: Day; toOn: Day }[]): RecallTerms => ({
  noContact: words?.noContact ?? false,
  distanceKm: words?.distanceKm ?? null,
  seasonTo: words?.seasonTo ?? null,
  quiet,
});

/** Whose each machine is on a day: the customer they go by now. */
export function ownersOn(record: ReadableRecord, asOf: Day, known = customersKnown(record)): Map<number, number> {
  const owners = new Map<number, number>();
  for (const { machineId, customerId, fromOn } of ownedStretches(record))
    if (fromOn === null || fromOn <= asOf) owners.set(machineId, known.survivorOf(customerId));
  return owners;
}

/** Whom slips of machines may be sent to today, by machine: none of those who asked not to be contacted. */
export function ownersToReach(record: ReadableRecord, asOf: Day): Map<number, number> {
  const known = customersKnown(record);
  const asked = listTerms(record).filter(({ noContact }) => noContact);
  const left = new Set(asked.map(({ customerId }) => known.survivorOf(customerId)));
  const mayBe = (customerId: number): boolean => known.of(customerId)?.erased === false && !left.has(customerId);
  return new Map([...ownersOn(record, asOf, known)].filter(([, customerId]) => mayBe(customerId)));
}

/** What is to be kept to in reaching one customer. */
export function reachOf(record: ReadableRecord, customer: CustomerOnRecord): Omit<FarmOnRecord, 'machines'> {
  const known = customersKnown(record);
  const theirs = <T extends { customerId: number }>(rows: readonly T[]) =>
    rows.filter(({ customerId }) => known.survivorOf(customerId) === customer.id);
  return farmOf(customer, theirs(listTerms(record)), theirs(listQuietPeriods(record)));
}

function recallMachine(
  machineId: number,
  { safetyFindings, deciding, hoursReadOn, hasMeter }: Due,
  asOf: Day,
  /** by finding */
  entered: ReadonlyMap<number, number>,
  its: { contacts: readonly ContactRow[]; visits: readonly AgreedVisit[] },
): RecallMachine {
  return {
    ...{ machineId, deciding, hoursReadOn, hasMeter },
    safetyFindings: safetyFindings.map(({ findingId, takenOn, severity }) => ({
      foundOn: day(takenOn),
      doNotUse: severity === 'do-not-use',
      entered: entered.get(findingId) ?? 0,
    })),
    visitTo: its.visits.flatMap((visit) => lastDayOf(visit) ?? []).findLast((on) => on >= asOf) ?? null,
    contacts: its.contacts.filter((contact) => contact.machineId === null || contact.machineId === machineId),
  };
}

/** The Sunday of its last week; null: it holds no more. */
function lastDayOf({ holds, weeks }: AgreedVisit): Day | null {
  const last = weeks.at(-1);
  return holds && last ? addDays(last.weekFrom, 6) : null;
}

/** Contacts as screens show them. */
export function contactSheets(record: ReadableRecord, rows: readonly ContactRow[]): Contact[] {
  const names = machineNames(record);
  const numbers = slipNumbers(record);
  return rows.map(({ id, struck: _, entered: __, slipId, machineId, ...row }) => ({
    contactId: id,
    machineId,
    machine: machineId === null ? '' : (names.get(machineId) ?? ''),
    slipNumber: slipId === null ? null : (numbers.get(slipId) ?? null),
    ...row,
  }));
}

/** Who a farm is, as screens show it. */
export function farmSheet({ customer, words, quiet }: Pick<FarmOnRecord, 'customer' | 'words' | 'quiet'>) {
  const { id, name, place, phone, email } = customer;
  const { noContact = false, distanceKm = null, driveMinutes = null, seasonTo = null } = words ?? {};
  const terms = { noContact, words: words?.words ?? '', distanceKm, driveMinutes, seasonTo };
  return { customerId: id, name, place, phone, email, terms, quiet };
}
