import { z } from 'zod';
import type { VisitStands } from '../shop/visit.ts';
import { zForecastSetting } from './forecastSettings.ts';
import { operation } from './operation.ts';
import { zDay, zId, zName, zNote } from './shapes.ts';

/**
 * The winter plan: which machines come in, in which week, what is renewed in each, and what it costs to do it otherwise. Hours
 * are bench hours; costs are bench hours too: what the shop's hourly rate would buy.
 */

const zBy = z.string().max(120);
const zHoursOf = z.number().min(0).max(10_000);

export const VISIT_STANDS_NAMES = [
  ...(['proposed', 'pinned', 'agreed', 'postponed', 'done'] as const),
] satisfies VisitStands[];
export const zVisitStands = z.enum(VISIT_STANDS_NAMES);

export const zVisitWeek = z.object({ weekFrom: zDay, benchHours: zHoursOf });

/** Why a position is renewed in this visit. */
export const zBecause = z.object({
  /** its limit is near; it is open anyway; a finding; it is on a job; the manager said so */
  reason: z.enum(['limit', 'with-it', 'finding', 'job', 'by-hand']),
  /** share of its life it still has then */
  lifeLeft: z.number().nullable(),
  /** machine hours at its limit by the figure that decides */
  goodUntilHours: z.number().nullable(),
  /** chance that it passes its limit before the winter after */
  chancePast: z.number().nullable(),
  /** positions of the visit that open the same */
  openedWith: z.array(zId).max(200),
  /** what the best plan would cost more with this left alone then, and what of it is strip-down and risk */
  leavingItCosts: z.number().nullable(),
  moreStripDownHours: z.number().nullable(),
  moreBreakdown: z.number().nullable(),
});
export type Because = z.infer<typeof zBecause>;

/** What is done in a visit, as it is kept. */
export const zVisitWork = z.object({
  positions: z
    .array(z.object({ positionId: zId, ownHours: zHoursOf, partsHours: zHoursOf, because: zBecause }))
    .max(500),
  /** every take-off of the visit, once; an empty name: opening an assembly nobody has told the steps of */
  takeOffs: z.array(z.object({ code: z.string().max(80), name: z.string().max(200), hours: zHoursOf })).max(200),
  /** whatever is done: papers, moving it about */
  visitHours: zHoursOf,
  /** work that is at no position: of a job, or of a finding on an assembly as a whole */
  extras: z.array(z.object({ what: z.string().max(400), hours: zHoursOf })).max(100),
  /** the same work as a visit for each position */
  apartHours: zHoursOf,
  /** what it costs to leave it all for the winter after */
  risk: z.number(),
  /** an open job: the machine is in already */
  rebuildId: zId.nullable(),
});
export type VisitWork = z.infer<typeof zVisitWork>;

export const zPlanFacts = z.object({
  asOf: zDay,
  /** stopped-early: somebody broke the search off; the bound says how far from the best it may be */
  status: z.enum(['searched', 'stopped-early']),
  /** overload, lateness and work left undone: cost, what is proven that no plan can do better than, and the share between */
  harm: z.object({ cost: z.number(), bound: z.number(), gap: z.number() }),
  /** changes to what was said before */
  trouble: z.object({ cost: z.number(), bound: z.number(), gap: z.number() }),
  /** own readings the forecasts rest on */
  readings: z.int(),
  /** machines left out: nobody knows their hours, or no part has a limit */
  without: z.array(zId),
  machines: z.array(
    z.object({
      machineId: zId,
      /** what the plan of its winters is chosen by */
      total: z.number(),
      winters: z.array(z.object({ lifeThrownAway: z.number(), breakdowns: z.number(), breakdownCost: z.number() })),
    }),
  ),
});
export type PlanFacts = z.infer<typeof zPlanFacts>;

