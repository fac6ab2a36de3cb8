import type { PointSheet } from '#core/contract/machine.ts';
import { day } from '#core/units/day.ts';
import { type DecimalMark, dayText, limitFigure, limitText } from '#core/words/quantityText.ts';
import { renewalKindText, renewalWords as words } from '#renderer/words/renewalWords.ts';

/** What the next man has to know of a part before he makes or orders one: another standard than drawn, pieces, shims. */
export function partNotes(
  point: Pick<PointSheet, 'oversize' | 'mustStayStandard' | 'stationRenewals' | 'shims' | 'measures'>,
  mark: DecimalMark,
): string[] {
  const { oversize, stationRenewals, shims, measures } = point;
  const on = (text: string) => dayText(day(text));
  return [
    ...(oversize
      ? [
          words.oversize(
            limitText(oversize.standardMm, mark),
            limitFigure(oversize.drawnMm, mark),
            on(oversize.since),
            oversize.stamped,
          ),
        ]
      : []),
    ...(point.mustStayStandard ? [words.mustStayStandard] : []),
    ...stationRenewals.map(({ station, kind, takenOn }) =>
      words.stationRenewed(station, renewalKindText(kind, measures), on(takenOn)),
    ),
    ...shims.map(({ shimMm, takenOn }) => words.shimmed(limitText(shimMm, mark), on(takenOn))),
  ];
}
