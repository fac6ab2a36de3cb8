import type { GivenReplyOf } from '../../contract/operation.ts';
import type { repairRead } from '../../contract/repair.ts';
import { type RepairFacts, type RepairSheet, zRepairFacts, zRepairOption } from '../../contract/repair.ts';
import { orRefuse } from '../../outcome.ts';
import { readAssembly } from '../../record/assemblyStore.ts';
import type { ReadableRecord } from '../../record/recordFile.ts';
import { repairChoicesOf, repairFactsOf } from '../../record/repairStore.ts';
import { LOCAL_RULES_PREVAIL } from '../../repair/cautions/cautions.ts';
import { repairOptions } from '../../repair/options/repairOptions.ts';
import type { WornJoint } from '../../repair/options/wornJoint.ts';
import type { PositionWork } from '../../repair/strip-down-tree/jobHours.ts';
import { builtInAssemblyKinds } from '../../shop/assemblyKinds.ts';
import { findingIsOpen } from '../../shop/finding.ts';
import type { StripDownTree } from '../../shop/stripDownTree.ts';
import { kindsOnRecord } from '../kindsOnRecord.ts';
import type { ShopNow } from '../shopNow.ts';
import { type JointPoints, jointPoints, jointPositions, limitsNow } from './jointPoints.ts';
import { lifeAfter } from './lifeAfter.ts';
import { shopGoesBy } from './shopFigures.ts';
import { usualFacts } from './usualFacts.ts';
import { type KnownFacts, wornJointOf } from './wornJointOf.ts';

type Sheet = GivenReplyOf<typeof repairRead>;

/** Everything the repair screen shows of one joint. @throws what jointPoints throws; RefusedError where its sizes cannot be */
export function repairSheet(record: ReadableRecord, now: ShopNow, positionId: number): Sheet {
  const points = jointPoints(record, now, positionId);
  const [first] = points.all;
  if (!first) throw new Error('Broken invariant: a joint has a point');
  const kept = repairFactsOf(record, positionId);
  const facts = kept === null ? usualFacts(now, points, shopGoesBy(record).figures) : zRepairFacts.parse(kept);
  const machine = now.shop.life.machines.find(({ machineId }) => machineId === first.machineId);
  const choices = repairChoicesOf(record);
  const chosen = choices.find((choice) => choice.positionId === positionId) ?? null;
  const missing = missingOf(facts);
  const already = workElsewhere(choices, now, first);
  const worked = missing.length > 0 ? null : optionsOf(record, now, points, facts, already);
  const own = now.ofMachine(first.machineId).points.filter(({ pointId }) => pointId === points.bore?.pointId);
  return {
    asOf: now.asOf,
    ...{ positionId, machineId: first.machineId, machine: machine?.name ?? '', customer: machine?.customer ?? '' },
    ...{ assembly: first.assembly, item: first.item, position: first.position, safety: first.safety },
    ...{ facts, factsKept: kept !== null, missing, cleanUp: worked?.cleanUp ?? null, options: worked?.options ?? [] },
    chosen: chosen && {
      choice: chosen.choice as RepairSheet['options'][number]['choice'],
      ...{ chosenOn: chosen.chosenOn, by: chosen.chosenBy },
    },
    slackNowMm: worked?.slackNowMm ?? null,
    limits: slackLimits(now, points),
    joints: jointPositions(record, now, first.machineId).map((joint) => ({
      ...joint,
      chosen: choices.some((choice) => choice.positionId === joint.positionId),
    })),
    openedBy: already.length,
    rests: { ownReadings: own[0]?.ownReadings ?? 0, likeParts: own[0]?.likeParts ?? 0 },
    prevail: LOCAL_RULES_PREVAIL,
  };
}

function missingOf(facts: RepairFacts): Sheet['missing'] {
  const missing: Sheet['missing'] = [];
  if (facts.standardMm === null) missing.push('standardMm');
  if (facts.newBoreMm === null) missing.push('newBoreMm');
  if (facts.axesMm.every((mm) => mm === null)) missing.push('axesMm');
  if (facts.bossOutsideMm === null) missing.push('bossOutsideMm');
  if (facts.bossLengthMm === null) missing.push('bossLengthMm');
  return missing;
}

function optionsOf(
  record: ReadableRecord,
  now: ShopNow,
  points: JointPoints,
  facts: RepairFacts,
  already: readonly PositionWork[],
): Pick<Sheet, 'cleanUp' | 'options' | 'slackNowMm'> {
  const joint = wornJoint(record, now, points, facts, already);
  const { cleanUp, options } = orRefuse(repairOptions(joint, lifeAfter(now, points)));
  const [outline] = cleanUp.outlines;
  return {
    cleanUp: { ...cleanUp, circles: outline?.circles ?? [], wearMm: outline?.wearMm ?? 0 },
    options: options.map((option) => ({ ...option, off: [...option.off] })),
    slackNowMm: options.find(({ choice }) => choice === 'leave')?.slackMm?.high ?? null,
  };
}

