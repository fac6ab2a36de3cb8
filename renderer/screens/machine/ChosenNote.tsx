import { Figures } from '#renderer/words/Figures.tsx';
import { type PictureLayout, rowName } from './pictureLayout.ts';
import type { PictureProps } from './pictureProps.ts';

const LINE_PX = 18;
const LABEL_HALF_PX = 10;

/** Which point the chart shows and what it was measured with, in the widest room between the limits' labels. */
export function ChosenNote({
  chosen,
  labelYs,
  layout,
  chartPx,
}: {
  chosen: NonNullable<PictureProps['chosen']>;
  /** of the limits, beside the chart */
  labelYs: readonly number[];
  layout: PictureLayout;
  chartPx: number;
}) {
  const room = widestRoom(labelYs, chartPx);
  const left = layout.hours.toPx + 11;
  return (
    <div
      className="chosen-note"
      style={{
        top: room.from,
        left,
        width: layout.widthPx - left - 14,
        maxHeight: Math.floor(room.height / LINE_PX) * LINE_PX,
      }}
      title={chosen.note.join('\n')}
    >
      <b>
        {chosen.item} {rowName(chosen)}
      </b>
      {chosen.note.map((line) => (
        <div key={line}>
          <Figures>{line}</Figures>
        </div>
      ))}
    </div>
  );
}

/** The widest stretch of a height that no label stands in [px]. */
export function widestRoom(labelYs: readonly number[], heightPx: number): { from: number; height: number } {
  const edges = [-LABEL_HALF_PX, ...[...labelYs].sort((a, b) => a - b), heightPx + LABEL_HALF_PX];
  const rooms = edges.slice(1).map((y, i) => {
    const from = (edges[i] ?? 0) + LABEL_HALF_PX;
    return { from, height: y - LABEL_HALF_PX - from };
  });
  return rooms.reduce((best, room) => (room.height > best.height ? room : best));
}
