import type { Handler } from '../../contract/operation.ts';
import type {
  ratesRead,
  ratesSave,
  rebuildApprove,
  rebuildBored,
  rebuildChange,
  rebuildCheck,
  rebuildLineSave,
  rebuildLineStrike,
  rebuildQuote,
  rebuildRead,
  rebuildsList,
  rebuildTakeIn,
} from '../../contract/rebuild.ts';
import { COMEBACK_DAYS, zRebuildWork } from '../../contract/rebuild.ts';
import { RefusedError } from '../../outcome.ts';
import { writeEntry } from '../../record/entry.ts';
import { machineNames, machineOrRefuse } from '../../record/machineStore.ts';
import { insertPhotoAt } from '../../record/photoStore.ts';
import {
  insertRebuild,
  insertRebuildLine,
  insertRebuildStep,
  listRebuilds,
  nextRebuildNumber,
  readRates,
  rebuildLinesOf,
  rebuildStepsOf,
  saveRates,
} from '../../record/rebuildStore.ts';
import { rebuildLines, rebuilds } from '../../record/schema.ts';
import { strikeOut, supersede } from '../../record/supersede.ts';
import { addDays, type Day } from '../../units/day.ts';
import { pastDay, refuseField, refuseUnknownPhotos } from '../asked.ts';
import { type Context, entryNow, recordOf } from '../context.ts';
import { refuseCrowdedPhotos } from '../photosAt.ts';
import { openLineOrRefuse, openRebuildOrRefuse } from './rebuildOrRefuse.ts';
import { ownerNow, rebuildSheet, refuseForeignPosition, takeOffsOnce } from './rebuildSheet.ts';

export const rebuildReadHandler: Handler<typeof rebuildRead, Context> = (context, { rebuildId }) =>
  rebuildSheet(context, rebuildId);

export const rebuildsListHandler: Handler<typeof rebuildsList, Context> = (context) => {
  const record = recordOf(context);
  const names = machineNames(record);
  const lines = Map.groupBy(rebuildLinesOf(record), ({ rebuildId }) => rebuildId);
  const handedOver = new Map(
    rebuildStepsOf(record).flatMap(({ kind, rebuildId, saidOn }) =>
      kind === 'handed-over' ? [[rebuildId, saidOn]] : [],
    ),
  );
  const rows = listRebuilds(record).map((rebuild) => {
    const own = lines.get(rebuild.id) ?? [];
    const works = own.filter(({ stands }) => stands !== 'declined').map(({ work }) => zRebuildWork.parse(work));
    const count = (stands: string) => own.filter((line) => line.stands === stands).length;
    return {
      rebuildId: rebuild.id,
      number: rebuild.number,
      machineId: rebuild.machineId,
      machine: names.get(rebuild.machineId) ?? '',
      customer: rebuildSheet(context, rebuild.id).customer,
      takenInOn: rebuild.takenInOn,
      wantedBy: rebuild.wantedBy,
      complaint: rebuild.complaint,
      whereabouts: rebuild.whereabouts,
      whereaboutsNote: rebuild.whereaboutsNote,
      handedOverOn: handedOver.get(rebuild.id) ?? null,
      hours: [...takeOffsOnce(works).map(({ hours }) => hours), ...works.map(({ ownHours }) => ownHours)].reduce(
        (so, one) => so + one,
        0,
      ),
      proposed: count('proposed'),
      agreed: count('agreed'),
      declined: count('declined'),
    };
  });
  return { rebuilds: rows.sort(openFirstByWanted) };
};

type Listed = { handedOverOn: string | null; wantedBy: string | null; number: string };
const openFirstByWanted = (a: Listed, b: Listed): number =>
  Number(a.handedOverOn !== null) - Number(b.handedOverOn !== null) ||
  (a.wantedBy ?? '9999').localeCompare(b.wantedBy ?? '9999') ||
  b.number.localeCompare(a.number);

export const rebuildTakeInHandler: Handler<typeof rebuildTakeIn, Context> = (context, request) => {
  const record = recordOf(context);
  const { machineId, wantedBy, complaint, dialHours, whereabouts, whereaboutsNote, photoIds, by } = request;
  machineOrRefuse(record, machineId);
  const takenInOn = pastDay(context, request.takenInOn, 'takenInOn');
  if (wantedBy !== null && wantedBy < takenInOn) refuseField('wantedBy', `a day from ${takenInOn} on`);
  refuseUnknownPhotos(record, photoIds, 'photoIds');
  refuseCrowdedPhotos(photoIds);
  const first = request.comeback ? lastHandedOver(context, machineId, takenInOn) : null;
  const number = nextRebuildNumber(record, takenInOn);
  const rebuildId = writeEntry(record, entryNow(context, 'rebuild/takeIn', by), (w, entryId) => {
    const id = insertRebuild(w, entryId, {
      ...{ number, machineId, customerId: ownerNow(context, machineId), takenInOn, complaint, dialHours },
      ...{ wantedBy: wantedBy as Day | null, comebackOfId: first?.id ?? null, whereabouts, whereaboutsNote },
    });
    for (const photoId of photoIds) insertPhotoAt(w, entryId, { at: 'rebuild', id }, photoId);
    return id;
  });
  return { rebuildId, number, comebackOf: first?.number ?? null };
};

