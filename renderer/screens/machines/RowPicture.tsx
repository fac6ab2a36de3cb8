import { intervalBar, pastStub, thinInterval } from '#core/axis/intervalBar.ts';
import { hoursToPx, onScale } from '#core/axis/scale.ts';
import { winterBands } from '#core/axis/winterBands.ts';
import type { Finding, MachineLine } from '#core/contract/machine.ts';
import { hoursLeftFigure, type Writing } from '#core/words/quantityText.ts';
import { DoNotUseBox } from '#renderer/marks/DoNotUseBox.tsx';
import { IntervalBar, PastStub, ThinInterval } from '#renderer/marks/IntervalBar.tsx';
import { Picture } from '#renderer/marks/Picture.tsx';
import { PresentLine } from '#renderer/marks/PresentHours.tsx';
import { PlanLine, WinterBand } from '#renderer/marks/WinterBand.tsx';
import { stopText } from '#renderer/words/machinesWords.ts';
import { pastLimitText } from '#renderer/words/markWords.ts';
import type { ListLayout } from './listLayout.ts';

type RowPictureProps = {
  line: MachineLine;
  stop: Finding | null;
  /** the sentence that stands for it */
  label: string;
  layout: ListLayout;
  writing: Writing;
};

/** Thin lines under the bar: the positions that come next. */
const MOST_THIN = 2;
const THIN_PX = 6;
/** Winters drawn in a row: the one being planned and two more; further off, a bar is too wide to be read against them. */
const MOST_WINTERS = 3;

/** A machine on the one scale: its own winters, the bar of what comes first, thin lines for what comes next. */
export function RowPicture({ line, stop, label, layout, writing }: RowPictureProps) {
  const { scale, rowPx, barY } = layout;
  const now = hoursToPx(scale, 0);
  const top = layout.kind === 'narrow' ? barY - 22 : 0;
  return (
    <Picture width={layout.widthPx} height={rowPx} label={label} className="row-picture">
      {!stop && <Winters line={line} layout={layout} top={top} />}
      <PresentLine x={now} y0={top} y1={rowPx} estimated={false} />
      {stop ? (
        <DoNotUseBox
          x={now}
          y={layout.kind === 'narrow' ? barY : rowPx / 2}
          height={23}
          width={scale.toPx - now}
          finding={stopText(stop)}
        />
      ) : (
        <Bars line={line} layout={layout} writing={writing} />
      )}
    </Picture>
  );
}

function Winters({ line, layout, top }: { line: MachineLine; layout: ListLayout; top: number }) {
  const { scale, rowPx } = layout;
  return (
    <>
      {winterBands(line.winters.slice(0, MOST_WINTERS), scale, 14).bands.map((band) => (
        <WinterBand key={band.name} band={band} y0={top} y1={rowPx} />
      ))}
      {line.planLineHours !== null && onScale(scale, line.planLineHours) && (
        <PlanLine x={hoursToPx(scale, line.planLineHours)} y0={top} y1={rowPx} />
      )}
    </>
  );
}

function Bars({ line, layout, writing }: { line: MachineLine; layout: ListLayout; writing: Writing }) {
  const { scale, barY } = layout;
  const { first } = line;
  if (!first) return null;
  const thin = line.others
    .slice(0, MOST_THIN)
    .map(({ item, hoursLeft }) => ({ item, interval: thinInterval(hoursLeft, scale) }));
  return (
    <>
      {thin.map(
        ({ item, interval }, i) =>
          interval && <ThinInterval key={`${item}-${interval.x0}`} interval={interval} y={barY + 12 + i * THIN_PX} />,
      )}
      {first.pastLimitMm === null ? (
        <FirstBar first={first} layout={layout} />
      ) : (
        <Past readAtHours={first.hoursLeft.low ?? 0} pastMm={first.pastLimitMm} layout={layout} writing={writing} />
      )}
    </>
  );
}

function FirstBar({ first, layout }: { first: NonNullable<MachineLine['first']>; layout: ListLayout }) {
  const { scale, barY } = layout;
  const { hoursLeft, decides, ownReadings } = first;
  const bar = intervalBar({ ...hoursLeft, nowHours: 0, decides, ownReadings }, scale);
  return (
    <>
      <IntervalBar bar={bar} y={barY} />
      {bar.wholly === 'off-right' && hoursLeft.low !== null && (
        <text x={bar.endX - 36} y={barY + 5} className="end second rimmed">
          {hoursLeftFigure(hoursLeft.low)}
        </text>
      )}
    </>
  );
}

/** Past at its own last size: the reading may lie further back than the scale, then the stub stands at its end. */
function Past({
  readAtHours,
  pastMm,
  layout,
  writing,
}: {
  readAtHours: number;
  pastMm: number;
  layout: ListLayout;
  writing: Writing;
}) {
  const { scale, barY } = layout;
  const stub = pastStub(Math.max(scale.fromHours, Math.min(0, readAtHours)), scale);
  return stub && <PastStub stub={stub} y={barY} text={pastLimitText(pastMm, writing)} />;
}
