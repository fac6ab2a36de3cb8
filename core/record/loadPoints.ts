import type { PointLimits, Renewal, RenewalKind, Sitting, Size, WearsWay } from '../shop/measuringPoint.ts';
import type { PointOnRecord } from '../shop/shopLife.ts';
import type { Day } from '../units/day.ts';
import { ofAssemblies, ofPoints } from './boundMachines.ts';
import { bound, bulk, groupedBy, type Horizon } from './bulk.ts';
import { chainOf, counting, standing } from './counting.ts';
import { shimRows, shimsOf } from './loadShims.ts';
import { loadVisits, type VisitOnRecord } from './loadVisits.ts';
import { loadHomes, type MovedPosition, movedPosition, type OrderedSitting, orderOf } from './positionSittings.ts';
import type { ReadableRecord } from './recordFile.ts';

/** Where assemblies sat, and the positions that ever went by themselves. */
export type Sittings = {
  ofAssembly: ReadonlyMap<number, readonly Sitting[]>;
  ofPosition: ReadonlyMap<number, MovedPosition>;
};
type Visits = ReadonlyMap<number, VisitOnRecord>;

/** Every measuring point with its limits, sizes and renewals, up to the as-of day. */
export function loadPoints(
  db: ReadableRecord,
  horizon: Horizon,
  sittings: Sittings,
  dials: ReadonlyMap<number, number>,
): PointOnRecord[] {
  const limits = loadLimits(db, horizon);
  const [measured, renewed, packed] = [sizeRows(db, horizon), renewalRows(db, horizon), shimRows(db, horizon)];
  const noted = new Set<number>();
  if (horizon.within) for (const rows of [measured, renewed, packed]) for (const row of rows) noted.add(row[2]);
  const visits = loadVisits(db, horizon, dials, [...noted]);
  const sizes = sizesOf(measured, visits);
  const renewals = renewalsOf(renewed, visits);
  const shims = shimsOf(packed, visits);
  const points: PointOnRecord[] = [];
  const names = sittings.ofPosition.size > 0 ? assemblyNames(db, horizon) : null;
  for (const row of pointRows(db, horizon)) {
    const [pointId, laidOutIn, positionId, assembly, item, position, safety, point, wears, partClass] = row;
    const [gaugeErrorMm, fittedMachineHours, mustStayStandard, stations] = [row[10], row[11], row[12], row[13]];
    const moved = sittings.ofPosition.get(positionId);
    const assemblyId = moved?.assemblyId ?? laidOutIn;
    const ownSittings = moved?.sittings ?? sittings.ofAssembly.get(assemblyId) ?? [];
    const machineId = machineOf(ownSittings);
    if (machineId === null) continue; // its machine was not there yet: laid out later than the as-of day
    points.push({
      pointId,
      assemblyId,
      positionId,
      machineId,
      assembly: names?.get(assemblyId) ?? assembly,
      item,
      position,
      mustStayStandard: mustStayStandard === 1,
      point,
      partClass,
      wears,
      safety: safety === 1,
      gaugeErrorMm,
      fittedMachineHours,
      limits: limits.get(pointId) ?? [],
      sizes: sizes.get(pointId) ?? [],
      renewals: renewals.get(pointId) ?? [],
      shims: shims.get(pointId) ?? [],
      stations: JSON.parse(stations) as string[],
      sittings: ownSittings,
    });
  }
  if (sittings.ofPosition.size > 0) points.sort(inOrder); // what was moved stands among the points of its assembly now
  return points;
}

const inOrder = (a: PointOnRecord, b: PointOnRecord): number =>
  a.assemblyId - b.assemblyId || a.item - b.item || a.positionId - b.positionId || a.pointId - b.pointId;

const assemblyNames = (db: ReadableRecord, { knownAt }: Horizon): Map<number, string> =>
  new Map(bulk<[number, string]>(db, `SELECT a.id, a.name FROM assemblies a WHERE ${standing('a')}`, { knownAt }));

/** Where an assembly or a position sits, or sat last when it is on the shelf. */
export const machineOf = (sittings: readonly Sitting[]): number | null =>
  sittings.findLast((sitting) => sitting.machineId !== null)?.machineId ?? null;

