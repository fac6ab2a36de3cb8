import type { WearsWay } from '../shop/measuringPoint.ts';
import type { Day } from '../units/day.ts';
import { bulk } from './bulk.ts';
import { NOW_KNOWN, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import { everIn, presentAssemblyOf } from './positionSittings.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { measuringPoints, pointLimits } from './schema.ts';

export type Measures = 'thickness' | 'diameter' | 'bore' | 'slack' | 'section' | 'depth';

/** What a measuring point is, beside its limits and sizes. */
export type PointDetails = {
  id: number;
  positionId: number;
  assemblyId: number;
  item: number;
  position: string;
  safety: boolean;
  name: string;
  measures: Measures;
  wears: WearsWay;
  partClass: string;
  /** 1 sd */
  gaugeErrorMm: number;
  fittedMachineHours: number | null;
  stations: string[];
};

type Row = [
  number,
  number,
  number,
  number,
  string,
  number,
  string,
  Measures,
  WearsWay,
  string,
  number,
  number | null,
  string,
];
const SELECT = `SELECT p.id, o.id, ${presentAssemblyOf('o')} AS in_assembly, o.item, o.name, o.safety, p.name, p.measures, p.wears, c.name, p.gauge_error_mm,
  p.fitted_machine_hours, p.stations
  FROM measuring_points p JOIN positions o ON o.id = p.position_id JOIN part_classes c ON c.id = p.part_class_id`;
const details = (row: Row): PointDetails => ({
  id: row[0],
  positionId: row[1],
  assemblyId: row[2],
  item: row[3],
  position: row[4],
  safety: row[5] === 1,
  name: row[6],
  measures: row[7],
  wears: row[8],
  partClass: row[9],
  gaugeErrorMm: row[10],
  fittedMachineHours: row[11],
  stations: JSON.parse(row[12]) as string[],
});

/** Points now in the assemblies named, in the order of their items; of all when none is named. */
export function pointsOfAssemblies(db: ReadableRecord, assemblyIds: readonly number[] | null): PointDetails[] {
  const rows = bulk<Row>(
    db,
    `${SELECT} WHERE ${assemblyIds ? `${everIn('o', 'SELECT value FROM json_each(@ids)')} AND in_assembly IN (SELECT value FROM json_each(@ids)) AND` : ''} ${standing('p')}
     ORDER BY in_assembly, o.item, o.id, p.id`,
    { ...(assemblyIds && { ids: JSON.stringify(assemblyIds) }), knownAt: NOW_KNOWN },
  );
  return rows.map(details);
}

export const readPoint = (db: ReadableRecord, pointId: number): PointDetails | null =>
  bulk<Row>(db, `${SELECT} WHERE p.id = @pointId AND ${standing('p')}`, { pointId, knownAt: NOW_KNOWN }).map(
    details,
  )[0] ?? null;

export const insertPoint = (
  w: WritableRecord,
  entryId: number,
  row: {
    positionId: number;
    name: string;
    measures: Measures;
    wears: WearsWay;
    partClassId: number;
    gaugeErrorMm: number;
    fittedMachineHours: number | null;
    stations: string[];
  },
): number => insertInto(w, measuringPoints, { ...row, entryId });

export type NewLimits = {
  pointId: number;
  fromOn: Day | null;
  newSizeMm: number;
  newSizeTolMm: number | null;
  renewAtMm: number | null;
  rejectAtMm: number | null;
  source: string | null;
  enteredBy: string;
  /** first row of the renewal that brought them; absent: a person's own change */
  renewalId?: number;
};

/** Sizes a point is judged by from a day on; what held before that day goes on holding for it. */
export const insertLimits = (w: WritableRecord, entryId: number, limits: NewLimits): number =>
  insertInto(w, pointLimits, { ...limits, entryId });
