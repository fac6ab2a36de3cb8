import { basisFigure, hoursLeftFigure } from '#core/words/quantityText.ts';
import { shared } from '#renderer/words/english.ts';
import { pictureWords } from '#renderer/words/pictureWords.ts';
import type { PictureLayout } from './pictureLayout.ts';
import type { PictureRow } from './pictureProps.ts';

/**
 * Low, middle, high hours left and what they rest on; the one that decides is heavy.
 * `placed`: the row has its marks on the axis, where a finding already stands.
 */
export function RowFigures({ row, layout, placed }: { row: PictureRow; layout: PictureLayout; placed: boolean }) {
  if (row.doNotUse !== null)
    return placed ? null : (
      <div className={`row-figures ${layout.kind}`} aria-hidden="true">
        <span className="wide-figure red">{shared.doNotUse}</span>
      </div>
    );
  const unknown = row.hoursLeft.low === null && row.hoursLeft.middle === null;
  return (
    <div className={`row-figures ${layout.kind}`} aria-hidden="true">
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
