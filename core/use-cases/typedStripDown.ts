import type { StripDownDraft } from '../contract/stripDown.ts';
import { type Caution, RefusedError } from '../outcome.ts';
import { positionsOf } from '../record/assemblyStore.ts';
import { listClasses } from '../record/classStore.ts';
import { type GaugeOnRecord, listGauges } from '../record/gaugeStore.ts';
import { judgeRenewal } from '../series/judgeRenewal.ts';
import type { SizeJudgement } from '../series/judgeSize.ts';
import type { PointLife, PointLimits, Renewal, Size } from '../shop/measuringPoint.ts';
import { limitsMovedBy } from '../shop/oversize.ts';
import type { Day } from '../units/day.ts';
import { pastDay, refuseUnknownPhotos } from './asked.ts';
import { type Context, recordOf } from './context.ts';
import { judgeAmongOthers } from './laterDoubts.ts';
import { type BenchPoint, pointsOnMachine } from './pointsOnMachine.ts';
import { hoursOfMachine, seriesAround } from './seriesNow.ts';
import { refuseOddRenewals } from './soundRenewals.ts';

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
 * @throws RefusedError unknown-machine, unknown-point, unknown-gauge, unknown-assembly, unknown-position, and as refuseOddRenewals
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
  for (const [place, { pointId }] of draft.shims.entries()) pointAt(pointId, `shims.${place}.pointId`);
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
export function judgeTyped(context: Context, typed: TypedStripDown): Map<number, SizeJudgement> {
  const tolerances = tolerancesOf(context);
  const judged = new Map<number, SizeJudgement>();
  for (const [point, sizes] of Map.groupBy(typed.sizes, (one) => one.point)) {
    const withTyped = withVisit(context, typed, point.life);
    const found = judgeAmongOthers(withTyped, point.life, tolerances.get(point.life.partClass) ?? null);
    for (const { size } of sizes) {
      const judgement = found.get(size.id);
      if (judgement) judged.set(-1 - size.id, judgement);
    }
  }
  return judged;
}

const tolerancesOf = (context: Context): Map<string, number | null> =>
  new Map(listClasses(recordOf(context)).map(({ name, newSizeTolMm }) => [name, newSizeTolMm]));

/** The renewals typed at a point, as the record would hold them: a size in question stays out. */
function renewalsAt(context: Context, { draft, takenOn, points }: TypedStripDown, pointId: number): Renewal[] {
  const life = points.get(pointId)!.life;
  const tolMm = tolerancesOf(context).get(life.partClass) ?? null;
  return draft.renewals
    .filter((renewal) => renewal.pointId === pointId)
    .map(({ answer, ...renewal }) => {
      const asked = answer === null ? judgeRenewal(life, { ...renewal, takenOn }, tolMm) : null;
      return { ...renewal, id: -1, takenOn, dialHours: draft.dialHours, sizeMm: asked ? null : renewal.sizeMm };
    });
}

/** A point's life with what was typed of it in this visit: its sizes, renewals, the limits they move, packing. */
function withVisit(context: Context, typed: TypedStripDown, life: BenchPoint['life']): PointLife {
  const { draft, takenOn, points, sizes } = typed;
  const own = sizes.filter(({ point }) => point.life.pointId === life.pointId);
  const renewals = renewalsAt(context, typed, life.pointId);
  // the whole part is renewed once in a visit at most
  const moved = renewals.flatMap((renewal): PointLimits[] => {
    const limits = limitsMovedBy(life, renewal);
    return limits ? [{ ...limits, from: takenOn, withRenewal: renewal.hoursKnown ? 'here' : 'elsewhere' }] : [];
  });
  const packed = draft.shims.filter(({ pointId }) => reaches(context, points.get(pointId)!, life, points));
  return {
    ...life,
    limits: [...life.limits, ...moved].sort(byStart),
    sizes: [...life.sizes, ...own.map(({ size }) => size)].sort(byDay),
    renewals: [...life.renewals, ...renewals].sort(byDay),
    shims: [
      ...(life.shims ?? []),
      ...packed.map(({ shimMm }) => ({ id: -1, takenOn, dialHours: draft.dialHours, shimMm })),
    ].sort(byDay),
  };
}

/** Whether packing put in at one point takes slack from another: as record/loadShims.ts. */
function reaches(
  context: Context,
  at: BenchPoint,
  life: BenchPoint['life'],
  points: TypedStripDown['points'],
): boolean {
  if (points.get(life.pointId)?.details.measures !== 'slack') return false;
  const joint = seriesAround(context, at.life.machineId).life.joints?.find(
    ({ slackPointId }) => slackPointId === life.pointId,
  );
  const members = joint ? [joint.pinPointId, ...joint.borePointIds] : [];
  return at.life.positionId === life.positionId || members.includes(at.life.pointId);
}

/** What is odd about the sizes put in, by their place in the draft; answered ones are not asked again. */
export function judgeTypedRenewals(context: Context, { draft, takenOn, points }: TypedStripDown): Map<number, Caution> {
  const tolerances = tolerancesOf(context);
  const judged = new Map<number, Caution>();
  for (const [place, { pointId, ...renewal }] of draft.renewals.entries()) {
    const { life } = points.get(pointId)!;
    const odd = judgeRenewal(life, { ...renewal, takenOn }, tolerances.get(life.partClass) ?? null);
    if (odd) judged.set(place, odd);
  }
  return judged;
}

const byStart = (a: PointLimits, b: PointLimits): number =>
  byDay({ takenOn: a.from ?? ('' as Day) }, { takenOn: b.from ?? ('' as Day) });

const byDay = (a: { takenOn: Day }, b: { takenOn: Day }): number =>
  a.takenOn < b.takenOn ? -1 : a.takenOn > b.takenOn ? 1 : 0;
