import { basisFigure, hoursLeftFigure } from '#core/words/quantityText.ts';
import { shared } from '#renderer/words/english.ts';
import { pictureWords } from '#renderer/words/pictureWords.ts';
import type { PictureLayout } from './pictureLayout.ts';
import type { PictureRow } from './pictureProps.ts';

/** Low, middle, high hours left and what they rest on; the one that decides is heavy. */
export function RowFigures({ row, layout }: { row: PictureRow; layout: PictureLayout }) {
  if (row.doNotUse !== null) return null;
  const unknown = row.hoursLeft.low === null && row.hoursLeft.middle === null;
  return (
    <div className={`row-figures ${layout.kind}`}>
      {unknown || row.pastLimit ? (
        <span className={row.pastLimit ? 'wide-figure red' : 'wide-figure second'}>
          {row.pastLimit ? shared.passed : shared.noForecast}
        </span>
      ) : (
        <>
          <Figure hoursLeft={row.hoursLeft.low} heavy={row.decides === 'low'} />
          <Figure hoursLeft={row.hoursLeft.middle} heavy={row.decides === 'middle'} />
          <Figure hoursLeft={row.hoursLeft.high} heavy={false} />
        </>
      )}
      <span className="basis">{basisFigure(row.ownReadings, row.likeParts)}</span>
    </div>
  );
}

function Figure({ hoursLeft, heavy }: { hoursLeft: number | null; heavy: boolean }) {
  const kind = [heavy && 'heavy', hoursLeft !== null && hoursLeft < 0 && 'red', hoursLeft === null && 'beyond']
    .filter(Boolean)
    .join(' ');
  return <span className={kind}>{hoursLeft === null ? pictureWords.beyond : hoursLeftFigure(hoursLeft)}</span>;
}
