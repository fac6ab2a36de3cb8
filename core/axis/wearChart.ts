import { type IntervalBar, intervalBar } from './intervalBar.ts';
import { type Box, type LabelSide, type PlacedLabel, placeLabels, spreadLabels } from './labels.ts';
import { clampToScale, type HoursScale, hoursToPx, onScale, type SizeScale, sizeScale, sizeToPx } from './scale.ts';
import { type SizeTick, sizeTicks } from './sizeTicks.ts';
import { textWidth } from './textWidth.ts';

export type LimitKind = 'new-size' | 'renew-at' | 'reject-at';
export type ChartLimits = { newSizeMm: number; renewAtMm: number | null; rejectAtMm: number | null };

/** A size taken; `text` is its label as the shop writes it, empty for none. */
export type ChartReading = {
  machineHours: number;
  sizeMm: number;
  /** 1 sd [mm]; the whisker shows twice that either way, as the gauge list does */
  errorSdMm: number;
  governs: boolean;
  /** questioned and not answered: drawn in its own way, kept out of the forecast */
  questioned: boolean;
  text: string;
};

/** An old reading that was put right: struck, joined to the one that took its place. */
export type ChartPutRight = { machineHours: number; sizeMm: number; newSizeMm: number | null; text: string };

export type WearChartNeeds = {
  hours: HoursScale;
  heightPx: number;
  wears: 'down' | 'up';
  limits: ChartLimits;
  readings: readonly ChartReading[];
  putRight: readonly ChartPutRight[];
  /** sizes the curves run through, so that they are on the scale [mm] */
  curveSizesMm: readonly number[];
  /** what the figures beside the sizes count in [mm]: 1, or an inch */
  unitMm: number;
  nowHours: number | null;
  bar: {
    low: number | null;
    middle: number | null;
    high: number | null;
    decides: 'low' | 'middle';
    ownReadings: number;
  } | null;
  labelPx: number;
};

export type LimitShape = { kind: LimitKind; sizeMm: number; y: number; labelY: number };
export type ReadingShape = {
  x: number;
  y: number;
  /** ends of the whisker */
  y0: number;
  y1: number;
  governs: boolean;
  questioned: boolean;
  text: string;
  label: PlacedLabel | null;
};
export type PutRightShape = { x: number; y: number; newY: number | null; text: string; label: PlacedLabel };

export type WearChart = {
  size: SizeScale;
  ticks: SizeTick[];
  tickDecimals: number;
  limits: LimitShape[];
  readings: ReadingShape[];
  putRight: PutRightShape[];
  nowX: number | null;
  /** the bar hung at the limit line: where the fan meets it. Drawn about y = `y` */
  bar: { y: number; figuresY: number; shape: IntervalBar; lowX: number; middleX: number | null; highX: number } | null;
};

/** Clear at top; at the foot, where renewals stand; and more on the side where the bar hangs beyond the limit [px]. */
const CLEAR_PX = 24;
const FOOT_PX = 30;
const BAR_ROOM_PX = 34;
const BAR_OFF_LIMIT_PX = 12;
const FIGURES_OFF_BAR_PX = 21;
/** A screen's whisker is U = 2 sd either way. */
const WHISKER_SDS = 2;

/** The wear chart of one measuring point, on the hours of the axis above it. */
export function wearChart(needs: WearChartNeeds): WearChart {
  const size = chartSizeScale(needs);
  const { ticks, decimals } = sizeTicks(size, needs.unitMm);
  const limits = limitShapes(needs, size);
  const bar = barShape(needs, size);
  const readings = readingShapes(needs, size);
  const nowX =
    needs.nowHours !== null && onScale(needs.hours, needs.nowHours) ? hoursToPx(needs.hours, needs.nowHours) : null;
  const taken = takenBoxes({ limits, readings, nowX, bar }, needs);
  const putRight = putRightShapes(needs, size, taken);
  const labelled = labelReadings(readings, needs, [...taken, ...putRight.map((shape) => shape.label)]);
  return { size, ticks, tickDecimals: decimals, limits, readings: labelled, putRight, nowX, bar };
}

function chartSizeScale({ limits, readings, putRight, curveSizesMm, wears, heightPx }: WearChartNeeds): SizeScale {
  const sizes = [
    limits.newSizeMm,
    ...[limits.renewAtMm, limits.rejectAtMm].filter((mm) => mm !== null),
    ...readings.flatMap((r) => [r.sizeMm - WHISKER_SDS * r.errorSdMm, r.sizeMm + WHISKER_SDS * r.errorSdMm]),
    ...putRight.map((p) => p.sizeMm),
    ...curveSizesMm,
  ];
  const least = Math.min(...sizes);
  const most = Math.max(...sizes);
  const spanMm = Math.max(most - least, 0.2);
  const beyondRenew = limits.rejectAtMm === null ? BAR_ROOM_PX : 0;
  const topPx = CLEAR_PX + (wears === 'up' ? beyondRenew : 0);
  const bottomPx = heightPx - FOOT_PX - (wears === 'down' ? beyondRenew : 0);
  const mmPerPx = spanMm / Math.max(20, bottomPx - topPx);
  return sizeScale({
    fromMm: least - (heightPx - bottomPx) * mmPerPx,
    toMm: least + spanMm + topPx * mmPerPx,
    fromPx: heightPx,
    toPx: 0,
  });
}

