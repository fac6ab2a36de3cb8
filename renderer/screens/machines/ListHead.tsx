import { flagLeft, hoursRule } from '#core/axis/hoursRule.ts';
import { hoursToPx } from '#core/axis/scale.ts';
import { HelpMark } from '#renderer/help/HelpMark.tsx';
import { HoursRule } from '#renderer/marks/HoursRule.tsx';
import { Picture } from '#renderer/marks/Picture.tsx';
import { flagWidth, PresentFlag, PresentLine } from '#renderer/marks/PresentHours.tsx';
import { shared } from '#renderer/words/english.ts';
import { machinesWords } from '#renderer/words/machinesWords.ts';
import { ColumnHead, GridRow } from './GridParts.tsx';
import { FIGURE_PX, type ListLayout } from './listLayout.ts';

export const LIST_HEAD_PX = 44;
const RULE_TOP_PX = 4;

/** Heads of the columns, and the one rule all bars stand on. It stays while the rows scroll. */
export function ListHead({ layout }: { layout: ListLayout }) {
  const { scale, figures, name, hours, first, likelyBy, kind } = layout;
  const flagPx = flagWidth(shared.now);
  const rule = hoursRule(scale, { figurePx: 15, flag: { hours: 0, widthPx: flagPx }, pastBefore: 0 });
  return (
    <GridRow aria-rowindex={1} className={`machines-head ${kind}`} style={{ height: LIST_HEAD_PX }}>
      <div aria-hidden="true">
        <Picture width={layout.widthPx} height={LIST_HEAD_PX} label={null}>
          <HoursRule rule={rule} y={RULE_TOP_PX} />
          <PresentLine x={hoursToPx(scale, 0)} y0={RULE_TOP_PX + 20} y1={LIST_HEAD_PX} estimated={false} />
          <PresentFlag left={flagLeft(scale, 0, flagPx)} y={RULE_TOP_PX} text={shared.now} estimated={false} />
        </Picture>
      </div>
      <Head className="words" left={name.left} width={name.width + hours.width}>
        <span className="said">{machinesWords.machine}: </span>
        {machinesWords.axis}
        <br />
        {machinesWords.axisSecond} <HelpMark about="wide" />
      </Head>
      <Head className="right foot" left={hours.left} width={hours.width} said={kind === 'narrow'}>
        <span className="said">{machinesWords.machineHours}</span>
      </Head>
      <Head className="foot" left={first.left} width={first.width}>
        {machinesWords.first}
      </Head>
      {(['low', 'middle', 'high'] as const).map((figure) => (
        <Head
          key={figure}
          className={figure === 'middle' ? 'right foot heavy' : 'right foot'}
          left={figures[figure] - FIGURE_PX}
          width={FIGURE_PX}
        >
          {shared[figure]}
        </Head>
      ))}
      <Head className="right foot" left={likelyBy.left} width={likelyBy.width}>
        {machinesWords.likelyBy}
      </Head>
    </GridRow>
  );
}

const Head = ({
  children,
  className,
  left,
  width,
  said = false,
}: {
  children: React.ReactNode;
  className: string;
  left: number;
  width: number;
  said?: boolean;
}) => (
  <ColumnHead className={said ? 'said' : `list-cell ${className}`} style={said ? undefined : { left, width }}>
    {children}
  </ColumnHead>
);
