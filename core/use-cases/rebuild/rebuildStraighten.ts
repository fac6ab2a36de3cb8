import type { Handler, RequestOf } from '../../contract/operation.ts';
import {
  type Pressing,
  type RebuildWork,
  type rebuildLookAtBent,
  type rebuildTakeStraighten,
  zRebuildWork,
} from '../../contract/rebuild.ts';
import { orRefuse, RefusedError } from '../../outcome.ts';
import { positionsOf } from '../../record/assemblyStore.ts';
import { writeEntry } from '../../record/entry.ts';
import { insertRebuildLine, rebuildLinesOf, rebuildStepsOf } from '../../record/rebuildStore.ts';
import { workHoursOf } from '../../repair/shopFigures.ts';
import { stepsToReach } from '../../repair/strip-down-tree/stepsToReach.ts';
import { openFindings } from '../../way/openFindings.ts';
import { type Context, entryNow, recordOf } from '../context.ts';
import { straightened } from '../fitStraighten.ts';
import { treeOf } from '../repair/repairSheet.ts';
import { shopGoesBy } from '../repair/shopFigures.ts';
import { seriesAround } from '../seriesNow.ts';
import { openRebuildOrRefuse } from './rebuildOrRefuse.ts';
import { refuseForeignPosition } from './rebuildSheet.ts';

type Bent = RequestOf<typeof rebuildLookAtBent>;

/** What a line of straightening is called. */
const STRAIGHTEN = 'straighten';

export const rebuildLookAtBentHandler: Handler<typeof rebuildLookAtBent, Context> = (context, bent) => {
  const { asked, onRecord } = withRecord(context, bent);
  return { ...straightened(asked), onRecord };
};

/** @throws RefusedError straightening-closed {because}; straightening-not-measured; what pressStraight refuses */
export const rebuildTakeStraightenHandler: Handler<typeof rebuildTakeStraighten, Context> = (context, request) => {
  const record = recordOf(context);
  const { asked } = withRecord(context, request);
  const { closedBecause, press, cautions } = straightened(asked);
  if (closedBecause.length > 0)
    throw new RefusedError({ code: 'straightening-closed', facts: { because: closedBecause.join(', ') } });
  if (!asked.bar || !press) throw new RefusedError({ code: 'straightening-not-measured', facts: { path: 'bar' } });
  const { part, bar } = asked;
  const { procedure } = part;
  const pressing: Pressing = {
    ...{ part: part.kind, spanMm: bar.spanMm, bowMm: bar.bowMm, yieldMpa: bar.yieldMpa },
    ...{ goSlowlyN: { from: press.firstYieldN, to: press.pressForN }, pressForN: press.pressForN },
    ...{ springBackMm: press.springBackMm, strain: press.strain },
    openedBy: procedure && procedure.by.trim() !== '' && procedure.reference.trim() !== '' ? procedure : null,
  };
  const hours = workHoursOf(shopGoesBy(record).figures);
  const { rebuildId, positionId } = request;
  const work: RebuildWork = {
    ...{ positionId, option: STRAIGHTEN, what: `Press straight: ${request.what}`, pressing },
    takeOffs: takeOffsTo(context, positionId),
    // it is looked at for cracks before and after
    ownHours: hours.straighten.typical + 2 * hours['crack-check'].typical,
    ...{ partsPrice: 0, cuts: [], makes: [], renews: [], safety: part.towingOrLifting },
    cautions: cautions.map(({ id }) => id),
  };
  const lineId = writeEntry(record, entryNow(context, 'rebuild/takeStraighten', request.by), (w, entryId) =>
    insertRebuildLine(w, entryId, { rebuildId, positionId, work }),
  );
  return { lineId };
};

/** What is asked, with what the record knows of the place: the worse of the two counts. */
function withRecord(context: Context, { rebuildId, positionId, bar, part }: Bent) {
  const record = recordOf(context);
  const rebuild = openRebuildOrRefuse(record, rebuildId);
  refuseForeignPosition(record, rebuild.machineId, positionId, 'positionId');
  const { life, asOf } = seriesAround(context, rebuild.machineId);
  const place = positionId === null ? undefined : positionsOf(record).find(({ id }) => id === positionId);
  // of a part that is no place of an assembly the record knows nothing: its cracks are said
  const cracked = openFindings(life, asOf)
    .ofMachine(rebuild.machineId)
    .some(
      (finding) =>
        finding.kind === 'crack' &&
        finding.assemblyId === place?.assemblyId &&
        (finding.positionId === null || finding.positionId === positionId),
    );
  const onRecord = {
    towingOrLifting: place?.safety ?? false,
    crack: cracked,
    straightenedBefore: positionId !== null && wasStraightened(context, positionId),
  };
  const known = {
    towingOrLifting: part.towingOrLifting || onRecord.towingOrLifting,
    crack: part.crack || onRecord.crack,
    straightenedBefore: part.straightenedBefore || onRecord.straightenedBefore,
  };
  return { asked: { bar, part: { ...part, ...known } }, onRecord };
}

/** Pressed straight there on a job that was handed over. */
function wasStraightened(context: Context, positionId: number): boolean {
  const record = recordOf(context);
  const handedOver = new Set(
    rebuildStepsOf(record).flatMap(({ kind, rebuildId }) => (kind === 'handed-over' ? [rebuildId] : [])),
  );
  return rebuildLinesOf(record).some(
    (line) =>
      line.positionId === positionId &&
      line.stands === 'agreed' &&
      handedOver.has(line.rebuildId) &&
      zRebuildWork.parse(line.work).option === STRAIGHTEN,
  );
}

function takeOffsTo(context: Context, positionId: number | null): RebuildWork['takeOffs'] {
  if (positionId === null) return [];
  const record = recordOf(context);
  const place = positionsOf(record).find(({ id }) => id === positionId);
  if (!place) return [];
  const steps = orRefuse(stepsToReach(treeOf(record, place.assemblyId), [place.item]));
  return steps.map(({ name, hours }) => ({ name, hours: hours.typical }));
}
