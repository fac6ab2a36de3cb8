import type { PointForecast } from '../contract/forecast.ts';
import type { HoursNow } from '../contract/machine.ts';
import { type SheetForPeople, sheetForPeople } from '../exchange/writeWorkbook.ts';
import type { Finding } from '../shop/finding.ts';
import type { DialEvent } from '../shop/machineLife.ts';
import type { MachineOnRecord, PointOnRecord, ShopLife } from '../shop/shopLife.ts';
import type { Day } from '../units/day.ts';
import { workbookWords as words } from '../words/workbookWords.ts';

/** What the sheets are made from: the shop's life, and where each machine's hours and forecasts stand today. */
export type WorkbookFrom = {
  life: ShopLife;
  hoursOf(machineId: number): { now: HoursNow; perYear: number | null };
  forecasts: readonly PointForecast[];
};

/** The sheets of the workbook, in the order of the record's nouns. */
export function workbookSheets({ life, hoursOf, forecasts }: WorkbookFrom): SheetForPeople[] {
  const machineName = new Map(life.machines.map(({ machineId, name }) => [machineId, name]));
  const nameOf = ({ machineId }: { machineId: number }) => machineName.get(machineId) ?? '';
  return [
    machinesSheet(life, hoursOf),
    hoursSheet(life),
    pointsSheet(life, nameOf),
    sizesSheet(life, nameOf),
    findingsSheet(life, nameOf),
    forecastSheet(forecasts),
  ];
}

function machinesSheet({ machines }: ShopLife, hoursOf: WorkbookFrom['hoursOf']): SheetForPeople {
  const rows = machines.map((machine) => ({ ...machine, ...hoursOf(machine.machineId) }));
  return sheetForPeople(words.machines, rows, [
    { head: words.machine, width: 26, kind: 'text', value: (row) => row.name },
    { head: words.customer, width: 26, kind: 'text', value: (row) => row.customer },
    { head: words.place, width: 18, kind: 'text', value: (row) => row.place },
    { head: words.makeModel, width: 22, kind: 'text', value: (row) => row.makeModel },
    { head: words.serial, width: 18, kind: 'text', value: (row) => row.serial },
    { head: words.machineHours, width: 14, kind: 'number', decimals: 0, value: (row) => row.now.machineHours },
    { head: words.read, width: 14, kind: 'day', value: (row) => row.now.readOn as Day | null },
    { head: words.hoursPerYear, width: 12, kind: 'number', decimals: 0, value: (row) => row.perYear },
    { head: words.meterDigits, width: 12, kind: 'number', decimals: 0, value: (row) => row.meterDigits },
    {
      head: words.workShare,
      width: 12,
      kind: 'number',
      decimals: 2,
      value: (row) => row.workShares.at(-1)?.share ?? 1,
    },
  ]);
}

function hoursSheet({ machines }: ShopLife): SheetForPeople {
  const rows = machines.flatMap(({ name, dialEvents }: MachineOnRecord) =>
    dialEvents.map((event: DialEvent) => ({ machine: name, ...event })),
  );
  return sheetForPeople(words.hours, rows, [
    { head: words.machine, width: 26, kind: 'text', value: (row) => row.machine },
    { head: words.date, width: 12, kind: 'day', value: (row) => row.takenOn },
    { head: words.dial, width: 12, kind: 'number', decimals: 0, value: (row) => row.dialHours },
    { head: words.event, width: 12, kind: 'text', value: (row) => row.kind },
    { head: words.newDial, width: 14, kind: 'number', decimals: 0, value: (row) => row.newDialHours },
    { head: words.hoursError, width: 12, kind: 'number', decimals: 0, value: (row) => row.errorHours },
    { head: words.keptOut, width: 12, kind: 'text', value: (row) => (row.parked ? words.yes : null) },
  ]);
}

type NameOf = (of: { machineId: number }) => string;

function pointsSheet({ points }: ShopLife, nameOf: NameOf): SheetForPeople {
  const rows = points.map((point) => ({ ...point, now: point.limits.at(-1) }));
  return sheetForPeople(words.points, rows, [
    ...placeColumns<PointOnRecord>(nameOf, (row) => row),
    { head: words.partClass, width: 28, kind: 'text', value: (row) => row.partClass },
    { head: words.safety, width: 10, kind: 'text', value: (row) => (row.safety ? words.yes : words.no) },
    { head: words.wears, width: 8, kind: 'text', value: (row) => row.wears },
    { head: words.newSize, width: 10, kind: 'number', decimals: 2, value: (row) => row.now?.newSizeMm ?? null },
    { head: words.newSizeTol, width: 12, kind: 'number', decimals: 2, value: (row) => row.now?.newSizeTolMm ?? null },
    { head: words.renewAt, width: 10, kind: 'number', decimals: 2, value: (row) => row.now?.renewAtMm ?? null },
    { head: words.rejectAt, width: 10, kind: 'number', decimals: 2, value: (row) => row.now?.rejectAtMm ?? null },
    { head: words.limitSource, width: 30, kind: 'text', value: (row) => row.now?.source ?? null },
    { head: words.gaugeError, width: 12, kind: 'number', decimals: 3, value: (row) => row.gaugeErrorMm },
    { head: words.fittedHours, width: 14, kind: 'number', decimals: 0, value: (row) => row.fittedMachineHours },
  ]);
}

