const NEWEST = 10;
const DAYS = 7;
const WEEKS = 4;
const MONTHS = 12;

/**
 * Which backups to keep: the newest ten, and the last one of each of the last 7 days, 4 weeks and 12 months that have any.
 *
 * @param madeAts ISO instants, newest first
 */
export function backupsToKeep(madeAts: readonly string[]): Set<string> {
  return new Set([
    ...madeAts.slice(0, NEWEST),
    ...lastOfEach(madeAts, DAYS, (madeAt) => madeAt.slice(0, 10)),
    ...lastOfEach(madeAts, WEEKS, weekOf),
    ...lastOfEach(madeAts, MONTHS, (madeAt) => madeAt.slice(0, 7)),
  ]);
}

function lastOfEach(madeAts: readonly string[], most: number, periodOf: (madeAt: string) => string): string[] {
  const last = new Map<string, string>();
  for (const madeAt of madeAts) if (!last.has(periodOf(madeAt))) last.set(periodOf(madeAt), madeAt);
  return [...last.values()].slice(0, most);
}

const MS_A_DAY = 86_400_000;
/** 1970-01-01 was a Thursday: weeks counted from the Monday before. */
const weekOf = (madeAt: string): string => String(Math.floor((Date.parse(madeAt) / MS_A_DAY + 3) / 7));
