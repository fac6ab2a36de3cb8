/**
 * A part as the winter plan sees it. Winters are numbered from 0, the one being planned; season k is the farm's year of work
 * between winter k and winter k + 1. Costs and prices are in bench hours: what the shop's hourly rate would buy.
 */
export type PlanPart = {
  /** names it in what the plan says */
  partId: number;
  /** take-offs that must be done to reach it, whole way in; each is paid once a visit */
  takeOffs: readonly string[];
  /** its own work once it is reached [h] */
  ownHours: number;
  /** what the part put in costs [bench h] */
  partsCost: number;
  /** its fair share of the strip-down, so that life left at the end is worth what the next renewal will cost; see fairShares [h] */
  stripDownShare: number;
  /** chance that the part in place is past its limit by the end of each season */
  chancePast: readonly number[];
  /** of a part put in at a winter: chance that it is past its limit by the end of the 1st, 2nd, ... season after */
  chancePastNew: readonly (readonly number[])[];
  /** share of a new part's life the part in place has left at each winter, and at the end: 0 worn out, 1 as new */
  lifeLeft: readonly number[];
  /** of a part put in at a winter: share of its life left at the winters after that, and at the end */
  lifeLeftNew: readonly (readonly number[])[];
  /** renewed elsewhere or forbidden: winters in which it must (true) or must not (false) be renewed */
  held?: ReadonlyMap<number, boolean>;
};

export type PlanYears = {
  /** how many winters are planned */
  winters: number;
  /** hours of each take-off, putting back included [h] */
  takeOffHours: ReadonlyMap<string, number>;
  /** cost of a part that gives way in a season [bench h], busy months weighted in */
  breakdownCost: readonly number[];
  /** hours a visit costs whatever is done: wash, hours reading, paperwork, test [h] */
  visitHours: number;
};

/** Winter at which the part in place was put in, when it is the one there now. */
export const IN_PLACE = -1;

/** What it is to leave a part from one winter to the next renewal, and to renew it then. */
export type StayCost = { breakdown: number; work: number; lifeKept: number };

/**
 * Cost of a stay: a part put in at winter `from` (or in place now) that stays until it is renewed at winter `to`, or until
 * the end (`to` = winters).
 *   breakdown = sum over the seasons it is ridden through of chance past its limit x cost of a breakdown
 *   work = own hours + parts, when it is renewed
 *   lifeKept = life it still has at the end, at what a whole life is worth: counted against the cost, so that life thrown away
 *     by renewing early is what it costs
 * @source own derivation: expected cost over a fixed number of winters with the value of what is left at the end
 */
export function stayCost(part: PlanPart, years: PlanYears, from: number, to: number): StayCost {
  const chances = from === IN_PLACE ? part.chancePast : (part.chancePastNew[from] ?? []);
  const first = Math.max(0, from);
  let breakdown = 0;
  for (let season = first; season < to; season++) {
    const chance = chances[from === IN_PLACE ? season : season - from] ?? 0;
    breakdown += chance * (years.breakdownCost[season] ?? 0);
  }
  const isEnd = to === years.winters;
  return {
    breakdown,
    work: isEnd ? 0 : part.ownHours + part.partsCost,
    lifeKept: isEnd ? worthOfLife(part) * lifeLeftAt(part, from, to) : 0,
  };
}

/** What a whole life of a part is worth: a renewal and its share of the strip-down [bench h]. */
export const worthOfLife = (part: PlanPart): number => part.ownHours + part.partsCost + part.stripDownShare;

/**
 * Each part's fair share of the strip-down: every take-off shared evenly by the parts it reaches, a visit by all.
 * @returns h for each part, in their order
 */
export function fairShares(
  parts: readonly Pick<PlanPart, 'takeOffs'>[],
  { takeOffHours, visitHours }: Pick<PlanYears, 'takeOffHours' | 'visitHours'>,
): number[] {
  const reached = new Map<string, number>();
  for (const { takeOffs } of parts) for (const one of takeOffs) reached.set(one, (reached.get(one) ?? 0) + 1);
  return parts.map(({ takeOffs }) =>
    takeOffs.reduce(
      (sum, one) => sum + (takeOffHours.get(one) ?? 0) / (reached.get(one) ?? 1),
      visitHours / parts.length,
    ),
  );
}

/** Share of a new part's life left at a winter, of the part put in at `from`. */
export function lifeLeftAt(part: PlanPart, from: number, at: number): number {
  const left = from === IN_PLACE ? part.lifeLeft[at] : part.lifeLeftNew[from]?.[at - from];
  return Math.min(1, Math.max(0, left ?? 0));
}
