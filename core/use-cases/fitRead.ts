import type { fitRead } from '../contract/fits.ts';
import type { Handler } from '../contract/operation.ts';
import { fitOf } from '../iso286/isoFit.ts';
import { classText } from '../iso286/toleranceClass.ts';
import { orRefuse } from '../outcome.ts';
import { fitForRepair, REPAIR_USES } from '../repair/fit-for-repair/fitForRepair.ts';
import type { Context } from './context.ts';

export const fitReadHandler: Handler<typeof fitRead, Context> = (_context, { fit }) => {
  const read = orRefuse(fitOf(fit));
  const forRepair = REPAIR_USES.map((use) => {
    const { hole, shaft, howKnown, source } = fitForRepair(use, read.nominalMm);
    return { use, pair: `${classText(hole)}/${classText(shaft)}`, howKnown, source };
  });
  return { ...read, forRepair };
};