function sizesSheet({ points }: ShopLife, nameOf: NameOf): SheetForPeople {
  const rows = points.flatMap((point) => [
    ...point.sizes.map((size) => ({ point, ...size, event: size.event as string })),
    ...point.renewals.map((renewal) => ({
      point,
      ...renewal,
      event: words.renewed as string,
      station: '',
      gaugeErrorMm: null,
      parked: false,
    })),
  ]);
  rows.sort(
    (a, b) => a.point.pointId - b.point.pointId || (a.takenOn < b.takenOn ? -1 : a.takenOn > b.takenOn ? 1 : 0),
  );
  return sheetForPeople(words.sizes, rows, [
    ...placeColumns<(typeof rows)[number]>(nameOf, ({ point }) => point),
    { head: words.station, width: 12, kind: 'text', value: (row) => row.station },
    { head: words.date, width: 12, kind: 'day', value: (row) => row.takenOn },
    { head: words.dial, width: 12, kind: 'number', decimals: 0, value: (row) => row.dialHours },
    { head: words.size, width: 10, kind: 'number', decimals: 2, value: (row) => row.sizeMm },
    { head: words.event, width: 12, kind: 'text', value: (row) => row.event },
    { head: words.gaugeError, width: 12, kind: 'number', decimals: 3, value: (row) => row.gaugeErrorMm },
    { head: words.keptOut, width: 12, kind: 'text', value: (row) => (row.parked ? words.yes : null) },
  ]);
}

function placeColumns<Row>(nameOf: NameOf, pointOf: (row: Row) => PointOnRecord) {
  return [
    { head: words.machine, width: 26, kind: 'text' as const, value: (row: Row) => nameOf(pointOf(row)) },
    { head: words.assembly, width: 18, kind: 'text' as const, value: (row: Row) => pointOf(row).assembly },
    { head: words.item, width: 6, kind: 'number' as const, decimals: 0, value: (row: Row) => pointOf(row).item },
    { head: words.position, width: 26, kind: 'text' as const, value: (row: Row) => pointOf(row).position },
    { head: words.point, width: 18, kind: 'text' as const, value: (row: Row) => pointOf(row).point },
  ];
}

function findingsSheet({ findings, points }: ShopLife, nameOf: NameOf): SheetForPeople {
  const ofAssembly = new Map(points.map((point) => [point.assemblyId, point.assembly]));
  const ofPosition = new Map(points.map((point) => [point.positionId, point.position]));
  return sheetForPeople<Finding>(words.findings, findings, [
    { head: words.machine, width: 26, kind: 'text', value: nameOf },
    { head: words.assembly, width: 18, kind: 'text', value: (row) => ofAssembly.get(row.assemblyId) ?? null },
    { head: words.position, width: 26, kind: 'text', value: (row) => ofPosition.get(row.positionId ?? 0) ?? null },
    { head: words.date, width: 12, kind: 'day', value: (row) => row.takenOn },
    { head: words.finding, width: 10, kind: 'text', value: (row) => row.kind },
    { head: words.severity, width: 12, kind: 'text', value: (row) => row.severity },
    { head: words.note, width: 50, kind: 'text', value: (row) => row.note },
    { head: words.closedOn, width: 12, kind: 'day', value: (row) => row.closedOn },
    { head: words.outcome, width: 40, kind: 'text', value: (row) => row.outcome },
  ]);
}

const forecastSheet = (forecasts: readonly PointForecast[]): SheetForPeople =>
  sheetForPeople(words.forecast, forecasts, [
    { head: words.machine, width: 26, kind: 'text', value: (row) => row.machine },
    { head: words.assembly, width: 18, kind: 'text', value: (row) => row.assembly },
    { head: words.item, width: 6, kind: 'number', decimals: 0, value: (row) => row.item },
    { head: words.position, width: 26, kind: 'text', value: (row) => row.position },
    { head: words.point, width: 18, kind: 'text', value: (row) => row.point },
    { head: words.hoursLeftDeciding, width: 12, kind: 'number', decimals: 0, value: (row) => row.decidingHoursLeft },
    { head: words.decides, width: 10, kind: 'text', value: (row) => row.decides },
    { head: words.hoursLeftLow, width: 12, kind: 'number', decimals: 0, value: (row) => row.hoursLeft.low },
    { head: words.hoursLeftMiddle, width: 12, kind: 'number', decimals: 0, value: (row) => row.hoursLeft.middle },
    { head: words.hoursLeftHigh, width: 12, kind: 'number', decimals: 0, value: (row) => row.hoursLeft.high },
    { head: words.dateLow, width: 12, kind: 'day', value: (row) => row.dateAtLimit.low as Day | null },
    { head: words.dateMiddle, width: 12, kind: 'day', value: (row) => row.dateAtLimit.middle as Day | null },
    { head: words.dateHigh, width: 12, kind: 'day', value: (row) => row.dateAtLimit.high as Day | null },
    { head: words.machineHours, width: 12, kind: 'number', decimals: 0, value: (row) => row.machineHours },
    { head: words.wearNow, width: 12, kind: 'number', decimals: 2, value: (row) => row.wearMm.middle },
    { head: words.limitWear, width: 12, kind: 'number', decimals: 2, value: (row) => row.limitWearMm },
    { head: words.rate, width: 12, kind: 'number', decimals: 3, value: (row) => row.ratePer1000hMm.middle },
    { head: words.chancePast, width: 12, kind: 'number', decimals: 2, value: (row) => row.chancePastLimit },
    { head: words.pastLimit, width: 12, kind: 'number', decimals: 2, value: (row) => row.pastLimitMm },
    { head: words.ownReadings, width: 10, kind: 'number', decimals: 0, value: (row) => row.ownReadings },
    { head: words.likeParts, width: 10, kind: 'number', decimals: 0, value: (row) => row.likeParts },
    {
      head: words.cautions,
      width: 40,
      kind: 'text',
      value: (row) => row.cautions.map((code) => code.replaceAll('-', ' ')).join(', '),
    },
  ]);
