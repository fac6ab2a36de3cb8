import type { Joint, JointPart } from '../shop/joint.ts';
import { ofPoints, type Within } from './boundMachines.ts';
import { bulk, groupedBy } from './bulk.ts';
import { chainOf, counting, NOW_KNOWN, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { jointMembers, joints } from './schema.ts';
import { strikeOut } from './supersede.ts';

/** Every joint, by its first row; those without a pin or without a bore are none. */
export function listJoints(db: ReadableRecord, knownAt: string = NOW_KNOWN, within: Within = null): Joint[] {
  type Row = [jointId: number, slackPointId: number, pointId: number, part: JointPart];
  const rows = bulk<Row>(
    db,
    `SELECT ${chainOf('j')}, j.slack_point_id, m.point_id, m.part FROM joints j
     JOIN joint_members m ON m.joint_id = ${chainOf('j')}
     WHERE ${counting('joints', 'j')} AND ${standing('m')} ${ofPoints(within, 'j.slack_point_id')}
     ORDER BY ${chainOf('j')}, m.id`,
    { knownAt, ...within },
  );
  return [...groupedBy(rows, ([jointId]) => jointId)].flatMap(([jointId, members]) => {
    const pin = members.find(([, , , part]) => part === 'pin');
    const bores = members.filter(([, , , part]) => part === 'bore').map(([, , pointId]) => pointId);
    const slackPointId = members[0]![1];
    return pin && bores.length > 0 ? [{ jointId, slackPointId, pinPointId: pin[2], borePointIds: bores }] : [];
  });
}

/** Strikes a joint out: its points stay, and their slack is no longer worked out. @param jointId its first row, which is never put right */
export const strikeJoint = (w: WritableRecord, entryId: number, jointId: number, reason: string): number =>
  strikeOut(w, joints, jointId, entryId, reason);

/** @returns id of the joint */
export function insertJoint(w: WritableRecord, entryId: number, joint: Omit<Joint, 'jointId'>): number {
  const jointId = insertInto(w, joints, { entryId, slackPointId: joint.slackPointId });
  insertInto(w, jointMembers, { entryId, jointId, pointId: joint.pinPointId, part: 'pin' });
  for (const pointId of joint.borePointIds) insertInto(w, jointMembers, { entryId, jointId, pointId, part: 'bore' });
  return jointId;
}
