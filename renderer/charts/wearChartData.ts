import { type CurvePoint, fanToLimit } from '#core/axis/fan.ts';
import type { HoursScale } from '#core/axis/scale.ts';
import { type WearChart, wearChart } from '#core/axis/wearChart.ts';
import { type LifePoint, wearLives } from '#core/axis/wearLives.ts';
import type { PointSheet } from '#core/contract/machine.ts';
import { sizeFigure, unitMmOf, type Writing } from '#core/words/quantityText.ts';
import { chartWords } from '#renderer/words/chartWords.ts';

/** Of a measuring point's sheet, what its wear chart shows. */
export type ChartedPoint = Pick<
  PointSheet,
  | 'item'
  | 'position'
  | 'point'
  | 'wears'
  | 'limits'
  | 'visits'
  | 'renewals'
  | 'putRight'
  | 'fitted'
  | 'fan'
  | 'gaugeErrorMm'
> & {
  forecast: Pick<PointSheet['forecast'], 'machineHoursAtLimit' | 'decides' | 'ownReadings' | 'pastLimitMm'>;
  /** no forecast while a finding forbids use: readings and limits stay, bar and fan do not */
  doNotUse: boolean;
};

/** A slice of a band, as the chart library takes it: hours, and sizes from lower to upper. */
export type BandSlice = { hours: number; span: [number, number]; middle: number | null };

export type WearChartData = {
  chart: WearChart;
  /** readings of earlier parts joined, and of the present one where nothing was fitted to them; between two parts the line is lifted */
  joined: { hours: number; size: number | null }[];
  fitted: BandSlice[];
  fan: BandSlice[];
};

/** Everything the wear chart draws, in hours and millimetres and as shapes on the shared hours scale. */
export function wearChartData(
  point: ChartedPoint,
  on: { hours: HoursScale; heightPx: number; nowHours: number | null; writing: Writing },
): WearChartData {
  const lives = wearLives(
    point.visits.map((visit) => ({
      machineHours: visit.machineHours,
      sizeMm: visit.governingSizeMm,
      asLeft: visit.event === 'as-left',
    })),
    point.renewals.map((renewal) => ({
      machineHours: renewal.machineHours,
      known: renewal.known,
      sizeMm: renewal.sizeMm,
    })),
  );
  const fan = point.doNotUse ? [] : fanToLimit(point.fan, point.limits.renewAtMm, point.wears);
  const presentFrom = point.renewals.at(-1)?.machineHours ?? Number.NEGATIVE_INFINITY;
  const isPresent = (life: LifePoint[]) => (life[0]?.machineHours ?? 0) >= presentFrom;
  return {
    chart: wearChart({
      hours: on.hours,
      heightPx: on.heightPx,
      wears: point.wears,
      limits: point.limits,
      readings: readingsOf(point, on.writing),
      putRight: putRightOf(point, on.writing),
      curveSizesMm: [
        ...point.fitted.flatMap((p) => [p.low, p.high]),
        ...fan.flatMap((slice) => [slice.low, slice.high]),
      ],
      unitMm: unitMmOf(on.writing),
      nowHours: on.nowHours,
      bar:
        point.doNotUse || point.forecast.pastLimitMm !== null
          ? null
          : {
              ...point.forecast.machineHoursAtLimit,
              decides: point.forecast.decides,
              ownReadings: point.forecast.ownReadings,
            },
      labelPx: 14,
    }),
    joined: joinedUp(lives.filter((life) => !isPresent(life) || point.fitted.length <= 1)),
    fitted: bandOf(point.fitted),
    fan: fan.map((slice) => ({ hours: slice.machineHours, span: [slice.low, slice.high], middle: slice.middle })),
  };
}

const joinedUp = (lives: readonly LifePoint[][]): WearChartData['joined'] =>
  lives.flatMap((life, place) => [
    ...(place > 0 ? [{ hours: life[0]?.machineHours ?? 0, size: null }] : []),
    ...life.map(({ machineHours, sizeMm }) => ({ hours: machineHours, size: sizeMm })),
  ]);

const bandOf = (curve: readonly CurvePoint[]): BandSlice[] =>
  curve.map((p) => ({ hours: p.machineHours, span: [p.low, p.high], middle: p.middle }));

/** Every station read; only the governing one is named by its size. */
function readingsOf(point: ChartedPoint, writing: Writing) {
  return point.visits.flatMap((visit) =>
    visit.stations.map((station) => ({
      machineHours: visit.machineHours,
      sizeMm: station.sizeMm,
      errorSdMm: station.governs ? visit.errorSdMm : 0,
      governs: station.governs && !station.parked,
      questioned: station.parked,
      text: station.governs || station.parked ? sizeFigure(station.sizeMm, 0.01, writing) : '',
    })),
  );
}

const putRightOf = (point: ChartedPoint, writing: Writing) =>
  point.putRight.map((old) => ({
    machineHours: old.machineHours,
    sizeMm: old.sizeMm,
    newSizeMm: old.newSizeMm,
    text: chartWords.putRight(sizeFigure(old.sizeMm, 0.01, writing), old.putRightOn),
  }));
