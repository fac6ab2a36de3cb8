import type { oldSheetsGrid } from '../contract/oldSheets.ts';
import type { Handler } from '../contract/operation.ts';
import { machineHoursOn } from '../reading/machineHours.ts';
import { findingIsOpen } from '../shop/finding.ts';
import type { PointLife, Size } from '../shop/measuringPoint.ts';
import { type Day, dayNumber } from '../units/day.ts';
import type { Context } from './context.ts';
import { findingSheet } from './findingSheet.ts';
import { hoursOfMachine, seriesAround } from './seriesNow.ts';
import { stripDownSheetHandler } from './stripDownSheet.ts';

/** The bench's grid, looked at from the sheet's own day. */
export const oldSheetsGridHandler: Handler<typeof oldSheetsGrid, Context> = async (context, { machineId, takenOn }) => {
  const sheet = await stripDownSheetHandler(context, { machineId });
  if (takenOn === null) return sheet;
  const on = takenOn as Day; // the contract has read it as a day
  const { life } = seriesAround(context, machineId);
  const lives = new Map(life.points.map((point) => [point.pointId, point]));
  return {
    ...sheet,
    rows: sheet.rows.map((row) => {
      const point = lives.get(row.pointId);
      const sizes = point ? sizesOfPartBefore(point, on) : [];
      return {
        ...row,
        stations: row.stations.map(({ station }) => {
          const last = sizes.findLast((size) => size.station === station);
          return { station, lastSizeMm: last?.sizeMm ?? null, lastOn: last?.takenOn ?? null };
        }),
      };
    }),
    openFindings: life.findings
      .filter((finding) => finding.machineId === machineId && findingIsOpen(finding, on))
      .map((finding) => findingSheet(finding, life)),
    dialHours: dialAbout(context, machineId, on),
  };
};

/** Sizes of the part that sat there just before that day; what was renewed starts anew. */
function sizesOfPartBefore({ sizes, renewals }: PointLife, on: Day): Size[] {
  const renewed = renewals.findLast(({ takenOn }) => takenOn < on);
  const isOfPart = ({ takenOn, event }: Size) =>
    !renewed ||
    takenOn > renewed.takenOn ||
    (takenOn === renewed.takenOn && (event === 'as-left' || !renewed.hoursKnown));
  return sizes.filter((size) => size.takenOn < on && !size.parked && isOfPart(size));
}

/** What the meter then in place showed, by its hours on that day; null: no meter is known of then. */
function dialAbout(context: Context, machineId: number, on: Day): number | null {
  const { line } = hoursOfMachine(context, machineId);
  const hours = machineHoursOn(line, on)?.hours;
  const dayOf = dayNumber(on);
  const meter =
    line.meters.findLast(({ fromDayOf, toDayOf }) => fromDayOf <= dayOf && (toDayOf === null || dayOf <= toDayOf)) ??
    line.meters[0];
  if (hours === undefined || !meter || line.nodes.every(({ kind }) => kind === 'estimated')) return null;
  const dialHours = meter.dialHoursAtStart + (hours - meter.machineHoursAtStart) / meter.hoursPerDialHour;
  return Math.max(0, line.fullScaleHours === null ? dialHours : dialHours % line.fullScaleHours);
}
