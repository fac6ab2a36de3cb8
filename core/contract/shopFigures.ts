import { z } from 'zod';
import { zHowKnown } from './fits.ts';
import { operation } from './operation.ts';
import { zName } from './shapes.ts';

const zBarMm = z.number().positive().max(20_000);

/** Bars on the rack, of one sort and length; the sort as the cut list names it, "steel round 60". */
const zRackBars = z.object({ bar: zName, lengthMm: zBarMm, count: z.int().min(1).max(1000) });

/** What a shop goes by in its repairs otherwise than the program; figures are named as the program names them. */
export const zShopFigures = z.object({
  /** only those that are to differ from the program's own, each within bounds of its own */
  changed: z.record(z.string().max(60), z.number()),
  /** diameters of round bar it can get [mm]; null: the usual ones */
  roundBarsMm: z.array(z.number().positive().max(1000)).min(1).max(200).nullable(),
  rack: z.array(zRackBars).max(500),
});

/** A figure with its value here, the program's own and how that is known, and how far it may be moved. */
export const zShopFigure = z.object({
  name: z.string(),
  value: z.number(),
  usual: z.number(),
  from: z.number(),
  to: z.number(),
  whole: z.boolean(),
  unit: z.enum(['mm', '°C', 'h', 'of the bore', 'times']),
  howKnown: zHowKnown,
  source: z.string(),
});
export type ShopFigure = z.infer<typeof zShopFigure>;

export const shopFiguresRead = operation(
  'shopFigures/read',
  z.object({}),
  z.object({
    figures: z.array(zShopFigure),
    roundBarsMm: z.array(z.number()),
    usualRoundBars: z.object({ barsMm: z.array(z.number()), howKnown: zHowKnown, source: z.string() }),
    rack: z.array(zRackBars),
  }),
  {
    title:
      'What the shop goes by in its repairs: steps, walls, saw, bars, rack, hours of work, each with how it is known',
  },
);

export const shopFiguresSave = operation(
  'shopFigures/save',
  zShopFigures.extend({ by: z.string().max(120) }),
  z.object({ saved: z.literal(true) }),
  { title: 'Set figures of repair, bars and rack otherwise, or back to the program’s own' },
);
