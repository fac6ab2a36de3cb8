import type { TitleCell } from '#renderer/controls/Sheet.tsx';
import { faultText } from '#renderer/words/faultText.ts';
import { stripDownWords as words } from '#renderer/words/stripDownWords.ts';
import type { SheetRemark } from './sheet.ts';
import type { Kept } from './useKept.ts';

/** The title block of the grid: how to read it, how safe it is, what comes next. */
export function benchBlock({
  kept,
  blank,
  remarks,
  nextName,
  allIn,
}: {
  kept: Kept;
  blank: boolean;
  remarks: readonly SheetRemark[];
  nextName: string | null;
  allIn: boolean;
}): TitleCell[] {
  return [
    { label: words.blockUnderlined, value: words.blockWorst },
    { label: words.blockDots, value: words.blockDotsAre },
    { label: words.blockKept, value: keptText(kept, blank, remarks) },
    { label: words.blockNext, value: nextName ?? (allIn ? words.blockAllIn : '\u2013'), grow: true },
  ];
}

function keptText(kept: Kept, blank: boolean, remarks: readonly SheetRemark[]): string {
  if (remarks.some(({ field }) => field === 'takenOn')) return words.keptNot;
  if (kept.fault) return words.keptFailed(faultText(kept.fault).what);
  if (kept.pending) return words.keeping;
  if (kept.keptAt !== null) return words.keptAt(timeOfDay(kept.keptAt));
  return blank ? words.keptNothing : words.keptBefore;
}

/** Hours and minutes of an instant on this computer's clock, "14:02". */
export const timeOfDay = (instant: string): string => {
  const at = new Date(instant);
  return `${String(at.getHours()).padStart(2, '0')}:${String(at.getMinutes()).padStart(2, '0')}`;
};
