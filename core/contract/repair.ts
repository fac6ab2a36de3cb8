import { z } from 'zod';
import type { Datum, ShiftAllowed } from '../repair/clean-up/cleanUpBore.ts';
import type { HoleRun, Way } from '../repair/clean-up/wayRound.ts';
import type { BoreGauge } from '../repair/clean-up/wornOutline.ts';
import type { RepairUse } from '../repair/fit-for-repair/fitForRepair.ts';
import type { RepairChoice } from '../repair/options/repairOption.ts';
import type { WorkStep } from '../repair/strip-down-tree/labourHours.ts';
import { MATERIAL_NAMES, PART_KIND_NAMES, zSafetyCaution, zYieldMpa } from './fits.ts';
import { operation } from './operation.ts';
import { zDay, zFacts, zId, zName, zRange } from './shapes.ts';

const zMm = z.number().positive().max(2000);
const zMmOrNot = zMm.nullable();

export const HOLE_RUN_NAMES = [...(['across', 'upright', 'lengthwise'] as const)] satisfies HoleRun[];
export const WAY_NAMES = [...(['front', 'rear', 'left', 'right', 'up', 'down'] as const)] satisfies Way[];
export const DATUM_NAMES = [...(['unworn-lip', 'end-land', 'tram-to-other-bore'] as const)] satisfies Datum[];
export const BORE_GAUGE_NAMES = [
  ...(['two-point', 'telescopic', 'calliper', 'three-jaw'] as const),
] satisfies BoreGauge[];
export const REPAIR_USE_NAMES = [
  ...(['greased-pivot', 'close-pivot', 'latch-pin', 'bush-in-boss', 'fixed-pin'] as const),
] satisfies RepairUse[];
export const REPAIR_CHOICE_NAMES = [
  ...(['leave', 'oversize-pin', 'bush', 'weld', 'new-boss', 'reject'] as const),
] satisfies RepairChoice[];
export type RepairChoiceName = (typeof REPAIR_CHOICE_NAMES)[number];

/** Axes a hole is read on, from the right hand of its picture turning to the left [deg]. */
export const AXES_DEG = [0, 45, 90, 135] as const;

/** What the bench says of a worn hole: all that the record's readings do not hold. A null is not known. */
export const zRepairFacts = z.object({
  run: z.enum(HOLE_RUN_NAMES),
  use: z.enum(REPAIR_USE_NAMES),
  /** size of pin and hole as drawn, and of the hole when new; null: nobody knows [mm] */
  standardMm: zMmOrNot,
  newBoreMm: zMmOrNot,
  gauge: z.enum(BORE_GAUGE_NAMES),
  /** diameter on each axis of {@link AXES_DEG} [mm] */
  axesMm: z.array(zMmOrNot).length(AXES_DEG.length),
  wornTowards: z.enum(WAY_NAMES).nullable(),
  datum: z.enum(DATUM_NAMES).nullable(),
  mayMoveMm: z.number().min(0).max(100).nullable(),
  /** taken off on each side beyond the worn outline [mm] */
  aSideMm: z.number().min(0).max(5),
  /** another position whose hole is bored on the same bar */
  boredWith: zId.nullable(),
  bossOutsideMm: zMmOrNot,
  bossLengthMm: zMmOrNot,
  offMiddleMm: z.number().min(0).max(100),
  centreToEdgeMm: zMmOrNot,
  material: z.enum(MATERIAL_NAMES).nullable(),
  /** the shop's own word on the boss's yield stress; null: the material's usual one [MPa] */
  yieldMpa: zYieldMpa.nullable().default(null),
  split: z.boolean(),
  weldsNear: z.boolean(),
  plate: z.enum(['sound', 'thin-or-unknown', 'not-looked-at']),
  pinMm: zMmOrNot,
  pinLengthMm: zMmOrNot,
  pinRenewed: z.boolean(),
  /** the other half of the joint; null: its sizes are not known */
  otherHalf: z
    .object({
      /** what wore: the eye in the middle, or the fork about it */
      worn: z.enum(['eye', 'fork']),
      thicknessMm: zMm,
      widthMm: zMm,
      endMm: zMm,
      gapEachSideMm: z.number().min(0).max(100),
    })
    .nullable(),
  mustStayStandard: z.boolean(),
  oversizes: z.int().min(0).max(20),
  partKind: z.enum(PART_KIND_NAMES),
  forgedOrHeatTreated: z.boolean().nullable(),
  /** the maker's written procedure for work on this part: who gave it, and its reference */
  procedure: z.object({ by: zName, reference: zName }).nullable(),
  nylonNear: z.boolean(),
  alignmentBar: z.boolean(),
  pressKn: z.number().positive().max(100_000).nullable(),
});
export type RepairFacts = z.infer<typeof zRepairFacts>;

