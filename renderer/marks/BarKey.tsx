import { type BarBasis, barPath } from '#core/axis/intervalBar.ts';
import { basisWords } from '#renderer/words/markWords.ts';
import { MiddleTick } from './IntervalBar.tsx';
import { Picture, useHatch } from './Picture.tsx';

/** What a bar's inside says: own readings, part borrowed, all borrowed. For the title block. */
export function BarKey() {
  return (
    <span className="bar-key">
      {(['own', 'part', 'borrowed'] as const).map((basis) => (
        <span key={basis}>
          <Picture width={36} height={18} label={null}>
            <KeyBar basis={basis} />
          </Picture>
          {basisWords[basis]}
        </span>
      ))}
    </span>
  );
}

function KeyBar({ basis }: { basis: BarBasis }) {
  const part = useHatch('part');
  return (
    <g transform="translate(0 9)">
      {basis === 'part' && part.pattern}
      <path
        className={`bar-${basis}`}
        style={basis === 'part' ? { fill: part.fill } : undefined}
        d={barPath(2, 34, 'square', 'square')}
      />
      <MiddleTick x={18} />
    </g>
  );
}
