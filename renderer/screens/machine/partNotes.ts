import type { PointSheet } from '#core/contract/machine.ts';
import { day } from '#core/units/day.ts';
import { dayText, limitFigure, limitText, type Writing } from '#core/words/quantityText.ts';
import { renewalKindText, renewalWords as words } from '#renderer/words/renewalWords.ts';

/** What the next man has to know of a part before he makes or orders one: another standard than drawn, pieces, shims. */
export function partNotes(
  point: Pick<PointSheet, 'oversize' | 'mustStayStandard' | 'stationRenewals' | 'shims' | 'measures'>,
  writing: Writing,
): string[] {
  const { oversize, stationRenewals, shims, measures } = point;
  const on = (text: string) => dayText(day(text));
  return [
    ...(oversize
      ? [
          words.oversize(
            limitText(oversize.standardMm, writing),
            limitFigure(oversize.drawnMm, writing),
            on(oversize.since),
            oversize.stamped,
          ),
        ]
      : []),
    ...(point.mustStayStandard ? [words.mustStayStandard] : []),
    ...stationRenewals.map(({ station, kind, takenOn }) =>
      words.stationRenewed(station, renewalKindText(kind, measures), on(takenOn)),
    ),
    ...shims.map(({ shimMm, takenOn }) => words.shimmed(limitText(shimMm, writing), on(takenOn))),
  ];
}
