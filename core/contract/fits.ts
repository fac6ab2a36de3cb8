import { z } from 'zod';
import type { PartKind } from '../repair/cautions/closedWork.ts';
import type { HowKnown } from '../repair/howKnown.ts';
import type { MaterialName } from '../repair/press-fit/material.ts';
import type { Lubrication } from '../repair/press-fit/pressForce.ts';
import type { Cold } from '../repair/press-fit/shrink.ts';
import { operation } from './operation.ts';
import { zNote } from './shapes.ts';

const zMm = z.number().positive().max(10_000);
/** "50 H7/g6", as on a drawing */
const zFitText = z.string().max(40);
const zClassText = z.string().max(8);

export const zHowKnown = z.enum([
  ...(['published', 'maker', 'scope', 'analogy', 'worked-out', 'common-practice', 'from-memory', 'draft'] as const),
] satisfies HowKnown[]);

/** A figure of the program's own, with how it is known. */
const zKnown = z.object({ howKnown: zHowKnown, source: z.string() });
const zRange = z.object({ low: z.number(), high: z.number() });

export const zLimitsOfSize = z.object({
  nominalMm: z.number(),
  toleranceClass: z.string(),
  of: z.enum(['hole', 'shaft']),
  upperDeviationUm: z.number(),
  lowerDeviationUm: z.number(),
  largestMm: z.number(),
  smallestMm: z.number(),
});
export type LimitsShown = z.infer<typeof zLimitsOfSize>;

/** What stands where a job can hurt someone. */
export const zSafetyCaution = z.object({
  id: z.string(),
  text: z.string(),
  references: z.string(),
  howKnown: zHowKnown,
});

export const fitRead = operation(
  'fit/read',
  z.object({ fit: zFitText }),
  z.object({
    nominalMm: z.number(),
    hole: zLimitsOfSize,
    shaft: zLimitsOfSize,
    kind: z.enum(['clearance', 'transition', 'interference']),
    leastClearanceUm: z.number(),
    mostClearanceUm: z.number(),
    /** "slides freely"; common practice, no source */
    feel: z.string(),
    /** fits this shop may start from at this size */
    forRepair: z.array(z.object({ use: z.string(), pair: z.string(), ...zKnown.shape })),
    /** what no pair of hole and shaft says */
    besides: z.object({
      pinsInPressedBush: z.object({ pins: z.array(z.string()), ...zKnown.shape }),
      wrappedBush: z.object({ seat: z.string(), pins: z.array(z.string()), bore: z.string(), ...zKnown.shape }),
      weldedBossOverMm: zRange.extend(zKnown.shape),
    }),
  }),
  { title: 'Limits of a hole and a shaft, and how they go together' },
);

export const MATERIAL_NAMES = [
  ...(['structural-steel', 'quenched-steel', 'cast-steel', 'cast-iron', 'tin-bronze'] as const),
] satisfies MaterialName[];
/** Yield stress of a part's own steel, as its certificate or a test says [MPa]. */
export const zYieldMpa = z.number().positive().max(3000);
export const LUBRICATIONS = [...(['dry', 'oiled'] as const)] satisfies Lubrication[];
const zCold = z.enum([...(['freezer', 'dry-ice', 'liquid-nitrogen'] as const)] satisfies Cold[]);

const zPressFit = z.object({
  pressureMpa: z.number(),
  bossHoopMpa: z.number(),
  bossVonMisesMpa: z.number(),
  bushVonMisesMpa: z.number(),
  bossGrowthMm: z.number(),
  bushCloseInMm: z.number(),
  bossYields: z.boolean(),
  bushYields: z.boolean(),
});

const zMaterialUsed = zKnown.extend({
  name: z.enum(MATERIAL_NAMES),
  yieldMpa: z.number(),
  /** the yield stress is the shop's own word, not the program's usual one */
  yieldIsOwn: z.boolean(),
  heatUpToC: z.number(),
});

