import { judgePointSizes, type SizeJudgement } from '../series/judgeSize.ts';
import type { PointLife, Size } from '../shop/measuringPoint.ts';

/**
 * Judges sizes typed among others: each against the ones before it, and a sheet found later against the ones after it too.
 * A size on record that was sound, and is better than a typed one of an earlier day, puts the typed one in question: the
 * one on record has stood, and the forecast rests on it.
 *
 * @param withTyped the point's life with the typed sizes in it; their ids are below 0
 * @returns judgement by size id; sizes without anything odd are left out
 */
export function judgeAmongOthers(
  withTyped: PointLife,
  onRecord: PointLife,
  classNewSizeTolMm: number | null,
): Map<number, SizeJudgement> {
  const judged = judgePointSizes(withTyped, classNewSizeTolMm);
  const before = judgePointSizes(onRecord, classNewSizeTolMm);
  for (const later of onRecord.sizes) {
    const doubt = judged.get(later.id)?.cautions.find(({ code }) => code === 'better-than-last');
    if (!doubt || before.get(later.id)?.parked) continue;
    for (const typed of withTyped.sizes.filter((size) => isMeant(size, doubt.facts?.lastOn, later)))
      if (!judged.get(typed.id)?.parked) judged.set(typed.id, worseThanLater(typed, later));
  }
  return judged;
}

const isMeant = ({ id, takenOn, station }: Size, lastOn: unknown, later: Size): boolean =>
  id < 0 && takenOn === lastOn && station === later.station;

const worseThanLater = (typed: Size, later: Size): SizeJudgement => ({
  cautions: [
    {
      code: 'worse-than-later',
      facts: { sizeMm: typed.sizeMm, laterSizeMm: later.sizeMm, laterOn: later.takenOn },
    },
  ],
  parked: true,
  choices: ['measure-again', 'right-as-read', 'wrong-place'],
});
