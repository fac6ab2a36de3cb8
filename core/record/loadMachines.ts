import type { DialEvent, DialEventKind, HoursSource, WorkShare } from '../shop/machineLife.ts';
import type { MachineOnRecord } from '../shop/shopLife.ts';
import type { Day } from '../units/day.ts';
import { ofMachines, withinOf } from './boundMachines.ts';
import { bound, bulk, groupedBy, type Horizon } from './bulk.ts';
import { chainOf, counting, NOW_KNOWN, standing } from './counting.ts';
import { type CustomerOnRecord, customersAmong } from './customerStore.ts';
import type { ReadableRecord } from './recordFile.ts';

/** Every machine by what it is called alone, in the order of the record. */
export const loadCalled = (db: ReadableRecord): [machineId: number, name: string][] =>
  bulk(db, `SELECT m.id, m.name FROM machines m WHERE ${standing('m')} ORDER BY m.id`, { knownAt: NOW_KNOWN });

/** What machines are called and whose they are, in the order of the record. @param machineIds null: all */
export function loadMachineNames(
  db: ReadableRecord,
  asOf: Day,
  machineIds: readonly number[] | null = null,
): Pick<MachineOnRecord, 'machineId' | 'name' | 'makeModel' | 'serial' | 'customer' | 'place'>[] {
  const within = machineIds && withinOf({ machineIds, assemblyIds: [] });
  const horizon: Horizon = { asOf, knownAt: NOW_KNOWN, within };
  const owners = ownersOf(db, horizon);
  return machineRows(db, horizon).map(([machineId, name, make, model, serial]) => {
    const { name: customer = '', place = '' } = owners.get(machineId) ?? {};
    return { machineId, name, makeModel: `${make} ${model}`.trim(), serial, customer, place };
  });
}

/** Every machine with its owner, meter, counting dial events and work shares, up to the as-of day. */
export function loadMachines(db: ReadableRecord, horizon: Horizon): MachineOnRecord[] {
  const owners = ownersOf(db, horizon);
  const meters = new Map(meterRows(db, horizon).map((row) => [row[0], row]));
  const events = groupedBy(eventRows(db, horizon), ([machineId]) => machineId);
  const shares = groupedBy(shareRows(db, horizon), ([machineId]) => machineId);
  const sources = groupedBy(sourceRows(db, horizon), ([machineId]) => machineId);

  return machineRows(db, horizon).map(([machineId, name, make, model, serial]) => {
    const meter = meters.get(machineId);
    const owner = owners.get(machineId);
    return {
      machineId,
      name,
      makeModel: `${make} ${model}`.trim(),
      serial,
      customer: owner?.name ?? '',
      place: owner?.place ?? '',
      meterDigits: meter?.[1] ?? null,
      hoursBefore: meter?.[2] ?? null,
      dialEvents: (events.get(machineId) ?? []).map(dialEvent),
      workShares: fromTheBeginning((shares.get(machineId) ?? []).map(workShare)),
      hoursSources: (sources.get(machineId) ?? []).map(hoursSource),
    };
  });
}

type MachineRow = [id: number, name: string, make: string, model: string, serial: string];
const machineRows = (db: ReadableRecord, horizon: Horizon) =>
  bulk<MachineRow>(
    db,
    `SELECT m.id, m.name, m.make, m.model, m.serial FROM machines m WHERE ${standing('m')} ${ofMachines(horizon.within, 'm.id')} ORDER BY m.id`,
    bound(horizon),
  );

/** Whose each machine is on the as-of day, as known then. */
function ownersOf(db: ReadableRecord, horizon: Horizon): Map<number, CustomerOnRecord | null> {
  const owned = ownerRows(db, horizon);
  const among = horizon.within && owned.map(([, customerId]) => customerId);
  const customers = customersAmong(db, among, horizon.knownAt);
  return new Map(owned.map(([machineId, customerId]) => [machineId, customers.of(customerId)]));
}

