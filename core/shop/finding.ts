import type { Day } from '../units/day.ts';

/** What is seen, not measured. */
export type FindingKind = 'crack' | 'bent' | 'broken' | 'seized' | 'missing' | 'other';
export type Severity = 'watch' | 'repair' | 'do-not-use';

export type Finding = {
  id: number;
  machineId: number;
  assemblyId: number;
  /** null: the assembly as a whole */
  positionId: number | null;
  takenOn: Day;
  kind: FindingKind;
  severity: Severity;
  note: string;
  closedOn: Day | null;
  outcome: string | null;
  /** what the customer last said who does not want it made good; null: nobody refused. It stays open all the same */
  declined: Declined | null;
};

/** A repair refused by the customer, in their own words. */
export type Declined = { saidOn: Day; saidBy: string; words: string };

/** Open on a day: found by then, and not closed by then. */
export const findingIsOpen = (finding: Finding, on: Day): boolean =>
  finding.takenOn <= on && (finding.closedOn === null || finding.closedOn > on);