type PointRow = [
  pointId: number,
  assemblyId: number,
  positionId: number,
  assembly: string,
  item: number,
  position: string,
  safety: number,
  point: string,
  wears: WearsWay,
  partClass: string,
  gaugeErrorMm: number,
  fittedMachineHours: number | null,
  mustStayStandard: number,
  stations: string,
];
const pointRows = (db: ReadableRecord, horizon: Horizon) =>
  bulk<PointRow>(
    db,
    `SELECT p.id, a.id, o.id, a.name, o.item, o.name, o.safety, p.name, p.wears, c.name, p.gauge_error_mm, p.fitted_machine_hours,
       o.must_stay_standard, p.stations
     FROM measuring_points p
     JOIN positions o ON o.id = p.position_id JOIN assemblies a ON a.id = o.assembly_id
     JOIN part_classes c ON c.id = p.part_class_id
     WHERE ${standing('p')} ${ofAssemblies(horizon.within, 'a.id')} ORDER BY a.id, o.item, o.id, p.id`,
    bound(horizon),
  );

/** Where everything sat, up to the as-of day. */
export function loadSittings(db: ReadableRecord, horizon: Horizon, dials: ReadonlyMap<number, number>): Sittings {
  const ordered = loadAssemblySittings(db, horizon, dials);
  const homes = loadHomes(db, horizon, dials);
  const ofPosition = new Map<number, MovedPosition>();
  for (const [positionId, laidOutIn] of homes.size === 0 ? [] : laidOut(db, [...homes.keys()]))
    ofPosition.set(
      positionId,
      movedPosition(laidOutIn, homes.get(positionId)!, (assemblyId) => ordered.get(assemblyId) ?? []),
    );
  const ofAssembly = new Map([...ordered].map(([assemblyId, own]) => [assemblyId, own.map(({ sitting }) => sitting)]));
  return { ofAssembly, ofPosition };
}

const laidOut = (db: ReadableRecord, positionIds: readonly number[]) =>
  bulk<[positionId: number, assemblyId: number]>(
    db,
    'SELECT id, assembly_id FROM positions WHERE id IN (SELECT value FROM json_each(@ids))',
    { ids: JSON.stringify(positionIds) },
  );

/** Where each assembly sat, in order; the first sitting is taken to reach back to the beginning. */
function loadAssemblySittings(
  db: ReadableRecord,
  horizon: Horizon,
  dials: ReadonlyMap<number, number>,
): Map<number, OrderedSitting[]> {
  type Row = [
    assemblyId: number,
    machineId: number | null,
    from: Day | null,
    off: number | null,
    on: number | null,
    order: number,
  ];
  const rows = bulk<Row>(
    db,
    `SELECT s.assembly_id, s.machine_id, s.from_on, s.off_dial_reading_id, s.on_dial_reading_id, ${orderOf('sittings', 's')}
     FROM sittings s WHERE ${counting('sittings', 's')} ${ofAssemblies(horizon.within, 's.assembly_id')}
     ORDER BY s.from_on, ${chainOf('s')}`,
    bound(horizon),
  );
  const dialOf = (reading: number | null) => (reading === null ? null : (dials.get(reading) ?? null));
  const sittings = new Map<number, OrderedSitting[]>();
  for (const [assemblyId, machineId, from, off, on, order] of rows) {
    const earlier = sittings.get(assemblyId);
    const first = { machineId, from: null, dialHours: null, toDialHours: null };
    if (!earlier) sittings.set(assemblyId, [{ from: null, order, sitting: first }]);
    else if (from === null || from <= horizon.asOf)
      earlier.push({ from, order, sitting: { machineId, from, dialHours: dialOf(off), toDialHours: dialOf(on) } });
  }
  return sittings;
}

function loadLimits(db: ReadableRecord, horizon: Horizon): Map<number, PointLimits[]> {
  type Row = [
    pointId: number,
    from: Day | null,
    newSizeMm: number,
    newSizeTolMm: number | null,
    renewAtMm: number | null,
    rejectAtMm: number | null,
    source: string | null,
    withRenewal: 'here' | 'elsewhere' | null,
  ];
  const rows = bulk<Row>(
    db,
    `SELECT l.point_id, l.from_on, l.new_size_mm, l.new_size_tol_mm, l.renew_at_mm, l.reject_at_mm, l.source,
       (SELECT CASE r.hours_known WHEN 1 THEN 'here' ELSE 'elsewhere' END FROM renewals r WHERE r.id = l.renewal_id)
     FROM point_limits l WHERE ${counting('point_limits', 'l')} ${ofPoints(horizon.within, 'l.point_id')}
     ORDER BY l.from_on, l.id`,
    bound(horizon),
  );
  const limits = new Map<number, PointLimits[]>();
  for (const [pointId, from, newSizeMm, newSizeTolMm, renewAtMm, rejectAtMm, source, withRenewal] of rows) {
    const own = limits.get(pointId);
    const row: PointLimits = { from: own ? from : null, newSizeMm, newSizeTolMm, renewAtMm, rejectAtMm, source };
    if (withRenewal !== null) row.withRenewal = withRenewal;
    if (!own) limits.set(pointId, [row]);
    else if (from === null || from <= horizon.asOf) {
      // a second figure for the same day takes the first one's place
      if (own.at(-1)?.from === from) own.pop();
      own.push(row);
    }
  }
  return limits;
}

