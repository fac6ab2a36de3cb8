import { itemRing, type RingState } from '#core/axis/itemRing.ts';

/** A position's item reference: the same ring on drawing, row, slip and job card. */
export function ItemRing({ item, state, x, y }: { item: number; state: RingState; x: number; y: number }) {
  const ring = itemRing(state, item);
  return (
    <g transform={`translate(${x} ${y})`}>
      <circle r={ring.radiusPx} className={`ring ${state}`} />
      {ring.innerRadiusPx !== null && <circle r={ring.innerRadiusPx} className="ring inner" />}
      {ring.crossPath !== null && <path className="ring-cross" d={ring.crossPath} />}
      <text
        y={ring.figurePx * 0.34}
        className={`middle heavy ${ring.filled ? 'on-filled' : ''} ${state === 'stop' ? 'red' : ''}`}
        style={{ fontSize: ring.figurePx }}
      >
        {item}
      </text>
    </g>
  );
}

/** A ring standing in a line of text or a table cell. */
export function RingSign({ item, state, label }: { item: number; state: RingState; label?: string }) {
  return (
    // biome-ignore lint/a11y/noSvgWithoutTitle: named by aria-label, or passed over
    <svg
      width={24}
      height={24}
      viewBox="0 0 24 24"
      className="picture ring-sign"
      {...(label ? { role: 'img', 'aria-label': label } : { 'aria-hidden': true })}
    >
      <ItemRing item={item} state={state} x={12} y={12} />
    </svg>
  );
}