export const zVisitLine = z.object({
  visitId: zId,
  machineId: zId,
  machine: z.string(),
  customer: z.string(),
  place: z.string(),
  winterYear: z.int(),
  winter: z.string(),
  stands: zVisitStands,
  weeks: z.array(zVisitWeek),
  promisedOn: zDay.nullable(),
  saidBy: z.string(),
  note: z.string(),
  hours: z.number(),
  partsHours: z.number(),
  apartHours: z.number(),
  risk: z.number(),
  positions: z.array(
    zBecause.extend({
      ...{ positionId: zId, item: z.int(), position: z.string(), assembly: z.string(), safety: z.boolean() },
      ...{ ownHours: z.number(), partsHours: z.number(), openedWithItems: z.array(z.string()) },
    }),
  ),
  takeOffs: z.array(z.object({ name: z.string(), hours: z.number() })),
  visitHours: z.number(),
  extras: z.array(z.object({ what: z.string(), hours: z.number() })),
  /** an open finding forbids use of the machine or of a part of it */
  doNotUse: z.boolean(),
  /** an open job: the machine is in already */
  rebuildId: zId.nullable(),
  /** done at the farm: the way there and back and setting up come on top, once a week for all that is done there. Null: in the shop */
  farm: z.object({ name: z.string(), callHours: z.number(), isWayKnown: z.boolean() }).nullable(),
  /** parts ordered today come after its week begins */
  waitsForParts: z.boolean(),
  /** its week falls in days the customer is away */
  customerAway: z.boolean(),
});
export type VisitLine = z.infer<typeof zVisitLine>;

export const zRenewalWork = z.object({ partClass: zName, ownHours: zHoursOf, partsHours: zHoursOf });

export const zPlan = z.object({
  asOf: zDay,
  winter: z.object({ winterYear: z.int(), name: z.string(), from: zDay, to: zDay }),
  usualHours: z.number(),
  weeks: z.array(
    z.object({
      weekFrom: zDay,
      benchHours: z.number(),
      /** null: the usual hours */
      note: z.string().nullable(),
      hours: z.number(),
      /** of them on the way to farms and setting up there */
      farmHours: z.number(),
      overHours: z.number(),
    }),
  ),
  /** of the winter being planned, and proposed or settled for later ones */
  visits: z.array(zVisitLine),
  /** winter by winter */
  winters: z.array(
    z.object({
      winterYear: z.int(),
      name: z.string(),
      visits: z.int(),
      hours: z.number(),
      ofHours: z.number(),
      lifeThrownAway: z.number(),
      breakdowns: z.number(),
    }),
  ),
  /** null: none was ever proposed */
  proposed: zPlanFacts
    .pick({ asOf: true, status: true, harm: true, trouble: true, readings: true })
    .extend({ machines: z.int(), without: z.array(z.object({ machineId: zId, machine: z.string() })) })
    .nullable(),
  rates: z.object({ currency: z.string(), hourPrice: z.number() }).nullable(),
  settings: z.array(zForecastSetting),
  renewals: z.array(
    zRenewalWork.extend({
      usual: z.boolean(),
      usualOwnHours: z.number(),
      usualPartsHours: z.number(),
      source: z.string(),
    }),
  ),
  away: z.array(
    z.object({ awayId: zId, customerId: zId, customer: z.string(), fromOn: zDay, toOn: zDay, note: z.string() }),
  ),
});
export type Plan = z.infer<typeof zPlan>;

export const planRead = operation('plan/read', z.object({}), zPlan, {
  title: 'The winter plan: weeks, visits, what finds no room, what it costs',
});

/** What a change costs: hours and expected costs after it, less those before. */
export const zPlanChange = z.object({
  visitId: zId,
  benchHours: z.number(),
  overHours: z.number(),
  weeksLate: z.number(),
  breakdownCost: z.number(),
  /** over all winters planned: work, parts, breakdowns, less life left */
  total: z.number(),
});
export type PlanChange = z.infer<typeof zPlanChange>;

