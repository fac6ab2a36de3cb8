import type { RingState } from '#core/axis/itemRing.ts';
import type { HoursAtLimit } from '#core/axis/pictureRange.ts';
import type { MachineSheet, PointSheet } from '#core/contract/machine.ts';
import { cautionText } from '#core/words/cautionText.ts';
import type { Writing } from '#core/words/quantityText.ts';
import { chartWords } from '#renderer/words/chartWords.ts';
import { findingText } from '#renderer/words/findingText.ts';
import { basisSentence, gaugeText, limitSourceText, measuredText } from '#renderer/words/machineWords.ts';
import { partNotes } from './partNotes.ts';
import type { PictureProps, PictureRow } from './pictureProps.ts';

export const ringOfRole = {
  'this-winter': 'now',
  'with-it': 'with-it',
  leave: 'leave',
  stop: 'stop',
  none: 'none',
} as const satisfies Record<PointSheet['role'], RingState>;

/** Where each bar stood when the page was opened. */
export type Earlier = ReadonlyMap<number, HoursAtLimit>;

/** What the picture draws of a machine. */
export function pictureOf(
  sheet: MachineSheet,
  chosenId: number | null,
  writing: Writing,
  earlier: Earlier = new Map(),
): Omit<PictureProps, 'onChoose' | 'onOpen'> {
  const points = pointsInOrder(sheet);
  const chosen = points.find((point) => point.pointId === chosenId) ?? null;
  return {
    nowHours: sheet.hours.machineHours,
    estimated: sheet.hours.estimated,
    hoursPerYear: sheet.hoursPerYear.middle,
    winters: sheet.winters.map(({ name, fromMachineHours, toMachineHours }) => ({
      name,
      fromHours: fromMachineHours,
      toHours: toMachineHours,
    })),
    planLineHours: sheet.planLineMachineHours,
    meterChanges: sheet.dialRows.flatMap((row) =>
      row.kind === 'new-meter' && !row.superseded && row.machineHours !== null ? [row.machineHours] : [],
    ),
    rows: points.map((point, i) => ({
      ...rowOf(point, points, i, earlier),
      ...(opensAssembly(points, i) && severalAssemblies(points) && { assemblyHead: assemblyName(sheet, point) }),
      elsewhere: chosen !== null && point.assemblyId !== chosen.assemblyId,
    })),
    chosenId: chosen?.pointId ?? null,
    chosen: chosen && { ...chosen, doNotUse: stopAt(chosen) !== null, note: noteOf(chosen, writing) },
    sketch: sheet.assemblies.find(({ assemblyId }) => assemblyId === chosen?.assemblyId)?.sketch ?? null,
    writing,
  };
}

/** Assembly by assembly, as they sit on the machine; within one by item number. */
export function pointsInOrder({ assemblies, points }: Pick<MachineSheet, 'assemblies' | 'points'>): PointSheet[] {
  const place = new Map(assemblies.map(({ assemblyId }, i) => [assemblyId, i]));
  return points
    .map((point, i) => ({ point, i, at: place.get(point.assemblyId) ?? assemblies.length }))
    .sort((a, b) => a.at - b.at || a.point.item - b.point.item || a.i - b.i)
    .map(({ point }) => point);
}

/** The point a machine's page opens on: what reaches its limit first by deciding hours, else a finding, else the first. */
export function firstChosen(sheet: Pick<MachineSheet, 'assemblies' | 'points'>): number | null {
  const points = pointsInOrder(sheet);
  const soonest = points
    .filter((point) => point.forecast.decidingHoursLeft !== null)
    .sort((a, b) => (a.forecast.decidingHoursLeft ?? 0) - (b.forecast.decidingHoursLeft ?? 0))[0];
  return (soonest ?? points.find((point) => point.role === 'stop') ?? points[0])?.pointId ?? null;
}

function rowOf(point: PointSheet, points: readonly PointSheet[], at: number, earlier: Earlier): PictureRow {
  const { forecast } = point;
  const before = points[at - 1];
  return {
    pointId: point.pointId,
    item: point.item,
    position: point.position,
    point: nameNeeded(point, points) ? point.point : '',
    state: ringOfRole[point.role],
    opensGroup:
      before !== undefined &&
      (before.assemblyId !== point.assemblyId || before.forecast.partClass !== forecast.partClass),
    atLimit: forecast.machineHoursAtLimit,
    before: movedFrom(earlier.get(point.pointId), forecast.machineHoursAtLimit),
    hoursLeft: forecast.hoursLeft,
    decides: forecast.decides,
    ownReadings: forecast.ownReadings,
    likeParts: forecast.likeParts,
    pastLimit: pastLimit(point),
    doNotUse: stopAt(point),
    renewals: point.renewals.map((renewal) => ({
      hours: renewal.machineHours,
      known: renewal.known,
      fromHours: renewal.fromMachineHours,
      toHours: renewal.toMachineHours,
    })),
    readings: [...new Set(point.visits.map((visit) => visit.machineHours))],
  };
}