type SizeRow = [
  pointId: number,
  id: number,
  stripDownId: number,
  station: string | null,
  sizeMm: number,
  isLeft: number,
  gaugeErrorMm: number | null,
  gaugeStepMm: number,
  parked: number,
];
const sizeRows = (db: ReadableRecord, horizon: Horizon) =>
  bulk<SizeRow>(
    db,
    // a text is dear to bring out of the record, a million of them more so
    `SELECT s.point_id, s.id, s.strip_down_id, NULLIF(s.station, ''), s.size_mm, s.event = 'as-left', s.gauge_error_mm, s.gauge_step_mm, s.parked
     FROM sizes s WHERE ${counting('sizes', 's')} ${ofPoints(horizon.within, 's.point_id')} ORDER BY ${chainOf('s')}`,
    bound(horizon),
  );

function sizesOf(rows: readonly SizeRow[], visits: Visits): Map<number, Size[]> {
  const sizes = new Map<number, Size[]>();
  for (const [pointId, id, stripDownId, station, sizeMm, isLeft, gaugeErrorMm, gaugeStepMm, parked] of rows) {
    const visit = visits.get(stripDownId);
    if (!visit) continue; // later than the as-of day, or the visit was struck
    const size: Size = {
      id,
      takenOn: visit.takenOn,
      dialHours: visit.dialHours,
      station: station ?? '',
      sizeMm,
      event: isLeft === 1 ? 'as-left' : 'as-found',
      gaugeErrorMm,
      gaugeStepMm,
      parked: parked === 1,
    };
    const own = sizes.get(pointId);
    if (own) own.push(size);
    else sizes.set(pointId, [size]);
  }
  for (const own of sizes.values()) own.sort(byDay);
  return sizes;
}

type RenewalRow = [
  pointId: number,
  id: number,
  stripDownId: number,
  hoursKnown: number,
  sizeMm: number | null,
  kind: RenewalKind,
  station: string,
  stamped: number | null,
  parked: number,
];
const renewalRows = (db: ReadableRecord, horizon: Horizon) =>
  bulk<RenewalRow>(
    db,
    `SELECT r.point_id, r.id, r.strip_down_id, r.hours_known, r.size_mm, r.kind, r.station, r.stamped, r.parked
     FROM renewals r WHERE ${counting('renewals', 'r')} ${ofPoints(horizon.within, 'r.point_id')} ORDER BY ${chainOf('r')}`,
    bound(horizon),
  );

function renewalsOf(rows: readonly RenewalRow[], visits: Visits): Map<number, Renewal[]> {
  const renewals: [number, Renewal][] = [];
  for (const [pointId, id, stripDownId, hoursKnown, sizeMm, kind, station, stamped, parked] of rows) {
    const visit = visits.get(stripDownId);
    if (!visit) continue;
    const known = hoursKnown === 1;
    renewals.push([
      pointId,
      {
        id,
        takenOn: visit.takenOn,
        dialHours: known ? visit.dialHours : null,
        hoursKnown: known,
        // a size in question stays out until somebody has answered
        sizeMm: parked === 1 ? null : sizeMm,
        kind,
        station,
        stamped: stamped === null ? null : stamped === 1,
      },
    ]);
  }
  renewals.sort(([, a], [, b]) => byDay(a, b));
  return new Map(
    [...groupedBy(renewals, ([pointId]) => pointId)].map(([pointId, own]) => [pointId, own.map(([, r]) => r)]),
  );
}

/** Sorting is stable: rows of one day keep their order of entry. */
const byDay = (a: { takenOn: Day }, b: { takenOn: Day }): number =>
  a.takenOn < b.takenOn ? -1 : a.takenOn > b.takenOn ? 1 : 0;
