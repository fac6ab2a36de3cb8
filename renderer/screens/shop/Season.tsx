import { Picture } from '#renderer/marks/Picture.tsx';
import { months } from '#renderer/words/english.ts';
import { readNumber } from '#renderer/words/readNumber.ts';
import { shopWords as words } from '#renderer/words/shopWords.ts';

const BAR = { width: 40, height: 64 } as const;

/** The year's use by month: a column each, and its share to type below it. */
export function Season({
  texts,
  fault,
  onChange,
}: {
  texts: readonly string[];
  fault: boolean;
  onChange: (texts: string[]) => void;
}) {
  const shares = texts.map((text) => {
    const read = readNumber(text.replace('%', ''), 'h');
    return read.ok && read.value > 0 ? read.value : 0;
  });
  const most = Math.max(1, ...shares);
  return (
    <div className="season">
      <div className="season-months">
        {months.map((month, i) => {
          const high = Math.round(((shares[i] ?? 0) / most) * (BAR.height - 4));
          return (
            <label key={month}>
              <Picture width={BAR.width} height={BAR.height} label={null}>
                <rect x={8} y={BAR.height - high} width={24} height={high} className="ink" />
                <path className="l-thin" d={`M0 ${BAR.height - 0.5}H${BAR.width}`} />
              </Picture>
              <span>{month}</span>
              <input
                value={texts[i] ?? ''}
                inputMode="decimal"
                autoComplete="off"
                aria-label={words.seasonMonth(month)}
                aria-invalid={fault || undefined}
                onChange={(event) => onChange(texts.map((text, j) => (j === i ? event.target.value : text)))}
              />
            </label>
          );
        })}
      </div>
      <p className={fault ? 'remark' : 'second'}>{fault ? words.seasonFault : words.seasonHint}</p>
    </div>
  );
}
