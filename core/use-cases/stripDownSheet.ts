import type { z } from 'zod';
import type { Handler } from '../contract/operation.ts';
import type { zSheetRow } from '../contract/stripDown.ts';
import { type stripDownSheet, zStripDownDraft } from '../contract/stripDown.ts';
import { machineHoursOn, presentDial } from '../reading/machineHours.ts';
import { readDraft } from '../record/draftStore.ts';
import { type GaugeOnRecord, listGauges } from '../record/gaugeStore.ts';
import { stripDownsOf } from '../record/stripDownStore.ts';
import { findingIsOpen } from '../shop/finding.ts';
import { oversizeOn } from '../shop/oversize.ts';
import { dialGoneBy } from '../way/dialGoneBy.ts';
import type { ShopSeries } from '../way/shopSeries.ts';
import { type Context, recordOf } from './context.ts';
import { findingSheet } from './findingSheet.ts';
import { type BenchPoint, pointsOnMachine } from './pointsOnMachine.ts';
import { hoursOfMachine, seriesAround } from './seriesNow.ts';
import { settleAhead } from './shopNow.ts';

export const stripDownSheetHandler: Handler<typeof stripDownSheet, Context> = (context, { machineId }) => {
  const record = recordOf(context);
  const machine = hoursOfMachine(context, machineId);
  const { line } = machine;
  const today = context.today();
  const around = seriesAround(context, machineId);
  const dial = dialGoneBy(around.hours, machine, today);
  const gauges = listGauges(record).filter(({ active }) => active);
  const { life } = around;
  const points = [...pointsOnMachine(context, machineId, today).values()].filter(
    (point) => point.life.machineId === machineId,
  );
  const hours = machineHoursOn(line, today);
  settleAhead(context, machineId);
  const kept = readDraft(record, machineId);
  const draft = zStripDownDraft.safeParse(kept?.draft);
  return {
    rows: points.map((point) => sheetRow(context, around, point, gauges)),
    openFindings: life.findings
      .filter((finding) => finding.machineId === machineId && findingIsOpen(finding, today))
      .map((finding) => findingSheet(finding, life)),
    draft: draft.success ? draft.data : null,
    draftKeptAt: kept?.keptAt ?? null,
    lastStripDownId: stripDownsOf(record, machineId).reduce((last, { id }) => Math.max(last, id), 0) || null,
    dialHours: hours && (presentDial(line, hours.hours)?.dialHours ?? null),
    dialMachine: dial && dial.of.machineId !== machineId ? dial.of.name : null,
  };
};

/** A row of the grid: what is measured, with what, by which limits, and the last sizes there. */
export function sheetRow(
  context: Context,
  around: ShopSeries,
  { life, details }: BenchPoint,
  gauges: readonly GaugeOnRecord[],
) {
  const series = around.ofPoint(life);
  const gauge = likelyGauge(details, gauges);
  const { pointId, assemblyId, positionId, assembly, item, position, point, wears, safety } = life;
  const row: z.input<typeof zSheetRow> = {
    pointId,
    assemblyId,
    positionId,
    assembly,
    item,
    position,
    point,
    measures: details.measures,
    wears,
    safety,
    limits: series.limits,
    oversize: oversizeOn(life, context.today()),
    mustStayStandard: life.mustStayStandard ?? false,
    gaugeId: gauge?.id ?? null,
    gauge: gauge?.name ?? '',
    gaugeErrorMm: gauge?.errorMm ?? life.gaugeErrorMm,
    decimals: decimalsOf(gauge?.stepMm ?? 0),
    stations: stationsOf(life, details).map((station) => {
      const last = series.lastByStation[station];
      return { station, lastSizeMm: last?.sizeMm ?? null, lastOn: last?.takenOn ?? null };
    }),
  };
  return row;
}

/** Stations the point was laid out with, and any it was read at besides; a point with none has one, without a name. */
function stationsOf({ sizes }: BenchPoint['life'], { stations }: BenchPoint['details']): string[] {
  const read = sizes.map(({ station }) => station).filter((station) => station !== '' || stations.length === 0);
  const all = [...new Set([...stations, ...read])];
  return all.length > 0 ? all : [''];
}

/** The gauge for what is measured whose error is nearest to the point's own; the shop may take another. */
function likelyGauge({ measures, gaugeErrorMm }: BenchPoint['details'], gauges: readonly GaugeOnRecord[]) {
  const far = (gauge: GaugeOnRecord) => Math.abs(Math.log(gauge.errorMm / gaugeErrorMm));
  return gauges.filter((gauge) => gauge.measures.includes(measures)).sort((a, b) => far(a) - far(b))[0];
}

/** Decimals a gauge's reading step gives: 0.05 two, 0.1 one; two when it is not known. */
const decimalsOf = (stepMm: number): number =>
  stepMm > 0 ? Math.min(4, Math.max(0, Math.ceil(-Math.log10(stepMm) - 1e-9))) : 2;
