import type { Slip } from '../contract/slip.ts';
import { day } from '../units/day.ts';
import { hoursFigure } from '../words/quantityText.ts';
import { fullScale, shortDay, turnsOver } from './slipFigures.ts';
import { thingOf } from './slipNames.ts';

/** What a caution's code means to a farmer; codes without a sentence are for the shop alone. */
const cautionSentences: Record<string, string> = {
  'dates-not-reliable': 'Too few meter readings to say when; go by the hours.',
  'long-extrapolation': 'Some figures reach far beyond what has been measured.',
  'from-trade-prior': 'Some figures do not rest on parts we have measured yet.',
  'sizes-questioned': 'A size is being queried and is left out here.',
  'other-assembly-stopped': 'Another part of the machine must not be used.',
};

export const planningAidHead = 'This is a planning aid, not a certificate.';

export function cautionText(slip: Slip): string {
  const thing = thingOf(slip);
  const own = slip.cautions.map((code) => cautionSentences[code]).filter((sentence) => sentence !== undefined);
  const read = slip.readOn === null ? '' : `, last read ${shortDay(day(slip.readOn))}`;
  const estimated = slip.estimated ? [`The hours now are an estimate${read}.`] : [];
  return [
    `Stop and ring us if the ${thing} knocks or will not lock, or if you see a crack or a bend.`,
    "The maker's instructions and the law where you work come first.",
    hoursText(slip),
    ...estimated,
    ...turnsOverText(slip),
    ...own,
  ].join(' ');
}

function hoursText({ hoursAre, dialMachine }: Slip): string {
  if (hoursAre === 'machine') return 'Hours are since new; no meter has been read.';
  if (dialMachine === null) return 'Hours are those of the present meter.';
  return `Hours are those of the meter of ${dialMachine}, which pulls it.`;
}

/** Where a row of the axis lies past the meter's full scale. */
function turnsOverText(slip: Slip): string[] {
  const scale = fullScale(slip);
  const hours = slip.axis?.rows.flatMap(({ dialHours }) => [dialHours.low, dialHours.middle, dialHours.high]) ?? [];
  const some = hours.some((at) => at !== null && turnsOver(slip, at));
  return some && scale !== null ? [`After ${hoursFigure(scale - 1)} the meter starts again from 0.`] : [];
}
