import type { fitRead } from '../contract/fits.ts';
import type { Handler } from '../contract/operation.ts';
import { fitOf } from '../iso286/isoFit.ts';
import { classText } from '../iso286/toleranceClass.ts';
import { orRefuse } from '../outcome.ts';
import {
  fitForRepair,
  PINS_IN_PRESSED_BUSH,
  REPAIR_USES,
  WELDED_BOSS_OVER_MM,
  WRAPPED_BUSH,
} from '../repair/fit-for-repair/fitForRepair.ts';
import { knownOf } from '../repair/howKnown.ts';
import type { Context } from './context.ts';

export const fitReadHandler: Handler<typeof fitRead, Context> = (_context, { fit }) => {
  const read = orRefuse(fitOf(fit));
  const forRepair = REPAIR_USES.map((use) => {
    const { hole, shaft, howKnown, source } = fitForRepair(use, read.nominalMm);
    return { use, pair: `${classText(hole)}/${classText(shaft)}`, howKnown, source };
  });
  const [pins, wrapped, welded] = [PINS_IN_PRESSED_BUSH, WRAPPED_BUSH, WELDED_BOSS_OVER_MM];
  return {
    ...{ ...read, forRepair },
    besides: {
      pinsInPressedBush: { pins: pins.value.map(classText), ...knownOf(pins) },
      wrappedBush: {
        seat: classText(wrapped.value.seat),
        pins: wrapped.value.pins.map(classText),
        bore: classText(wrapped.value.boreOncePressed),
        ...knownOf(wrapped),
      },
      weldedBossOverMm: { ...welded.value, ...knownOf(welded) },
    },
  };
};
