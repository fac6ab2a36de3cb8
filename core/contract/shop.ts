import { z } from 'zod';
import { operation } from './operation.ts';
import { zId, zMeasures, zName, zNote, zSizeMm, zWears } from './shapes.ts';

const zMonthDay = z.string().regex(/^(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/, 'a day of the year, like 11-01');

/** What the shop sets for itself; all of it lives in the record. */
export const zShopSettings = z.object({
  name: z.string().max(120),
  /** lines of the head on papers */
  headLines: z.array(z.string().max(120)).max(4),
  phone: z.string().max(60),
  email: z.string().max(200),
  /** slack season: first and last day of the year */
  winterFrom: zMonthDay,
  winterTo: zMonthDay,
  winterHoursPerWeek: z.number().min(0).max(1000),
  decimalMark: z.enum(['.', ',']),
  /** relative use of a typical machine by month, January first; mean 1 */
  season: z.array(z.number().min(0).max(12)).length(12),
  /** use of a machine nobody has read twice [h a year] */
  hoursPerYearDefault: z.number().min(1).max(8760),
  /** what the farmer should grease and watch, printed on every slip */
  greaseAndWatch: z.array(z.string().max(200)).max(8),
  theme: z.enum(['light', 'dark', 'system']),
  /** in which lengths are shown and typed; requests and replies hold millimetres all the same */
  lengths: z.enum(['mm', 'inch']).default('mm'),
});
export type ShopSettings = z.infer<typeof zShopSettings>;

export const zFitter = z.object({ fitterId: zId, name: z.string(), active: z.boolean() });
export const zGauge = z.object({
  gaugeId: zId,
  name: z.string(),
  /** 1 sd [mm]; screens show U = 2 sd */
  errorMm: z.number(),
  stepMm: z.number(),
  measures: z.array(zMeasures),
  active: z.boolean(),
});
export type Gauge = z.infer<typeof zGauge>;

/** A line drawing in drawing practice: one stroke style per shape, items with leaders to what they name. */
export const zSketchShape = z.object({
  /** SVG path data in the sketch's own units */
  d: z.string().max(4000),
  style: z.enum(['outline', 'thin', 'hidden', 'centre', 'section', 'section-other', 'nylon']),
});
export const zSketch = z.object({
  width: z.number(),
  height: z.number(),
  shapes: z.array(zSketchShape).max(400),
  /** ring at `ring`, leader to `at` */
  items: z.array(
    z.object({
      item: z.int(),
      at: z.object({ x: z.number(), y: z.number() }),
      ring: z.object({ x: z.number(), y: z.number() }),
    }),
  ),
});
export type Sketch = z.infer<typeof zSketch>;

/** Hours of one step of work. */
const zJobHours = z.number().min(0).max(1000);

export const zKindPoint = z.object({
  name: zName,
  measures: zMeasures,
  wears: zWears,
  partClass: zName,
  newSizeMm: zSizeMm,
  newSizeTolMm: zSizeMm.nullable(),
  renewAtMm: zSizeMm.nullable(),
  rejectAtMm: zSizeMm.nullable(),
  limitSource: zNote.nullable(),
  gaugeErrorMm: z.number().min(0.001).max(10),
  stations: z.array(z.string().trim().min(1).max(40)).max(12),
});
const zStepCode = z.string().trim().min(1).max(60);
const zStepHours = z
  .object({ low: zJobHours, typical: zJobHours, high: zJobHours })
  .refine(({ low, typical, high }) => low <= typical && typical <= high, {
    message: 'low, usual, high, in that order',
  });
/** What comes off to reach what: see core/shop/stripDownTree.ts. */
export const zStripDownTree = z.object({
  steps: z
    .array(
      z.object({
        code: zStepCode,
        name: zName,
        when: z.enum(['off', 'back']),
        hours: zStepHours,
        needs: z.array(zStepCode).max(20),
        brings: z.array(zStepCode).max(20),
        source: zNote,
      }),
    )
    .max(60),
  reach: z.array(z.object({ item: z.int().min(1).max(999), needs: z.array(zStepCode).max(20) })).max(80),
  always: z.array(zStepCode).max(20),
});
const zPointOfKind = z.object({ item: z.int().min(1).max(999), point: zName });
/** A pin and the bores it runs in, and the point where their slack and its limits stand; each by item and point. */
export const zKindJoint = z.object({
  slack: zPointOfKind,
  pin: zPointOfKind,
  bores: z.array(zPointOfKind).min(1).max(8),
});
export type KindJoint = z.infer<typeof zKindJoint>;
export const zAssemblyKind = z.object({
  name: zName,
  positions: z
    .array(
      z.object({
        item: z.int().min(1).max(999),
        name: zName,
        safety: z.boolean(),
        /** what it goes with when half of the assembly is swapped: "carrier"; null: stays with the rest */
        group: zName.nullable().default(null),
        /** it interchanges with others: no oversize here */
        mustStayStandard: z.boolean().default(false),
        points: z.array(zKindPoint).max(20),
      }),
    )
    .max(80),
  joints: z.array(zKindJoint).max(80).default([]),
  sketch: zSketch.nullable(),
  stripDown: zStripDownTree.optional(),
});
export type AssemblyKind = z.infer<typeof zAssemblyKind>;

export const shopRead = operation(
  'shop/read',
  z.object({}),
  z.object({
    settings: zShopSettings,
    fitters: z.array(zFitter),
    gauges: z.array(zGauge),
    kinds: z.array(zAssemblyKind.extend({ kindId: zId })),
  }),
  { title: "The shop's own settings, fitters, gauges and assembly kinds" },
);
export const shopSave = operation('shop/save', zShopSettings, z.object({ saved: z.literal(true) }), {
  title: "Save the shop's head, winter and defaults",
});
export const fitterSave = operation(
  'fitter/save',
  z.object({ fitterId: zId.nullable(), name: zName, active: z.boolean() }),
  z.object({ fitterId: zId }),
  { title: 'Add or change a fitter' },
);
export const gaugeSave = operation(
  'gauge/save',
  z.object({
    gaugeId: zId.nullable(),
    name: zName,
    errorMm: z.number().min(0.0005).max(10),
    stepMm: z.number().min(0).max(10),
    measures: z.array(zMeasures),
    active: z.boolean(),
  }),
  z.object({ gaugeId: zId }),
  { title: 'Add or change a gauge and its error' },
);
export const kindSave = operation(
  'kind/save',
  z.object({ kindId: zId.nullable(), kind: zAssemblyKind }),
  z.object({ kindId: zId }),
  { title: 'Add or change an assembly kind: its positions, points and sketch' },
);
