import type { ReplyOf } from '#core/contract/operation.ts';
import type { stripDownSheet } from '#core/contract/stripDown.ts';

export type SheetRow = ReplyOf<typeof stripDownSheet>['rows'][number];

/** One entry box of the grid: a station of a measuring point. */
export type Box = { pointId: number; station: string; row: number; column: number };

/** Which way a key goes. */
export type Step = 'next' | 'previous' | 'up' | 'down' | 'left' | 'right' | 'row-start' | 'row-end';

export const boxKey = (pointId: number, station: string): string => `${pointId}|${station}`;

/** All boxes of a sheet in reading order: row by row, station by station. */
export const boxesOf = (rows: readonly SheetRow[]): Box[] =>
  rows.flatMap((row, rowIndex) =>
    row.stations.map(({ station }, column) => ({ pointId: row.pointId, station, row: rowIndex, column })),
  );

/** The most stations any row has: the number of box columns. */
export const columnsOf = (rows: readonly SheetRow[]): number =>
  rows.reduce((most, row) => Math.max(most, row.stations.length), 1);

/**
 * The box a key leads to. Up and down keep the column, or the nearest one a shorter row has; rows without boxes are
 * skipped. At an edge there is none, and the caller decides (the next box after the last is the save button).
 */
export function boxAfter(boxes: readonly Box[], from: Box, step: Step): Box | null {
  const at = boxes.findIndex(({ row, column }) => row === from.row && column === from.column);
  if (at < 0) return boxes[0] ?? null;
  switch (step) {
    case 'next':
    case 'right':
      return boxes[at + 1] ?? null;
    case 'previous':
    case 'left':
      return boxes[at - 1] ?? null;
    case 'row-start':
      return boxes.find(({ row }) => row === from.row) ?? null;
    case 'row-end':
      return boxes.findLast(({ row }) => row === from.row) ?? null;
    case 'down':
      return nearestIn(boxes, boxes.find(({ row }) => row > from.row)?.row, from.column);
    case 'up':
      return nearestIn(boxes, boxes.findLast(({ row }) => row < from.row)?.row, from.column);
  }
}

function nearestIn(boxes: readonly Box[], row: number | undefined, column: number): Box | null {
  const inRow = boxes.filter((box) => box.row === row);
  return inRow.findLast((box) => box.column <= column) ?? inRow[0] ?? null;
}

/**
 * Names above the box columns. Rows differ in their stations, so a column is named for all of them, in the order met,
 * "front or A"; a row with one reading and no name needs none.
 */
export function columnNames(rows: readonly SheetRow[]): string[][] {
  return Array.from({ length: columnsOf(rows) }, (_, column) => {
    const names = rows.map((row) => row.stations[column]?.station ?? '').filter((name) => name !== '');
    return [...new Set(names)];
  });
}

/** The first box still to be typed after one, going round; null: all are in. */
export function nextEmpty(boxes: readonly Box[], from: Box | null, isEmpty: (box: Box) => boolean): Box | null {
  const at = from ? boxes.findIndex(({ row, column }) => row === from.row && column === from.column) : -1;
  return [...boxes.slice(at + 1), ...boxes.slice(0, at + 1)].find(isEmpty) ?? null;
}
