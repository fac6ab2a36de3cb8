import { z } from 'zod';
import { zFinding, zLimits, zOversize } from './machine.ts';
import { operation } from './operation.ts';
import { zPhotoIds } from './photo.ts';
import {
  zDay,
  zFindingKind,
  zHours,
  zId,
  zMeasures,
  zName,
  zNote,
  zQuestion,
  zRange,
  zRenewalKind,
  zSeverity,
  zSizeEvent,
  zSizeMm,
  zWears,
} from './shapes.ts';

/** One size as typed. `answer` is what was said to a question about it. */
export const zSizeEntry = z.object({
  pointId: zId,
  station: z.string().max(40),
  event: zSizeEvent,
  sizeMm: zSizeMm,
  gaugeId: zId.nullable(),
  /** right-as-read: use it; null: unanswered, kept and left out of the forecast */
  answer: z.enum(['right-as-read']).nullable(),
});
export type SizeEntry = z.infer<typeof zSizeEntry>;

export const zRenewalEntry = z.object({
  pointId: zId,
  /** null: the new size; of a strip turned over: as measured that day */
  sizeMm: zSizeMm.nullable(),
  /** false: done elsewhere, some time since the size before */
  hoursKnown: z.boolean(),
  kind: zRenewalKind.default('new-part'),
  /** only this station's piece; empty: the whole part */
  station: z.string().max(40).default(''),
  /** an oversize part carries its size; null: not said */
  stamped: z.boolean().nullable().default(null),
  /** right-as-read: its odd size is right; null: unanswered, kept and left out of the forecast */
  answer: z.enum(['right-as-read']).nullable().default(null),
});
/** Packing put in (below 0: taken out): slack goes, no metal comes back. */
export const zShimEntry = z.object({
  pointId: zId,
  shimMm: z
    .number()
    .min(-100)
    .max(100)
    .refine((mm) => mm !== 0, { message: 'a thickness, or one taken out' }),
});
export const zFindingEntry = z.object({
  assemblyId: zId,
  positionId: zId.nullable(),
  kind: zFindingKind,
  severity: zSeverity,
  note: zNote,
  /** kept photos that show it */
  photoIds: zPhotoIds.default([]),
});

export const zStripDownDraft = z.object({
  machineId: zId,
  takenOn: zDay,
  dialHours: zHours.nullable(),
  fitter: z.string().max(120),
  note: zNote,
  sizes: z.array(zSizeEntry).max(2000),
  renewals: z.array(zRenewalEntry).max(500),
  shims: z.array(zShimEntry).max(500).default([]),
  findings: z.array(zFindingEntry).max(500),
  /** the machine's last strip-down when the sheet was laid out (stripDown/sheet); left out: whoever types it looked by himself */
  afterStripDownId: zId.nullable().optional(),
  /** when what the asker knows to be typed on the machine was kept (draftKeptAt, keptAt); null: nothing; left out: whoever types it looked by himself */
  typedSince: z.string().max(40).nullable().optional(),
});
export type StripDownDraft = z.infer<typeof zStripDownDraft>;

export const zSheetRow = z.object({
  pointId: zId,
  assemblyId: zId,
  positionId: zId,
  assembly: z.string(),
  item: z.int(),
  position: z.string(),
  point: z.string(),
  measures: zMeasures,
  wears: zWears,
  safety: z.boolean(),
  limits: zLimits,
  /** its own standard, where that is not the drawn size */
  oversize: zOversize.nullable(),
  /** it interchanges: no oversize here */
  mustStayStandard: z.boolean(),
  gaugeId: zId.nullable(),
  gauge: z.string(),
  /** 1 sd */
  gaugeErrorMm: z.number(),
  decimals: z.int(),
  /** one box per station; last: the present part's last size there */
  stations: z.array(z.object({ station: z.string(), lastSizeMm: z.number().nullable(), lastOn: zDay.nullable() })),
});

export const stripDownSheet = operation(
  'stripDown/sheet',
  z.object({ machineId: zId }),
  z.object({
    rows: z.array(zSheetRow),
    openFindings: z.array(zFinding),
    /** what was typed and not yet saved */
    draft: zStripDownDraft.nullable(),
    /** ISO instant at which that was kept; null: nothing was */
    draftKeptAt: z.string().nullable(),
    /** the strip-down of this machine that was entered last; null: none was */
    lastStripDownId: zId.nullable(),
    /** dial the machine should show today [h] */
    dialHours: z.number().nullable(),
    /** the machine whose dial its hours go by, where it has none of its own */
    dialMachine: z.string().nullable(),
  }),
  { title: 'The grid of measuring points for a strip-down, with the last sizes' },
);

export const stripDownKeep = operation('stripDown/keep', zStripDownDraft, z.object({ keptAt: z.string() }), {
  title: 'Keep a strip-down as typed so far; it feeds nothing yet',
});