export const planMove = operation(
  'plan/move',
  z.object({
    visitId: zId,
    /** its Monday; null: to no week for now */
    weekFrom: zDay.nullable(),
    /** weeks in a row it is spread over */
    pieces: z.int().min(1).max(8).default(1),
    /** also when it is agreed with the customer */
    sure: z.boolean().default(false),
    by: zBy,
  }),
  zPlanChange,
  { title: 'Move a visit to another week; it stays there from then on' },
);
export const planPin = operation('plan/pin', z.object({ visitId: zId, pinned: z.boolean(), by: zBy }), zPlanChange, {
  title: 'Hold a visit in its week, or let the next plan move it',
});
export const planAgree = operation(
  'plan/agree',
  z.object({ visitId: zId, saidBy: z.string().trim().max(120), promisedOn: zDay.nullable(), note: zNote, by: zBy }),
  zPlanChange,
  { title: 'Write down that a visit is agreed with the customer; no plan moves it' },
);
export const planPostpone = operation(
  'plan/postpone',
  z.object({ visitId: zId, reason: zNote, sure: z.boolean().default(false), by: zBy }),
  zPlanChange,
  { title: 'Leave a visit out of this winter; its machine is planned again without it' },
);
export const planDone = operation('plan/done', z.object({ visitId: zId, by: zBy }), zPlanChange, {
  title: 'Write down that a visit has been done',
});
export const planSplit = operation(
  'plan/split',
  z.object({ visitId: zId, positionIds: z.array(zId).min(1).max(500), sure: z.boolean().default(false), by: zBy }),
  zPlanChange,
  { title: 'Do part of a visit in a visit of its own; what both open is paid twice' },
);
export const planAdd = operation(
  'plan/add',
  z.object({ machineId: zId, positionIds: z.array(zId).max(500), weekFrom: zDay.nullable(), by: zBy }),
  zPlanChange,
  { title: 'Put a machine on the plan of this winter by hand' },
);
export const planAtFarm = operation(
  'plan/atFarm',
  z.object({ visitId: zId, atFarm: z.boolean(), by: zBy }),
  zPlanChange,
  { title: 'Do a visit at the farm, or in the shop again' },
);
export const planBook = operation(
  'plan/book',
  z.object({ machineId: zId, on: zDay, saidBy: z.string().trim().max(120), note: zNote, by: zBy }),
  zPlanChange,
  { title: 'Put a day agreed with a customer on the winter plan: its visit goes into that week and stays there' },
);
export const planSettingsSave = operation(
  'plan/settingsSave',
  z.object({
    /** only those that are to differ from the program's own */
    changed: z.record(z.string().max(60), z.number()),
    renewals: z.array(zRenewalWork).max(500),
    reason: zNote,
    by: zBy,
  }),
  z.object({ saved: z.literal(true) }),
  { title: 'Set what the plan goes by otherwise, or back to the program’s own' },
);
export const planWeekSave = operation(
  'plan/weekSave',
  z.object({ weekFrom: zDay, benchHours: zHoursOf.nullable(), note: zNote, by: zBy }),
  z.object({ saved: z.literal(true) }),
  { title: 'Give a week other hours than usual; null: the usual ones again' },
);
export const planAwaySave = operation(
  'plan/awaySave',
  z.object({ customerId: zId, fromOn: zDay, toOn: zDay, note: zNote, by: zBy }),
  z.object({ awayId: zId }),
  { title: 'Write down when a customer’s machines cannot come in' },
);
export const planAwayStrike = operation(
  'plan/awayStrike',
  z.object({ awayId: zId, reason: zNote, by: zBy }),
  z.object({ awayId: zId }),
  { title: 'Strike out days a customer’s machines could not come in' },
);
/** What is tried without saving it. */
export const zWhatIf = z.object({
  /** null: as it is */
  hoursPerWeek: zHoursOf.nullable(),
  /** a fitter off: so many bench hours less in each of some weeks */
  fitterOff: z.object({ weekFrom: zDay, weeks: z.int().min(1).max(30), benchHours: zHoursOf }).nullable(),
  /** parts of a class at so many times their price; no class: all */
  parts: z.object({ partClass: z.string().max(120), times: z.number().min(0).max(100) }).nullable(),
  /** a machine used so many times as much from today on */
  use: z.object({ machineId: zId, times: z.number().min(0.1).max(10) }).nullable(),
});
export type WhatIf = z.infer<typeof zWhatIf>;

export const zPlanAsk = z.object({ by: zBy, whatIf: zWhatIf.nullable() });

/** A plan summed up, to set two beside each other. */
export const zPlanSum = z.object({
  visits: z.int(),
  hours: z.number(),
  ofHours: z.number(),
  unplaced: z.int(),
  unplacedRisk: z.number(),
  overHours: z.number(),
  weeksLate: z.number(),
  breakdowns: z.number(),
  breakdownCost: z.number(),
  partsHours: z.number(),
  total: z.number(),
});
export type PlanSum = z.infer<typeof zPlanSum>;

/** What came of planning: saved, or tried and set beside the plan of the same day without the change. */
export const zPlanAccount = z.object({
  saved: z.boolean(),
  status: zPlanFacts.shape.status,
  gap: z.number(),
  now: zPlanSum,
  /** what-if: the same without what was tried; else the plan that stood before. null: none stood */
  before: zPlanSum.nullable(),
  /** visits of this winter in another week, added, or gone */
  changed: z.array(
    z.object({
      machineId: zId,
      machine: z.string(),
      from: zDay.nullable(),
      to: zDay.nullable(),
      what: z.enum(['moved', 'added', 'gone', 'no-room']),
    }),
  ),
});
export type PlanAccount = z.infer<typeof zPlanAccount>;
