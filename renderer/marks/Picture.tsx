import { type ReactNode, type SVGProps, useId } from 'react';

export type PictureProps = {
  width: number;
  height: number;
  /** the sentence that stands for the picture; null: its figures stand beside it as text, so it is passed over */
  label: string | null;
  children: ReactNode;
} & Omit<SVGProps<SVGSVGElement>, 'width' | 'height' | 'children' | 'role' | 'aria-label'>;

/** A drawing: sized in px one to one, and one sentence for those who cannot see it. */
export function Picture({ width, height, label, children, className, ...rest }: PictureProps) {
  const said = label === null ? { 'aria-hidden': true } : { role: 'img', 'aria-label': label };
  return (
    // biome-ignore lint/a11y/noSvgWithoutTitle: named by aria-label, or passed over
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      className={className ? `picture ${className}` : 'picture'}
      {...said}
      {...rest}
    >
      {children}
    </svg>
  );
}

/** Hatches of the drawing, each with one meaning. */
export type Hatch = 'part' | 'past' | 'section' | 'section-other' | 'nylon' | 'fan' | 'band';

type Lines = { step: number; turn: number; crossed?: true; width: number; className: string };
const HATCHES: Readonly<Record<Hatch, Lines>> = {
  part: { step: 5, turn: 45, width: 2.2, className: 'hatch-ink' },
  section: { step: 7, turn: 45, width: 1, className: 'hatch-line' },
  'section-other': { step: 7, turn: -45, width: 1, className: 'hatch-line' },
  fan: { step: 5, turn: -45, width: 0.9, className: 'hatch-ink' },
  band: { step: 6, turn: 45, width: 0.8, className: 'hatch-line' },
  past: { step: 5, turn: 45, crossed: true, width: 1.7, className: 'hatch-red' },
  nylon: { step: 4, turn: 45, crossed: true, width: 0.8, className: 'hatch-line' },
};

/**
 * A hatch: paint to fill a shape with, and its pattern, which is drawn beside what it fills and so takes the colours of the
 * theme it stands in. A picture carries no hatch it does not show.
 */
export function useHatch(hatch: Hatch): { fill: string; pattern: ReactNode } {
  const id = `${useId().replace(/[^\w-]/g, '')}-${hatch}`;
  const { step, turn, crossed, width, className } = HATCHES[hatch];
  return {
    fill: `url(#${id})`,
    pattern: (
      <pattern id={id} width={step} height={step} patternUnits="userSpaceOnUse" patternTransform={`rotate(${turn})`}>
        <path d={crossed ? `M0 0H${step}M0 0V${step}` : `M0 0V${step}`} className={className} strokeWidth={width} />
      </pattern>
    ),
  };
}
