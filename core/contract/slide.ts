import { z } from 'zod';
import type { StripPlace } from '../repair/slides/slidePlay.ts';
import type { StripChoice } from '../repair/slides/stripOptions.ts';
import { operation } from './operation.ts';
import { zBy, zFacts, zId } from './shapes.ts';

export const STRIP_PLACE_NAMES = [
  ...(['top-front', 'top-rear', 'bottom-front', 'bottom-rear'] as const),
] satisfies StripPlace[];
export const STRIP_CHOICE_NAMES = [...(['leave', 'shim', 'turn', 'renew'] as const)] satisfies StripChoice[];
export type StripPlaceName = (typeof STRIP_PLACE_NAMES)[number];
export type StripChoiceName = (typeof STRIP_CHOICE_NAMES)[number];

const zWorn = z.number().min(0).max(50);
const zLength = z.number().positive().max(10_000);
const zChoice = z.enum(STRIP_CHOICE_NAMES);

/** What the readings on record do not hold of a slide; lengths along the carrier in the position it works in. */
export const zSlideAsked = z.object({
  assemblyId: zId,
  /** between the outer ends of front and rear strips, and from there to the hook; null: not measured */
  spanMm: zLength.nullable(),
  overhangMm: zLength.nullable(),
  /** wear of channel and carrier faces, top and bottom together */
  channelFrontMm: zWorn,
  channelRearMm: zWorn,
  /** play the shop sets on assembly */
  newPlayMm: zWorn,
  /** thickness at which screw heads lie bare; null: not known */
  headsBareAtMm: zWorn.nullable(),
  /** holes fit when a strip is turned end for end; null: not known */
  endsAlike: z.boolean().nullable(),
  choice: z.object({ 'top-front': zChoice, 'top-rear': zChoice, 'bottom-front': zChoice, 'bottom-rear': zChoice }),
});
export type SlideAsked = z.infer<typeof zSlideAsked>;

/** What is kept of a slide from one visit to the next: all but what is chosen. */
export const zSlideFacts = zSlideAsked.omit({ assemblyId: true, choice: true });
export type SlideFacts = z.infer<typeof zSlideFacts>;

export const slideFacts = operation(
  'slide/facts',
  z.object({ assemblyId: zId }),
  /** kept false: nothing is kept yet, and the play is what the shop sets */
  z.object({ facts: zSlideFacts, kept: z.boolean() }),
  { title: 'Lengths of a slide and wear of its channel, as kept' },
);

export const slideSaveFacts = operation(
  'slide/saveFacts',
  z.object({ assemblyId: zId, facts: zSlideFacts, by: zBy }),
  z.object({ saved: z.literal(true) }),
  { title: 'Keep the lengths of a slide and the wear of its channel' },
);

const zPlay = z.object({ frontMm: z.number(), rearMm: z.number(), hookMm: z.number() });
const zReason = z.object({ code: z.string(), facts: zFacts.optional() });

export const slideRead = operation(
  'slide/read',
  zSlideAsked,
  z.object({
    machineId: zId,
    machine: z.string(),
    customer: z.string(),
    assembly: z.string(),
    strips: z.array(
      z.object({
        place: z.enum(STRIP_PLACE_NAMES),
        item: z.int(),
        position: z.string(),
        newMm: z.number(),
        thicknessMm: z.object({
          front: z.number().nullable(),
          middle: z.number().nullable(),
          rear: z.number().nullable(),
        }),
        options: z.array(
          z.object({
            choice: zChoice,
            closed: z.array(zReason),
            cautions: z.array(zReason),
            gapMm: z.number().nullable(),
            shimMm: z.number(),
          }),
        ),
      }),
    ),
    notMeasured: z.array(z.enum(STRIP_PLACE_NAMES)),
    /** null: the two lengths are not known */
    play: z.object({ before: zPlay, after: zPlay, givesBack: zPlay }).nullable(),
  }),
  { title: 'Play of a slide at carrier and hook, before and after strips are renewed, shimmed or turned' },
);
