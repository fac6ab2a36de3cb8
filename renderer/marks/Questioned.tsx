/** A questioned value: dashed brass box, and a ring with "?" on it. */
export function Questioned({ x, y, width = 76, text }: { x: number; y: number; width?: number; text: string }) {
  return (
    <g transform={`translate(${x} ${y})`}>
      <rect
        y={-13}
        width={width}
        height={26}
        className="brasswash l-brass-box"
        style={{ stroke: 'var(--brass)', strokeWidth: 1.8, strokeDasharray: '5 3' }}
      />
      <text x={width - 9} y={6} className="end heavy brass" style={{ fontSize: 17 }}>
        {text}
      </text>
      <QuestionRing x={0} y={0} />
    </g>
  );
}

export function QuestionRing({ x, y, radiusPx = 12 }: { x: number; y: number; radiusPx?: number }) {
  return (
    <g transform={`translate(${x} ${y})`}>
      <circle r={radiusPx} className="brasswash" style={{ stroke: 'var(--brass)', strokeWidth: 1.6 }} />
      <text y={6} className="middle heavy brass" style={{ fontSize: 16 }}>
        ?
      </text>
    </g>
  );
}