function limitShapes({ limits, labelPx, heightPx }: WearChartNeeds, size: SizeScale): LimitShape[] {
  const all: [LimitKind, number | null][] = [
    ['new-size', limits.newSizeMm],
    ['renew-at', limits.renewAtMm],
    ['reject-at', limits.rejectAtMm],
  ];
  const given = all.flatMap(([kind, sizeMm]) => (sizeMm === null ? [] : [{ kind, sizeMm, y: sizeToPx(size, sizeMm) }]));
  const labelYs = spreadLabels(
    given.map((limit) => limit.y),
    labelPx + 3,
    [labelPx / 2, heightPx - labelPx / 2],
  );
  return given.map((limit, i) => ({ ...limit, labelY: labelYs[i] ?? limit.y }));
}

function barShape({ bar, hours, limits, wears, nowHours }: WearChartNeeds, size: SizeScale): WearChart['bar'] {
  if (!bar || bar.low === null || limits.renewAtMm === null) return null;
  const beyond = wears === 'down' ? 1 : -1;
  const y = sizeToPx(size, limits.renewAtMm) + beyond * BAR_OFF_LIMIT_PX;
  const shape = intervalBar({ ...bar, nowHours: nowHours ?? hours.fromHours }, hours);
  return {
    y,
    figuresY: y + beyond * FIGURES_OFF_BAR_PX + (beyond > 0 ? 0 : 6),
    shape,
    lowX: clampToScale(hours, bar.low),
    middleX: shape.middleX,
    highX: clampToScale(hours, bar.high ?? Number.POSITIVE_INFINITY),
  };
}

function readingShapes({ readings, hours }: WearChartNeeds, size: SizeScale): ReadingShape[] {
  return readings
    .filter((reading) => onScale(hours, reading.machineHours))
    .map((reading) => ({
      x: hoursToPx(hours, reading.machineHours),
      y: sizeToPx(size, reading.sizeMm),
      y0: sizeToPx(size, reading.sizeMm + WHISKER_SDS * reading.errorSdMm),
      y1: sizeToPx(size, reading.sizeMm - WHISKER_SDS * reading.errorSdMm),
      governs: reading.governs,
      questioned: reading.questioned,
      text: reading.text,
      label: null,
    }));
}

type Standing = Pick<WearChart, 'limits' | 'readings' | 'nowX' | 'bar'>;

/** What labels must not cover: the margins, limit lines, dots with their whiskers, the line of now, the hanging bar. */
function takenBoxes({ limits, readings, nowX, bar }: Standing, { hours, heightPx }: WearChartNeeds): Box[] {
  const margins = [
    { x: hours.fromPx - 1e4, y: 0, width: 1e4, height: heightPx },
    { x: hours.toPx, y: 0, width: 1e4, height: heightPx },
    { x: hours.fromPx, y: heightPx - FOOT_PX / 2, width: 1e4, height: FOOT_PX / 2 },
  ];
  const dots = readings.map((r) => ({
    x: r.x - 5,
    y: Math.min(r.y0, r.y - 5),
    width: 10,
    height: Math.max(10, r.y1 - r.y0),
  }));
  const lines = limits.map((limit) => ({ x: -1e4, y: limit.y - 1, width: 2e4, height: 2 }));
  const now = nowX === null ? [] : [{ x: nowX - 2, y: 0, width: 4, height: heightPx }];
  const hanging = bar
    ? [{ x: bar.lowX - 20, y: Math.min(bar.y, bar.figuresY) - 8, width: bar.highX - bar.lowX + 40, height: 36 }]
    : [];
  return [...margins, ...dots, ...lines, ...now, ...hanging];
}

/** Labels hang clear of the falling (or rising) line that joins the readings: on its empty side first. */
const sidesFor = (wears: 'down' | 'up'): LabelSide[] =>
  wears === 'down'
    ? ['below-left', 'above-right', 'above-left', 'below-right', 'right', 'left']
    : ['above-left', 'below-right', 'below-left', 'above-right', 'right', 'left'];

function labelReadings(
  readings: readonly ReadingShape[],
  needs: WearChartNeeds,
  taken: readonly Box[],
): ReadingShape[] {
  const labelled = readings.filter((reading) => reading.text !== '');
  const height = needs.labelPx;
  const boxes = placeLabels(
    labelled.map((r) => ({
      x: r.x,
      y: r.y,
      width: textWidth(r.text, needs.labelPx),
      height,
      sides: sidesFor(needs.wears),
    })),
    taken,
  );
  const boxOf = new Map(labelled.map((reading, i) => [reading, boxes[i] ?? null]));
  return readings.map((reading) => ({ ...reading, label: boxOf.get(reading) ?? null }));
}

function putRightShapes(
  { putRight, hours, labelPx }: WearChartNeeds,
  size: SizeScale,
  taken: readonly Box[],
): PutRightShape[] {
  const shown = putRight.filter((p) => onScale(hours, p.machineHours));
  const points = shown.map((p) => ({
    x: hoursToPx(hours, p.machineHours),
    y: sizeToPx(size, p.sizeMm),
    width: textWidth(p.text, labelPx),
    height: labelPx,
    sides: ['left', 'right', 'below-right', 'above-right'] satisfies LabelSide[],
  }));
  const labels = placeLabels(points, taken);
  return shown.flatMap((p, i) => {
    const [point, label] = [points[i], labels[i]];
    if (!point || !label) return [];
    const newY = p.newSizeMm === null ? null : sizeToPx(size, p.newSizeMm);
    return [{ x: point.x, y: point.y, newY, text: p.text, label }];
  });
}
