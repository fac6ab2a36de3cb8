import type { SheetRow } from './boxes.ts';

/** A row of the grid for tests: a nylon slide strip, 12.0 new, renewed at 9.5, calliper, unless said otherwise. */
export function aRow(other: Partial<Omit<SheetRow, 'stations'>> & { pointId: number; stations: string[] }): SheetRow {
  return {
    assemblyId: 1,
    positionId: other.pointId,
    assembly: 'Pick-up hitch',
    item: other.pointId,
    position: 'Slide strip, top front',
    point: 'thickness',
    measures: 'thickness',
    wears: 'down',
    safety: false,
    limits: { from: null, newSizeMm: 12, newSizeTolMm: 0.2, renewAtMm: 9.5, rejectAtMm: 8.5, source: null },
    oversize: null,
    mustStayStandard: false,
    gaugeId: 1,
    gauge: 'Calliper',
    gaugeErrorMm: 0.05,
    decimals: 2,
    ...other,
    stations: other.stations.map((station) => ({ station, lastSizeMm: null, lastOn: null })),
  };
}
