import { memo } from 'react';
import { limitStrip } from '#core/axis/limitStrip.ts';
import { LimitStrip } from '#renderer/marks/LimitStrip.tsx';
import { Picture } from '#renderer/marks/Picture.tsx';
import { stripDownWords as words } from '#renderer/words/stripDownWords.ts';
import type { SheetRow } from './boxes.ts';

export const SCALE_PX = { width: 206, height: 40, from: 6, to: 200 } as const;

/** New, renew and reject of one row, last time's size and this time's between them. Its figures stand in the boxes. */
export const RowScale = memo(function RowScale({
  row,
  lastMm,
  foundMm,
}: {
  row: SheetRow;
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
    fromPx: SCALE_PX.from,
    toPx: SCALE_PX.to,
  });
  if (!strip) return <span className="no-limits">{words.noLimits}</span>;
  return (
    <Picture width={SCALE_PX.width} height={SCALE_PX.height} label={null}>
      <LimitStrip strip={strip} y={24} />
    </Picture>
  );
});
