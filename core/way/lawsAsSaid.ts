import type { ShopLearning } from '../fit/learnShop.ts';
import { machineLaws } from '../fit/machineLaws.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { widenedBy } from '../forecast/guards.ts';
import { widenedLaw } from '../forecast/widenedLaw.ts';
import type { WearSeries } from '../series/wearSeries.ts';
import type { ClassCoverage } from './classCoverage.ts';

/** The shop has not switched it off. */
export const widens = ({ widenOffCoverage }: ModelSettings): boolean => widenOffCoverage === 1;

/**
 * What is held of each present part of one machine, as it is told: parts of a class whose ranges held too few of their sizes
 * are made as much wider as would have held them. The one place where that is done.
 * @param parts of one machine: all classes, finished ones too
 */
export const lawsAsSaid = (
  pool: ShopLearning,
  parts: readonly WearSeries[],
  settings: ModelSettings,
  coverage: readonly ClassCoverage[],
): PartLaw[] =>
  machineLaws(pool, parts, settings).map((law) => {
    const scored = coverage.find(({ partClass }) => partClass === law.partClass);
    return widenedLaw(law, widenedBy(scored, widens(settings), settings));
  });
