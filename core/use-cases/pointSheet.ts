import type { z } from 'zod';
import type { PointForecast } from '../contract/forecast.ts';
import type { zPointSheet, zPutRight, zRenewalMark, zVisit } from '../contract/machine.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import type { JointLaw } from '../forecast/slackOfJoint.ts';
import { machineHoursOn } from '../reading/machineHours.ts';
import { presentShare } from '../reading/workedHours.ts';
import type { PointDetails } from '../record/pointStore.ts';
import type { SizeRow } from '../record/sizeStore.ts';
import type { PartSeries } from '../series/partSeries.ts';
import type { PartVisit } from '../series/partVisits.ts';
import { oversizeOn } from '../shop/oversize.ts';
import type { Role } from '../shop/role.ts';
import type { PointOnRecord } from '../shop/shopLife.ts';
import { type Day, day } from '../units/day.ts';
import { dayOfPastHours } from '../way/dayOfHours.ts';
import type { MachineHoursAndUse } from '../way/shopHours.ts';
import { wearCurves } from '../way/wearCurves.ts';

type Sheet = z.input<typeof zPointSheet>;
type Visit = z.input<typeof zVisit>;
type Renewal = z.input<typeof zRenewalMark>;
type PutRight = z.input<typeof zPutRight>;

export type PointSheetFrom = {
  point: PointOnRecord;
  details: PointDetails;
  series: PartSeries;
  forecast: PointForecast;
  law: PartLaw | undefined;
  /** a slack forecast from pin and bore together */
  joint: JointLaw | null;
  role: Role;
  settings: ModelSettings;
  machine: MachineHoursAndUse | undefined;
  /** every size of the point as entered, put right and undone ones too */
  sizes: readonly SizeRow[];
  /** packing noted here */
  shims: readonly { takenOn: Day; shimMm: number }[];
  /** renewals whose size waits for an answer */
  renewalsQuestioned: readonly number[];
  /** day it is looked at */
  asOf: Day;
};

/** Everything the machine's page shows of one measuring point. */
export function pointSheet(from: PointSheetFrom): Sheet {
  const { point, details, series, forecast } = from;
  return {
    pointId: point.pointId,
    assemblyId: point.assemblyId,
    positionId: point.positionId,
    item: point.item,
    position: point.position,
    point: point.point,
    measures: details.measures,
    wears: point.wears,
    safety: point.safety,
    stations: details.stations,
    gaugeErrorMm: point.gaugeErrorMm,
    limits: series.limits,
    oversize: oversizeOn(point, from.asOf),
    mustStayStandard: point.mustStayStandard ?? false,
    stationRenewals: [...series.stationRenewals],
    shims: from.shims.map(({ takenOn, shimMm }) => ({ takenOn, shimMm })),
    role: from.role,
    forecast,
    visits: series.history.flatMap((visit) => visitSheet(visit, from)),
    renewals: renewalMarks(from),
    renewalsQuestioned: [...from.renewalsQuestioned],
    putRight: from.sizes.filter((row) => row.superseded && !row.undone).flatMap((row) => putRight(row, from)),
    ...curves(from),
  };
}

/** A visit without hours has no place on the axis; it stays in the record and in the table of sizes. */
function visitSheet(visit: PartVisit, { sizes, point }: PointSheetFrom): Visit[] {
  if (visit.axisHours === null || visit.partHours === null) return [];
  const rows = sizes.filter((row) => visit.stations.some(({ sizeIds }) => sizeIds.includes(row.id)));
  const named = (pick: (row: SizeRow) => string) =>
    [...new Set(rows.map(pick).filter((text) => text !== ''))].join(', ');
  return [
    {
      takenOn: visit.takenOn,
      machineHours: visit.axisHours,
      partHours: visit.partHours,
      // the size a renewal names is the new part's, as it was left
      event: visit.event === 'renewed' ? 'as-left' : visit.event,
      governingSizeMm: visit.governing?.sizeMm ?? null,
      errorSdMm: visit.governing?.errorSdMm ?? visit.stations[0]?.errorSdMm ?? point.gaugeErrorMm,
      stations: rows.map(({ id, station, sizeMm, parked }) => ({
        sizeId: id,
        station,
        sizeMm,
        parked,
        governs: !parked && visit.governing?.station === station,
      })),
      by: named((row) => row.by),
      gauge: named((row) => row.gauge),
    },
  ];
}

/** Where wear starts again, the first part's fitting among them. */
function renewalMarks({ series, machine }: PointSheetFrom): Renewal[] {
  const marks = series.renewals.flatMap(({ axisHours, takenOn, hoursKnown, kind, newSizeMm }): Renewal[] =>
    axisHours === null
      ? []
      : [
          {
            takenOn,
            machineHours: axisHours.middle,
            fromMachineHours: axisHours.low,
            toMachineHours: axisHours.high,
            known: hoursKnown,
            sizeMm: newSizeMm,
            kind,
          },
        ],
  );
  const start = series.presentStartMachineHours;
  if (series.present.ordinal > 0 || !start || !machine || machine.line.nodes.length === 0) return marks;
  // evenly spread between 0 and its first size: sd = width / sqrt(12)
  const half = start.sdHours * Math.sqrt(3);
  const first = {
    takenOn: dayOfPastHours(machine.line, start.hours),
    machineHours: start.hours,
    fromMachineHours: Math.max(0, start.hours - half),
    toMachineHours: start.hours + half,
    known: start.sdHours === 0,
    sizeMm: null,
    kind: null,
  };
  return [first, ...marks];
}

function putRight(row: SizeRow, { sizes, series, machine }: PointSheetFrom): PutRight[] {
  const next = sizes.find((other) => other.supersedesId === row.id && !other.undone);
  const beside = series.history.find((visit) => visit.takenOn === row.takenOn)?.axisHours;
  const machineHours = beside ?? (machine && machineHoursOn(machine.line, row.takenOn)?.hours);
  if (!next || machineHours == null) return [];
  return [
    {
      takenOn: row.takenOn,
      machineHours,
      sizeMm: row.sizeMm,
      putRightOn: day(next.madeAt.slice(0, 10)),
      newSizeMm: next.struck ? null : next.sizeMm,
    },
  ];
}

type Curves = Pick<Sheet, 'fitted' | 'fan'>;

/** A chart's curves take as long as its forecast: they are kept with it, and go when it is made anew. */
const drawn = new WeakMap<PointForecast, Curves>();

function curves(from: PointSheetFrom): Curves {
  const before = drawn.get(from.forecast);
  if (before) return before;
  const made = workedOutCurves(from);
  drawn.set(from.forecast, made);
  return made;
}

function workedOutCurves({
  law,
  joint,
  series,
  forecast,
  point,
  machine,
  settings,
}: PointSheetFrom): Pick<Sheet, 'fitted' | 'fan'> {
  const share = machine ? presentShare(machine.life, machine.line.asOf) : 0;
  if (!law || share <= 0) return { fitted: [], fan: [] };
  return wearCurves({ law, joint, series, forecast, wears: point.wears, share, settings });
}
