import { type HoursRule, hoursRule } from '#core/axis/hoursRule.ts';
import { type IntervalBar, intervalBar } from '#core/axis/intervalBar.ts';
import { pictureRange } from '#core/axis/pictureRange.ts';
import { hoursScale, hoursToPx } from '#core/axis/scale.ts';
import type { checkExplain, Explanation } from '#core/contract/check.ts';
import type { ReplyOf } from '#core/contract/operation.ts';
import type { Range } from '#core/contract/shapes.ts';

export type ExplainedReply = ReplyOf<typeof checkExplain>;

/** A forecast on the machine's hours: as it stood, as it stands, or as it would stand with a correction. */
export type ExplainRow = {
  of: 'then' | 'now' | Explanation['code'];
  explanation: Explanation | null;
  atLimit: Range;
  /** null: nothing to draw */
  bar: IntervalBar | null;
};

/** Forecast then, now and with each correction, on one scale of machine hours. */
export function explainPicture(
  { stood, now, explanations }: ExplainedReply,
  widthPx: number,
): { rule: HoursRule; nowX: number; thenX: number | null; rows: ExplainRow[] } {
  const nowHours = now.machineHours ?? 0;
  const plus = ({ low, middle, high }: Range): Range => ({
    low: low === null ? null : nowHours + low,
    middle: middle === null ? null : nowHours + middle,
    high: high === null ? null : nowHours + high,
  });
  const nothing: Range = { low: null, middle: null, high: null };
  const rows = [
    { of: 'then' as const, explanation: null, atLimit: stood.machineHoursAtLimit },
    { of: 'now' as const, explanation: null, atLimit: plus(now.hoursLeft) },
    ...explanations.map((explanation) => ({
      of: explanation.code,
      explanation,
      atLimit: explanation.hoursLeft ? plus(explanation.hoursLeft) : nothing,
    })),
  ];
  const scale = hoursScale({
    ...pictureRange({
      nowHours,
      historyFromHours: stood.machineHours,
      planLineHours: null,
      hoursPerYear: null,
      rows: rows.map(({ atLimit }) => atLimit),
    }),
    fromPx: 8,
    toPx: widthPx - 28,
  });
  return {
    rule: hoursRule(scale, { figurePx: 15, flag: null, pastBefore: 0 }),
    nowX: hoursToPx(scale, nowHours),
    thenX: stood.machineHours === null ? null : hoursToPx(scale, stood.machineHours),
    rows: rows.map((row) => ({
      ...row,
      bar:
        row.atLimit.low === null
          ? null
          : intervalBar(
              {
                ...row.atLimit,
                nowHours: row.of === 'then' ? (stood.machineHours ?? nowHours) : nowHours,
                decides: 'middle',
                ownReadings: ownOf(row.of),
              },
              scale,
            ),
    })),
  };
}

/** What stood and stands is drawn solid; what would be is open, since nobody has said so yet. */
const ownOf = (of: ExplainRow['of']): number => (of === 'then' || of === 'now' ? 3 : 0);