const zSpan = z.object({ low: z.number(), high: z.number() });
const zSized = zSpan.extend({ nominalMm: z.number(), toleranceClass: z.string() });
const zToward = z.array(z.object({ way: z.enum(WAY_NAMES), mm: z.number() }));
const zShift = z.object({ xMm: z.number(), yMm: z.number() });
const zBoredAbout = z.object({ boreMm: z.number(), shift: zShift, shiftMm: z.number(), toward: zToward });
const zStepHours = z.object({ low: z.number(), typical: z.number(), high: z.number() });
const zFit = z.object({ classes: z.string(), kind: z.string(), feel: z.string(), clearanceMm: zSpan });
const zStanding = z.object({ leftMm: z.number(), wantedMm: z.number() });
const zBoredTo = z.object({
  nominalMm: z.number(),
  toleranceClass: z.string(),
  largestMm: z.number(),
  smallestMm: z.number(),
  centre: z.enum(['old', 'shifted']),
  shiftMm: z.number(),
  toward: zToward,
});
const zReason = z.object({ code: z.string(), facts: zFacts.optional() });

export const zPartToMake = z.object({
  kind: z.enum(['pin', 'bush', 'boss', 'strip']),
  name: z.string(),
  count: z.int(),
  material: z.string(),
  sizes: z.array(
    z.object({
      of: z.enum(['outside', 'inside', 'length', 'thickness', 'width']),
      nominalMm: z.number(),
      toleranceClass: z.string().nullable(),
      largestMm: z.number(),
      smallestMm: z.number(),
      finished: z.enum(['before', 'after-pressing']),
    }),
  ),
  stock: z.object({
    shape: z.enum(['round', 'flat']),
    diameterMm: z.number().nullable(),
    widthMm: z.number().nullable(),
    thicknessMm: z.number().nullable(),
    lengthMm: z.number(),
  }),
});

const zBush = z.object({
  outsideMm: zSized,
  insideBeforeMm: zSized,
  insideAfterMm: zSized,
  lengthMm: z.number(),
  wallMm: z.number(),
  sizedAfter: z.boolean(),
  pressed: z.object({
    leastInterferenceMm: z.number(),
    mostInterferenceMm: z.number(),
    pressForceN: zSpan,
    tightest: z.object({ pressureMpa: z.number(), bossHoopMpa: z.number(), bossVonMisesMpa: z.number() }),
    boreAfter: z
      .object({
        closesInMm: zSpan,
        smallestMm: z.number(),
        largestMm: z.number(),
        withinWanted: z.boolean().nullable(),
      })
      .nullable(),
    shrink: z.object({
      heatToC: z.number(),
      heatTooHot: z.boolean(),
      freezeWith: z.enum(['freezer', 'dry-ice', 'liquid-nitrogen']).nullable(),
    }),
  }),
  glued: z.object({ bushOutsideLargestMm: z.number(), bushOutsideSmallestMm: z.number() }).nullable(),
});

export const WORK_STEP_NAMES = [
  ...(['renew-strip', 'shim-strip', 'turn-strip', 'set-up-line-bore', 'bore-boss', 'make-bush', 'press-bush'] as const),
  ...(['weld-and-re-bore', 'make-boss', 'fit-boss', 'make-pin', 'seized-pin-out', 'straighten'] as const),
  ...(['crack-check', 'measure', 'paint-and-papers'] as const),
] satisfies WorkStep[];

export const zRepairOption = z.object({
  choice: z.enum(REPAIR_CHOICE_NAMES),
  /** why it may not be chosen; empty: open */
  closed: z.array(zReason),
  cautions: z.array(zReason),
  safety: z.array(zSafetyCaution),
  bore: zBoredTo.nullable(),
  bush: zBush.nullable(),
  pin: zSized.nullable(),
  fitInBoss: zFit.nullable(),
  fitOnPin: zFit.nullable(),
  wall: zStanding.nullable(),
  edge: zStanding.nullable(),
  /** the joint beside itself as drawn: each stress as a share of what it was */
  comparison: z
    .object({
      notWorse: z.boolean(),
      figures: z.array(z.object({ figure: z.string(), ratio: z.number(), word: z.string() })),
    })
    .nullable(),
  slackMm: zSpan.nullable(),
  work: z.array(z.object({ step: z.enum(WORK_STEP_NAMES), times: z.int(), oncePer: z.string().optional() })),
  /** the work itself, and what the visit grows by with strip-down counted once; null: not known before the part is there [h] */
  hoursHere: zStepHours.nullable(),
  hoursAdded: zStepHours.nullable(),
  off: z.array(z.object({ code: z.string(), name: z.string() })),
  toMake: z.array(zPartToMake),
  /** machine hours until the joint reaches its limit; null: no forecast */
  life: zRange.nullable(),
});
export type RepairOptionShown = z.infer<typeof zRepairOption>;

