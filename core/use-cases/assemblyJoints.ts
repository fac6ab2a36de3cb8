import type { assemblyJoints, assemblySaveJoints, JointOfPoints } from '../contract/machine.ts';
import type { Handler } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import { readAssembly } from '../record/assemblyStore.ts';
import { writeEntry } from '../record/entry.ts';
import { insertJoint, listJoints, strikeJoint } from '../record/jointStore.ts';
import { pointsOfAssemblies } from '../record/pointStore.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import { type Context, entryNow, recordOf } from './context.ts';

/** What a point can be in a joint, by what is measured there. */
const PARTS = { slack: 'slack', diameter: 'pin', bore: 'bore' } as const;
type Part = (typeof PARTS)[keyof typeof PARTS];

export const assemblyJointsHandler: Handler<typeof assemblyJoints, Context> = (context, { assemblyId }) => {
  const record = recordOf(context);
  const points = partsOf(record, assemblyId);
  return { points: [...points.values()], joints: jointsAmong(record, points) };
};

/** Joints that stand as they are asked for stay; the others are struck, and what is new is laid out. */
export const assemblySaveJointsHandler: Handler<typeof assemblySaveJoints, Context> = (
  context,
  { assemblyId, joints, by },
) => {
  const record = recordOf(context);
  const points = partsOf(record, assemblyId);
  for (const [i, joint] of joints.entries()) refuseOdd(points, joints, joint, `joints.${i}`);
  const standing = jointsAmong(record, points);
  const gone = standing.filter((joint) => !joints.some((asked) => isSame(asked, joint)));
  const added = joints.filter((asked) => !standing.some((joint) => isSame(asked, joint)));
  if (gone.length + added.length > 0)
    writeEntry(record, entryNow(context, 'assembly/saveJoints', by), (w, entryId) => {
      for (const { jointId } of gone) strikeJoint(w, entryId, jointId, 'other points make it');
      for (const joint of added) insertJoint(w, entryId, joint);
    });
  return { struck: gone.length, laidOut: added.length };
};

type PartOfJoint = { pointId: number; item: number; position: string; point: string; part: Part };

/** @throws RefusedError unknown-assembly */
function partsOf(record: ReadableRecord, assemblyId: number): Map<number, PartOfJoint> {
  if (!readAssembly(record, assemblyId))
    throw new RefusedError({ code: 'unknown-assembly', facts: { path: 'assemblyId', assemblyId } });
  return new Map(
    pointsOfAssemblies(record, [assemblyId]).flatMap(({ id, item, position, name, measures }) => {
      const part = (PARTS as Partial<Record<string, Part>>)[measures];
      return part ? [[id, { pointId: id, item, position, point: name, part }]] : [];
    }),
  );
}

const jointsAmong = (record: ReadableRecord, points: ReadonlyMap<number, unknown>) =>
  listJoints(record)
    .filter(({ slackPointId }) => points.has(slackPointId))
    .map(({ borePointIds, ...joint }) => ({ ...joint, borePointIds: [...borePointIds] }));

const isSame = (one: JointOfPoints, other: JointOfPoints): boolean =>
  one.slackPointId === other.slackPointId &&
  one.pinPointId === other.pinPointId &&
  one.borePointIds.length === other.borePointIds.length &&
  one.borePointIds.every((id) => other.borePointIds.includes(id));

/** A joint is made of points of this assembly that measure what they stand for, and its slack is of one joint only, each bore named once. */
function refuseOdd(
  points: ReadonlyMap<number, PartOfJoint>,
  all: readonly JointOfPoints[],
  joint: JointOfPoints,
  path: string,
): void {
  const parts = [
    { pointId: joint.slackPointId, part: 'slack' as const, path: `${path}.slackPointId` },
    { pointId: joint.pinPointId, part: 'pin' as const, path: `${path}.pinPointId` },
    ...joint.borePointIds.map((pointId, i) => ({ pointId, part: 'bore' as const, path: `${path}.borePointIds.${i}` })),
  ];
  for (const { pointId, part, path } of parts)
    if (points.get(pointId)?.part !== part) {
      const { item = null, point = null } = points.get(pointId) ?? {};
      throw new RefusedError({ code: 'joint-point-other', facts: { path, pointId, item, point } });
    }
  const same = all.filter(({ slackPointId }) => slackPointId === joint.slackPointId);
  if (same.length > 1 || new Set(joint.borePointIds).size < joint.borePointIds.length)
    throw new RefusedError({ code: 'joint-twice', facts: { path, pointId: joint.slackPointId } });
}
