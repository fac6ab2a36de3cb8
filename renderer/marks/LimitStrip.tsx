import type { LimitStrip as Strip } from '#core/axis/limitStrip.ts';

/** Last time an open dot, this time a solid one with its whisker, between new size, renew-at and reject-at. */
export function LimitStrip({ strip, y }: { strip: Strip; y: number }) {
  const { found, lastX } = strip;
  const from = lastX ?? strip.newX;
  return (
    <g transform={`translate(0 ${y})`}>
      <path className="l-history" d={`M${strip.newX} 0H${strip.toPx}`} />
      <path className="l-dim" d={`M${strip.newX} -7V7`} />
      {strip.renewX !== null && (
        <path
          className="l-renew-at"
          style={{ strokeDasharray: '6 2 2 2', strokeWidth: 1.6 }}
          d={`M${strip.renewX} -16V9`}
        />
      )}
      {strip.rejectX !== null && (
        <path className="l-reject-at" style={{ strokeDasharray: '7 2 2 2' }} d={`M${strip.rejectX} -16V9`} />
      )}
      {found && (
        <>
          <path className="l-thick" d={`M${from} 0H${found.x}`} />
          <path className="l-thin" d={`M${found.x0} -5V5M${found.x1} -5V5M${found.x0} 0H${found.x1}`} />
          <circle cx={found.x} r={3.8} className="dot" />
        </>
      )}
      {lastX !== null && <circle cx={lastX} r={4} className="dot open" />}
    </g>
  );
}
