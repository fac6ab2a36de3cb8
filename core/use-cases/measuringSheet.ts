import { type MeasuringSheet, type sheetBlank, zMeasuringSheet } from '../contract/measuringSheet.ts';
import type { Handler } from '../contract/operation.ts';
import { zAssemblyKind } from '../contract/shop.ts';
import { assembliesOnMachine } from '../record/assemblyStore.ts';
import { customerOfMachine } from '../record/customerStore.ts';
import { listKinds } from '../record/kindStore.ts';
import { machineOrRefuse } from '../record/machineStore.ts';
import { readSettings } from '../record/settingsStore.ts';
import { writingOf } from '../words/quantityText.ts';
import { type Context, recordOf } from './context.ts';
import { hoursOfMachine } from './seriesNow.ts';
import { stripDownSheetHandler } from './stripDownSheet.ts';

export const sheetBlankHandler: Handler<typeof sheetBlank, Context> = async (context, { machineId }) => {
  const sheet = await measuringSheet(context, machineId);
  const { printMeasuringSheet } = await import('../papers/printMeasuringSheet.ts');
  const { pdf, pages } = await printMeasuringSheet(sheet);
  return {
    fileName: fileName(sheet.machine.name, sheet.printedOn),
    pages,
    machine: sheet.machine.name,
    pdfBase64: Buffer.from(pdf).toString('base64'),
  };
};

/** The rows are those of the strip-down's grid, in its order: what is written on paper is typed without searching. */
export async function measuringSheet(context: Context, machineId: number): Promise<MeasuringSheet> {
  const record = recordOf(context);
  const { name, make, model, serial } = machineOrRefuse(record, machineId);
  const { rows, openFindings, dialHours } = await stripDownSheetHandler(context, { machineId });
  const customer = customerOfMachine(record, machineId, context.today());
  const settings = readSettings(record);
  const { name: shopName, headLines, phone, email } = settings;
  const lastDays = rows.flatMap(({ stations }) => stations.map(({ lastOn }) => lastOn)).filter((on) => on !== null);
  const kinds = new Map(listKinds(record).map(({ id, template }) => [id, template]));
  return zMeasuringSheet.parse({
    shop: { name: shopName, headLines, phone, email, writing: writingOf(settings) },
    customer: { name: customer?.name ?? '', place: customer?.place ?? '' },
    machine: { name, makeModel: [make, model].filter((word) => word !== '').join(' '), serial },
    printedOn: context.today(),
    meterDigits: hoursOfMachine(context, machineId).life.meterDigits,
    dialHours,
    lastTakenOn: lastDays.sort().at(-1) ?? null,
    assemblies: assembliesOnMachine(record, machineId).map((assembly) => ({
      name: assembly.name,
      serial: assembly.serial,
      sketch: assembly.kindId === null ? null : zAssemblyKind.parse(kinds.get(assembly.kindId)).sketch,
      points: rows.filter(({ assemblyId }) => assemblyId === assembly.id).map(pointOf),
    })),
    openFindings: openFindings.map(({ item, position, takenOn, kind, severity, note }) => ({
      item,
      position,
      takenOn,
      kind,
      severity,
      note,
    })),
  });
}

type Row = Awaited<ReturnType<typeof stripDownSheetHandler>>['rows'][number];

const pointOf = (row: Row): MeasuringSheet['assemblies'][number]['points'][number] => ({
  positionId: row.positionId,
  item: row.item,
  position: row.position,
  point: row.point,
  measures: row.measures,
  wears: row.wears,
  newSizeMm: row.limits.newSizeMm,
  renewAtMm: row.limits.renewAtMm,
  rejectAtMm: row.limits.rejectAtMm,
  gauge: row.gauge,
  gaugeErrorMm: row.gaugeErrorMm,
  decimals: row.decimals,
  stations: row.stations.map(({ station, lastSizeMm }) => ({ station, lastSizeMm })),
});

/** A name every system takes. */
const fileName = (machine: string, printedOn: string): string =>
  `measuring-sheet-${printedOn}-${machine
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 60)}.pdf`;