const opensAssembly = (points: readonly PointSheet[], at: number): boolean =>
  points[at - 1]?.assemblyId !== points[at]?.assemblyId;

const severalAssemblies = (points: readonly PointSheet[]): boolean =>
  points.some((point) => point.assemblyId !== points[0]?.assemblyId);

const assemblyName = ({ assemblies }: MachineSheet, point: PointSheet): string =>
  assemblies.find(({ assemblyId }) => assemblyId === point.assemblyId)?.name ?? '';

/** Where a position has several points, its own name does not tell them apart. */
const nameNeeded = (point: PointSheet, points: readonly PointSheet[]): boolean =>
  points.some((other) => other !== point && other.positionId === point.positionId);

/** The finding that stands in the forecast's place. */
export function stopAt(point: PointSheet): string | null {
  if (point.role !== 'stop') return null;
  const open = point.forecast.openFindings.find((finding) => finding.severity === 'do-not-use');
  return open ? findingText({ kind: open.finding, note: open.note }) : '';
}

function pastLimit({ forecast, visits }: PointSheet): PictureRow['pastLimit'] {
  if (forecast.pastLimitMm === null) return null;
  const last = visits.findLast((visit) => visit.governingSizeMm !== null);
  const readAtHours = last?.machineHours ?? forecast.machineHoursAtLimit.middle;
  return readAtHours === null || readAtHours === undefined ? null : { mm: forecast.pastLimitMm, readAtHours };
}

/** Less than this a bar did not move: nobody sees it, and estimates breathe [h]. */
const MOVED_HOURS = 1;

function movedFrom(was: HoursAtLimit | undefined, is: HoursAtLimit): HoursAtLimit | null {
  if (!was || was.low === null) return null;
  const moved = (['low', 'middle', 'high'] as const).some((figure) =>
    was[figure] === null || is[figure] === null
      ? was[figure] !== is[figure]
      : Math.abs(was[figure] - is[figure]) >= MOVED_HOURS,
  );
  return moved ? was : null;
}

/** Beside the chart, in order of weight: what it rests on, how fast it goes, how it is measured, and what to doubt. */
function noteOf(point: PointSheet, writing: Writing): string[] {
  const { forecast } = point;
  return [
    ...partNotes(point, writing),
    basisSentence(forecast),
    chartWords.rate(forecast.ratePer1000hMm, writing),
    measuredText(point),
    point.visits.length > 0 ? gaugeText(point, writing) : null,
    ...forecast.cautionFacts.map(({ code, facts }) => cautionText(code, facts, writing)),
    limitSourceText(point.limits),
  ].filter((line): line is string => Boolean(line));
}

/** Sizes questioned and not answered, point by point in the order of the page. */
export const questionedPoints = (
  sheet: Pick<MachineSheet, 'assemblies' | 'points'>,
): { pointId: number; count: number }[] =>
  pointsInOrder(sheet)
    .map((point) => ({ pointId: point.pointId, count: questionedIn(point) }))
    .filter(({ count }) => count > 0);

/** Sizes of a point that wait for an answer: measured, and of parts put in. */
export const questionedIn = ({
  visits,
  renewalsQuestioned,
}: Pick<PointSheet, 'visits' | 'renewalsQuestioned'>): number =>
  visits.flatMap((visit) => visit.stations).filter((station) => station.parked).length + renewalsQuestioned.length;

/** Own readings of all points, and like parts of their classes, each class once. */
export function restsOn(points: readonly PointSheet[]): { own: number; like: number } {
  const likeByClass = new Map<string, number>();
  for (const { forecast } of points) {
    likeByClass.set(forecast.partClass, Math.max(forecast.likeParts, likeByClass.get(forecast.partClass) ?? 0));
  }
  return {
    own: points.reduce((sum, point) => sum + point.forecast.ownReadings, 0),
    like: [...likeByClass.values()].reduce((sum, parts) => sum + parts, 0),
  };
}
