import { z } from 'zod';
import { PART_KIND_NAMES, zStraightenAsked, zStraightened } from './fits.ts';
import { operation } from './operation.ts';
import { zPhotoIds, zStandingPhoto } from './photo.ts';
import { zBy, zDay, zHours, zId, zName, zNote, zRenewalKind, zSizeMm } from './shapes.ts';
import { zSlideAsked } from './slide.ts';
import { zRenewalEntry, zSizeEntry } from './stripDown.ts';

/**
 * A job: agreed work on one machine, from intake to hand-over. Hours are bench hours, prices are in the shop's own money at
 * its own rates, no tax. The program ends at a line list.
 */

const zPrice = z.number().min(0).max(10_000_000);
const zWords = z.string().trim().min(1).max(400);

/** One cut of the machining list. Sides are as seen from the driver's seat looking forward. */
export const zCut = z.object({
  /** "Boss L, hook frame: bore" */
  what: zWords,
  /** datum and shift of the centre, "0.60 mm to REAR of the old centre, in line with R" */
  centre: z.string().max(400),
  lowerMm: zSizeMm,
  upperMm: zSizeMm,
});

/** A part to make or to buy. */
export const zMake = z.object({
  kind: z.enum(['pin', 'bush', 'strip', 'boss', 'other']),
  what: zWords,
  material: z.string().max(120),
  count: z.int().min(1).max(1000),
  /** outside diameter or thickness, inside, length, width; null: none */
  outsideMm: zSizeMm.nullable(),
  insideMm: zSizeMm.nullable(),
  lengthMm: zSizeMm.nullable(),
  widthMm: zSizeMm.nullable(),
  /** "-0.009/-0.025", "size after pressing" */
  limits: z.string().max(200),
  /** bar or sheet it is cut from */
  stock: z.string().max(200),
  bought: z.boolean(),
  /** days until it is there; null: on the shelf */
  leadDays: z.int().min(0).max(1000).nullable(),
});

/** Where the machine of a job stands and is worked on. */
export const WHEREABOUTS = ['not-said', 'in-the-yard', 'at-the-farm', 'elsewhere'] as const;
export const zWhereabouts = z.enum(WHEREABOUTS);

/** A bent part to be pressed straight: between what, with what force, and how far it springs back, as worked out when it was put on. */
export const zPressing = z.object({
  part: z.enum(PART_KIND_NAMES),
  spanMm: z.number(),
  bowMm: z.number().nullable(),
  /** as the shop said it [MPa] */
  yieldMpa: z.number(),
  /** between these two the bar begins to stay bent, suddenly: go slowly [N] */
  goSlowlyN: z.object({ from: z.number(), to: z.number() }),
  /** press that copes [N] */
  pressForN: z.number(),
  springBackMm: z.object({ low: z.number(), high: z.number() }),
  strain: z.number().nullable(),
  /** the maker's written procedure that opens it; null: it was open without one */
  openedBy: z.object({ by: z.string(), reference: z.string() }).nullable(),
});
export type Pressing = z.infer<typeof zPressing>;

/** What is to be done at one place. */
export const zRebuildWork = z.object({
  /** null: the machine as a whole */
  positionId: zId.nullable(),
  /** option it came from: leave, oversize, bush, ...; empty: typed in */
  option: z.string().max(60),
  what: zWords,
  /** what comes off to reach it, in order; each is done once in a job */
  takeOffs: z.array(z.object({ name: zName, hours: z.number().min(0).max(1000) })).max(40),
  /** its own work once it is reached [h] */
  ownHours: z.number().min(0).max(1000),
  partsPrice: zPrice,
  cuts: z.array(zCut).max(40),
  makes: z.array(zMake).max(40),
  /** points whose wear starts again, and the size they are meant to have then */
  renews: z
    .array(z.object({ pointId: zId, kind: zRenewalKind.default('new-part'), lowerMm: zSizeMm, upperMm: zSizeMm }))
    .max(40),
  /** towing, lifting, or a finding that forbids use */
  safety: z.boolean(),
  /** null: nothing is pressed straight */
  pressing: zPressing.nullable().default(null),
  /** ids of the cautions that go with it */
  cautions: z.array(z.string().max(20)).max(40),
});
export type RebuildWork = z.infer<typeof zRebuildWork>;

export const zStands = z.enum(['proposed', 'agreed', 'declined']);

export const zRebuildLine = zRebuildWork.extend({
  lineId: zId,
  item: z.int().nullable(),
  position: z.string(),
  stands: zStands,
  /** in the customer's own words */
  declinedWords: z.string(),
  /** size found after each cut; null: not cut yet [mm] */
  boredMm: z.array(z.number().nullable()),
});

/** A machine back so soon after its hand-over comes back for the same [days]. Common practice, no source. */
export const COMEBACK_DAYS = 92;

/** What is looked at before a machine leaves; each is done, or does not apply. */
export const HAND_OVER_CHECKS = [
  'as-left-measured',
  'gaps-set',
  'greased',
  'latch-under-load',
  'driver-indicator',
  'springs-and-keepers',
  'paint-marks',
  'old-parts-kept',
] as const;
export const zHandOverCheck = z.enum(HAND_OVER_CHECKS);
export const zCheckAnswer = z.enum(['done', 'does-not-apply']);

