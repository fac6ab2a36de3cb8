import { memo } from 'react';
import { limitStrip } from '#core/axis/limitStrip.ts';
import { LimitStrip } from '#renderer/marks/LimitStrip.tsx';
import { Picture } from '#renderer/marks/Picture.tsx';
import { stripDownWords as words } from '#renderer/words/stripDownWords.ts';
import type { SheetRow } from './boxes.ts';

const HEIGHT_PX = 40;
const MARGIN_PX = 6;
/** The scale is at least and at most so wide: a wider window lengthens it. */
export const SCALE_WIDTH_PX = { least: 206, most: 460 } as const;

/** New, renew and reject of one row, last time's size and this time's between them. Its figures stand in the boxes. */
export const RowScale = memo(function RowScale({
  row,
  width,
  lastMm,
  foundMm,
}: {
  row: SheetRow;
  width: number;
  lastMm: number | null;
  foundMm: number | null;
}) {
  const strip = limitStrip({
    wears: row.wears,
    newSizeMm: row.limits.newSizeMm,
    renewAtMm: row.limits.renewAtMm,
    rejectAtMm: row.limits.rejectAtMm,
    lastMm,
    foundMm,
    errorSdMm: row.gaugeErrorMm,
    fromPx: MARGIN_PX,
    toPx: width - MARGIN_PX,
  });
  if (!strip) return <span className="no-limits">{words.noLimits}</span>;
  return (
    <Picture width={width} height={HEIGHT_PX} label={null}>
      <LimitStrip strip={strip} y={24} />
    </Picture>
  );
});
