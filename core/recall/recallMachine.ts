import type { ContactAnswer, ContactWay } from '../shop/contact.ts';
import type { Day } from '../units/day.ts';

/** What the recall rules look at, of one machine. */
export type RecallMachine = {
  machineId: number;
  /** open findings that forbid its use, or stand where it tows or lifts; oldest first */
  safetyFindings: readonly { foundOn: Day; doNotUse: boolean; entered: number }[];
  /** its first part by deciding hours; null: nothing is forecast */
  deciding: { hoursLeft: number; on: Day | null } | null;
  /** last day its meter was read, or its hours estimated where it has none; null: never */
  hoursReadOn: Day | null;
  /** some meter tells its hours: its own, or that of the machine that pulls it */
  hasMeter: boolean;
  /** last day of a visit agreed with the owner, ahead or running; null: none is */
  visitTo: Day | null;
  /** about this machine or its owner as a whole, while that is the owner; oldest first */
  contacts: readonly RecallContact[];
};

/** `entered` rises with the order in which things came on record. */
export type RecallContact = {
  entered: number;
  madeOn: Day;
  way: ContactWay;
  answer: ContactAnswer | null;
  answerOn: Day | null;
  callBackOn: Day | null;
};

/** What is to be kept to in reaching a farm. */
export type RecallTerms = {
  noContact: boolean;
  distanceKm: number | null;
  /** last month and day of its season; null: up to the shop's next winter */
  seasonTo: string | null;
  quiet: readonly { fromOn: Day; toOn: Day }[];
};

export type RecallShop = {
  asOf: Day;
  /** the one being planned, and the next */
  winters: readonly { from: Day; to: Day }[];
  /** from the call to the machine standing finished */
  leadDays: number;
};
