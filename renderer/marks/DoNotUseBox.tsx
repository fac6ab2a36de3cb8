import { struckBoxPath } from '#core/axis/struckBox.ts';
import { doNotUseText } from '#renderer/words/markWords.ts';

/** In place of the bar: a struck box and the finding in words. `y` is the middle of the row. */
export function DoNotUseBox({
  x,
  y,
  width,
  finding,
  height = 19,
}: {
  x: number;
  y: number;
  width: number;
  finding: string;
  height?: number;
}) {
  const struckWidth = Math.round(height * 1.45);
  return (
    <g transform={`translate(0 ${y - height / 2})`}>
      <rect
        x={x}
        y={0}
        width={width}
        height={height}
        className="redwash l-red-box"
        style={{ stroke: 'var(--red)', strokeWidth: 2 }}
      />
      <path className="l-red" d={struckBoxPath(x, 0, struckWidth, height)} style={{ strokeWidth: 1.8 }} />
      <FittingText
        x={x + struckWidth + 9}
        y={height / 2 + 5}
        width={width - struckWidth - 14}
        text={doNotUseText(finding)}
      />
    </g>
  );
}

/** Words too long for the box end at its edge; the whole sentence stands in the banner and in the row's own sentence. */
function FittingText({ x, y, width, text }: { x: number; y: number; width: number; text: string }) {
  return (
    <foreignObject x={x} y={y - 15} width={Math.max(0, width)} height={20}>
      <div className="struck-words" title={text}>
        {text}
      </div>
    </foreignObject>
  );
}

/** The struck box alone, as a sign before words. */
export function StruckBox({ width = 30, height = 20 }: { width?: number; height?: number }) {
  return (
    <svg width={width} height={height} aria-hidden="true" className="picture">
      <path className="l-red" d={struckBoxPath(1, 1, width - 2, height - 2)} />
    </svg>
  );
}
