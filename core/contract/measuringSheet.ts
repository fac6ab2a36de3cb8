import { z } from 'zod';
import { operation } from './operation.ts';
import { zDay, zFindingKind, zId, zMeasures, zSeverity, zWears } from './shapes.ts';
import { zSketch } from './shop.ts';

/** A row of the blank sheet: one measuring point, a box to be written in for each of its stations. */
export const zMeasuringSheetPoint = z.object({
  positionId: zId,
  item: z.int(),
  position: z.string(),
  point: z.string(),
  measures: zMeasures,
  wears: zWears,
  newSizeMm: z.number(),
  renewAtMm: z.number().nullable(),
  rejectAtMm: z.number().nullable(),
  gauge: z.string(),
  /** 1 sd */
  gaugeErrorMm: z.number(),
  decimals: z.int(),
  /** last: the present part's last size there [mm] */
  stations: z.array(z.object({ station: z.string(), lastSizeMm: z.number().nullable() })),
});

/** What is printed on a blank measuring sheet: facts, in the order of the paper; words are put on by the paper. */
export const zMeasuringSheet = z.object({
  shop: z.object({
    name: z.string(),
    headLines: z.array(z.string()),
    phone: z.string(),
    email: z.string(),
    writing: z.enum(['.', ',', 'in.', 'in,']),
  }),
  customer: z.object({ name: z.string(), place: z.string() }),
  machine: z.object({ name: z.string(), makeModel: z.string(), serial: z.string() }),
  printedOn: zDay,
  /** figures the meter shows; null: not known */
  meterDigits: z.int().nullable(),
  /** what it should show by the machine's use [h]; null: no meter, or never read */
  dialHours: z.number().nullable(),
  /** day of the last size printed in a box; null: none was ever taken */
  lastTakenOn: zDay.nullable(),
  assemblies: z.array(
    z.object({
      name: z.string(),
      serial: z.string(),
      sketch: zSketch.nullable(),
      points: z.array(zMeasuringSheetPoint),
    }),
  ),
  /** seen before and still open */
  openFindings: z.array(
    z.object({
      item: z.int().nullable(),
      position: z.string().nullable(),
      takenOn: zDay,
      kind: zFindingKind,
      severity: zSeverity,
      note: z.string(),
    }),
  ),
});
export type MeasuringSheet = z.infer<typeof zMeasuringSheet>;

export const sheetBlank = operation(
  'sheet/blank',
  z.object({ machineId: zId }),
  z.object({ fileName: z.string(), pages: z.int(), machine: z.string(), pdfBase64: z.string() }),
  { title: 'A blank measuring sheet of a machine, to be written on at the bench' },
);