const zCleanUp = z.object({
  /** worn outline of this hole about its old centre: circles, of radius 0 where a single point was read [mm] */
  circles: z.array(z.object({ x: z.number(), y: z.number(), radius: z.number() })),
  wearMm: z.number(),
  onOldCentre: zBoredAbout,
  onBestCentre: zBoredAbout.nullable(),
  withinLimit: zBoredAbout.nullable(),
  allowed: z
    .enum([
      ...(['yes', 'no-shift-needed', 'too-far', 'limit-not-said', 'datum-not-named'] as const),
    ] satisfies ShiftAllowed[])
    .nullable(),
  oldCentreCostsMm: z.number().nullable(),
  cautions: z.array(zReason),
});

/** What must be entered before anything can be worked out. */
export const FACTS_NEEDED = ['standardMm', 'newBoreMm', 'axesMm', 'bossOutsideMm', 'bossLengthMm'] as const;

export const zRepairSheet = z.object({
  asOf: zDay,
  positionId: zId,
  machineId: zId,
  machine: z.string(),
  customer: z.string(),
  assembly: z.string(),
  item: z.int(),
  position: z.string(),
  safety: z.boolean(),
  facts: zRepairFacts,
  /** when facts were kept; false: they are drawn from the record's readings and usual figures */
  factsKept: z.boolean(),
  missing: z.array(z.enum(FACTS_NEEDED)),
  cleanUp: zCleanUp.nullable(),
  options: z.array(zRepairOption),
  chosen: z.object({ choice: z.enum(REPAIR_CHOICE_NAMES), chosenOn: zDay, by: z.string() }).nullable(),
  slackNowMm: z.number().nullable(),
  limits: z.object({ renewSlackMm: z.number().nullable(), rejectSlackMm: z.number().nullable() }),
  /** joints of this machine, this one too, in the order of their numbers */
  joints: z.array(z.object({ positionId: zId, item: z.int(), position: z.string(), chosen: z.boolean() })),
  /** chosen work elsewhere on this assembly that opens it anyway */
  openedBy: z.int(),
  rests: z.object({ ownReadings: z.int(), likeParts: z.int() }),
  prevail: z.string(),
});
export type RepairSheet = z.infer<typeof zRepairSheet>;

export const repairRead = operation('repair/read', z.object({ positionId: zId }), zRepairSheet, {
  title: 'What can be done with a worn hole and its pin: every choice, open or closed with why',
});

export const repairSaveFacts = operation(
  'repair/saveFacts',
  z.object({ positionId: zId, facts: zRepairFacts, by: zName }),
  z.object({ saved: z.literal(true) }),
  { title: 'Keep what the bench says of a worn hole: its axes, its boss, its steel' },
);

export const repairChoose = operation(
  'repair/choose',
  /** null: none is chosen any more */
  z.object({ positionId: zId, choice: z.enum(REPAIR_CHOICE_NAMES).nullable(), by: zName }),
  z.object({ saved: z.literal(true) }),
  { title: 'Choose the repair of a joint, or take the choice back' },
);

export const repairCutListPaper = operation(
  'repair/cutListPaper',
  z.object({ machineId: zId.nullable() }),
  z.object({ fileName: z.string(), pdfBase64: z.string() }),
  { title: 'The cut list on paper: bars, parts with their drawings' },
);

/** Parts that come off like bars, and how those bars are cut with the least bar cut into. */
export const zCutGroup = z.object({
  bar: z.string(),
  parts: z.array(zPartToMake),
  plan: z.object({
    bars: z.array(
      z.object({ barMm: z.number(), piecesMm: z.array(z.number()), leftMm: z.number(), keep: z.boolean() }),
    ),
    barsMm: z.number(),
    wasteMm: z.number(),
    /** no other plan cuts into less bar */
    proven: z.boolean(),
  }),
});
export type CutGroup = z.infer<typeof zCutGroup>;

export const repairCutList = operation(
  'repair/cutList',
  /** null: of every machine, the whole winter's */
  z.object({ machineId: zId.nullable() }),
  z.object({
    groups: z.array(zCutGroup),
    saw: z.object({ kerfMm: z.number(), trimMm: z.number(), boughtMm: z.number(), keepFromMm: z.number() }),
  }),
  { title: 'Parts to make for the repairs chosen, by the bar they come from, and how to cut it' },
);
