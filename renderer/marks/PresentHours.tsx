import { textWidth } from '#core/axis/textWidth.ts';

const FLAG_HIGH_PX = 20;
const FLAG_TEXT_PX = 15;

/** Width of the flag over present hours [px]; the rule keeps its figures clear of it. */
export const flagWidth = (text: string): number => Math.ceil(textWidth(text, FLAG_TEXT_PX)) + 16;

/** The flag of present hours on the rule: filled when read, dashed and "est." when estimated. */
export function PresentFlag({
  left,
  y = 0,
  text,
  estimated,
}: {
  left: number;
  y?: number;
  text: string;
  estimated: boolean;
}) {
  const width = flagWidth(text);
  return (
    <g>
      <rect
        x={left}
        y={y}
        width={width}
        height={FLAG_HIGH_PX}
        className={estimated ? 'paper' : 'ink'}
        style={estimated ? { stroke: 'var(--ink)', strokeWidth: 1.4, strokeDasharray: '4 2.5' } : undefined}
      />
      <text
        x={left + width / 2}
        y={y + 15}
        className={`middle heavy ${estimated ? '' : 'on-filled'}`}
        style={{ fontSize: FLAG_TEXT_PX }}
      >
        {text}
      </text>
    </g>
  );
}

/** The hairline for now, through all rows and the chart. */
export function PresentLine({ x, y0, y1, estimated }: { x: number; y0: number; y1: number; estimated: boolean }) {
  return <path className={estimated ? 'l-now estimated' : 'l-now'} d={`M${x} ${y0}V${y1}`} />;
}
