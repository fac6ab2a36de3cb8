import type { fitStraighten } from '../contract/fits.ts';
import type { GivenReplyOf, Handler, RequestOf } from '../contract/operation.ts';
import { orRefuse } from '../outcome.ts';
import { LOCAL_RULES_PREVAIL } from '../repair/cautions/cautions.ts';
import { cautionsFor, plainFacts } from '../repair/cautions/cautionsFor.ts';
import { workOpen } from '../repair/cautions/closedWork.ts';
import { knownOf } from '../repair/howKnown.ts';
import {
  bendStrain,
  bowRadiusMm,
  pressStraight,
  YIELD_ABOVE_CERTIFICATE,
} from '../repair/straightening/pressStraight.ts';
import { sectionFigures } from '../repair/straightening/section.ts';
import type { Context } from './context.ts';

export const fitStraightenHandler: Handler<typeof fitStraighten, Context> = (_context, asked) => straightened(asked);

/** Whether a bent part may be pressed straight, and with what force. @throws RefusedError what pressStraight refuses */
export function straightened({ bar, part }: RequestOf<typeof fitStraighten>): GivenReplyOf<typeof fitStraighten> {
  const open = workOpen('straighten', part);
  return {
    closedBecause: open.open ? [] : [...open.because],
    press: open.open && bar ? pressed(bar) : null,
    yieldAbove: { ...YIELD_ABOVE_CERTIFICATE.value, ...knownOf(YIELD_ABOVE_CERTIFICATE) },
    cautions: cautionsFor(plainFacts(['straighten'], part)),
    prevail: LOCAL_RULES_PREVAIL,
  };
}

/** Force, and the strain the bar has already taken where its bow is measured. */
function pressed({ section, bowMm, ...steel }: NonNullable<RequestOf<typeof fitStraighten>['bar']>) {
  const { depthMm } = orRefuse(sectionFigures(section));
  const strain = bowMm === null ? null : bendStrain(depthMm, bowRadiusMm(steel.spanMm, bowMm));
  return { ...orRefuse(pressStraight(section, steel)), strain };
}
