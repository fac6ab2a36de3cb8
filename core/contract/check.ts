import { z } from 'zod';
import type { Foretold } from '../check/foretold.ts';
import { operation } from './operation.ts';
import { zDay, zFacts, zId, zRange, zWears } from './shapes.ts';

/** A kept forecast as it stands in the record; see core/check/foretold.ts. */
export const zForetold = z.object({
  wears: zWears,
  newSizeMm: z.number(),
  workedHours: z.number(),
  machineHours: z.number().nullable(),
  share: z.number(),
  last: z.object({ workedHours: z.number(), wearMm: z.number() }).nullable(),
  hours: z.array(z.number()),
  chances: z.array(z.number()),
  wearMm: z.array(z.array(z.number())),
  visitErrorMm: z.number(),
  limitWearMm: z.number().nullable(),
  hoursAtLimit: zRange.nullable(),
  basis: z.object({ ownReadings: z.number(), own: z.number(), likeParts: z.number(), likeMachines: z.number() }),
  widenedBy: z.number(),
}) satisfies z.ZodType<Foretold>;

/** kept: as it stood in the record; rebuilt: from the sizes of the machine before it, with what the classes hold today */
export const zForecastOrigin = z.enum(['kept', 'rebuilt']);

/** A size against the range that was foretold for it. */
export const zSizeAgainst = z.object({
  pointId: zId,
  machineId: zId,
  machine: z.string(),
  item: z.int(),
  position: z.string(),
  point: z.string(),
  partClass: z.string(),
  takenOn: zDay,
  origin: zForecastOrigin,
  sizeMm: z.number(),
  /** 80 % range of the size foretold, by wear [mm] */
  leastWornMm: z.number(),
  middleMm: z.number(),
  mostWornMm: z.number(),
  /** chance that was given to a size less worn than it */
  pit: z.number(),
  inside: z.boolean(),
});
export type SizeAgainst = z.infer<typeof zSizeAgainst>;

/** How forecasts of a class did. Null where nothing was scored. */
export const zClassCheck = z.object({
  partClass: z.string(),
  /** sizes scored; of them with a forecast that was kept */
  sizes: z.int(),
  kept: z.int(),
  inside: z.int(),
  /** how far the share inside is from 80 %, in sd of chance; positive: too many */
  offBySd: z.number().nullable(),
  /** mean of how much more worn sizes came out than the middle [mm], and as share of the half range */
  biasMm: z.number().nullable(),
  biasShare: z.number().nullable(),
  /** mean width of the 80 % range [mm] */
  widthMm: z.number().nullable(),
  /** mean score [mm]; less is better. Beside it, over sizes that had a line through new and the last size, both */
  crpsMm: z.number().nullable(),
  lined: z.object({ sizes: z.int(), crpsMm: z.number(), lineMm: z.number() }).nullable(),
  /** how many of the sizes fell in each tenth of the chances given; even if forecasts are right */
  tenths: z.array(z.int()).length(10),
  /** rate of a part not yet read, before and after the shop's readings, per 1000 worked hours [mm] */
  ratePer1000hBeforeMm: zRange,
  ratePer1000hNowMm: zRange,
  partsRead: z.int(),
  machinesRead: z.int(),
  /** too-narrow, too-wide: by more than chance over at least twenty sizes; too-few: not enough sizes to say */
  verdict: z.enum(['as-said', 'too-narrow', 'too-wide', 'too-few']),
  /** how many times as wide forecasts of it are told; 1: as they are */
  widenedBy: z.number(),
  /** how many times as wide they would have to be, where the shop has switched it off */
  widenBy: z.number(),
});
export type ClassCheck = z.infer<typeof zClassCheck>;

export const checkRead = operation(
  'check/read',
  z.object({}),
  z.object({
    asOf: zDay,
    /** of a large shop: the machines its classes are learned from, which alone are looked at; null: all */
    heardMachines: z.int().nullable(),
    classes: z.array(zClassCheck),
    /** forecasts kept, by why, and what came of them */
    kept: z.object({
      slip: z.int(),
      plan: z.int(),
      stripDown: z.int(),
      scored: z.int(),
      inside: z.int(),
      /** its part was renewed and not measured, or before its limit: cut off, not wrong */
      renewedEarly: z.int(),
      waiting: z.int(),
    }),
    /** hours at limit that two sizes had between them */
    limits: z.object({ within: z.int(), tooEarly: z.int(), tooLate: z.int() }),
    /** sizes of the last visits that came out beyond their range, newest first */
    beyond: z.array(zSizeAgainst),
    leastSizes: z.int(),
    /** whether a class that was too sure of itself is told wider */
    widens: z.boolean(),
  }),
  {
    title:
      'How good the forecasts were: each class’s share within its range, bias, width and score, and what came out beyond',
  },
);

/** What would explain a size beyond its range. */
export const zExplanation = z.object({
  code: z.enum(['hours', 'renewal', 'gauge', 'share', 'hard-worked']),
  /** what it would take, and what speaks for it or against it */
  facts: zFacts,
  /** the size would lie within its range then; null: it would not be a size of this part any more */
  explains: z.boolean().nullable(),
  /** hours left with the correction; null: none can be reckoned */
  hoursLeft: zRange.nullable(),
});
export type Explanation = z.infer<typeof zExplanation>;

export const checkExplain = operation(
  'check/explain',
  z.object({ pointId: zId, takenOn: zDay }),
  z.object({
    size: zSizeAgainst,
    /** as of the day before the size, and now, on the hours of the machine [h] */
    stood: z.object({
      asOf: zDay,
      machineHoursAtLimit: zRange,
      machineHours: z.number().nullable(),
      widenedBy: z.number(),
    }),
    now: z.object({ hoursLeft: zRange, machineHours: z.number().nullable() }),
    /** sizes of the visit, and how many of them lay to the same side of their middle */
    visit: z.object({ sizes: z.int(), sameSide: z.int() }),
    explanations: z.array(zExplanation),
  }),
  {
    title:
      'What would explain a size beyond its range, and the forecast then, now and with each correction; nothing is saved',
  },
);
export type Explained = z.infer<typeof checkExplain.zReply>;

export const checkWorth = operation(
  'check/worth',
  z.object({ machineId: zId }),
  z.object({
    asOf: zDay,
    machineId: zId,
    machine: z.string(),
    /** each point of the machine that can be measured: how much narrower all its ranges are to be expected to be [machine h] */
    points: z.array(
      z.object({ pointId: zId, item: z.int(), position: z.string(), point: z.string(), narrowsHours: z.number() }),
    ),
    /** the few that gain most, measured together */
    best: z
      .object({ pointIds: z.array(zId), minutes: z.number(), narrowsHours: z.number(), widthHours: z.number() })
      .nullable(),
  }),
  { title: 'Which points of a machine would gain most from being measured at its next visit' },
);
