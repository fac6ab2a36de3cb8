import { hoursToPx, onScale } from '#core/axis/scale.ts';
import { winterBands } from '#core/axis/winterBands.ts';
import { PresentLine } from '#renderer/marks/PresentHours.tsx';
import { PlanLine, WinterBand } from '#renderer/marks/WinterBand.tsx';
import type { PictureLayout } from './pictureLayout.ts';
import type { PictureProps } from './pictureProps.ts';

type GroundProps = { props: PictureProps; layout: PictureLayout; y0: number; y1: number; planTo?: number };

/** What runs through head, rows and chart alike: winters, the blue line, and now. */
export function Ground({ props, layout, y0, y1, planTo = y1 }: GroundProps) {
  const { hours } = layout;
  const { nowHours, planLineHours } = props;
  return (
    <g>
      {winterBands(props.winters, hours, 14).bands.map((band) => (
        <WinterBand key={band.name} band={band} y0={y0} y1={y1} />
      ))}
      {planLineHours !== null && onScale(hours, planLineHours) && (
        <PlanLine x={hoursToPx(hours, planLineHours)} y0={y0} y1={planTo} />
      )}
      {nowHours !== null && onScale(hours, nowHours) && (
        <PresentLine x={hoursToPx(hours, nowHours)} y0={y0} y1={y1} estimated={props.estimated} />
      )}
    </g>
  );
}
