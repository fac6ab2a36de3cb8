/**
 * The shop as the plan of weeks sees it. Weeks are numbered from 0, the first one planned. Hours and costs are bench hours:
 * what the shop's hourly rate would buy.
 */
export type WeeksShop = {
  visits: readonly WeekVisit[];
  weeks: readonly WeekHours[];
  /** hours of the way there and of setting up, once for each place in each week it is gone to [h]; by place */
  setUpHours: ReadonlyMap<string, number>;
};

/** Work on one machine that is to find its week. */
export type WeekVisit = {
  /** names it; no two alike. What the plan is does not depend on the order of visits */
  visitId: string;
  /** work, strip-down included; way and setting up of a farm call not [h] */
  hours: number;
  /** parts are in from this week on */
  earliestWeek: number;
  /** weeks in which the farmer is away or needs the machine: no work on it, unless it is already in */
  awayWeeks: ReadonlySet<number>;
  /** last week promised; later is late. null: nothing promised */
  promisedWeek: number | null;
  /** what it costs to leave it undone in all these weeks: expected breakdowns until it is done [h] */
  risk: number;
  /** the machine stands in the yard: away weeks do not bind, and without a promise every week it waits is late */
  alreadyIn: boolean;
  /** agreed with the farmer, or pinned by the manager: it stays there. null: free */
  held: Placement | null;
  /** week of the plan that stood before; moving it is a change. null: new */
  lastPlannedWeek: number | null;
  /** into how many weeks in a row it may be split, in even pieces; 1: done in one week */
  mostPieces: number;
  /** place it is done at, shared with other calls there: a farm, an area. null: in the shop */
  farmCall: string | null;
};

/** Where a visit is put: `pieces` weeks in a row from `week` on, the same hours in each. */
export type Placement = { week: number; pieces: number };

export type WeekHours = {
  /** after holidays and fitters away [h] */
  benchHours: number;
  /** hours beyond them that may be planned at all [h]; none where nobody works. What is held may go further, and is said */
  mostOverload: number;
};

/** What the plan weighs, in bench hours. */
export type WeekPrices = {
  /** an hour beyond the bench hours of its week */
  overloadHour: number;
  /** a week beyond the one promised */
  weekLate: number;
  /** a farmer sent away: on top of what the undone work risks */
  undone: number;
  /** a farmer told another week than before */
  moved: number;
  /** each week it is moved by */
  movedWeek: number;
};

/**
 * Common practice, no source: overtime at half as much again, the rest what a manager would rather work than have. One farmer
 * told otherwise outweighs any way a shop is likely to go.
 */
export const defaultWeekPrices: WeekPrices = { overloadHour: 1.5, weekLate: 4, undone: 40, moved: 8, movedWeek: 1 };

/** A placement that is open to a visit, with what it costs by itself. */
export type OpenPlacement = Placement & {
  weeksLate: number;
  /** weeks from where it was planned before, either way */
  movedBy: number;
};

/**
 * The placements open to a visit, in order of week and pieces: none before its parts are in, none in a week its farmer is
 * away, none past the last week. A held visit has the one.
 */
export function openPlacements(visit: WeekVisit, weeks: number): OpenPlacement[] {
  const open: OpenPlacement[] = [];
  for (let week = Math.max(0, visit.earliestWeek); week < weeks; week++)
    for (let pieces = 1; pieces <= Math.max(1, visit.mostPieces) && week + pieces <= weeks; pieces++) {
      if (!visit.alreadyIn && visit.awayWeeks.has(week + pieces - 1)) break;
      open.push(placementOf(visit, { week, pieces }));
    }
  return visit.held ? [placementOf(visit, heldWithin(visit.held, weeks))] : open;
}

/** What is held past the last week is in the weeks there are: the shop may have shortened its winter since. */
export const heldWithin = ({ week, pieces }: Placement, weeks: number): Placement => ({
  week,
  pieces: Math.max(1, Math.min(pieces, weeks - week)),
});

/** A placement of a visit with how late it is and how far it is moved. */
export function placementOf(visit: WeekVisit, { week, pieces }: Placement): OpenPlacement {
  const promised = visit.promisedWeek ?? (visit.alreadyIn ? Math.max(0, visit.earliestWeek) : Number.POSITIVE_INFINITY);
  return {
    week,
    pieces,
    weeksLate: Math.max(0, week + pieces - 1 - promised),
    movedBy: visit.lastPlannedWeek === null ? 0 : Math.abs(week - visit.lastPlannedWeek),
  };
}