/** Later owners come later, so that the last one stays. */
type OwnerRow = [machineId: number, customerId: number];
const ownerRows = (db: ReadableRecord, horizon: Horizon) =>
  bulk<OwnerRow>(
    db,
    `SELECT o.machine_id, o.customer_id FROM ownerships o
     WHERE (o.from_on IS NULL OR o.from_on <= @asOf) AND ${counting('ownerships', 'o')} ${ofMachines(horizon.within, 'o.machine_id')}
     ORDER BY o.from_on, o.id`,
    bound(horizon),
  );

type MeterRow = [machineId: number, digits: number | null, hoursBefore: number | null];
const meterRows = (db: ReadableRecord, horizon: Horizon) =>
  bulk<MeterRow>(
    db,
    `SELECT m.machine_id, m.digits, m.hours_before FROM meters m
     WHERE ${counting('meters', 'm')} ${ofMachines(horizon.within, 'm.machine_id')} ORDER BY m.id`,
    bound(horizon),
  );

type EventRow = [
  machineId: number,
  id: number,
  takenOn: Day,
  kind: DialEventKind,
  dialHours: number | null,
  newDialHours: number | null,
  errorHours: number | null,
  hoursPerDialHour: number | null,
  parked: number,
];
const eventRows = (db: ReadableRecord, horizon: Horizon) =>
  bulk<EventRow>(
    db,
    `SELECT d.machine_id, d.id, d.taken_on, d.kind, d.dial_hours, d.new_dial_hours, d.error_hours,
       d.hours_per_dial_hour, d.parked
     FROM dial_readings d
     WHERE d.taken_on <= @asOf AND ${counting('dial_readings', 'd')} ${ofMachines(horizon.within, 'd.machine_id')}
     ORDER BY d.taken_on, d.in_day, ${chainOf('d')}`,
    bound(horizon),
  );

const dialEvent = ([
  ,
  id,
  takenOn,
  kind,
  dialHours,
  newDialHours,
  errorHours,
  perDial,
  parked,
]: EventRow): DialEvent => ({
  id,
  takenOn,
  kind,
  dialHours,
  newDialHours,
  errorHours,
  ...(perDial !== null && { hoursPerDialHour: perDial }),
  parked: parked === 1,
});

type ShareRow = [machineId: number, from: Day | null, share: number, workType: string | null];
const shareRows = (db: ReadableRecord, horizon: Horizon) =>
  bulk<ShareRow>(
    db,
    `SELECT w.machine_id, w.from_on, w.share, w.work_type FROM work_shares w
     WHERE (w.from_on IS NULL OR w.from_on <= @asOf) AND ${counting('work_shares', 'w')}
       ${ofMachines(horizon.within, 'w.machine_id')} ORDER BY w.from_on, w.id`,
    bound(horizon),
  );

const workShare = ([, from, share, workType]: ShareRow): WorkShare => ({ from, share, workType });

/** Before the first share on record the assemblies worked all the hours. */
const fromTheBeginning = (shares: WorkShare[]): WorkShare[] =>
  shares.length === 0 || shares[0]?.from === null ? shares : [{ from: null, share: 1, workType: null }, ...shares];

type SourceRow = [
  machineId: number,
  from: Day,
  kind: HoursSource['kind'],
  pullerId: number | null,
  share: number | null,
  hoursPerYear: number | null,
  errorShare: number | null,
];
const sourceRows = (db: ReadableRecord, horizon: Horizon) =>
  bulk<SourceRow>(
    db,
    `SELECT h.machine_id, h.from_on, h.kind, h.puller_id, h.share, h.hours_per_year, h.error_share FROM hours_sources h
     WHERE h.from_on <= @asOf AND ${counting('hours_sources', 'h')} ${ofMachines(horizon.within, 'h.machine_id')}
     ORDER BY h.from_on, h.id`,
    bound(horizon),
  );

function hoursSource([, from, kind, pullerId, share, hoursPerYear, errorShare]: SourceRow): HoursSource {
  if (kind === 'pulled') return { kind, from, errorShare, pullerId: pullerId!, share: share! };
  return kind === 'yearly' ? { kind, from, errorShare, hoursPerYear: hoursPerYear! } : { kind, from, errorShare };
}
