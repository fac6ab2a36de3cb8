import type { ClassLearning } from '../fit/learnShop.ts';
import { partLaws } from '../fit/machineBlock.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';

/** Where doubt of a part's ln rate comes from: the mean of its class, its machine's harshness, its own departure. */
export type RateSource = 'class' | 'machine' | 'own-rate';

/**
 * Variance of a part's ln rate if one of its sources were known exactly. ln rate = mu + a + b; before the part's own sizes
 * are heard their variances add up to P, of which b's is the class's own; what is held of mu + a is split as the class's
 * doubt of mu is to its scatter of a. Its own sizes then say as much as they do now:
 *   1 / lnRateVar = 1 / P + R,   without: 1 / (1 / (P - V) + R)
 *
 * @returns between 0 and the variance there is
 * @source own derivation: conditional normals
 */
export function lnRateVarWithout(
  source: RateSource,
  law: PartLaw,
  learned: ClassLearning,
  settings: ModelSettings,
): number {
  const { lnRateVar, lnRateVarClassAndMachine: before } = law.basis;
  const part = partsOfVariance(learned, settings);
  const ofPart = Math.min(before, part['own-rate']);
  const shared = part.class + part.machine;
  const of = source === 'own-rate' ? ofPart : shared > 0 ? ((before - ofPart) * part[source]) / shared : 0;
  const rest = before - of;
  if (rest <= 0) return 0;
  const heard = lnRateVar > 0 ? Math.max(0, 1 / lnRateVar - 1 / before) : 0;
  return Math.min(lnRateVar, 1 / (1 / rest + heard));
}

/** Variance of mu, of machines' harshness, and of parts about their machine's, over the class's nodes. */
function partsOfVariance({ nodes }: ClassLearning, settings: ModelSettings): Record<RateSource, number> {
  let mean = 0;
  let square = 0;
  let machine = 0;
  let own = 0;
  for (const { weight, muEta, muLambda, machineScatter, partScatter } of nodes) {
    const at = muEta / muLambda;
    const laws = partLaws(partScatter, settings);
    mean += weight * at;
    square += weight * (1 / muLambda + at * at);
    machine += weight * machineScatter ** 2;
    own += weight * laws.share.reduce((sum, share, r) => sum + share * laws.sd[r]! ** 2, 0);
  }
  return { class: Math.max(0, square - mean * mean), machine, 'own-rate': own };
}
