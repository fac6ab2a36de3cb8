import { z } from 'zod';
import { zFinding, zNewPoint } from './machine.ts';
import { operation } from './operation.ts';
import { zDay, zId, zMeasures, zName, zQuestion, zSizeEvent } from './shapes.ts';
import { zFindingEntry, zRenewalEntry, zSheetRow, zShimEntry, zStripDownDraft } from './stripDown.ts';

/** A sheet of the batch in hand, saved. */
export const zOldSheet = z.object({
  entryId: zId,
  stripDownId: zId,
  machineId: zId,
  machine: z.string(),
  takenOn: zDay,
  fitter: z.string(),
  sizes: z.int(),
  /** of them: questioned and not answered yet */
  parked: z.int(),
  findings: z.int(),
  madeAt: z.string(),
});
export type OldSheet = z.infer<typeof zOldSheet>;

/** What a desk needs to type old sheets one after another: no forecast is made for it. */
export const oldSheetsRead = operation(
  'oldSheets/read',
  z.object({}),
  z.object({
    machines: z.array(
      z.object({
        machineId: zId,
        name: z.string(),
        customer: z.string(),
        place: z.string(),
        serial: z.string(),
        assemblies: z.array(z.string()),
        /** days of its strip-downs on record */
        stripDownDays: z.array(zDay),
      }),
    ),
    /** typed and not saved, on this desk or at the bench */
    drafts: z.array(
      z.object({ machineId: zId, machine: z.string(), takenOn: zDay, sizes: z.int(), keptAt: z.string() }),
    ),
    /** sheets of the batch in hand, the last one first */
    sheets: z.array(zOldSheet),
    /** the one that can be taken back: the last entry of all; null: something else was entered since, or nothing */
    takeBackEntryId: zId.nullable(),
  }),
  { title: 'The batch of old strip-down sheets in hand' },
);

/** The grid of one old sheet: sizes beside its boxes are the last ones before its day, not the latest on record. */
export const oldSheetsGrid = operation(
  'oldSheets/grid',
  z.object({
    machineId: zId,
    /** null: not known yet */
    takenOn: zDay.nullable(),
  }),
  z.object({
    rows: z.array(zSheetRow),
    openFindings: z.array(zFinding),
    draft: zStripDownDraft.nullable(),
    /** ISO instant at which that was kept; null: nothing was */
    draftKeptAt: z.string().nullable(),
    /** the strip-down of this machine that was entered last; null: none was */
    lastStripDownId: zId.nullable(),
    /** dial the meter showed about that day, by what has been read before and after [h] */
    dialHours: z.number().nullable(),
  }),
  { title: 'The grid of an old strip-down sheet, with the sizes before its day' },
);

/** One sheet, one entry, in one step. No forecast is made: that waits until the batch ends. */
export const oldSheetsSave = operation(
  'oldSheets/save',
  zStripDownDraft.extend({
    /** the dial is odd and right all the same; else it is kept aside */
    dialSure: z.boolean(),
    /** another of that day was saved since the sheet was laid out, and this is a second one */
    anotherSure: z.boolean().default(false),
  }),
  z.object({ entryId: zId, stripDownId: zId, parked: z.int(), dialParked: z.boolean() }),
  { title: 'Save an old strip-down sheet; its forecast waits until the batch ends' },
);

export const oldSheetsTakeBack = operation(
  'oldSheets/takeBack',
  z.object({ entryId: zId, by: z.string().max(120) }),
  z.object({ machineId: zId }),
  { title: 'Take the last sheet back into its boxes' },
);

export const oldSheetsEnd = operation(
  'oldSheets/end',
  z.object({ by: z.string().max(120) }),
  z.object({ started: z.literal(true) }),
  { title: 'End the batch: learn from its sheets and forecast every machine anew' },
);

export const oldSheetsProgress = operation(
  'oldSheets/progress',
  z.object({}),
  z.object({
    stage: z.enum(['none', 'learning', 'forecasting', 'done', 'stopped']),
    /** machines forecast so far, and all there are */
    done: z.int(),
    total: z.int(),
  }),
  { title: 'How far the forecasts after a batch have come' },
);

/** A size kept aside, with the question it waits on. */
export const zQuestionedSize = z.object({
  /** a size measured, or the size of a part put in: one of the two */
  sizeId: zId.nullable(),
  renewalId: zId.nullable(),
  stripDownId: zId,
  pointId: zId,
  machineId: zId,
  machine: z.string(),
  takenOn: zDay,
  item: z.int(),
  position: z.string(),
  point: z.string(),
  measures: zMeasures,
  station: z.string(),
  event: zSizeEvent,
  sizeMm: z.number(),
  /** 1 sd */
  gaugeErrorMm: z.number(),
  decimals: z.int(),
  question: zQuestion,
});
export type QuestionedSize = z.infer<typeof zQuestionedSize>;

export const sizesQuestioned = operation(
  'sizes/questioned',
  z.object({ machineId: zId.nullable() }),
  z.object({ sizes: z.array(zQuestionedSize) }),
  { title: 'Sizes kept out of the forecast until somebody answers' },
);

/** A measuring point that was not there: at a position of an assembly, or at a new one. */
export const pointAdd = operation(
  'point/add',
  z.object({
    machineId: zId,
    /** null: a new assembly of that name */
    assemblyId: zId.nullable(),
    assemblyName: zName.nullable(),
    /** null: a new position */
    positionId: zId.nullable(),
    position: z
      .object({
        item: z.int().min(1).max(999),
        name: zName,
        safety: z.boolean(),
        /** it interchanges with others: no oversize here */
        mustStayStandard: z.boolean().default(false),
      })
      .nullable(),
    point: zNewPoint,
    by: z.string().max(120),
  }),
  z.object({ pointId: zId, positionId: zId, assemblyId: zId }),
  { title: 'Lay out one more measuring point on a machine' },
);

/** A saved sheet as it stands now: what was put right shows what it was before. */
export const zSavedSize = z.object({
  sizeId: zId,
  pointId: zId,
  station: z.string(),
  event: zSizeEvent,
  /** null: struck out */
  sizeMm: z.number().nullable(),
  parked: z.boolean(),
  was: z.array(z.object({ sizeMm: z.number(), reason: z.string(), by: z.string(), at: z.string() })),
});

export const stripDownRead = operation(
  'stripDown/read',
  z.object({ stripDownId: zId }),
  z.object({
    machineId: zId,
    machine: z.string(),
    takenOn: zDay,
    dialHours: z.number().nullable(),
    fitter: z.string(),
    note: z.string(),
    rows: z.array(zSheetRow),
    sizes: z.array(zSavedSize),
    renewals: z.array(zRenewalEntry),
    shims: z.array(zShimEntry),
    findings: z.array(zFindingEntry),
  }),
  { title: 'A strip-down on record, with what was put right on it' },
);

const zPlace = z.object({ pointId: zId, station: z.string().max(40) });

/** Left and right, or front and rear, were mixed up on the paper: the sizes change places, each as a correction. */
export const stripDownSwap = operation(
  'stripDown/swap',
  z.object({
    stripDownId: zId,
    /** the two places of each exchange; both events of a place go over */
    pairs: z
      .array(z.object({ one: zPlace, other: zPlace }))
      .min(1)
      .max(200),
    reason: z.string().max(2000),
    by: z.string().max(120),
  }),
  z.object({ entryId: zId, moved: z.int(), parked: z.int() }),
  { title: 'Let sizes of a saved sheet change places, as corrections' },
);
