import { flagLeft, hoursRule } from '#core/axis/hoursRule.ts';
import { hoursToPx, onScale } from '#core/axis/scale.ts';
import { winterBands } from '#core/axis/winterBands.ts';
import { HelpMark } from '#renderer/help/HelpMark.tsx';
import { HoursRule, RULE_BASE_PX } from '#renderer/marks/HoursRule.tsx';
import { Picture } from '#renderer/marks/Picture.tsx';
import { flagWidth, PresentFlag } from '#renderer/marks/PresentHours.tsx';
import { shared } from '#renderer/words/english.ts';
import { flagText } from '#renderer/words/markWords.ts';
import { pictureWords } from '#renderer/words/pictureWords.ts';
import { figureColumns } from './figureColumns.ts';
import { Ground } from './Ground.tsx';
import type { PictureLayout } from './pictureLayout.ts';
import type { PictureProps } from './pictureProps.ts';

export const HEAD_PX = 62;
const RULE_TOP_PX = 4;

/** The rule with its flag, the winters by name under it, and the heads of the columns. It stays while rows scroll. */
export function PictureHead({ props, layout }: { props: PictureProps; layout: PictureLayout }) {
  const { hours } = layout;
  const now = props.nowHours;
  const text = now === null ? '' : flagText(now, props.estimated);
  const flag = now === null || !onScale(hours, now) ? null : { hours: now, widthPx: flagWidth(text) };
  const base = RULE_TOP_PX + RULE_BASE_PX;
  const { names, tooClose } = winterBands(props.winters, hours, 14);
  const wide = layout.kind === 'wide';
  return (
    <div className="picture-head">
      <div aria-hidden="true">
        <Picture width={layout.widthPx} height={HEAD_PX} label={null}>
          {now !== null && (
            <>
              <Ground props={props} layout={layout} y0={base} y1={HEAD_PX} />
              <HoursRule rule={hoursRule(hours, { figurePx: 15, flag, pastBefore: null })} y={RULE_TOP_PX} />
              {flag && (
                <PresentFlag
                  left={flagLeft(hours, flag.hours, flag.widthPx)}
                  y={RULE_TOP_PX}
                  text={text}
                  estimated={props.estimated}
                />
              )}
              {names.map((name) => (
                <text key={name.name} x={name.x} y={base + 17} className="second rimmed">
                  {name.name}
                </text>
              ))}
            </>
          )}
          {wide && (
            <>
              {now !== null && <AxisNames props={props} tooClose={tooClose} y={base + 17} />}
              <ColumnHeads widthPx={layout.widthPx} y={base + 17} />
            </>
          )}
        </Picture>
      </div>
      {wide && (
        <HelpMark
          about="wide"
          style={{ position: 'absolute', top: 2, left: figureColumns(layout.widthPx).middle + 2 }}
        />
      )}
    </div>
  );
}

function AxisNames({ props, tooClose, y }: { props: PictureProps; tooClose: boolean; y: number }) {
  return (
    <>
      <text x={14} y={19} className="second">
        {pictureWords.machineHours}
      </text>
      <text x={14} y={y} className="second">
        {tooClose ? pictureWords.wintersTooClose : pictureWords.winters(props.hoursPerYear)}
      </text>
    </>
  );
}

function ColumnHeads({ widthPx, y }: { widthPx: number; y: number }) {
  const at = figureColumns(widthPx);
  return (
    <>
      <text x={at.middle} y={19} className="end heavy">
        {pictureWords.hoursLeft}
      </text>
      <path className="l-hair" d={`M${at.left} ${y + 6}H${widthPx - 14}`} />
      {(['low', 'middle', 'high'] as const).map((column) => (
        <text key={column} x={at[column]} y={y} className={`end ${column === 'middle' ? 'heavy' : 'second'}`}>
          {shared[column]}
        </text>
      ))}
      <text x={at.basis} y={y} className="end second">
        {pictureWords.basis}
      </text>
    </>
  );
}

/** x of the now line, for whoever draws it on: null off the scale. */
export const nowX = (props: PictureProps, layout: PictureLayout): number | null =>
  props.nowHours !== null && onScale(layout.hours, props.nowHours) ? hoursToPx(layout.hours, props.nowHours) : null;
