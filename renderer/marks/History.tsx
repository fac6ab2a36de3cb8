import type { HistoryLine as Line, RenewalShape } from '#core/axis/historyLine.ts';

/** What lies behind a position: renewals, readings and meter changes on the line its bar stands on. */
export function HistoryLine({ line, y }: { line: Line; y: number }) {
  return (
    <g transform={`translate(0 ${y})`}>
      <path className="l-history" d={line.path} />
      {line.renewals.map((renewal) => (
        <Renewal key={renewal.x} renewal={renewal} />
      ))}
      {line.readings.map((reading) => (
        <circle key={reading.x} cx={reading.x} cy={0} r={3} className="dot" />
      ))}
    </g>
  );
}

/** A datum triangle standing on the line: wear counts from here. Open, on its range, where the hours are not known. */
export function Renewal({ renewal }: { renewal: RenewalShape }) {
  return (
    <>
      {renewal.rangePath !== null && <path className="l-thin" d={renewal.rangePath} />}
      <path
        className={renewal.known ? 'ink' : 'paper'}
        style={renewal.known ? undefined : { stroke: 'var(--ink)', strokeWidth: 1.4 }}
        d={renewal.path}
      />
    </>
  );
}

/** The meter was changed here; machine hours go on. For one alone, outside a history line. */
export function MeterChange({ x, y, halfPx = 60 }: { x: number; y: number; halfPx?: number }) {
  return <path className="l-history" d={`M${x - halfPx} ${y}H${x - 8}l4 -6l8 12l4 -6H${x + halfPx}`} />;
}
