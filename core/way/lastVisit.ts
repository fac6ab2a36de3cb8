import { likeliestFigures } from '../fit/fewerFigures.ts';
import type { ShopLearning } from '../fit/learnShop.ts';
import { machineLaws } from '../fit/machineLaws.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { oneSidedVisit, suspectRenewal, unlikelyReading } from '../forecast/guards.ts';
import { readingAt } from '../forecast/wearAt.ts';
import { chanceReadingBelow, wearMoments } from '../forecast/wearLaw.ts';
import type { Caution } from '../outcome.ts';
import type { WearReading, WearSeries } from '../series/wearSeries.ts';

/**
 * The machine's last visit, judged by what was expected before it: sizes nobody expected, wear that went back, and sizes
 * all to one side. Nothing is dropped for it. It goes by the likeliest figures of each class: what it wonders at lies far out.
 *
 * @param parts of one machine: all classes, finished ones too
 * @returns cautions by point
 */
export function lastVisitCautions(
  pool: ShopLearning,
  parts: readonly WearSeries[],
  settings: ModelSettings,
): Map<number, Caution[]> {
  const looks = looksOf(parts);
  if (looks.length === 0) return new Map();
  const visit = looks[0]!.reading.visit;
  const before = parts.map((part) => ({ ...part, readings: part.readings.filter((one) => one.visit !== visit) }));
  const laws = new Map(machineLaws(likeliestFigures(pool), before, settings, true).map((law) => [law.pointId, law]));
  const judged = looks.map((look) => judge(look, laws.get(look.part.pointId)!, settings));
  const oneSided = oneSidedVisit(
    judged.map(({ residualMm }) => residualMm),
    settings,
  );
  return new Map(judged.map(({ pointId, cautions }) => [pointId, oneSided ? [...cautions, oneSided] : cautions]));
}

type Look = { part: WearSeries; reading: WearReading };

/** Sizes of present parts in the machine's last visit; those taken as a part went in are no forecast's business. */
function looksOf(parts: readonly WearSeries[]): Look[] {
  const present = parts.filter((part) => part.present);
  const days = present.flatMap((part) => part.readings.map(({ takenOn }) => takenOn));
  const last = days.sort().at(-1);
  return present.flatMap((part) => {
    const reading = part.readings.at(-1);
    return reading && reading.takenOn === last && reading.workedHours > 0 ? [{ part, reading }] : [];
  });
}

function judge({ part, reading }: Look, law: PartLaw, settings: ModelSettings) {
  const { workedHours, wearMm, errorSdMm } = reading;
  const below = chanceReadingBelow(law, wearMm, workedHours, errorSdMm, settings.driftDelta);
  const expectedMm = readingAt(law, workedHours, 0, 0.5, settings);
  const earlier = part.readings.at(-2);
  const fell =
    earlier &&
    suspectRenewal(
      {
        lastWearMm: earlier.wearMm,
        lastErrorSdMm: earlier.errorSdMm,
        wearMm,
        errorSdMm,
        expectedGainMm: expectedMm - wearMoments(law, law.lastHours ?? 0, 0).meanMm,
      },
      settings,
    );
  const cautions = [unlikelyReading(below, settings), fell ?? null].filter((caution) => caution !== null);
  return { pointId: part.pointId, cautions, residualMm: wearMm - expectedMm };
}
