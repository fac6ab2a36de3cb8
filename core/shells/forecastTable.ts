import type { ForecastRow } from '../contract/forecast.ts';

type Column = { head: string; right: boolean; cell(row: ForecastRow): string };

const whole = (hours: number | null): string => (hours === null ? '-' : String(Math.round(hours)));
const millimetres = (size: number | null): string => (size === null ? '-' : size.toFixed(2));

const columns: readonly Column[] = [
  { head: 'position', right: false, cell: ({ position }) => position },
  { head: 'point', right: false, cell: ({ point }) => point },
  { head: 'part h', right: true, cell: ({ partHours }) => whole(partHours) },
  { head: 'sizes', right: true, cell: ({ ownReadings }) => String(ownReadings) },
  { head: 'wear mm', right: true, cell: ({ wearMm }) => millimetres(wearMm.middle) },
  { head: 'limit mm', right: true, cell: ({ limitWearMm }) => millimetres(limitWearMm) },
  { head: 'h left: low', right: true, cell: ({ hoursLeft }) => whole(hoursLeft.low) },
  { head: 'middle', right: true, cell: ({ hoursLeft }) => whole(hoursLeft.middle) },
  { head: 'high', right: true, cell: ({ hoursLeft }) => whole(hoursLeft.high) },
  { head: 'about', right: true, cell: ({ dateAtLimit }) => dateAtLimit.middle?.slice(0, 7) ?? '-' },
  { head: 'own', right: true, cell: ({ basis }) => `${Math.round(100 * basis.own)} %` },
  { head: 'cautions', right: false, cell: ({ cautions, openFindings }) => saidOf(cautions, openFindings) },
];

const saidOf = (cautions: ForecastRow['cautions'], findings: ForecastRow['openFindings']): string =>
  [...findings.map(({ finding, severity }) => `${finding} (${severity})`), ...cautions].join(', ');

/** The rows as a table for a terminal: machine by machine, one line a measuring point. */
export function forecastTable(rows: readonly ForecastRow[], asOf: string): string {
  const widths = columns.map(({ head, cell }) => Math.max(head.length, ...rows.map((row) => cell(row).length)));
  const lined = (cells: readonly string[]): string =>
    cells
      .map((cell, place) =>
        columns[place]?.right ? cell.padStart(widths[place] ?? 0) : cell.padEnd(widths[place] ?? 0),
      )
      .join('  ')
      .trimEnd();
  const heading = lined(columns.map(({ head }) => head));
  const groups = Map.groupBy(rows, ({ machine, assembly }) => JSON.stringify([machine, assembly]));
  const blocks = [...groups.values()].map((group) => {
    const [first] = group;
    if (!first) return '';
    const { machine, assembly, machineHours, readOn } = first;
    const hours =
      machineHours === null ? 'no hours on record' : `${whole(machineHours)} machine hours, read ${readOn ?? 'never'}`;
    return [
      `${machine}: ${assembly}, ${hours}`,
      ...group.map((row) => lined(columns.map(({ cell }) => cell(row)))),
    ].join('\n');
  });
  const foot = 'Low, middle, high: 10, 50, 90 %. A planning aid, not a certificate.';
  return `As of ${asOf}\n${heading}\n\n${blocks.join('\n\n')}\n\n${foot}\n`;
}
