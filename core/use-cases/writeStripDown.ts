import type { StripDownDraft } from '../contract/stripDown.ts';
import type { Caution } from '../outcome.ts';
import { dropDraft } from '../record/draftStore.ts';
import { insertFinding } from '../record/findingStore.ts';
import { insertPhotoAt } from '../record/photoStore.ts';
import type { WritableRecord } from '../record/recordFile.ts';
import { insertShim } from '../record/renewalStore.ts';
import { insertSize } from '../record/sizeStore.ts';
import { insertStripDown } from '../record/stripDownStore.ts';
import type { SizeJudgement } from '../series/judgeSize.ts';
import { type NotedDial, writeNotedDial } from './notedDial.ts';
import type { TypedStripDown } from './typedStripDown.ts';
import { writeRenewal } from './writeRenewal.ts';

/** Questioned, and nobody has answered: kept aside, out of the forecast. */
const isParked = ({ answer }: StripDownDraft['sizes'][number], judgement: SizeJudgement | undefined): boolean =>
  answer === null && judgement?.parked === true;

/** Nothing was typed that could be kept. */
export const isEmpty = ({ sizes, renewals, shims, findings, dialHours }: StripDownDraft): boolean =>
  sizes.length + renewals.length + shims.length + findings.length === 0 && dialHours === null;

/** What is odd about what was typed, by its place in the draft. */
export type JudgedStripDown = {
  sizes: ReadonlyMap<number, SizeJudgement>;
  renewals: ReadonlyMap<number, Caution>;
};

/** How many of its sizes, put in ones too, are kept aside. */
export const parkedOf = ({ sizes, renewals }: StripDownDraft, judged: JudgedStripDown): number =>
  sizes.filter((entry, place) => isParked(entry, judged.sizes.get(place))).length +
  renewals.filter(({ answer }, place) => answer === null && judged.renewals.has(place)).length;

/** Writes a strip-down whole: dial, sizes, renewals, packing and findings. What was typed is then no draft any more. */
export function writeStripDown(
  w: WritableRecord,
  entryId: number,
  { draft, takenOn, sizes, points }: TypedStripDown,
  judged: JudgedStripDown,
  dial: NotedDial,
): number {
  const { machineId, dialHours, fitter, note } = draft;
  const dialReadingId = writeNotedDial(w, entryId, dial, fitter);
  const stripDownId = insertStripDown(w, entryId, { machineId, takenOn, dialHours, dialReadingId, fitter, note });
  for (const [place, { point, gauge, size }] of sizes.entries()) {
    const judgement = judged.sizes.get(place);
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
  for (const [place, { answer, ...renewal }] of draft.renewals.entries()) {
    const odd = judged.renewals.get(place);
    const row = { ...renewal, stripDownId, parked: answer === null && odd !== undefined, question: odd?.code ?? null };
    writeRenewal(w, entryId, points.get(renewal.pointId)!.life, row, { takenOn, fitter });
  }
  for (const shim of draft.shims) insertShim(w, entryId, { ...shim, stripDownId });
  for (const { photoIds, ...finding } of draft.findings) {
    const findingId = insertFinding(w, entryId, { ...finding, stripDownId, takenOn, foundBy: fitter });
    for (const photoId of photoIds) insertPhotoAt(w, entryId, { at: 'finding', id: findingId }, photoId);
  }
  dropDraft(w, machineId);
  return stripDownId;
}
