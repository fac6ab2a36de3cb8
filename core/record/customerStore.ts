import type { Day } from '../units/day.ts';
import { bulk } from './bulk.ts';
import { chainOf, counting, isLastOfChain, NOW_KNOWN, ofChain, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { customerDetails, customerMerges, customers, ownerships } from './schema.ts';
import { strikeOut, supersede } from './supersede.ts';

export type CustomerDetails = { name: string; place: string; address: string; phone: string; email: string };
export type CustomerOnRecord = CustomerDetails & {
  id: number;
  /** personal data were erased on request: every text is empty */
  erased: boolean;
};

type DetailsRow = [id: number, name: string, place: string, address: string, phone: string, email: string];
const detailsOf = ([, name, place, address, phone, email]: DetailsRow): CustomerDetails => ({
  name,
  place,
  address,
  phone,
  email,
});

/** Every customer as known at an instant: with their last details, and who stands for those merged into another. */
export type CustomersKnown = {
  /** the customer an id stands for now: its own, or the one it was merged into. Null: not on record */
  of(customerId: number): CustomerOnRecord | null;
  /** by their own id, merged or not */
  own: ReadonlyMap<number, CustomerOnRecord>;
  /** whom an id was merged into in the end; itself when nobody */
  survivorOf(customerId: number): number;
};

export const customersKnown = (db: ReadableRecord, knownAt: string = NOW_KNOWN): CustomersKnown =>
  customersAmong(db, null, knownAt);

/** @param among these and whom they were merged into, and nobody else; null: all */
export function customersAmong(
  db: ReadableRecord,
  among: readonly number[] | null,
  knownAt: string = NOW_KNOWN,
): CustomersKnown {
  const into = new Map(
    bulk<[number, number]>(
      db,
      `SELECT m.customer_id, m.into_customer_id FROM customer_merges m
       WHERE ${counting('customer_merges', 'm')} ORDER BY m.id`,
      { knownAt },
    ),
  );
  const survivorOf = (customerId: number): number => {
    let at = customerId;
    // as many steps as there are merges: a ring, which merging refuses, would end too
    for (let steps = into.size; steps > 0; steps--) at = into.get(at) ?? at;
    return at;
  };
  const ids = among && { ids: JSON.stringify([...among, ...among.map(survivorOf)]) };
  const only = (id: string) => (ids ? `${id} IN (SELECT value FROM json_each(@ids))` : 'true');
  const first = bulk<DetailsRow>(
    db,
    `SELECT id, name, place, address, phone, email FROM customers WHERE ${only('id')}`,
    { ...ids },
  );
  const later = bulk<DetailsRow>(
    db,
    `SELECT d.customer_id, d.name, d.place, d.address, d.phone, d.email FROM customer_details d
     WHERE ${standing('d')} AND ${only('d.customer_id')} ORDER BY d.id`,
    { knownAt, ...ids },
  );
  const erased = new Set(bulk<[number]>(db, 'SELECT customer_id FROM customer_erasures', {}).map(([id]) => id));
  const own = new Map(
    [...first, ...later].map((row) => [row[0], { id: row[0], ...detailsOf(row), erased: erased.has(row[0]) }]),
  );
  return { own, survivorOf, of: (customerId) => own.get(survivorOf(customerId)) ?? null };
}

const byName = (a: CustomerOnRecord, b: CustomerOnRecord): number =>
  a.name.localeCompare(b.name, 'en', { sensitivity: 'base' }) || a.id - b.id;

/** All customers by name: those merged into another are that one, those erased are left out. */
export function listCustomers(db: ReadableRecord): CustomerOnRecord[] {
  const known = customersKnown(db);
  return [...known.own.values()].filter(({ id, erased }) => known.survivorOf(id) === id && !erased).sort(byName);
}

/** Names a customer is found by, also those of rows merged into another: with the id that row has. */
export const namesOfCustomers = (db: ReadableRecord): { id: number; name: string }[] =>
  [...customersKnown(db).own.values()].filter(({ erased }) => !erased).map(({ id, name }) => ({ id, name }));

/** A customer, or the one they were merged into; null: not on record. */
export const readCustomer = (db: ReadableRecord, id: number): CustomerOnRecord | null =>
  customersAmong(db, [id]).of(id);

export const insertCustomer = (w: WritableRecord, customer: CustomerDetails): number =>
  insertInto(w, customers, customer);

export const insertDetails = (
  w: WritableRecord,
  entryId: number,
  customerId: number,
  details: CustomerDetails,
): number => insertInto(w, customerDetails, { ...details, customerId, entryId });

/** Details of some customers as they were ever entered, oldest first; rows of undone entries too. */
export const detailsEverOf = (
  db: ReadableRecord,
  customerIds: readonly number[],
): (CustomerDetails & { customerId: number; madeAt: string; madeBy: string })[] =>
  bulk<[...DetailsRow, madeAt: string, madeBy: string]>(
    db,
    `SELECT id, name, place, address, phone, email, '', '' FROM customers WHERE id IN (SELECT value FROM json_each(@ids))
     UNION ALL
     SELECT * FROM (SELECT d.customer_id, d.name, d.place, d.address, d.phone, d.email, e.made_at, e.made_by
       FROM customer_details d JOIN entries e ON e.id = d.entry_id
       WHERE d.customer_id IN (SELECT value FROM json_each(@ids)) ORDER BY d.id)`,
    { ids: JSON.stringify(customerIds) },
  ).map(([customerId, name, place, address, phone, email, madeAt, madeBy]) => ({
    ...{ customerId, name, place, address, phone, email, madeAt, madeBy },
  }));

// ---- merging

export const insertMerge = (w: WritableRecord, entryId: number, customerId: number, intoCustomerId: number): number =>
  insertInto(w, customerMerges, { customerId, intoCustomerId, entryId });

export type MergeRow = { id: number; customerId: number; intoCustomerId: number; madeAt: string; entryId: number };

/** Merges that count. */
export const mergesOf = (db: ReadableRecord): MergeRow[] =>
  bulk<[number, number, number, string, number]>(
    db,
    `SELECT m.id, m.customer_id, m.into_customer_id, e.made_at, m.entry_id
     FROM customer_merges m JOIN entries e ON e.id = m.entry_id
     WHERE ${counting('customer_merges', 'm')} ORDER BY m.id`,
    { knownAt: NOW_KNOWN },
  ).map(([id, customerId, intoCustomerId, madeAt, entryId]) => ({ id, customerId, intoCustomerId, madeAt, entryId }));

export const strikeMerge = (w: WritableRecord, entryId: number, mergeId: number, reason: string): number =>
  strikeOut(w, customerMerges, mergeId, entryId, reason);

/** Details of a customer before an entry, and whether those it wrote are still the last. */
export function detailsBefore(
  db: ReadableRecord,
  customerId: number,
  entryId: number,
): { before: CustomerDetails | null; stillLast: boolean } {
  const rows = bulk<[...DetailsRow, number]>(
    db,
    `SELECT d.customer_id, d.name, d.place, d.address, d.phone, d.email, d.entry_id FROM customer_details d
     WHERE d.customer_id = @customerId AND ${standing('d')} ORDER BY d.id`,
    { customerId, knownAt: NOW_KNOWN },
  );
  const first = bulk<DetailsRow>(
    db,
    'SELECT id, name, place, address, phone, email FROM customers WHERE id = @customerId',
    { customerId },
  );
  const all = [...first.map((row) => [...row, 0] as [...DetailsRow, number]), ...rows];
  const before = all.findLast((row) => row[6] < entryId);
  return {
    before: before ? detailsOf(before.slice(0, 6) as unknown as DetailsRow) : null,
    stillLast: rows.at(-1)?.[6] === entryId,
  };
}

// ---- whose machine

export type OwnershipRow = {
  /** first row of its chain */
  id: number;
  machineId: number;
  customerId: number;
  /** null: from the beginning */
  fromOn: Day | null;
  struck: boolean;
  reason: string;
};

/** Who owned machines from which day on, oldest first, as last put right; struck rows too. */
export const ownershipsOf = (db: ReadableRecord, machineId: number | null = null): OwnershipRow[] =>
  bulk<[number, number, number, Day | null, number, string]>(
    db,
    `SELECT ${chainOf('o')}, o.machine_id, o.customer_id, o.from_on, o.struck, o.reason FROM ownerships o
     WHERE ${machineId === null ? '' : 'o.machine_id = @machineId AND'} ${standing('o')} AND ${isLastOfChain('ownerships', 'o')}
     ORDER BY o.machine_id, o.from_on, ${chainOf('o')}`,
    { machineId, knownAt: NOW_KNOWN },
  ).map(([id, machine, customerId, fromOn, struck, reason]) => ({
    id,
    machineId: machine,
    customerId,
    fromOn,
    struck: struck === 1,
    reason,
  }));

/** A stretch in which a machine was one customer's: from a day (null: the beginning) up to another (null: still). */
export type OwnedStretch = OwnershipRow & { untilOn: Day | null };

/** The stretches of machines, without struck rows; a later row of the same day takes the place of the earlier. */
export function ownedStretches(db: ReadableRecord, machineId: number | null = null): OwnedStretch[] {
  const rows = ownershipsOf(db, machineId).filter(({ struck }) => !struck);
  return rows.flatMap((row, place) => {
    const next = rows[place + 1];
    const until = next?.machineId === row.machineId ? next.fromOn : null;
    return next?.machineId === row.machineId && next.fromOn === row.fromOn ? [] : [{ ...row, untilOn: until }];
  });
}

/** The last row that counts of an ownership's chain. */
const rowOfOwnership = (db: ReadableRecord, ownershipId: number): number | null =>
  bulk<[number]>(
    db,
    `SELECT o.id FROM ownerships o WHERE ${ofChain('o', '@ownershipId')} AND ${counting('ownerships', 'o')}`,
    { ownershipId, knownAt: NOW_KNOWN },
  )[0]?.[0] ?? null;

/** Puts an ownership right, or strikes it; @returns false: there is none that counts */
export function putOwnershipRight(
  w: WritableRecord,
  entryId: number,
  ownershipId: number,
  changed: { customerId: number; fromOn: Day | null } | null,
  reason: string,
): boolean {
  const rowId = rowOfOwnership(w, ownershipId);
  if (rowId === null) return false;
  if (changed) supersede(w, ownerships, rowId, entryId, { ...changed, reason });
  else strikeOut(w, ownerships, rowId, entryId, reason);
  return true;
}

/** Whose machine it is on a day (absent: now); null: nobody's on record. */
export function customerOfMachine(db: ReadableRecord, machineId: number, asOf = '9999-12-31'): CustomerOnRecord | null {
  const owner = ownedStretches(db, machineId).findLast(({ fromOn }) => fromOn === null || fromOn <= asOf);
  return owner ? readCustomer(db, owner.customerId) : null;
}
