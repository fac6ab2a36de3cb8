import { hoursToPx } from '#core/axis/scale.ts';
import { wholeFigure } from '#core/words/quantityText.ts';
import { Picture } from '#renderer/marks/Picture.tsx';
import { PresentLine } from '#renderer/marks/PresentHours.tsx';
import { machinesWords } from '#renderer/words/machinesWords.ts';
import { GridCell, GridRow, RowHead } from './GridParts.tsx';
import type { Group } from './listItems.ts';
import type { ListLayout } from './listLayout.ts';

type GroupHeadProps = {
  group: Group;
  count: number;
  /** name of the winter after the one being planned */
  after: string | null;
  top: number;
  rowIndex: number;
  layout: ListLayout;
};

/** What is to be done with the machines under it, and how many there are. */
export function GroupHead({ group, count, after, top, rowIndex, layout }: GroupHeadProps) {
  const { widthPx, headPx, scale } = layout;
  return (
    <GridRow
      aria-rowindex={rowIndex}
      className={`machines-group ${group}`}
      style={{ transform: `translateY(${top}px)`, height: headPx }}
    >
      <Picture width={widthPx} height={headPx} label={null} className="row-picture">
        <PresentLine x={hoursToPx(scale, 0)} y0={0} y1={headPx} estimated={false} />
      </Picture>
      <RowHead className="group-name">{machinesWords.groups[group](after)}</RowHead>
      <GridCell className="group-count">{wholeFigure(count)}</GridCell>
    </GridRow>
  );
}