export const zQuote = z.object({
  kind: z.enum(['strip-and-report', 'work']),
  madeOn: zDay,
  by: z.string(),
  currency: z.string(),
  hourPrice: z.number(),
  lines: z.array(z.object({ what: z.string(), hours: z.number(), parts: z.number(), price: z.number() })),
  hours: z.number(),
  price: z.number(),
});

export const zApproval = z.object({
  saidOn: zDay,
  saidBy: z.string(),
  how: z.enum(['in-person', 'by-telephone', 'in-writing']),
  by: z.string(),
  agreed: z.int(),
  declined: z.int(),
});

export const zRebuild = z.object({
  rebuildId: zId,
  number: z.string(),
  machineId: zId,
  machine: z.string(),
  makeModel: z.string(),
  serial: z.string(),
  customer: z.string(),
  place: z.string(),
  takenInOn: zDay,
  wantedBy: zDay.nullable(),
  complaint: z.string(),
  dialHours: z.number().nullable(),
  /** an earlier job this one comes back from, within three months of its hand-over */
  comebackOf: z.object({ rebuildId: zId, number: z.string() }).nullable(),
  whereabouts: zWhereabouts,
  /** the bay, the field, the way to it */
  whereaboutsNote: z.string(),
  /** as it came in; struck ones too */
  photos: z.array(zStandingPhoto),
  handedOverOn: zDay.nullable(),
  lines: z.array(zRebuildLine),
  /** every take-off of the lines not declined, once [h] */
  takeOffs: z.array(z.object({ name: z.string(), hours: z.number() })),
  hours: z.object({ stripDown: z.number(), own: z.number() }),
  /** the day the last bought part is there, when ordered today; null: nothing is waited for */
  partsOn: zDay.nullable(),
  quotes: z.array(zQuote),
  approvals: z.array(zApproval),
  checks: z.array(z.object({ check: zHandOverCheck, answer: zCheckAnswer.nullable(), by: z.string() })),
  /** sentences, in the order in which a job meets them */
  cautions: z.array(z.string()),
  /** open findings that forbid use, in words of the finding */
  doNotUse: z.array(z.string()),
  /** open findings of parts that are bent */
  bent: z.array(z.object({ positionId: zId.nullable(), said: z.string() })),
});
export type Rebuild = z.infer<typeof zRebuild>;

export const rebuildsList = operation(
  'rebuilds/list',
  z.object({}),
  z.object({
    rebuilds: z.array(
      zRebuild
        .pick({ rebuildId: true, number: true, machineId: true, machine: true, customer: true, takenInOn: true })
        .extend({ whereabouts: zWhereabouts, whereaboutsNote: z.string() })
        .extend({
          wantedBy: zDay.nullable(),
          complaint: z.string(),
          handedOverOn: zDay.nullable(),
          hours: z.number(),
          proposed: z.int(),
          agreed: z.int(),
          declined: z.int(),
        }),
    ),
  }),
  { title: 'Jobs: open ones first, by the day they are wanted' },
);
export const rebuildRead = operation('rebuild/read', z.object({ rebuildId: zId }), zRebuild, {
  title: 'One job, whole',
});
export const rebuildTakeIn = operation(
  'rebuild/takeIn',
  z.object({
    machineId: zId,
    takenInOn: zDay,
    wantedBy: zDay.nullable(),
    complaint: z.string().trim().min(1).max(2000),
    dialHours: zHours.nullable(),
    /** false: a job of its own although the last one was handed over less than three months ago */
    comeback: z.boolean(),
    whereabouts: zWhereabouts.default('not-said'),
    whereaboutsNote: z.string().max(200).default(''),
    photoIds: zPhotoIds.default([]),
    by: zBy,
  }),
  z.object({ rebuildId: zId, number: z.string(), comebackOf: z.string().nullable() }),
  { title: 'Take a job in: number, complaint, when it is wanted' },
);
export const rebuildChange = operation(
  'rebuild/change',
  z.object({
    rebuildId: zId,
    wantedBy: zDay.nullable(),
    complaint: z.string().trim().min(1).max(2000),
    /** left out: it stays where it was */
    whereabouts: zWhereabouts.optional(),
    whereaboutsNote: z.string().max(200).optional(),
    reason: zNote,
    by: zBy,
  }),
  z.object({ rebuildId: zId }),
  { title: 'Put right what a job was taken in for' },
);
export const rebuildLineSave = operation(
  'rebuild/lineSave',
  z.object({ rebuildId: zId, lineId: zId.nullable(), work: zRebuildWork, by: zBy }),
  z.object({ lineId: zId }),
  { title: 'Put a line of work on a job, or put one right; a line put right is proposed again' },
);
export const rebuildAddPhotos = operation(
  'rebuild/addPhotos',
  z.object({ rebuildId: zId, photoIds: zPhotoIds.min(1), by: zBy }),
  z.object({ rebuildId: zId }),
  { title: 'Put photos to a job' },
);
export const rebuildStrikePhoto = operation(
  'rebuild/strikePhoto',
  z.object({ rebuildId: zId, photoId: zId, reason: zNote.min(1), by: zBy }),
  z.object({ rebuildId: zId }),
  { title: 'Strike a photo at a job; it stays in the record' },
);

