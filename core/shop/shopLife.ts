import type { Finding } from './finding.ts';
import type { ForecastSettings } from './forecastSettings.ts';
import type { Joint } from './joint.ts';
import type { MachineLife } from './machineLife.ts';
import type { PointLife } from './measuringPoint.ts';
import type { PartClass } from './partClass.ts';

/** A machine with the names a person knows it by. */
export type MachineOnRecord = MachineLife & {
  name: string;
  makeModel: string;
  serial: string;
  customer: string;
  place: string;
};

/** A measuring point with the names a person knows it by, and where it now sits. */
export type PointOnRecord = PointLife & {
  assemblyId: number;
  positionId: number;
  /** where the assembly sits now, or sat last when it is on the shelf */
  machineId: number;
  assembly: string;
  item: number;
  position: string;
  /** the position interchanges with others: no oversize here. Absent: it may be any size */
  mustStayStandard?: boolean;
  point: string;
};

/**
 * Everything in the record that forecasts rest on, as plain values: what the way (core/way.ts) starts from.
 * Superseded and undone rows are already left out.
 */
export type ShopLife = {
  machines: readonly MachineOnRecord[];
  points: readonly PointOnRecord[];
  findings: readonly Finding[];
  /** absent: none */
  joints?: readonly Joint[];
  /** every class a point names is here */
  partClasses: readonly PartClass[];
  /** relative use by month of a typical machine, January first; mean 1 */
  season: readonly number[];
  hoursPerYearDefault: number;
  /** slack season: first and last day of the year, "11-01" to "02-28" */
  winterFrom: string;
  winterTo: string;
  forecastSettings: ForecastSettings;
};