export const stripDownDiscard = operation(
  'stripDown/discard',
  zStripDownDraft.pick({ machineId: true, typedSince: true }),
  z.object({ discarded: z.boolean() }),
  { title: 'Throw away a strip-down that was typed and not saved' },
);

export const stripDownJudge = operation(
  'stripDown/judge',
  zStripDownDraft,
  z.object({
    questions: z.array(z.object({ pointId: zId, station: z.string(), event: zSizeEvent, question: zQuestion })),
    /** about sizes put in */
    renewalQuestions: z.array(z.object({ pointId: zId, station: z.string(), question: zQuestion })),
    /** about the dial */
    dialQuestion: zQuestion.nullable(),
    /** worst station per point, the one that governs */
    worst: z.array(z.object({ pointId: zId, event: zSizeEvent, station: z.string(), wearMm: z.number() })),
  }),
  { title: 'What is odd about the sizes typed so far' },
);

export const stripDownSave = operation(
  'stripDown/save',
  zStripDownDraft.extend({
    /** the dial is odd and is to be kept all the same */
    dialSure: z.boolean(),
    /** one of that day was saved since the sheet was laid out, and this one is another */
    anotherSure: z.boolean().default(false),
  }),
  z.object({
    stripDownId: zId,
    parked: z.int(),
    /** hours left before and after, per point that moved */
    moved: z.array(
      z.object({ pointId: zId, item: z.int(), position: z.string(), point: z.string(), before: zRange, after: zRange }),
    ),
    /** its sizes against the forecasts that stood just before: how many were laid against one, and those beyond their 80 % range */
    against: z.object({
      sizes: z.int(),
      beyond: z.array(
        z.object({
          pointId: zId,
          item: z.int(),
          position: z.string(),
          point: z.string(),
          sizeMm: z.number(),
          leastWornMm: z.number(),
          mostWornMm: z.number(),
        }),
      ),
    }),
  }),
  { title: 'Save a strip-down, whole, in one step' },
);

export const sizePutRight = operation(
  'size/putRight',
  z.object({ sizeId: zId, sizeMm: zSizeMm.nullable(), reason: zNote, by: z.string().max(120) }),
  /** of the row now in its place; `question`: it is odd itself, and kept aside until answered */
  z.object({ sizeId: zId, question: zQuestion.nullable() }),
  { title: 'Put a wrong size right; null strikes it out. The old one stays visible' },
);

export const sizeAnswer = operation(
  'size/answer',
  z.object({ sizeId: zId, answer: z.enum(['right-as-read', 'was-renewed']), by: z.string().max(120) }),
  z.object({ sizeId: zId }),
  { title: 'Answer the question about a kept size' },
);

export const renewalAnswer = operation(
  'renewal/answer',
  z.object({ renewalId: zId, answer: z.enum(['right-as-read']), by: z.string().max(120) }),
  z.object({ renewalId: zId }),
  { title: 'Answer the question about a size put in' },
);

export const renewalPutRight = operation(
  'renewal/putRight',
  z.object({
    renewalId: zId,
    /** null: strikes it out, the old part was never taken away */
    right: z
      .object({
        sizeMm: zSizeMm.nullable(),
        /** absent: as it was */
        stamped: z.boolean().nullable().optional(),
      })
      .nullable(),
    reason: zNote,
    by: z.string().max(120),
  }),
  z.object({ renewalId: zId }),
  {
    title:
      'Put a renewal right: the size put in, whether it is stamped; null strikes it out. The old row stays visible',
  },
);

export const findingAdd = operation(
  'finding/add',
  zFindingEntry.extend({ takenOn: zDay, by: z.string().max(120) }),
  z.object({ findingId: zId }),
  { title: 'Enter what was seen: crack, bend, break, seizure, loss' },
);

export const findingClose = operation(
  'finding/close',
  z.object({ findingId: zId, closedOn: zDay, outcome: zNote.min(1), by: z.string().max(120) }),
  z.object({ findingId: zId }),
  { title: 'Close a finding with what became of it' },
);

export const findingDecline = operation(
  'finding/decline',
  z.object({
    findingId: zId,
    saidOn: zDay,
    saidBy: zName,
    /** the customer's own words, short enough to be printed whole */
    words: z.string().trim().min(1).max(400),
    by: z.string().max(120),
  }),
  z.object({ declineId: zId }),
  { title: 'Note that the customer does not want a finding made good; it stays open' },
);

export const findingStrikeDecline = operation(
  'finding/strikeDecline',
  z.object({ declineId: zId, reason: zNote.min(1), by: z.string().max(120) }),
  z.object({ declineId: zId }),
  { title: 'Strike what was noted of a refused repair; it stays in sight' },
);
