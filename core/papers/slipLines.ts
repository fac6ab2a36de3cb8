import type { Slip } from '../contract/slip.ts';
import { day } from '../units/day.ts';
import { lengthFigure, lengthText, limitText } from '../words/quantityText.ts';
import { shortDay } from './slipFigures.ts';
import { findingText, itemsText, midSentence, severityWords } from './slipNames.ts';
import { declinedText } from './slipWords.ts';

/** The lines of the slip's lists: what was found, what was done, what to watch. */

/** A line of a list: item numbers, what it is, and what stands at its right edge. */
export type SlipLine = { items: string; label: string; right: string; strong: boolean };

export function foundLine(slip: Slip, found: Slip['found'][number]): SlipLine {
  const items = itemsText(found.items);
  if (found.finding !== null) {
    return {
      items,
      label: [
        `${found.label}: ${findingText({ finding: found.finding, note: found.note })}`,
        ...(found.declined === null ? [] : ['repair refused']),
      ].join('; '),
      right: found.severity ? severityWords[found.severity] : '',
      strong: found.doNotUse,
    };
  }
  return { items, label: found.label, right: sizeText(slip, found), strong: false };
}

/** "1.30, limit 1.5 mm": size and limit stand side by side, the unit once behind both. */
function sizeText(slip: Slip, found: Slip['found'][number]): string {
  const writing = slip.shop.decimalMark;
  if (found.sizeMm === null) return '';
  if (found.renewAtMm === null) return lengthText(found.sizeMm, found.decimals, writing);
  const size = lengthFigure(found.sizeMm, found.decimals, writing);
  const limit = limitText(found.renewAtMm, writing);
  return found.pastMm !== null && found.pastMm > 0 ? `${size}, past ${limit}` : `${size}, limit ${limit}`;
}

export function doneLine(slip: Slip, done: Slip['done'][number]): SlipLine {
  const words = {
    renewed: renewedText(done),
    'left-at': 'left at',
    closed: done.note === '' ? 'put right' : midSentence(done.note),
  };
  return {
    items: itemsText(done.items),
    label: `${done.label}: ${words[done.what]}`,
    right: done.sizeMm === null ? '' : lengthText(done.sizeMm, done.decimals, slip.shop.decimalMark),
    strong: false,
  };
}

/** What was done, in the farmer's words; an oversize is told so that the next man makes the right part. */
function renewedText({ kind, stamped }: Slip['done'][number]): string {
  const words = {
    'new-part': 'renewed',
    bush: 'bushed',
    'weld-and-bore': 'welded up to size',
    oversize: `oversize${stamped ? ', stamped' : ''}`,
    turned: 'turned over',
  };
  return words[kind ?? 'new-part'];
}

/** Lines to watch till then: the shop's own, and open findings. */
export function watchLines(slip: Slip): string[] {
  const found = slip.watch.map(
    (row) =>
      `${itemsText(row.items)} ${row.label}: ${findingText(row)}, found ${shortDay(day(row.foundOn))}, ${severityWords[row.severity]}. ${declinedText(row.declined)}`,
  );
  return [...found.map((line) => line.trim()), ...slip.greaseAndWatch];
}
