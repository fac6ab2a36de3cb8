import type { z } from 'zod';
import {
  HAND_OVER_CHECKS,
  type Rebuild,
  type RebuildWork,
  type zApproval,
  type zCheckAnswer,
  type zQuote,
  zRebuildWork,
} from '../../contract/rebuild.ts';
import { RefusedError } from '../../outcome.ts';
import { assembliesOnMachine, positionsOf } from '../../record/assemblyStore.ts';
import { customerOfMachine, readCustomer } from '../../record/customerStore.ts';
import { machineOrRefuse } from '../../record/machineStore.ts';
import { photosAt } from '../../record/photoStore.ts';
import { listRebuilds, type RebuildStepRow, rebuildLinesOf, rebuildStepsOf } from '../../record/rebuildStore.ts';
import type { ReadableRecord } from '../../record/recordFile.ts';
import { type CautionId, LOCAL_RULES_PREVAIL, SAFETY_CAUTIONS } from '../../repair/cautions/cautions.ts';
import { addDays, type Day } from '../../units/day.ts';
import { isStop, openFindings } from '../../way/openFindings.ts';
import { type Context, recordOf } from '../context.ts';
import { seriesAround } from '../seriesNow.ts';
import { rebuildOrRefuse } from './rebuildOrRefuse.ts';

/** A job whole, as the window and its papers show it. @throws RefusedError unknown-rebuild */
export function rebuildSheet(context: Context, rebuildId: number): Rebuild {
  const record = recordOf(context);
  const rebuild = rebuildOrRefuse(record, rebuildId);
  const machine = machineOrRefuse(record, rebuild.machineId);
  const owner = rebuild.customerId === null ? null : readCustomer(record, rebuild.customerId);
  const steps = rebuildStepsOf(record, rebuildId);
  const lines = linesOf(record, rebuildId, steps);
  const done = lines.filter(({ stands }) => stands !== 'declined');
  const takeOffs = takeOffsOnce(done);
  const { life, asOf } = seriesAround(context, rebuild.machineId);
  const found = openFindings(life, asOf).ofMachine(rebuild.machineId);
  const earlier = listRebuilds(record).find(({ id }) => id === rebuild.comebackOfId);
  return {
    rebuildId,
    number: rebuild.number,
    machineId: machine.id,
    machine: machine.name,
    makeModel: [machine.make, machine.model].filter(Boolean).join(' '),
    serial: machine.serial,
    customer: owner?.name ?? '',
    place: owner?.place ?? '',
    takenInOn: rebuild.takenInOn,
    wantedBy: rebuild.wantedBy,
    complaint: rebuild.complaint,
    dialHours: rebuild.dialHours,
    comebackOf: earlier ? { rebuildId: earlier.id, number: earlier.number } : null,
    whereabouts: rebuild.whereabouts,
    whereaboutsNote: rebuild.whereaboutsNote,
    photos: photosAt(record, 'rebuild', [rebuildId]).map(({ at: _, ...photo }) => photo),
    handedOverOn: steps.find(({ kind }) => kind === 'handed-over')?.saidOn ?? null,
    lines,
    takeOffs,
    hours: { stripDown: sum(takeOffs.map(({ hours }) => hours)), own: sum(done.map(({ ownHours }) => ownHours)) },
    partsOn: partsOn(done, context),
    quotes: ofKind<z.infer<typeof zQuote>>(steps, 'quote'),
    approvals: ofKind<z.infer<typeof zApproval>>(steps, 'approval'),
    checks: HAND_OVER_CHECKS.map((check) => {
      const last = steps.findLast(({ kind, facts }) => kind === 'check' && (facts as CheckFacts).check === check);
      return { check, answer: last ? (last.facts as CheckFacts).answer : null, by: last?.saidBy ?? '' };
    }),
    cautions: cautionsOf(done),
    doNotUse: found.filter(isStop).map(findingSaid),
    bent: found
      .filter(({ kind }) => kind === 'bent')
      .map((finding) => ({ positionId: finding.positionId, said: findingSaid(finding) })),
  };
}

const findingSaid = ({ kind, note }: { kind: string; note: string }): string => [kind, note].filter(Boolean).join(': ');

/** Cautions of the work not declined, in the order in which a job meets them, and whose rules come first. */
function cautionsOf(lines: Rebuild['lines']): string[] {
  const named = new Set(lines.flatMap(({ cautions }) => cautions));
  if (lines.some(({ safety }) => safety)) named.add('hand-over' satisfies CautionId);
  return [...SAFETY_CAUTIONS.filter(({ id }) => named.has(id)).map(({ text }) => text), LOCAL_RULES_PREVAIL];
}

type CheckFacts = { check: string; answer: z.infer<typeof zCheckAnswer> };

const ofKind = <T>(steps: readonly RebuildStepRow[], kind: RebuildStepRow['kind']): T[] =>
  steps.filter((step) => step.kind === kind).map(({ facts }) => facts as T);

const sum = (all: readonly number[]): number => all.reduce((so, one) => so + one, 0);

function linesOf(record: ReadableRecord, rebuildId: number, steps: readonly RebuildStepRow[]): Rebuild['lines'] {
  // by all positions on record: the place may have gone to another machine since
  const places = new Map(positionsOf(record).map((position) => [position.id, position]));
  return rebuildLinesOf(record, rebuildId).map((line) => {
    const work = zRebuildWork.parse(line.work);
    const place = line.positionId === null ? undefined : places.get(line.positionId);
    const bored = steps.filter(({ kind, lineId }) => kind === 'bored' && lineId === line.id);
    return {
      ...work,
      lineId: line.id,
      item: place?.item ?? null,
      position: place?.name ?? '',
      stands: line.stands,
      declinedWords: line.declinedWords,
      boredMm: work.cuts.map((_, cut) => lastBored(bored, cut)),
    };
  });
}

const lastBored = (bored: readonly RebuildStepRow[], cut: number): number | null => {
  const last = bored.findLast(({ facts }) => (facts as { cut: number }).cut === cut);
  return last ? (last.facts as { sizeMm: number }).sizeMm : null;
};

/**
 * Every take-off once, in the order first met; where two lines differ in its hours, the longer.
 * @source shop practice: the shared strip-down is paid once; common practice, no source
 */
export function takeOffsOnce(lines: readonly Pick<RebuildWork, 'takeOffs'>[]): { name: string; hours: number }[] {
  const once = new Map<string, number>();
  for (const { name, hours } of lines.flatMap(({ takeOffs }) => takeOffs))
    once.set(name, Math.max(hours, once.get(name) ?? 0));
  return [...once].map(([name, hours]) => ({ name, hours }));
}

function partsOn(lines: Rebuild['lines'], context: Context): Day | null {
  const days = lines.flatMap(({ makes }) => makes.flatMap(({ leadDays }) => (leadDays === null ? [] : [leadDays])));
  return days.length === 0 ? null : addDays(context.today(), Math.max(...days));
}

/** Whose machine it is now, for a job taken in today. */
export const ownerNow = (context: Context, machineId: number): number | null =>
  customerOfMachine(recordOf(context), machineId, context.today())?.id ?? null;

/** @throws RefusedError unknown-position: not one of an assembly on that machine */
export function refuseForeignPosition(
  record: ReadableRecord,
  machineId: number,
  positionId: number | null,
  path = 'work.positionId',
): void {
  if (positionId === null) return;
  const known = assembliesOnMachine(record, machineId).some(({ id }) =>
    positionsOf(record, id).some((position) => position.id === positionId),
  );
  if (!known) throw new RefusedError({ code: 'unknown-position', facts: { path, positionId } });
}
