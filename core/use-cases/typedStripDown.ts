import type { StripDownDraft } from '../contract/stripDown.ts';
import { RefusedError } from '../outcome.ts';
import { positionsOf } from '../record/assemblyStore.ts';
import { type GaugeOnRecord, listGauges } from '../record/gaugeStore.ts';
import type { SizeJudgement } from '../series/judgeSize.ts';
import type { PointLife, Size } from '../shop/measuringPoint.ts';
import type { Day } from '../units/day.ts';
import { pastDay, refuseUnknownPhotos } from './asked.ts';
import { type Context, recordOf } from './context.ts';
import { judgeAmongOthers } from './laterDoubts.ts';
import { type BenchPoint, pointsOnMachine } from './pointsOnMachine.ts';
import { hoursOfMachine, seriesNow } from './seriesNow.ts';

/** A strip-down as typed, with everything it names found in the record. */
export type TypedStripDown = {
  draft: StripDownDraft;
  takenOn: Day;
  points: ReadonlyMap<number, BenchPoint>;
  /** of each size of the draft, in its order */
  sizes: readonly TypedSize[];
};

export type TypedSize = { point: BenchPoint; size: Size; gauge: GaugeOnRecord | null };

/** @throws RefusedError not-as-expected (a day to come), and as namedInDraft */
export function typedStripDown(context: Context, draft: StripDownDraft): TypedStripDown {
  pastDay(context, draft.takenOn, 'takenOn');
  return namedInDraft(context, draft);
}

/**
 * Finds what a draft names, on whatever day.
 * @throws RefusedError unknown-machine, unknown-point, unknown-gauge, unknown-assembly, unknown-position, renewed-twice
 */
export function namedInDraft(context: Context, draft: StripDownDraft): TypedStripDown {
  const takenOn = draft.takenOn as Day; // the contract has read it as a day
  hoursOfMachine(context, draft.machineId);
  const points = pointsOnMachine(context, draft.machineId, takenOn);
  const gauges = new Map(listGauges(recordOf(context)).map((gauge) => [gauge.id, gauge]));
  const pointAt = (pointId: number, path: string): BenchPoint => {
    const point = points.get(pointId);
    if (!point) throw new RefusedError({ code: 'unknown-point', facts: { path, pointId } });
    return point;
  };
  refuseOddRenewals(draft, pointAt);
  refuseOddFindings(context, draft, points);
  const sizes = draft.sizes.map((entry, place): TypedSize => {
    const point = pointAt(entry.pointId, `sizes.${place}.pointId`);
    const gauge = entry.gaugeId === null ? null : (gauges.get(entry.gaugeId) ?? null);
    if (entry.gaugeId !== null && !gauge) {
      const facts = { path: `sizes.${place}.gaugeId`, gaugeId: entry.gaugeId };
      throw new RefusedError({ code: 'unknown-gauge', facts });
    }
    return { point, gauge, size: sizeOf(draft, takenOn, place, gauge) };
  });
  return { draft, takenOn, points, sizes };
}

function sizeOf(draft: StripDownDraft, takenOn: Day, place: number, gauge: GaugeOnRecord | null): Size {
  const { station, sizeMm, event } = draft.sizes[place]!;
  return {
    id: -1 - place, // not in the record yet
    takenOn,
    dialHours: draft.dialHours,
    station,
    sizeMm,
    event,
    gaugeErrorMm: gauge?.errorMm ?? null,
    gaugeStepMm: gauge?.stepMm ?? 0,
    parked: false,
  };
}

function refuseOddRenewals({ renewals }: StripDownDraft, pointAt: (pointId: number, path: string) => unknown): void {
  const renewed = new Set<number>();
  for (const [place, { pointId }] of renewals.entries()) {
    pointAt(pointId, `renewals.${place}.pointId`);
    if (renewed.has(pointId))
      throw new RefusedError({ code: 'renewed-twice', facts: { path: `renewals.${place}.pointId`, pointId } });
    renewed.add(pointId);
  }
}

function refuseOddFindings(
  context: Context,
  { findings }: StripDownDraft,
  points: ReadonlyMap<number, BenchPoint>,
): void {
  const assemblyIds = new Set([...points.values()].map(({ life }) => life.assemblyId));
  for (const [place, { assemblyId, positionId, photoIds }] of findings.entries()) {
    const path = `findings.${place}`;
    refuseUnknownPhotos(recordOf(context), photoIds, `${path}.photoIds`);
    if (!assemblyIds.has(assemblyId))
      throw new RefusedError({ code: 'unknown-assembly', facts: { path: `${path}.assemblyId`, assemblyId } });
    if (positionId !== null && !positionsOf(recordOf(context), assemblyId).some(({ id }) => id === positionId))
      throw new RefusedError({ code: 'unknown-position', facts: { path: `${path}.positionId`, positionId } });
  }
}

/** What is odd about the sizes typed, by their place in the draft: each against the record and the others of its visit. */
export function judgeTyped(context: Context, { draft, takenOn, sizes }: TypedStripDown): Map<number, SizeJudgement> {
  const { life } = seriesNow(context);
  const tolerances = new Map(life.partClasses.map(({ name, newSizeTolMm }) => [name, newSizeTolMm]));
  const judged = new Map<number, SizeJudgement>();
  for (const [point, typed] of Map.groupBy(sizes, (one) => one.point)) {
    const renewals = draft.renewals.filter(({ pointId }) => pointId === point.life.pointId);
    const withTyped: PointLife = {
      ...point.life,
      sizes: [...point.life.sizes, ...typed.map(({ size }) => size)].sort(byDay),
      renewals: [
        ...point.life.renewals,
        ...renewals.map(({ hoursKnown, sizeMm }) => ({
          id: -1,
          takenOn,
          dialHours: draft.dialHours,
          hoursKnown,
          sizeMm,
        })),
      ].sort(byDay),
    };
    const found = judgeAmongOthers(withTyped, point.life, tolerances.get(point.life.partClass) ?? null);
    for (const { size } of typed) {
      const judgement = found.get(size.id);
      if (judgement) judged.set(-1 - size.id, judgement);
    }
  }
  return judged;
}

const byDay = (a: { takenOn: Day }, b: { takenOn: Day }): number =>
  a.takenOn < b.takenOn ? -1 : a.takenOn > b.takenOn ? 1 : 0;