/** The machine's job handed over last, when that was not long ago. */
function lastHandedOver(context: Context, machineId: number, on: Day): { id: number; number: string } | null {
  const record = recordOf(context);
  const since = addDays(on, -COMEBACK_DAYS);
  const jobs = listRebuilds(record).filter((one) => one.machineId === machineId);
  const ends = rebuildStepsOf(record).filter(
    ({ kind, saidOn }) => kind === 'handed-over' && saidOn >= since && saidOn <= on,
  );
  const last = ends.findLast(({ rebuildId }) => jobs.some(({ id }) => id === rebuildId));
  return jobs.find(({ id }) => id === last?.rebuildId) ?? null;
}

export const rebuildChangeHandler: Handler<typeof rebuildChange, Context> = (context, request) => {
  const record = recordOf(context);
  const { rebuildId, wantedBy, complaint, whereabouts, whereaboutsNote, reason, by } = request;
  const rebuild = openRebuildOrRefuse(record, rebuildId);
  if (wantedBy !== null && wantedBy < rebuild.takenInOn) refuseField('wantedBy', `a day from ${rebuild.takenInOn} on`);
  writeEntry(record, entryNow(context, 'rebuild/change', by), (w, entryId) =>
    supersede(w, rebuilds, rebuild.rowId, entryId, {
      ...{ wantedBy: wantedBy as Day | null, complaint, reason },
      ...(whereabouts !== undefined && { whereabouts }),
      ...(whereaboutsNote !== undefined && { whereaboutsNote }),
    }),
  );
  return { rebuildId };
};

export const rebuildLineSaveHandler: Handler<typeof rebuildLineSave, Context> = (context, request) => {
  const record = recordOf(context);
  const { rebuildId, lineId, work, by } = request;
  const rebuild = openRebuildOrRefuse(record, rebuildId);
  refuseForeignPosition(record, rebuild.machineId, work.positionId);
  const odd = work.cuts.findIndex(({ lowerMm, upperMm }) => lowerMm > upperMm);
  if (odd >= 0) refuseField(`work.cuts.${odd}.upperMm`, 'a size no smaller than the lower limit');
  const made = entryNow(context, 'rebuild/lineSave', by);
  if (lineId === null) {
    const row = { rebuildId, positionId: work.positionId, work };
    return { lineId: writeEntry(record, made, (w, entryId) => insertRebuildLine(w, entryId, row)) };
  }
  const { line } = openLineOrRefuse(record, lineId);
  if (line.rebuildId !== rebuildId)
    throw new RefusedError({ code: 'unknown-rebuild-line', facts: { path: 'lineId', lineId } });
  // what was agreed to is no longer what stands there
  const anew = {
    positionId: work.positionId,
    work,
    stands: 'proposed' as const,
    declinedWords: '',
    reason: 'put right',
  };
  writeEntry(record, made, (w, entryId) => supersede(w, rebuildLines, line.rowId, entryId, anew));
  return { lineId };
};

export const rebuildLineStrikeHandler: Handler<typeof rebuildLineStrike, Context> = (
  context,
  { lineId, reason, by },
) => {
  const { line } = openLineOrRefuse(recordOf(context), lineId);
  writeEntry(recordOf(context), entryNow(context, 'rebuild/lineStrike', by), (w, entryId) =>
    strikeOut(w, rebuildLines, line.rowId, entryId, reason),
  );
  return { lineId };
};

/** Strip and report has its fixed price; work is quoted by hours, shared take-offs once, and parts. */
export const rebuildQuoteHandler: Handler<typeof rebuildQuote, Context> = (context, request) => {
  const record = recordOf(context);
  const { rebuildId, kind, fixedPrice, by } = request;
  openRebuildOrRefuse(record, rebuildId);
  const rates = readRates(record);
  if (!rates) throw new RefusedError({ code: 'no-rates' });
  const sheet = rebuildSheet(context, rebuildId);
  const offered = sheet.lines.filter(({ stands }) => stands !== 'declined');
  if (kind === 'work' && offered.length === 0)
    throw new RefusedError({ code: 'nothing-to-quote', facts: { rebuildId } });
  const priced = (what: string, hours: number, parts: number) => ({
    ...{ what, hours, parts },
    price: hours * rates.hourPrice + parts,
  });
  const lines =
    kind === 'strip-and-report'
      ? [{ what: 'strip-and-report', hours: 0, parts: 0, price: fixedPrice ?? rates.stripAndReportPrice }]
      : [
          ...sheet.takeOffs.map(({ name, hours }) => priced(name, hours, 0)),
          ...offered.map(({ what, ownHours, partsPrice }) => priced(what, ownHours, partsPrice)),
        ];
  const total = (of: (line: (typeof lines)[number]) => number) => lines.reduce((so, line) => so + of(line), 0);
  const quote = {
    ...{ kind, madeOn: context.today(), by, currency: rates.currency, hourPrice: rates.hourPrice, lines },
    hours: total(({ hours }) => hours),
    price: kind === 'work' && fixedPrice !== null ? fixedPrice : total(({ price }) => price),
  };
  writeEntry(record, entryNow(context, 'rebuild/quote', by), (w, entryId) =>
    insertRebuildStep(w, entryId, {
      rebuildId,
      lineId: null,
      kind: 'quote',
      saidOn: quote.madeOn,
      saidBy: by,
      facts: quote,
    }),
  );
  return quote;
};