export const fitPress = operation(
  'fit/press',
  z.object({
    fit: zFitText,
    bossOutsideMm: zMm,
    /** 0: a solid pin */
    bushBoreMm: z.number().min(0).max(500),
    lengthMm: zMm,
    bushBoreClass: zClassText.nullable(),
    wantedBoreClass: zClassText.nullable(),
    bossMaterial: z.enum(MATERIAL_NAMES),
    bushMaterial: z.enum(MATERIAL_NAMES),
    /** the shop's own word on a yield stress; null: the material's usual one */
    bossYieldMpa: zYieldMpa.nullable(),
    bushYieldMpa: zYieldMpa.nullable(),
    lubrication: z.enum(LUBRICATIONS),
    roomC: z.number().min(-30).max(50),
    roughnessUm: z.object({ bossRzUm: z.number().min(0).max(500), bushRzUm: z.number().min(0).max(500) }),
  }),
  z.object({
    leastInterferenceMm: z.number(),
    mostInterferenceMm: z.number(),
    mayBeLoose: z.boolean(),
    loosest: zPressFit.nullable(),
    tightest: zPressFit,
    pressForceN: zRange,
    slipTorqueNmm: zRange,
    friction: zRange.extend(zKnown.shape),
    boreAfter: z
      .object({
        before: zLimitsOfSize,
        closesInMm: zRange,
        smallestMm: z.number(),
        largestMm: z.number(),
        wanted: zLimitsOfSize.nullable(),
        withinWanted: z.boolean().nullable(),
      })
      .nullable(),
    shrink: z.object({
      entryClearanceMm: z.number(),
      heatToC: z.number(),
      heatTooHot: z.boolean(),
      freezeWith: zCold.nullable(),
      freezeToC: z.number().nullable(),
      both: z.array(
        z.object({
          ...{ cold: zCold, coldC: z.number(), heatToC: z.number() },
          ...{ heatNeeded: z.boolean(), heatTooHot: z.boolean() },
        }),
      ),
    }),
    /** outside of a glued bush for the same bore; null: the bore's limits take up the whole gap */
    adhesive: z
      .object({ bushOutsideLargestMm: z.number(), bushOutsideSmallestMm: z.number(), holdsN: zRange })
      .extend(zKnown.shape)
      .nullable(),
    boss: zMaterialUsed,
    bush: zMaterialUsed,
    cautions: z.array(zSafetyCaution),
    prevail: z.string(),
  }),
  { title: 'Press, shrink or glue a bush: force, stress, bore once in, heat and cold' },
);

const zSection = z.discriminatedUnion('shape', [
  z.object({ shape: z.literal('rectangle'), widthMm: zMm, depthMm: zMm }),
  z.object({ shape: z.literal('round'), diameterMm: zMm }),
  z.object({ shape: z.literal('box'), widthMm: zMm, depthMm: zMm, wallMm: zMm }),
  z.object({ shape: z.literal('tube'), diameterMm: zMm, wallMm: zMm }),
  z.object({ shape: z.literal('I-section'), flangeWidthMm: zMm, depthMm: zMm, flangeMm: zMm, webMm: zMm }),
]);
export const PART_KIND_NAMES = [
  ...(['hook', 'ring', 'ball', 'piton', 'clevis-pin', 'chain', 'drawbar', 'other'] as const),
] satisfies PartKind[];

/** A bent bar between two supports, and the part it is. */
export const zStraightenAsked = z.object({
  /** null: not measured yet; whether it may be straightened is told all the same */
  bar: z
    .object({
      ...{ section: zSection, yieldMpa: zYieldMpa, spanMm: zMm },
      /** out of line in the middle of the span [mm]; null: not measured */
      bowMm: zMm.nullable(),
    })
    .nullable(),
  part: z.object({
    kind: z.enum(PART_KIND_NAMES),
    towingOrLifting: z.boolean(),
    crack: z.boolean(),
    forgedOrHeatTreated: z.boolean().nullable(),
    straightenedBefore: z.boolean(),
    procedure: z.object({ by: zNote, reference: zNote }).nullable(),
  }),
});

export const zClosedBecause = z.enum(['crack', 'forged-or-heat-treated', 'steel-not-known', 'straightened-before']);

/** Whether it may be straightened, with what force, and what to mind. */
export const zStraightened = z.object({
  /** why it may not be done; empty: open */
  closedBecause: z.array(zClosedBecause),
  /** null while closed, or nothing is measured: a part that is not to be straightened has no force */
  press: z
    .object({
      firstYieldN: z.number(),
      plasticN: z.number(),
      plasticTonneForce: z.number(),
      pressForN: z.number(),
      pressForTonneForce: z.number(),
      pushAtFirstYieldMm: z.number(),
      springBackMm: zRange,
      shapeFactor: z.number(),
      /** of the outermost fibre, as a share; null: the bow is not measured */
      strain: z.number().nullable(),
    })
    .nullable(),
  yieldAbove: zRange.extend(zKnown.shape),
  cautions: z.array(zSafetyCaution),
  prevail: z.string(),
});

export const fitStraighten = operation('fit/straighten', zStraightenAsked, zStraightened, {
  title: 'Force to press a bent bar straight, and whether it may be',
});
