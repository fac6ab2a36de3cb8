import { z } from 'zod';
import { operation } from './operation.ts';
import { zDay, zDecides, zDeclined, zFindingKind, zId, zRange, zRenewalKind, zSeverity } from './shapes.ts';
import { zSketch } from './shop.ts';

/** A row of the slip's reduced hours axis; hours are those of the present meter. */
export const zSlipRow = z.object({
  items: z.array(z.int()),
  label: z.string(),
  dialHours: zRange,
  decides: zDecides,
  ownReadings: z.int(),
  likeParts: z.int(),
  /** renewed in this visit */
  renewed: z.boolean(),
});

export const zSlipFound = z.object({
  items: z.array(z.int()),
  label: z.string(),
  /** size found and its limit [mm], where measured */
  sizeMm: z.number().nullable(),
  renewAtMm: z.number().nullable(),
  decimals: z.int(),
  /** how far past renew-at [mm]; null: not past, or nothing measured */
  pastMm: z.number().nullable(),
  finding: zFindingKind.nullable(),
  severity: zSeverity.nullable(),
  doNotUse: z.boolean(),
  note: z.string(),
  declined: zDeclined.nullable().default(null),
});

/** What was done about it: a new part, the size it was left at, or what became of a finding. */
export const zSlipDone = z.object({
  items: z.array(z.int()),
  label: z.string(),
  what: z.enum(['renewed', 'left-at', 'closed']),
  sizeMm: z.number().nullable(),
  decimals: z.int(),
  note: z.string(),
  /** what the renewal was, and whether an oversize part carries its size; absent: no renewal, or a slip of before */
  kind: zRenewalKind.optional(),
  stamped: z.boolean().nullable().optional(),
});

/** An open finding the farmer should keep an eye on till then. */
export const zSlipWatch = z.object({
  items: z.array(z.int()),
  label: z.string(),
  finding: zFindingKind,
  severity: zSeverity,
  foundOn: zDay,
  note: z.string(),
  /** the customer does not want it made good, and said so */
  declined: zDeclined.nullable().default(null),
});

/** The farmer's page: facts, in the order they are printed; words are put on by the paper. */
export const zSlip = z.object({
  number: z.string().nullable(),
  madeOn: zDay,
  asOf: zDay,
  shop: z.object({
    name: z.string(),
    headLines: z.array(z.string()),
    phone: z.string(),
    email: z.string(),
    /** how its figures are written, inches or not; under this name in slips kept long ago */
    decimalMark: z.enum(['.', ',', 'in.', 'in,']),
  }),
  customer: z.object({ name: z.string(), place: z.string() }),
  machine: z.object({ name: z.string(), makeModel: z.string(), serial: z.string(), assembly: z.string() }),
  /**
   * What every `dialHours` of the slip counts: the dial of the present meter, on past its full scale without starting
   * again (the words turn it over), or machine hours where nobody ever read a meter.
   */
  hoursAre: z.enum(['dial', 'machine']),
  /** the machine whose dial that is, where it is that of the one that pulls it; null: its own */
  dialMachine: z.string().nullable().default(null),
  /** null: not known */
  meterDigits: z.int().nullable(),
  dialHours: z.number().nullable(),
  estimated: z.boolean(),
  readOn: zDay.nullable(),
  hoursPerYear: z.number().nullable(),
  headline: z.discriminatedUnion('kind', [
    /** come in by these hours on the dial */
    z.object({
      kind: z.literal('come-in'),
      items: z.array(z.int()),
      label: z.string(),
      dialHours: z.number(),
      range: zRange,
      decides: zDecides,
      /** the winter those hours fall in, else the last one before them; null: none comes before them */
      winter: z.string().nullable(),
      /** about when, at this farm's use; null: past two seasons, check next winter */
      about: zDay.nullable(),
    }),
    /** the deciding hours have gone by */
    z.object({
      kind: z.literal('passed'),
      items: z.array(z.int()),
      label: z.string(),
      dialHours: z.number().nullable(),
      range: zRange,
      decides: zDecides,
    }),
    /** by the deciding hours it would have gone by, but nothing of this part was ever measured: a guess from like parts alone */
    z.object({
      kind: z.literal('not-measured'),
      items: z.array(z.int()),
      label: z.string(),
      range: zRange,
      decides: zDecides,
      /** the winter to measure it in, at the latest; null: none is known */
      winter: z.string().nullable(),
    }),
    /** an open do-not-use finding is the headline; no axis */
    z.object({
      kind: z.literal('do-not-use'),
      items: z.array(z.int()),
      label: z.string(),
      finding: zFindingKind,
      foundOn: zDay,
      note: z.string(),
      declined: zDeclined.nullable().default(null),
    }),
    /** nothing has a limit, or nothing is known */
    z.object({ kind: z.literal('no-forecast') }),
  ]),
  foundOn: zDay.nullable(),
  found: z.array(zSlipFound),
  doneOn: zDay.nullable(),
  done: z.array(zSlipDone),
  axis: z
    .object({
      nowDialHours: z.number(),
      comeInDialHours: z.number().nullable(),
      winters: z.array(z.object({ name: z.string(), fromDialHours: z.number(), toDialHours: z.number() })),
      rows: z.array(zSlipRow),
    })
    .nullable(),
  /** what would be worth doing at that visit */
  thenDo: z.array(z.object({ items: z.array(z.int()), label: z.string(), role: z.enum(['due', 'with-it']) })),
  watch: z.array(zSlipWatch),
  greaseAndWatch: z.array(z.string()),
  sketch: zSketch.nullable(),
  /** codes; the paper has a sentence for each */
  cautions: z.array(z.string()),
  measuredBy: z.string(),
  restsOn: z.object({ ownReadings: z.int(), likeParts: z.int() }),
});
export type Slip = z.infer<typeof zSlip>;

/** One slip tells of all the assemblies a machine carries. */
const zSlipOf = z.object({ machineId: zId });

export const slipPreview = operation('slip/preview', zSlipOf, z.object({ slip: zSlip, pdfBase64: z.string() }), {
  title: 'The forecast slip as it would be printed now; nothing is kept',
});
export const slipMake = operation(
  'slip/make',
  zSlipOf.extend({ by: z.string().max(120) }),
  z.object({ slipId: zId, number: z.string(), fileName: z.string(), pdfBase64: z.string() }),
  { title: 'Make the forecast slip: numbered, kept, as a PDF' },
);
export const slipsList = operation(
  'slips/list',
  z.object({}),
  z.object({
    slips: z.array(
      z.object({
        slipId: zId,
        number: z.string(),
        madeOn: zDay,
        machineId: zId,
        machine: z.string(),
        customer: z.string(),
        headline: z.string(),
      }),
    ),
  }),
  { title: 'Slips made, newest first' },
);
export const slipRead = operation(
  'slip/read',
  z.object({ slipId: zId }),
  z.object({ slip: zSlip, pdfBase64: z.string() }),
  {
    title: 'A slip as it was made',
  },
);