export const rebuildApproveHandler: Handler<typeof rebuildApprove, Context> = (context, request) => {
  const record = recordOf(context);
  const { rebuildId, saidBy, how, agreed, declined, by } = request;
  openRebuildOrRefuse(record, rebuildId);
  const saidOn = pastDay(context, request.saidOn, 'saidOn');
  const lines = new Map(rebuildLinesOf(record, rebuildId).map((line) => [line.id, line]));
  const lineOf = (lineId: number, path: string) => {
    const line = lines.get(lineId);
    if (!line) throw new RefusedError({ code: 'unknown-rebuild-line', facts: { path, lineId } });
    return line;
  };
  const yes = agreed.map((lineId, place) => lineOf(lineId, `agreed.${place}`));
  const no = declined.map(({ lineId, words }, place) => {
    const line = lineOf(lineId, `declined.${place}.lineId`);
    if (agreed.includes(lineId)) refuseField(`declined.${place}.lineId`, 'a line that is not agreed to as well');
    if (zRebuildWork.parse(line.work).safety && words.trim() === '')
      throw new RefusedError({ code: 'declined-without-words', facts: { path: `declined.${place}.words` } });
    return { line, words };
  });
  const facts = { saidOn, saidBy, how, by, agreed: yes.length, declined: no.length };
  writeEntry(record, entryNow(context, 'rebuild/approve', by), (w, entryId) => {
    for (const line of yes)
      supersede(w, rebuildLines, line.rowId, entryId, { stands: 'agreed', declinedWords: '', reason: 'agreed' });
    for (const { line, words } of no)
      supersede(w, rebuildLines, line.rowId, entryId, { stands: 'declined', declinedWords: words, reason: 'declined' });
    insertRebuildStep(w, entryId, { rebuildId, lineId: null, kind: 'approval', saidOn, saidBy, facts });
  });
  return { rebuildId };
};

/** @throws RefusedError out-of-limits {sizeMm, lowerMm, upperMm} unless `sure` */
export const rebuildBoredHandler: Handler<typeof rebuildBored, Context> = (context, request) => {
  const record = recordOf(context);
  const { lineId, cut, sizeMm, sure, by } = request;
  const { line } = openLineOrRefuse(record, lineId);
  const limits = zRebuildWork.parse(line.work).cuts[cut];
  if (!limits) refuseField('cut', 'a cut of this line');
  else if (!sure && (sizeMm < limits.lowerMm || sizeMm > limits.upperMm))
    throw new RefusedError({
      code: 'out-of-limits',
      facts: { path: 'sizeMm', sizeMm, lowerMm: limits.lowerMm, upperMm: limits.upperMm },
    });
  const row = { rebuildId: line.rebuildId, lineId, kind: 'bored' as const, saidOn: context.today(), saidBy: by };
  writeEntry(record, entryNow(context, 'rebuild/bored', by), (w, entryId) =>
    insertRebuildStep(w, entryId, { ...row, facts: { cut, sizeMm } }),
  );
  return { lineId };
};

export const rebuildCheckHandler: Handler<typeof rebuildCheck, Context> = (context, request) => {
  const record = recordOf(context);
  const { rebuildId, check, answer, by } = request;
  openRebuildOrRefuse(record, rebuildId);
  const row = { rebuildId, lineId: null, kind: 'check' as const, saidOn: context.today(), saidBy: by };
  writeEntry(record, entryNow(context, 'rebuild/check', by), (w, entryId) =>
    insertRebuildStep(w, entryId, { ...row, facts: { check, answer } }),
  );
  return { rebuildId };
};

export const ratesReadHandler: Handler<typeof ratesRead, Context> = (context) => ({
  rates: readRates(recordOf(context)),
});

export const ratesSaveHandler: Handler<typeof ratesSave, Context> = (context, { by, ...rates }) => {
  writeEntry(recordOf(context), entryNow(context, 'rates/save', by), (w, entryId) => saveRates(w, entryId, rates));
  return { saved: true };
};
