import type { fitStraighten } from '../contract/fits.ts';
import type { Handler } from '../contract/operation.ts';
import { orRefuse } from '../outcome.ts';
import { LOCAL_RULES_PREVAIL } from '../repair/cautions/cautions.ts';
import { cautionsFor, plainFacts } from '../repair/cautions/cautionsFor.ts';
import { workOpen } from '../repair/cautions/closedWork.ts';
import { pressStraight, YIELD_ABOVE_CERTIFICATE } from '../repair/straightening/pressStraight.ts';
import type { Context } from './context.ts';

export const fitStraightenHandler: Handler<typeof fitStraighten, Context> = (_context, { section, part, ...steel }) => {
  const open = workOpen('straighten', part);
  const { value, howKnown, source } = YIELD_ABOVE_CERTIFICATE;
  return {
    closedBecause: open.open ? [] : [...open.because],
    press: open.open ? orRefuse(pressStraight(section, steel)) : null,
    yieldAbove: { ...value, howKnown, source },
    cautions: cautionsFor(plainFacts(['straighten'], part)),
    prevail: LOCAL_RULES_PREVAIL,
  };
};
