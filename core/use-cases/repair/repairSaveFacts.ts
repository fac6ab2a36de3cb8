import type { Handler } from '../../contract/operation.ts';
import type { RepairFacts, repairSaveFacts } from '../../contract/repair.ts';
import { writeEntry } from '../../record/entry.ts';
import { saveRepairFacts } from '../../record/repairStore.ts';
import { angleOfWay } from '../../repair/clean-up/wayRound.ts';
import { refuseField } from '../asked.ts';
import { type Context, entryNow, recordOf } from '../context.ts';
import { shopAroundPosition } from '../shopNow.ts';
import { jointPoints } from './jointPoints.ts';

/** Keeps what the bench says of a worn hole, in the place of what it said before. */
export const repairSaveFactsHandler: Handler<typeof repairSaveFacts, Context> = (
  context,
  { positionId, facts, by },
) => {
  const record = recordOf(context);
  const now = shopAroundPosition(context, positionId);
  jointPoints(record, now, positionId);
  refuseOddFacts(facts, positionId);
  if (facts.boredWith !== null) jointPoints(record, now, facts.boredWith);
  writeEntry(record, entryNow(context, 'repair/saveFacts', by), (w, entryId) =>
    saveRepairFacts(w, entryId, positionId, facts),
  );
  return { saved: true };
};

function refuseOddFacts(facts: RepairFacts, positionId: number): void {
  const { wornTowards, run, boredWith, bossOutsideMm, standardMm } = facts;
  if (wornTowards !== null && angleOfWay(run, wornTowards) === null)
    refuseField('facts.wornTowards', 'a way that is square to the hole');
  if (boredWith === positionId) refuseField('facts.boredWith', 'another position');
  if (bossOutsideMm !== null && standardMm !== null && bossOutsideMm <= standardMm)
    refuseField('facts.bossOutsideMm', `more than the standard size, ${standardMm} mm`);
}
