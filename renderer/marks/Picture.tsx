import { createContext, type ReactNode, type SVGProps, useContext, useId } from 'react';

/** Hatches of the drawing, each with one meaning. */
export type Hatch = 'part' | 'past' | 'section' | 'section-other' | 'nylon' | 'fan' | 'band' | 'over';

const PicturePrefix = createContext('');

/** Paint for a hatch of the picture this stands in: `fill={useHatch('past')}`. Pattern ids differ from picture to picture. */
export function useHatch(hatch: Hatch): string {
  return `url(#${useContext(PicturePrefix)}${hatch})`;
}

export type PictureProps = {
  width: number;
  height: number;
  /** the sentence that stands for the picture; null: its figures stand beside it as text, so it is passed over */
  label: string | null;
  children: ReactNode;
} & Omit<SVGProps<SVGSVGElement>, 'width' | 'height' | 'children' | 'role' | 'aria-label'>;

/** A drawing: sized in px one to one, with its own hatches, and one sentence for those who cannot see it. */
export function Picture({ width, height, label, children, className, ...rest }: PictureProps) {
  const prefix = `${useId().replace(/[^\w-]/g, '')}-`;
  const said = label === null ? { 'aria-hidden': true } : { role: 'img', 'aria-label': label };
  return (
    <PicturePrefix.Provider value={prefix}>
      {/* biome-ignore lint/a11y/noSvgWithoutTitle: named by aria-label, or passed over */}
      <svg
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        className={className ? `picture ${className}` : 'picture'}
        {...said}
        {...rest}
      >
        <MarkDefs prefix={prefix} />
        {children}
      </svg>
    </PicturePrefix.Provider>
  );
}

/** The hatches. Each picture holds its own, so that they take the colours of the theme they stand in. */
export function MarkDefs({ prefix }: { prefix: string }) {
  return (
    <defs>
      <Lines id={`${prefix}part`} step={5} turn={45} className="hatch-ink" width={2.2} />
      <Lines id={`${prefix}section`} step={7} turn={45} className="hatch-line" width={1} />
      <Lines id={`${prefix}section-other`} step={7} turn={-45} className="hatch-line" width={1} />
      <Lines id={`${prefix}fan`} step={5} turn={-45} className="hatch-ink" width={0.9} />
      <Lines id={`${prefix}band`} step={6} turn={45} className="hatch-line" width={0.8} />
      <Lines id={`${prefix}over`} step={9} turn={45} className="hatch-line" width={1} />
      <Crossed id={`${prefix}past`} step={5} className="hatch-red" width={1.7} />
      <Crossed id={`${prefix}nylon`} step={4} className="hatch-line" width={0.8} />
    </defs>
  );
}

type PatternProps = { id: string; step: number; width: number; className: string };

const Lines = ({ id, step, width, className, turn }: PatternProps & { turn: number }) => (
  <pattern id={id} width={step} height={step} patternUnits="userSpaceOnUse" patternTransform={`rotate(${turn})`}>
    <path d={`M0 0V${step}`} className={className} strokeWidth={width} />
  </pattern>
);

const Crossed = ({ id, step, width, className }: PatternProps) => (
  <pattern id={id} width={step} height={step} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
    <path d={`M0 0H${step}M0 0V${step}`} className={className} strokeWidth={width} />
  </pattern>
);
