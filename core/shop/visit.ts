import type { Day } from '../units/day.ts';

/**
 * How a planned visit stands:
 *  - proposed: the plan's own word, which the next plan may change
 *  - pinned: the manager wants it there; nobody has been told
 *  - agreed: with the customer; no plan moves it
 *  - postponed: not in that winter
 *  - done: the machine has been in
 */
export const VISIT_STANDS = ['proposed', 'pinned', 'agreed', 'postponed', 'done'] as const;
export type VisitStands = (typeof VISIT_STANDS)[number];

/** Bench hours of a visit in one week. */
export type VisitWeek = {
  /** its Monday */
  weekFrom: Day;
  benchHours: number;
};

/** What it takes to renew a part of a class, besides reaching it. */
export type RenewalWork = {
  partClass: string;
  /** its own work [bench h] */
  ownHours: number;
  /** what the part costs, in what the shop's hourly rate would buy [bench h] */
  partsHours: number;
};
