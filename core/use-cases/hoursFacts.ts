import type { z } from 'zod';
import type { MachineSheet, zDialRow } from '../contract/machine.ts';
import { USUAL_SOURCE_ERROR } from '../reading/gatheredHours.ts';
import { presentShare, presentWorkType } from '../reading/workedHours.ts';
import { type DialRow, dialRowsOf } from '../record/dialStore.ts';
import { hoursSourceRowsOf } from '../record/hoursSourceStore.ts';
import { machineNames } from '../record/machineStore.ts';
import { readMeter } from '../record/meterStore.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import { workShareRowsOf } from '../record/workShareStore.ts';
import { hoursSourceOn } from '../shop/machineLife.ts';
import type { MachineHoursAndUse } from '../way/shopHours.ts';
import type { ShopSeries } from '../way/shopSeries.ts';
import { rowOfPresentMeter } from './hoursMeter.ts';

type HoursFacts = Pick<
  MachineSheet,
  'meter' | 'workShare' | 'workType' | 'workShares' | 'hoursSources' | 'pulls' | 'dialRows'
>;

/** All that a machine's hours rest on: its meter, what it showed, what else tells its hours, and how much of them is work. */
export function hoursFacts(record: ReadableRecord, shop: ShopSeries, machineId: number): HoursFacts {
  const machine = shop.hours.ofMachine(machineId);
  const rows = dialRowsOf(record, machineId).filter(({ undone }) => !undone);
  const names = machineNames(record);
  const meter = readMeter(record, machineId);
  const fitted = rowOfPresentMeter(rows);
  return {
    meter: {
      digits: meter?.digits ?? null,
      hoursBefore: meter?.hoursBefore ?? null,
      hoursPerDialHour: fitted?.hoursPerDialHour ?? 1,
      clockReason: fitted?.hoursPerDialHour == null ? '' : fitted.reason,
    },
    workShare: machine ? presentShare(machine.life, shop.asOf) : 1,
    workType: (machine && presentWorkType(machine.life, shop.asOf)) ?? '',
    workShares: workShareRowsOf(record, machineId).map(({ id, fromOn, share, workType, ...row }) => ({
      workShareId: id,
      from: fromOn,
      share,
      workType: workType ?? '',
      ...historyOf(row),
    })),
    hoursSources: hoursSourceRowsOf(record, machineId).map(
      ({ id, fromOn, kind, pullerId, share, hoursPerYear, errorShare, ...row }) => ({
        hoursSourceId: id,
        from: fromOn,
        kind,
        puller: pullerId === null ? null : { machineId: pullerId, name: names.get(pullerId) ?? '' },
        share,
        hoursPerYear,
        errorShare: errorShare ?? USUAL_SOURCE_ERROR,
        ...historyOf(row),
      }),
    ),
    pulls: shop.life.machines
      .filter(({ hoursSources = [] }) => pullerOn(hoursSources, shop.asOf) === machineId)
      .map(({ machineId: id, name }) => ({ machineId: id, name })),
    dialRows: rows.map((row) => dialSheet(row, machine)),
  };
}

function pullerOn(sources: Parameters<typeof hoursSourceOn>[0], asOf: ShopSeries['asOf']): number | null {
  const source = hoursSourceOn(sources, asOf);
  return source?.kind === 'pulled' ? source.pullerId : null;
}

const historyOf = (row: { madeAt: string; madeBy: string; reason: string; superseded: boolean; struck: boolean }) => ({
  madeAt: row.madeAt,
  madeBy: row.madeBy,
  reason: row.reason,
  superseded: row.superseded || row.struck,
  struck: row.struck,
});

/** A row of the meter's history, put right or not, at the machine hours it stands for. */
function dialSheet(row: DialRow, machine: MachineHoursAndUse | undefined): z.infer<typeof zDialRow> {
  const node = machine?.line.nodes.find(({ eventId }) => eventId === row.id);
  return {
    dialReadingId: row.id,
    takenOn: row.takenOn,
    kind: row.kind,
    dialHours: row.dialHours,
    newDialHours: row.newDialHours,
    errorHours: row.errorHours,
    machineHours: node?.machineHours ?? null,
    sdHours: node ? Math.sqrt(node.ownVariance + node.driftVariance) : 0,
    saidBy: row.saidBy,
    hoursPerDialHour: row.hoursPerDialHour,
    ...historyOf(row),
    cautions: row.question === null ? [] : [row.question],
  };
}
