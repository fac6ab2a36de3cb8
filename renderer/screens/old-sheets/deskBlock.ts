import { isDay } from '#core/units/day.ts';
import type { TitleCell } from '#renderer/controls/Sheet.tsx';
import { oldSheetsWords as words } from '#renderer/words/oldSheetsWords.ts';
import { benchBlock } from '../strip-down/benchBlock.ts';
import { isBlank, type Sheet } from '../strip-down/sheet.ts';
import type { Kept } from '../strip-down/useKept.ts';

/** The title block of the desk: how safe what was typed is, how to read the boxes, what waits. */
export function deskBlock({
  kept,
  sheet,
  machineId,
  waiting,
}: {
  kept: Kept;
  sheet: Sheet;
  machineId: number | null;
  waiting: number;
}): TitleCell[] {
  return [
    { label: words.kept, value: keptText(kept, sheet, machineId) },
    { label: words.lastOfDay, value: words.lastOfDayIs },
    { label: words.forecasts, value: words.forecastsWait },
    { label: words.rest, value: words.restIs(waiting), grow: true },
  ];
}

/** The bench says it in the same words, once there is a day to keep it under. */
function keptText(kept: Kept, sheet: Sheet, machineId: number | null): TitleCell['value'] {
  if (machineId !== null && !isBlank(sheet) && !isDay(sheet.takenOn)) return words.keptNoDay;
  const nothingYet = isBlank(sheet) ? { keptAt: null, pending: false, fault: null } : kept;
  const cells = benchBlock({ kept: nothingYet, blank: isBlank(sheet), remarks: [], nextName: null, allIn: false });
  return cells.find(({ label }) => label === words.kept)?.value ?? '';
}
