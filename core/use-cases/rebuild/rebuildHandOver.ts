import type { Handler, RequestOf } from '../../contract/operation.ts';
import { type Rebuild, type rebuildHandOver, zRebuildWork } from '../../contract/rebuild.ts';
import { RefusedError } from '../../outcome.ts';
import { writeEntry } from '../../record/entry.ts';
import { insertRebuildStep, rebuildLinesOf } from '../../record/rebuildStore.ts';
import { pastDay } from '../asked.ts';
import { type Context, entryNow, recordOf } from '../context.ts';
import { notedDial } from '../notedDial.ts';
import { judgeTyped, judgeTypedRenewals, typedStripDown } from '../typedStripDown.ts';
import { writeStripDown } from '../writeStripDown.ts';
import { openRebuildOrRefuse } from './rebuildOrRefuse.ts';
import { rebuildSheet } from './rebuildSheet.ts';

/**
 * Hands a machine over. Every line must be agreed or declined and every check answered; as-left sizes and renewals are kept
 * as a strip-down of that day, in the same entry, so that the wear of renewed parts starts again there.
 *
 * @throws RefusedError rebuild-undecided, checks-open, out-of-intended-fit (unless `sure`), as typedStripDown
 */
export const rebuildHandOverHandler: Handler<typeof rebuildHandOver, Context> = (context, request) => {
  const record = recordOf(context);
  const rebuild = openRebuildOrRefuse(record, request.rebuildId);
  const handedOverOn = pastDay(context, request.handedOverOn, 'handedOverOn');
  refuseUnready(rebuildSheet(context, request.rebuildId));
  if (!request.sure) refuseOutOfFit(context, request);
  const { dialHours, sizes, renewals, note, by } = request;
  const { machineId } = rebuild;
  const draft = {
    machineId,
    takenOn: handedOverOn,
    dialHours,
    fitter: by,
    note,
    sizes,
    renewals,
    shims: [],
    findings: [],
  };
  const typed = typedStripDown(context, draft);
  const judged = { sizes: judgeTyped(context, typed), renewals: judgeTypedRenewals(context, typed) };
  const dial = notedDial(context, machineId, handedOverOn, dialHours, 'dialHours', request.sure);
  const hasSheet = sizes.length + renewals.length > 0 || dialHours !== null;
  const stripDownId = writeEntry(record, entryNow(context, 'rebuild/handOver', by), (w, entryId) => {
    const left = sizes.filter(({ event }) => event === 'as-left').map(({ pointId, sizeMm }) => ({ pointId, sizeMm }));
    const facts = { note, left };
    const step = { rebuildId: rebuild.id, lineId: null, saidOn: handedOverOn, saidBy: by, facts };
    insertRebuildStep(w, entryId, { ...step, kind: 'handed-over' });
    return hasSheet ? writeStripDown(w, entryId, typed, judged, dial) : null;
  });
  return { rebuildId: rebuild.id, stripDownId };
};

function refuseUnready({ lines, checks, rebuildId }: Rebuild): void {
  const undecided = lines.filter(({ stands }) => stands === 'proposed').length;
  if (undecided > 0) throw new RefusedError({ code: 'rebuild-undecided', facts: { rebuildId, undecided } });
  const open = checks.filter(({ answer }) => answer === null).length;
  if (open > 0 && lines.some(({ stands }) => stands === 'agreed'))
    throw new RefusedError({ code: 'checks-open', facts: { rebuildId, open } });
}

/** An as-left size outside what the work was to leave is asked about before it starts the next forecast. */
function refuseOutOfFit(context: Context, { rebuildId, sizes }: RequestOf<typeof rebuildHandOver>): void {
  const meant = new Map(
    rebuildLinesOf(recordOf(context), rebuildId)
      .filter(({ stands }) => stands === 'agreed')
      .flatMap(({ work }) => zRebuildWork.parse(work).renews.map((point) => [point.pointId, point] as const)),
  );
  for (const [place, { pointId, event, sizeMm }] of sizes.entries()) {
    const point = meant.get(pointId);
    if (event !== 'as-left' || !point || (sizeMm >= point.lowerMm && sizeMm <= point.upperMm)) continue;
    throw new RefusedError({
      code: 'out-of-intended-fit',
      facts: { path: `sizes.${place}.sizeMm`, pointId, sizeMm, lowerMm: point.lowerMm, upperMm: point.upperMm },
    });
  }
}
