import type { PointForecast } from '../contract/forecast.ts';
import type { Handler, RequestOf } from '../contract/operation.ts';
import type { stripDownSave } from '../contract/stripDown.ts';
import { RefusedError } from '../outcome.ts';
import { dropDraft } from '../record/draftStore.ts';
import { writeEntry } from '../record/entry.ts';
import { insertFinding } from '../record/findingStore.ts';
import type { WritableRecord } from '../record/recordFile.ts';
import { insertRenewal, insertSize } from '../record/sizeStore.ts';
import { insertStripDown } from '../record/stripDownStore.ts';
import type { SizeJudgement } from '../series/judgeSize.ts';
import { forecastsOfMachine } from '../way.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { type NotedDial, notedDial, writeNotedDial } from './notedDial.ts';
import { seriesNow } from './seriesNow.ts';
import { shopNow } from './shopNow.ts';
import { judgeTyped, type TypedStripDown, typedStripDown } from './typedStripDown.ts';

/**
 * Saves a strip-down whole, in one step: dial, sizes, renewals and findings, or nothing. Sizes that were questioned and not
 * answered are kept aside. What was typed is then no draft any more.
 *
 * @throws RefusedError nothing-typed; the dial's question (dial-went-back, ...) unless `dialSure`; and as typedStripDown
 */
export const stripDownSaveHandler: Handler<typeof stripDownSave, Context> = (context, request) => {
  const typed = typedStripDown(context, request);
  if (request.sizes.length + request.renewals.length + request.findings.length === 0 && request.dialHours === null)
    throw new RefusedError({ code: 'nothing-typed', facts: { path: 'sizes' } });
  const judged = judgeTyped(context, typed);
  const dial = dialOf(context, typed, request);
  const before = shopNow(context);
  const forecastsBefore = before.ofMachine(request.machineId).points;
  const stripDownId = writeEntry(recordOf(context), entryNow(context, 'stripDown/save', request.fitter), (w, entryId) =>
    write(w, entryId, typed, judged, dial),
  );
  // what was learned before serves for the machine at once; the classes are learned again when the shop is next looked at
  const forecastsAfter = forecastsOfMachine(seriesNow(context), request.machineId, before.learning).points;
  return {
    stripDownId,
    parked: request.sizes.filter((entry, place) => isParked(entry, judged.get(place))).length,
    moved: movedForecasts(forecastsBefore, forecastsAfter),
  };
};

type Asked = RequestOf<typeof stripDownSave>;

const isParked = ({ answer }: Asked['sizes'][number], judgement: SizeJudgement | undefined): boolean =>
  answer === null && judgement?.parked === true;

function dialOf(context: Context, { takenOn }: TypedStripDown, { machineId, dialHours, dialSure }: Asked): NotedDial {
  const dial = notedDial(context, machineId, takenOn, dialHours, 'dialHours', dialSure);
  const question = dial && 'asked' in dial ? dial.asked.question : null;
  if (question && !dialSure)
    throw new RefusedError({ code: question.code, facts: { ...question.facts, path: 'dialHours' } });
  return dial;
}

function write(
  w: WritableRecord,
  entryId: number,
  { draft, takenOn, sizes }: TypedStripDown,
  judged: ReadonlyMap<number, SizeJudgement>,
  dial: NotedDial,
): number {
  const { machineId, dialHours, fitter, note } = draft;
  const dialReadingId = writeNotedDial(w, entryId, dial, fitter);
  const stripDownId = insertStripDown(w, entryId, { machineId, takenOn, dialHours, dialReadingId, fitter, note });
  for (const [place, { point, gauge, size }] of sizes.entries()) {
    const judgement = judged.get(place);
    insertSize(w, entryId, {
      stripDownId,
      pointId: point.life.pointId,
      station: size.station,
      event: size.event,
      sizeMm: size.sizeMm,
      gaugeId: gauge?.id ?? null,
      gaugeErrorMm: size.gaugeErrorMm,
      gaugeStepMm: size.gaugeStepMm,
      parked: isParked(draft.sizes[place]!, judgement),
      question: judgement?.parked ? (judgement.cautions[0]?.code ?? null) : null,
    });
  }
  for (const { pointId, sizeMm, hoursKnown } of draft.renewals)
    insertRenewal(w, entryId, { stripDownId, pointId, hoursKnown, sizeMm });
  for (const finding of draft.findings)
    insertFinding(w, entryId, { ...finding, stripDownId, takenOn, foundBy: fitter });
  dropDraft(w, machineId);
  return stripDownId;
}

/** A forecast has moved when a figure of it differs by more than this [h]. */
const MOVED_HOURS = 0.5;

function movedForecasts(before: readonly PointForecast[], after: readonly PointForecast[]) {
  const earlier = new Map(before.map((forecast) => [forecast.pointId, forecast.hoursLeft]));
  return after.flatMap(({ pointId, item, position, point, hoursLeft }) => {
    const was = earlier.get(pointId);
    const figures = ['low', 'middle', 'high'] as const;
    const same = was && figures.every((figure) => sameHours(was[figure], hoursLeft[figure]));
    return was && !same ? [{ pointId, item, position, point, before: was, after: hoursLeft }] : [];
  });
}

const sameHours = (a: number | null, b: number | null): boolean =>
  a === null || b === null ? a === b : Math.abs(a - b) <= MOVED_HOURS;