/** A bent part of the job's machine; what the record knows of it is added to what is said. */
export const zBentPart = zStraightenAsked.extend({ rebuildId: zId, positionId: zId.nullable() });
export const rebuildLookAtBent = operation(
  'rebuild/lookAtBent',
  zBentPart,
  zStraightened.extend({
    /** what the record says of the place, whatever was said: it tows or lifts, is cracked, was straightened before */
    onRecord: z.object({ towingOrLifting: z.boolean(), crack: z.boolean(), straightenedBefore: z.boolean() }),
  }),
  { title: 'May a bent part of a job be pressed straight, and with what force' },
);
export const rebuildTakeStraighten = operation(
  'rebuild/takeStraighten',
  zBentPart.extend({ what: zName, by: zBy }),
  z.object({ lineId: zId }),
  { title: 'Put the straightening of a bent part on a job; a closed one is refused with why' },
);
export const rebuildTakeChosen = operation(
  'rebuild/takeChosen',
  z.object({ rebuildId: zId, by: zBy }),
  z.object({ lines: z.int() }),
  { title: 'Put the repairs chosen on the machine on its job' },
);
export const rebuildTakeSlide = operation(
  'rebuild/takeSlide',
  zSlideAsked.pick({ assemblyId: true, choice: true }).extend({ rebuildId: zId, by: zBy }),
  z.object({ lines: z.int() }),
  { title: 'Put what is done with the strips of a slide on a job' },
);
export const rebuildLineStrike = operation(
  'rebuild/lineStrike',
  z.object({ lineId: zId, reason: zNote, by: zBy }),
  z.object({ lineId: zId }),
  { title: 'Take a line of work off a job' },
);
export const rebuildQuote = operation(
  'rebuild/quote',
  z.object({
    rebuildId: zId,
    kind: zQuote.shape.kind,
    /** price of strip and report; null: by hours and rates */
    fixedPrice: zPrice.nullable(),
    by: zBy,
  }),
  zQuote,
  { title: 'Quote strip and report, or the work: hours and parts at the shop’s rates' },
);
export const rebuildApprove = operation(
  'rebuild/approve',
  z.object({
    rebuildId: zId,
    saidOn: zDay,
    saidBy: zName,
    how: zApproval.shape.how,
    agreed: z.array(zId).max(500),
    /** words are the customer's own; safety work is not declined without them */
    declined: z.array(z.object({ lineId: zId, words: z.string().max(1000) })).max(500),
    by: zBy,
  }),
  z.object({ rebuildId: zId }),
  { title: 'Write down what the customer agreed to, and what he declined' },
);
export const rebuildBored = operation(
  'rebuild/bored',
  z.object({
    lineId: zId,
    cut: z.int().min(0).max(39),
    sizeMm: zSizeMm,
    /** out of its limits, and kept all the same */
    sure: z.boolean(),
    by: zBy,
  }),
  z.object({ lineId: zId }),
  { title: 'Enter the size a cut really came to' },
);
export const rebuildCheck = operation(
  'rebuild/check',
  z.object({ rebuildId: zId, check: zHandOverCheck, answer: zCheckAnswer, by: zBy }),
  z.object({ rebuildId: zId }),
  { title: 'Answer one of the hand-over checks' },
);
export const rebuildHandOver = operation(
  'rebuild/handOver',
  z.object({
    rebuildId: zId,
    handedOverOn: zDay,
    dialHours: zHours.nullable(),
    /** as-left sizes and renewals: the next forecast starts from them */
    sizes: z.array(zSizeEntry).max(2000),
    renewals: z.array(zRenewalEntry).max(500),
    note: zNote,
    /** sizes out of the intended fit are kept all the same */
    sure: z.boolean(),
    by: zBy,
  }),
  z.object({ rebuildId: zId, stripDownId: zId.nullable() }),
  { title: 'Hand the machine over: as-left sizes and renewals recorded, the job closed' },
);
export const zRebuildPaper = z.enum(['job-card', 'machining-list', 'cut-list', 'close-out']);
export const rebuildPaper = operation(
  'rebuild/paper',
  z.object({ rebuildId: zId, paper: zRebuildPaper }),
  z.object({ fileName: z.string(), pdfBase64: z.string() }),
  { title: 'A paper of a job: job card, machining list, cut list, close-out sheet' },
);

export const zShopRates = z.object({
  currency: z.string().trim().min(1).max(10),
  hourPrice: zPrice,
  stripAndReportPrice: zPrice,
});
export const ratesRead = operation('rates/read', z.object({}), z.object({ rates: zShopRates.nullable() }), {
  title: 'The shop’s own rates; null: none entered yet',
});
export const ratesSave = operation('rates/save', zShopRates.extend({ by: zBy }), z.object({ saved: z.literal(true) }), {
  title: 'Enter the shop’s own rates',
});
