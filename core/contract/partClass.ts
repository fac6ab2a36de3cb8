import { z } from 'zod';
import { operation } from './operation.ts';
import { zHours, zId, zName, zNote, zRange, zSizeMm } from './shapes.ts';

export const zTradeWear = z.object({
  wearFromMm: zSizeMm,
  wearToMm: zSizeMm,
  hoursFrom: zHours,
  hoursTo: zHours,
  source: zNote,
});

export const zPartClassSheet = z.object({
  partClassId: zId,
  name: z.string(),
  tradeWear: zTradeWear.nullable(),
  newSizeTolMm: z.number().nullable(),
  /** members: present parts, finished series, readings and machines */
  parts: z.int(),
  finishedParts: z.int(),
  readings: z.int(),
  machines: z.int(),
  /** wear per 1000 worked hours of a part not yet read, before and after the shop's own readings [mm] */
  ratePer1000hBeforeMm: zRange,
  ratePer1000hNowMm: zRange,
  /** from-trade-prior: fewer than three parts or one machine; else learned */
  /** past sizes laid against the 80 % range foretold for them; null: none could be */
  coverage: z.object({ sizes: z.int(), inside: z.int(), off: z.boolean() }).nullable(),
  state: z.enum(['from-trade-prior', 'from-wide-prior', 'learned']),
  members: z.array(
    z.object({
      pointId: zId,
      machineId: zId,
      machine: z.string(),
      position: z.string(),
      point: z.string(),
      ownReadings: z.int(),
      ratePer1000hMm: zRange,
    }),
  ),
});
export type PartClassSheet = z.infer<typeof zPartClassSheet>;

export const classesList = operation(
  'classes/list',
  z.object({}),
  z.object({
    classes: z.array(zPartClassSheet),
    /** of a large shop: the machines its classes are learned from, which alone are counted, and no members listed; null: all */
    heardMachines: z.int().nullable(),
  }),
  {
    title: 'Part classes: what the trade says, what the shop has seen, who is in them',
  },
);

export const classSave = operation(
  'class/save',
  z.object({
    partClassId: zId.nullable(),
    name: zName,
    tradeWear: zTradeWear.nullable(),
    newSizeTolMm: zSizeMm.nullable(),
  }),
  z.object({ partClassId: zId }),
  { title: 'Add a part class or change what the trade says of it' },
);
