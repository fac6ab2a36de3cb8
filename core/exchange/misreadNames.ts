import { cellText, type Line } from './remark.ts';

/** Machines, assemblies, positions and points whose own row could not be read: they are not unknown where other rows name them. */
export type MisreadNames = ReadonlySet<string>;

const NAMED_BY: Record<string, readonly string[]> = {
  'machines.csv': ['machine'],
  'points.csv': ['machine', 'assembly', 'position', 'point'],
};

/** @param lines lines of a folder's files that gave no row, for a fault in them */
export function misreadNames(lines: readonly Line[]): MisreadNames {
  const names = new Set<string>();
  for (const line of lines) {
    const path = (NAMED_BY[line.file] ?? []).map((column) => cellText(line, column));
    for (let end = 1; end <= path.length; end++) {
      // a row of points.csv makes no machine
      if (line.file === 'machines.csv' || end > 1) names.add(nameKey(path.slice(0, end)));
    }
  }
  return names;
}

/** @param path a machine, its assembly, a position of it, a point of that: as far as it goes */
export const isMisread = (names: MisreadNames, ...path: readonly string[]): boolean => names.has(nameKey(path));

/** Names are the same written large or small. */
const nameKey = (path: readonly string[]): string => path.join('\n').toLowerCase();
