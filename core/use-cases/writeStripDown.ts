import type { StripDownDraft } from '../contract/stripDown.ts';
import { dropDraft } from '../record/draftStore.ts';
import { insertFinding } from '../record/findingStore.ts';
import { insertFindingPhoto } from '../record/photoStore.ts';
import type { WritableRecord } from '../record/recordFile.ts';
import { insertRenewal, insertSize } from '../record/sizeStore.ts';
import { insertStripDown } from '../record/stripDownStore.ts';
import type { SizeJudgement } from '../series/judgeSize.ts';
import { type NotedDial, writeNotedDial } from './notedDial.ts';
import type { TypedStripDown } from './typedStripDown.ts';

/** Questioned, and nobody has answered: kept aside, out of the forecast. */
export const isParked = ({ answer }: StripDownDraft['sizes'][number], judgement: SizeJudgement | undefined): boolean =>
  answer === null && judgement?.parked === true;

/** Writes a strip-down whole: dial, sizes, renewals and findings. What was typed is then no draft any more. */
export function writeStripDown(
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
  for (const { photoIds, ...finding } of draft.findings) {
    const findingId = insertFinding(w, entryId, { ...finding, stripDownId, takenOn, foundBy: fitter });
    for (const photoId of photoIds) insertFindingPhoto(w, entryId, findingId, photoId);
  }
  dropDraft(w, machineId);
  return stripDownId;
}
