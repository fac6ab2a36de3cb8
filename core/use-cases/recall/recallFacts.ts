import type { z } from 'zod';
import type { PointForecast } from '../../contract/forecast.ts';
import type { ComeInBy, Contact, zQuiet } from '../../contract/recall.ts';
import { lastRead } from '../../reading/machineHours.ts';
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
import { type CustomerOnRecord, customersKnown, ownedStretches } from '../../record/customerStore.ts';
import { entriesOfFindings } from '../../record/findingStore.ts';
import { machineNames } from '../../record/machineStore.ts';
import type { ReadableRecord } from '../../record/recordFile.ts';
import { slipNumbers } from '../../record/slipStore.ts';
import type { Finding } from '../../shop/finding.ts';
import { hoursSourceOn } from '../../shop/machineLife.ts';
import type { MachineOnRecord } from '../../shop/shopLife.ts';
import { type Winter, type WinterOfYear, wintersFrom } from '../../shop/winter.ts';
import { addDays, type Day, day } from '../../units/day.ts';
import { dialGoneBy } from '../../way/dialGoneBy.ts';
import { isStop, openFindings } from '../../way/openFindings.ts';
import { bySoonest } from '../machineLine.ts';
import type { ShopNow } from '../shopNow.ts';

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

/** Everything the recall list is made from, as of the day of the shop. */
export function recallFacts(record: ReadableRecord, now: ShopNow): RecallFacts {
  const winterOfYear = now.shop.life;
  const shop = {
    ...{ asOf: now.asOf, leadDays: leadDaysOf(record), winterOfYear },
    winters: wintersFrom(winterOfYear, now.asOf, 2),
  };
  const known = customersKnown(record);
  const owners = ownersOn(record, now.asOf, known);
  const contacts = listContacts(record).filter(({ struck, madeOn }) => !struck && madeOn <= now.asOf);
  const contactsOf = Map.groupBy(contacts, ({ customerId }) => known.survivorOf(customerId));
  const entered = entriesOfFindings(record);
  const safety = safetyFindings(now);
  const visits = Map.groupBy(visitsEverAgreed(record), ({ machineId }) => machineId);
  const machines = now.shop.life.machines.map((machine) => {
    const customerId = owners.get(machine.machineId) ?? null;
    const its = customerId === null ? [] : (contactsOf.get(customerId) ?? []);
    return {
      customerId,
      machine: recallMachine(now, machine, {
        contacts: its,
        visits: visits.get(machine.machineId) ?? [],
        safety,
        entered,
      }),
    };
  });
  const byOwner = Map.groupBy(machines, ({ customerId }) => customerId);
  const terms = listTerms(record);
  const quiet = listQuietPeriods(record);
  const nobodys = (byOwner.get(null) ?? []).map(({ machine }) => machine);
  const farms: FarmOnRecord[] = [];
  for (const [customerId, its] of byOwner) {
    if (customerId === null) continue;
    const customer = known.of(customerId);
    const theirs = its.map(({ machine }) => machine);
    if (!customer || customer.erased) nobodys.push(...theirs);
    else {
      const ofThem = <T extends { customerId: number }>(rows: readonly T[]) =>
        rows.filter((row) => known.survivorOf(row.customerId) === customerId);
      farms.push({ ...farmOf(customer, ofThem(terms), ofThem(quiet)), machines: theirs });
    }
  }
  return { shop, farms, nobodys };
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

/** What is to be kept to in reaching one customer. */
export function reachOf(record: ReadableRecord, customer: CustomerOnRecord): Omit<FarmOnRecord, 'machines'> {
  const known = customersKnown(record);
  const theirs = <T extends { customerId: number }>(rows: readonly T[]) =>
    rows.filter(({ customerId }) => known.survivorOf(customerId) === customer.id);
  return farmOf(customer, theirs(listTerms(record)), theirs(listQuietPeriods(record)));
}

function recallMachine(
  now: ShopNow,
  machine: MachineOnRecord,
  its: {
    contacts: readonly ContactRow[];
    visits: readonly AgreedVisit[];
    safety: (machineId: number) => readonly Finding[];
    /** by finding */
    entered: ReadonlyMap<number, number>;
  },
): RecallMachine {
  const { machineId } = machine;
  const { points } = now.ofMachine(machineId);
  const first = firstByHours(points);
  const source = hoursSourceOn(machine.hoursSources ?? [], now.asOf);
  return {
    machineId,
    safetyFindings: its.safety(machineId).map((finding) => ({
      foundOn: finding.takenOn,
      doNotUse: isStop(finding),
      entered: its.entered.get(finding.id) ?? 0,
    })),
    deciding:
      first?.decidingHoursLeft == null
        ? null
        : { hoursLeft: first.decidingHoursLeft, on: dayOrNull(first.dateAtLimit[first.decides]) },
    hoursReadOn: lastToldOn(now, machine),
    hasMeter: source?.kind !== 'yearly',
    visitTo: its.visits.flatMap((visit) => lastDayOf(visit) ?? []).findLast((on) => on >= now.asOf) ?? null,
    contacts: its.contacts.filter((contact) => contact.machineId === null || contact.machineId === machineId),
  };
}

/** When its meter was last read, or that it goes by; where nobody ever read one, when its hours were last told some other way. */
function lastToldOn({ shop, asOf }: ShopNow, { machineId, dialEvents }: MachineOnRecord): Day | null {
  const machine = shop.hours.ofMachine(machineId);
  const read = machine && (dialGoneBy(shop.hours, machine, asOf)?.readOn ?? lastRead(machine.line)?.takenOn);
  return read ?? dialEvents.findLast(({ kind, parked }) => kind === 'estimate' && !parked)?.takenOn ?? null;
}

/** The Sunday of its last week; null: it holds no more. */
function lastDayOf({ holds, weeks }: AgreedVisit): Day | null {
  const last = weeks.at(-1);
  return holds && last ? addDays(last.weekFrom, 6) : null;
}

const dayOrNull = (text: string | null): Day | null => (text === null ? null : day(text));

/** The part its machine is called in by. */
export const firstByHours = (points: readonly PointForecast[]): PointForecast | undefined =>
  points.filter((point) => point.decidingHoursLeft !== null).sort(bySoonest)[0];

/** Open findings that forbid use, or stand where a machine tows or lifts; one on a whole assembly does if anything of it does. */
export function safetyFindings({ shop, asOf }: ShopNow): (machineId: number) => readonly Finding[] {
  const open = openFindings(shop.life, asOf);
  const tows = shop.life.points.filter(({ safety }) => safety);
  const assemblies = new Set(tows.map(({ assemblyId }) => assemblyId));
  const positions = new Set(tows.map(({ positionId }) => positionId));
  const isSafety = ({ positionId, assemblyId }: Finding): boolean =>
    positionId === null ? assemblies.has(assemblyId) : positions.has(positionId);
  return (machineId) => open.ofMachine(machineId).filter((finding) => isStop(finding) || isSafety(finding));
}

/** By which hours a machine comes in, as its owner reads them; null: nothing is forecast. */
export function comeInBy(now: ShopNow, machineId: number): ComeInBy | null {
  const { points } = now.ofMachine(machineId);
  const first = firstByHours(points);
  const at = first?.machineHoursAtLimit[first.decides];
  if (!first || first.decidingHoursLeft === null || at == null) return null;
  const machine = now.shop.hours.ofMachine(machineId);
  const dial = machine ? dialGoneBy(now.shop.hours, machine, now.asOf) : null;
  const scale = dial && dial.of.meterDigits !== null ? 10 ** dial.of.meterDigits : null;
  const onDial = dial && dial.dialHoursNow + first.decidingHoursLeft / dial.hoursPerDialHour;
  const isAnothers = dial !== null && dial.of.machineId !== machineId;
  return {
    item: first.item,
    label: `${first.position}, ${first.point}`,
    decides: first.decides,
    dialHours: onDial === null ? at : scale !== null && onDial >= 0 ? onDial % scale : onDial,
    hoursAre: onDial === null ? 'machine' : 'dial',
    dialMachine: isAnothers ? dial.of.name : null,
    hoursLeft: first.hoursLeft,
    decidingHoursLeft: first.decidingHoursLeft,
    about: dayOrNull(first.dateAtLimit[first.decides]),
    guessed: first.ownReadings === 0 && first.pastLimitMm === null,
  };
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
