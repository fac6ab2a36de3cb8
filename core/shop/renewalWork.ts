import type { Measures } from './assemblyKinds.ts';
import type { RenewalWork } from './visit.ts';

/**
 * What it usually takes to renew a part, by what is measured of it: a strip, a pin, a bush bored and pressed in, a hook or keeper.
 * Slack is made good with its pin and bush.
 */
export const USUAL_RENEWALS: Readonly<Record<Measures, Omit<RenewalWork, 'partClass'>>> = {
  thickness: { ownHours: 0.3, partsHours: 0.6 },
  diameter: { ownHours: 1.2, partsHours: 0.5 },
  bore: { ownHours: 1.6, partsHours: 0.3 },
  slack: { ownHours: 0, partsHours: 0 },
  section: { ownHours: 1, partsHours: 4 },
  depth: { ownHours: 1, partsHours: 4 },
};

export const USUAL_RENEWALS_SOURCE = 'common practice, no source';

/** Of a joint whose slack alone is measured: pin and bush both. */
const SLACK_ALONE = {
  ownHours: USUAL_RENEWALS.diameter.ownHours + USUAL_RENEWALS.bore.ownHours,
  partsHours: USUAL_RENEWALS.diameter.partsHours + USUAL_RENEWALS.bore.partsHours,
};

/**
 * Work and parts of renewing all that is measured at a position, with what the shop says of its classes.
 * @returns its own work and its parts [bench h]
 */
export function renewalOfPosition(
  points: readonly { partClass: string; measures: Measures }[],
  ownOfShop: readonly RenewalWork[],
): Omit<RenewalWork, 'partClass'> {
  const alone = points.every(({ measures }) => measures === 'slack');
  const each = points.map(({ partClass, measures }) => {
    const own = ownOfShop.find((one) => one.partClass === partClass);
    return own ?? (alone ? SLACK_ALONE : USUAL_RENEWALS[measures]);
  });
  return {
    ownHours: each.reduce((sum, { ownHours }) => sum + ownHours, 0),
    partsHours: each.reduce((sum, { partsHours }) => sum + partsHours, 0),
  };
}