/** The worn joint as the record and the bench have it. @param facts with nothing missing */
export function wornJoint(
  record: ReadableRecord,
  now: { shop: Pick<ShopNow['shop'], 'life'>; asOf: ShopNow['asOf'] },
  { all, ...points }: JointPoints,
  facts: RepairFacts,
  already: readonly PositionWork[],
): WornJoint {
  const [first] = all;
  if (!first) throw new Error('Broken invariant: a joint has a point');
  const open = now.shop.life.findings.filter(
    (finding) =>
      findingIsOpen(finding, now.asOf) && finding.assemblyId === first.assemblyId && onIt(finding.positionId, first),
  );
  const partner = facts.boredWith === null ? null : repairFactsOf(record, facts.boredWith);
  return wornJointOf(
    knownFacts(facts),
    {
      name: first.position,
      doNotUse: open.some(({ severity }) => severity === 'do-not-use'),
      crack: open.some(({ kind }) => kind === 'crack'),
      safety: first.safety,
      mustStayStandard: first.mustStayStandard ?? false,
      rejectSlackMm: slackLimits(now, { all, ...points }).rejectSlackMm,
      partners: partner === null ? [] : [zRepairFacts.parse(partner)],
      opened: { tree: treeOf(record, first.assemblyId), item: first.item, already, works: [] },
    },
    shopGoesBy(record),
  );
}

/** What {@link missingOf} found nothing missing in. */
function knownFacts(facts: RepairFacts): KnownFacts {
  const { standardMm, newBoreMm, bossOutsideMm, bossLengthMm } = facts;
  if (standardMm === null || newBoreMm === null || bossOutsideMm === null || bossLengthMm === null)
    throw new Error('Broken invariant: nothing that is needed is missing');
  return { ...facts, standardMm, newBoreMm, bossOutsideMm, bossLengthMm };
}

/** A finding on the position itself, or on the assembly as a whole. */
const onIt = (positionId: number | null, { positionId: own }: { positionId: number }): boolean =>
  positionId === null || positionId === own;

/** Slack at which the shop renews and rejects: the slack point's own limits, else what hole and pin allow together. */
function slackLimits(now: Pick<ShopNow, 'asOf'>, { slack, bore, pin }: JointPoints): Sheet['limits'] {
  if (slack) {
    const { renewAtMm, rejectAtMm } = limitsNow(slack, now);
    return { renewSlackMm: renewAtMm, rejectSlackMm: rejectAtMm };
  }
  if (!bore) return { renewSlackMm: null, rejectSlackMm: null };
  const [hole, shaft] = [limitsNow(bore, now), pin && limitsNow(pin, now)];
  const over = (mm: number | null) => (mm === null ? null : mm - (shaft?.newSizeMm ?? hole.newSizeMm));
  return { renewSlackMm: over(hole.renewAtMm), rejectSlackMm: over(hole.rejectAtMm) };
}

/** Work chosen at other positions of the same assembly: it opens what it opens. */
function workElsewhere(
  choices: ReturnType<typeof repairChoicesOf>,
  { shop }: ShopNow,
  { assemblyId, positionId }: { assemblyId: number; positionId: number },
): PositionWork[] {
  const items = new Map(
    shop.life.points.filter((point) => point.assemblyId === assemblyId).map((point) => [point.positionId, point.item]),
  );
  return choices.flatMap((choice) => {
    const item = items.get(choice.positionId);
    if (item === undefined || choice.positionId === positionId) return [];
    const { work } = zRepairOption.pick({ work: true }).parse(choice.option);
    return [
      {
        item,
        work: work.map(({ oncePer, ...step }) => (oncePer === undefined ? step : { ...step, oncePer })),
      },
    ];
  });
}

const NO_TREE: StripDownTree = { steps: [], reach: [], always: [] };

/** The strip-down tree of an assembly's kind; one laid down before kinds had one takes the built-in kind's of its name. */
export function treeOf(record: ReadableRecord, assemblyId: number): StripDownTree {
  const assembly = readAssembly(record, assemblyId);
  const kind = kindsOnRecord(record).find(({ kindId }) => kindId === assembly?.kindId);
  return kind?.stripDown ?? builtInAssemblyKinds.find(({ name }) => name === kind?.name)?.stripDown ?? NO_TREE;
}
