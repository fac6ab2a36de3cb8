import type { z } from 'zod';
import type { PointForecast } from '../../contract/forecast.ts';
import type { ComeInBy, Contact, zQuiet } from '../../contract/recall.ts';
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
import { machineNames } from '../../record/machineStore.ts';
import type { ReadableRecord } from '../../record/recordFile.ts';
import { slipNumbers } from '../../record/slipStore.ts';
import type { Finding } from '../../shop/finding.ts';
import { hoursSourceOn } from '../../shop/machineLife.ts';
import type { MachineOnRecord } from '../../shop/shopLife.ts';
import { type Winter, type WinterOfYear, wintersFrom } from '../../shop/winter.ts';
import { addDays, type Day, day } from '../../units/day.ts';
import { dialGoneBy } from '../../way/dialGoneBy.ts';
import { machinePlan } from '../../way/machinePlan.ts';
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
  const owners = ownersNow(record, now.asOf);
  const contacts = listContacts(record).filter(({ struck, madeOn }) => !struck && madeOn <= now.asOf);
  const contactsOf = Map.groupBy(contacts, ({ customerId }) => known.survivorOf(customerId));
  const visits = Map.groupBy(visitsEverAgreed(record), ({ machineId }) => machineId);
  const machines = now.shop.life.machines.map((machine) => {
    const owner = owners.get(machine.machineId);
    const customerId = owner === undefined ? null : known.survivorOf(owner);
    const its = customerId === null ? [] : (contactsOf.get(customerId) ?? []);
    return { customerId, machine: recallMachine(now, machine, its, visits.get(machine.machineId) ?? []) };
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
      farms.push(farmOf(customer, theirs, ofThem(terms), ofThem(quiet)));
    }
  }
  return { shop, farms, nobodys };
}

function farmOf(
  customer: CustomerOnRecord,
  machines: readonly RecallMachine[],
  terms: readonly TermsRow[],
  quiet: ReturnType<typeof listQuietPeriods>,
): FarmOnRecord {
  const words = termsOf(terms);
  return {
    customerId: customer.id,
    name: customer.name,
    customer,
    machines,
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

/** Whose each machine is on a day, by the id it was sold to. */
function ownersNow(record: ReadableRecord, asOf: Day): Map<number, number> {
  const owners = new Map<number, number>();
  for (const { machineId, customerId, fromOn } of ownedStretches(record))
    if (fromOn === null || fromOn <= asOf) owners.set(machineId, customerId);
  return owners;
}

function recallMachine(
  now: ShopNow,
  machine: MachineOnRecord,
  contacts: readonly ContactRow[],
  visits: readonly AgreedVisit[],
): RecallMachine {
  const { machineId } = machine;
  const { points } = now.ofMachine(machineId);
  const first = firstByHours(points);
  const source = hoursSourceOn(machine.hoursSources ?? [], now.asOf);
  return {
    machineId,
    safetyFindings: safetyFindings(now, machineId).map((finding) => ({
      foundOn: finding.takenOn,
      doNotUse: isStop(finding),
    })),
    deciding:
      first?.decidingHoursLeft == null
        ? null
        : { hoursLeft: first.decidingHoursLeft, on: dayOrNull(first.dateAtLimit[first.decides]) },
    hoursReadOn: machinePlan(now.shop, machineId, points).now.readOn,
    hasMeter: source?.kind !== 'yearly',
    visitTo: visits.flatMap((visit) => lastDayOf(visit) ?? []).findLast((on) => on >= now.asOf) ?? null,
    contacts: contacts.filter((contact) => contact.machineId === null || contact.machineId === machineId),
  };
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

/** Open findings that forbid use, or stand where the machine tows or lifts; one on a whole assembly does if anything of it does. */
export function safetyFindings({ shop, asOf }: ShopNow, machineId: number): readonly Finding[] {
  const tows = shop.life.points.filter(({ machineId: on, safety }) => on === machineId && safety);
  return openFindings(shop.life, asOf)
    .ofMachine(machineId)
    .filter(
      (finding) =>
        isStop(finding) ||
        tows.some(({ assemblyId, positionId }) =>
          finding.positionId === null ? finding.assemblyId === assemblyId : finding.positionId === positionId,
        ),
    );
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
  return rows.map(({ id, struck: _, slipId, machineId, ...row }) => ({
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
