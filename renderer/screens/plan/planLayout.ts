import type { Plan, VisitLine } from '#core/contract/plan.ts';

/** A visit's stretch in one week, on the scale of hours. */
export type Stretch = {
  visit: VisitLine;
  fromHours: number;
  hours: number;
  /** it began in an earlier week, or goes on in the next */
  continues: 'no' | 'into-next' | 'from-before';
};

export type WeekRow = Plan['weeks'][number] & { stretches: readonly Stretch[] };

const ORDER = { done: 0, agreed: 1, pinned: 2, proposed: 3, postponed: 4 } as const;

/** What must not be used first, then what is settled, then what is proposed. */
const before = (a: VisitLine, b: VisitLine): number =>
  Number(b.doNotUse) - Number(a.doNotUse) || ORDER[a.stands] - ORDER[b.stands] || a.visitId - b.visitId;

/** Weeks down, hours across: the visits of each week end to end. */
export function weekRows({ weeks, visits }: Pick<Plan, 'weeks' | 'visits'>): WeekRow[] {
  const placed = visits.filter(({ stands }) => stands !== 'postponed').sort(before);
  return weeks.map((week) => {
    let reached = 0;
    const stretches = placed.flatMap((visit): Stretch[] => {
      const at = visit.weeks.findIndex(({ weekFrom }) => weekFrom === week.weekFrom);
      if (at < 0) return [];
      const hours = visit.weeks[at]!.benchHours;
      const fromHours = reached;
      reached += hours;
      const last = at === visit.weeks.length - 1;
      return [{ visit, fromHours, hours, continues: at > 0 ? 'from-before' : last ? 'no' : 'into-next' }];
    });
    return { ...week, stretches };
  });
}

/** Visits held in weeks that this winter has not: it was made shorter since. */
export const heldOutside = ({ weeks }: Pick<Plan, 'weeks'>, visits: readonly VisitLine[]): VisitLine[] => {
  const mondays = new Set(weeks.map(({ weekFrom }) => weekFrom));
  return visits.filter(
    (visit) =>
      visit.stands !== 'postponed' &&
      visit.weeks.length > 0 &&
      !visit.weeks.some(({ weekFrom }) => mondays.has(weekFrom)),
  );
};

/** End of the scale: room for the fullest week and the shop's hours, to a whole five. */
export function scaleHours(weeks: readonly Pick<Plan['weeks'][number], 'benchHours' | 'hours'>[]): number {
  const most = Math.max(10, ...weeks.map(({ benchHours, hours }) => Math.max(benchHours, hours)));
  return Math.ceil((most * 1.12) / 5) * 5;
}

/** Visits in the order they stand on the sheet: what arrow keys go along. */
export const inOrder = (rows: readonly WeekRow[], unplaced: readonly VisitLine[]): VisitLine[] => {
  const seen = new Set<number>();
  return [...rows.flatMap(({ stretches }) => stretches.map(({ visit }) => visit)), ...unplaced].filter(
    ({ visitId }) => !seen.has(visitId) && seen.add(visitId),
  );
};
