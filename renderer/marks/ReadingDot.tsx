/** A reading: dot with its gauge error as a whisker, to scale. Other stations are open dots without. */
export function ReadingDot({
  x,
  y,
  y0,
  y1,
  governs,
  questioned = false,
}: {
  x: number;
  y: number;
  y0: number;
  y1: number;
  governs: boolean;
  questioned?: boolean;
}) {
  const kind = questioned ? 'dot questioned' : governs ? 'dot' : 'dot open';
  return (
    <g>
      {governs && <path className="l-thin" d={`M${x} ${y0}V${y1}M${x - 5} ${y0}h10M${x - 5} ${y1}h10`} />}
      <circle cx={x} cy={y} r={governs ? 3.8 : 3.4} className={kind} />
    </g>
  );
}

/** An old reading that was put right: open and struck, a dashed line to the one that took its place. */
export function PutRight({ x, y, newY }: { x: number; y: number; newY: number | null }) {
  return (
    <g>
      {newY !== null && <path className="l-hidden" style={{ stroke: 'var(--line)' }} d={`M${x} ${y}V${newY}`} />}
      <circle cx={x} cy={y} r={3.8} className="dot struck" />
      <path className="l-dim" style={{ strokeWidth: 1.6 }} d={`M${x - 7} ${y + 5}L${x + 7} ${y - 5}`} />
    </g>
  );
}
