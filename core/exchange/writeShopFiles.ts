import type { Finding } from '../shop/finding.ts';
import type { RenewalKind, Shim, Sitting, Size } from '../shop/measuringPoint.ts';
import type { MachineOnRecord, PointOnRecord, ShopLife } from '../shop/shopLife.ts';
import type { Day } from '../units/day.ts';
import { distinctNames } from './distinctNames.ts';
import { type FolderFile, folderColumns, folderFiles } from './folderColumns.ts';
import { hoursBeforeForFile } from './hoursBefore.ts';
import { keptInert } from './inertText.ts';
import type { FileBytes } from './readFolder.ts';
import { csvFile, type WrittenCell } from './writeCsv.ts';

/** What is known of a machine beside its life. */
export type MachineNames = { id: number; make: string; model: string; serial: string; builtYear: number | null };

/** A row of a file, one value for each of its columns. */
type RowToWrite<F extends FolderFile> = { [K in keyof (typeof folderColumns)[F]]: WrittenCell };

/**
 * The shop's own files of an exported folder, in the format that is brought in: what counts today, under its names.
 * What that format has no place for stands only in the further files (storedFiles.ts): rows put right, limits before the
 * present ones, shares before the present one, an assembly that never sat on a machine, what half of an assembly
 * went through before it came to where it is now, and a half that lies apart on the shelf.
 */
export function writeShopFiles(
  life: ShopLife,
  machines: readonly MachineNames[],
  positions: readonly { id: number; name: string }[],
  homes: readonly Home[],
): FileBytes[] {
  const told = withoutOtherHomes(life, homes);
  const shop = namedShop(told, positions);
  return [
    write('machines.csv', machineRows(life, machines)),
    write('hours.csv', hourRows(life)),
    write('points.csv', shop.points.map(pointRow)),
    write(
      'sizes.csv',
      shop.points.flatMap((point) => sizeRows(shop, point)),
    ),
    write('moves.csv', moveRows(shop)),
    write('classes.csv', classRows(life)),
    write('findings.csv', findingRows(shop, told.findings)),
  ].sort((a, b) => folderFiles.indexOf(a.name as FolderFile) - folderFiles.indexOf(b.name as FolderFile));
}

/** Where a position went by itself, in order of day; null: to the shelf. */
type Home = { positionId: number; assemblyId: number | null; fromOn: Day };

/** Halves as they are now: in their present assembly, their past elsewhere not known; those on the shelf left out. */
function withoutOtherHomes(life: ShopLife, homes: readonly Home[]): Pick<ShopLife, 'machines' | 'points' | 'findings'> {
  if (homes.length === 0) return life;
  const last = new Map(homes.map((home) => [home.positionId, home]));
  const stayed = life.points.filter(({ positionId }) => !last.has(positionId));
  const ofAssembly = new Map(stayed.map((point) => [point.assemblyId, point]));
  const points = life.points.flatMap((point) => {
    const home = last.get(point.positionId);
    if (!home) return [point];
    if (home.assemblyId === null) return [];
    const since = <T extends { takenOn: Day }>(rows: readonly T[]) =>
      rows.filter(({ takenOn }) => takenOn > home.fromOn);
    const { sittings, machineId } = ofAssembly.get(point.assemblyId) ?? point;
    const { sizes, renewals, shims = [] } = point;
    return [
      {
        ...point,
        sittings,
        machineId,
        fittedMachineHours: null,
        sizes: since(sizes),
        renewals: since(renewals),
        shims: since(shims),
      },
    ];
  });
  const isTold = ({ positionId, takenOn }: Finding) => {
    const home = positionId === null ? undefined : last.get(positionId);
    return !home || (home.assemblyId !== null && takenOn > home.fromOn);
  };
  return { machines: life.machines, points, findings: life.findings.filter(isTold) };
}

function write<F extends FolderFile>(file: F, rows: readonly RowToWrite<F>[]): FileBytes {
  const columns = Object.keys(folderColumns[file]);
  const cells = rows.map((row) => columns.map((column) => inert((row as Record<string, WrittenCell>)[column] ?? null)));
  return csvFile(file, columns, cells);
}

const inert = (cell: WrittenCell): WrittenCell => (typeof cell === 'string' ? keptInert(cell) : cell);

/** Points with the names that tell them apart in a file. */
type NamedPoint = { life: PointOnRecord; machine: string; assembly: string; position: string; point: string };
type NamedShop = {
  machineName: ReadonlyMap<number, string>;
  /** of every position, also where nothing is measured */
  positionName: ReadonlyMap<number, string>;
  points: NamedPoint[];
  /** packing by the point it is told at: of several slacks of one position the first, since it is heard by all of them */
  shimsAt: ReadonlyMap<PointOnRecord, readonly Shim[]>;
};

function namedShop(
  { machines, points }: Pick<ShopLife, 'machines' | 'points'>,
  everyPosition: readonly { id: number; name: string }[],
): NamedShop {
  const machineName = new Map(machines.map(({ machineId, name }) => [machineId, name]));
  const onMachines = points.filter((point) => firstMachine(point.sittings) !== null);
  const assemblies = new Map(onMachines.map((point) => [point.assemblyId, point]));
  const assemblyName = distinctNames(
    [...assemblies.values()].sort((a, b) => a.assemblyId - b.assemblyId),
    ({ assembly }) => assembly,
    ({ sittings }) => [...new Set(sittings.flatMap(({ machineId }) => machineId ?? []))],
  );
  const positions = new Map(onMachines.map((point) => [point.positionId, point]));
  const positionName = distinctNames(
    positions.values(),
    ({ position }) => position,
    ({ assemblyId }) => [assemblyId],
  );
  const pointName = distinctNames(
    onMachines,
    ({ point }) => point,
    ({ positionId }) => [positionId],
  );
  return {
    machineName,
    shimsAt: shimsAtFirst(onMachines),
    positionName: new Map(everyPosition.map(({ id, name }) => [id, name])),
    points: onMachines.map((life) => ({
      life,
      machine: machineName.get(firstMachine(life.sittings) ?? 0) ?? '',
      assembly: assemblyName.get(assemblies.get(life.assemblyId)!) ?? life.assembly,
      position: positionName.get(positions.get(life.positionId)!) ?? life.position,
      point: pointName.get(life) ?? life.point,
    })),
  };
}

function shimsAtFirst(points: readonly PointOnRecord[]): Map<PointOnRecord, readonly Shim[]> {
  const told = new Set<string>();
  return new Map(
    points.map((point) => [
      point,
      (point.shims ?? []).filter(({ id }) => {
        const key = `${point.positionId} ${id}`;
        return !told.has(key) && told.add(key);
      }),
    ]),
  );
}

/** Where an assembly started; one that began on the shelf, where it first sat. */
const firstMachine = (sittings: readonly Sitting[]): number | null =>
  sittings.find(({ machineId }) => machineId !== null)?.machineId ?? null;

function machineRows(life: ShopLife, machines: readonly MachineNames[]): RowToWrite<'machines.csv'>[] {
  const names = new Map(machines.map((machine) => [machine.id, machine]));
  return life.machines.map(
    ({ machineId, name, customer, serial, meterDigits, hoursBefore, dialEvents, workShares }) => ({
      machine: name,
      customer,
      make: names.get(machineId)?.make ?? '',
      model: names.get(machineId)?.model ?? '',
      serial,
      built_year: names.get(machineId)?.builtYear ?? null,
      meter_digits: meterDigits,
      hours_before: hoursBeforeForFile(hoursBefore, dialEvents[0] ?? null, meterDigits),
      work_share: workShares.at(-1)?.share ?? null,
    }),
  );
}

const hourRows = ({ machines }: ShopLife): RowToWrite<'hours.csv'>[] =>
  machines.flatMap(({ name, dialEvents }: MachineOnRecord) =>
    dialEvents.map(({ takenOn, kind, dialHours, newDialHours, errorHours }) => ({
      machine: name,
      date: takenOn,
      dial_hours: dialHours,
      event: kind,
      new_dial_hours: newDialHours,
      hours_error: errorHours,
    })),
  );

function pointRow({ life, machine, assembly, position, point }: NamedPoint): RowToWrite<'points.csv'> {
  const now = life.limits.at(-1);
  return {
    machine,
    assembly,
    position,
    point,
    part_class: life.partClass,
    safety: life.safety ? 'yes' : 'no',
    wears: life.wears,
    new_size_mm: now?.newSizeMm ?? null,
    new_size_tol_mm: now?.newSizeTolMm ?? null,
    renew_at_mm: now?.renewAtMm ?? null,
    reject_at_mm: now?.rejectAtMm ?? null,
    limit_source: now?.source ?? null,
    gauge_error_mm: life.gaugeErrorMm,
    fitted_machine_hours: life.fittedMachineHours,
  };
}

/** A point's sizes, renewals and packing by day; within a day the old part's sizes, what was done, the new part's. */
function sizeRows(
  shop: NamedShop,
  { life, machine, assembly, position, point }: NamedPoint,
): RowToWrite<'sizes.csv'>[] {
  const row = (
    takenOn: Day,
    event: Size['event'] | 'renewed' | 'shimmed',
    of: {
      station?: string;
      dialHours: number | null;
      sizeMm?: number | null;
      gaugeErrorMm?: number | null;
      kind?: RenewalKind;
      shimMm?: number;
    },
  ) => ({
    machine: machineOn(shop, life.sittings, takenOn) ?? machine,
    assembly,
    position,
    point,
    station: of.station ?? '',
    date: takenOn,
    dial_hours: of.dialHours,
    size_mm: of.sizeMm ?? null,
    event,
    gauge_error_mm: of.gaugeErrorMm ?? null,
    renewal: of.kind === 'new-part' ? null : (of.kind ?? null),
    shim_mm: of.shimMm ?? null,
  });
  return [
    ...life.sizes.map((size) => row(size.takenOn, size.event, size)),
    ...life.renewals.map((renewal) => row(renewal.takenOn, 'renewed', renewal)),
    ...(shop.shimsAt.get(life) ?? []).map((shim) => row(shim.takenOn, 'shimmed', shim)),
  ].sort((a, b) => (a.date === b.date ? IN_DAY[a.event] - IN_DAY[b.event] : a.date < b.date ? -1 : 1));
}

const IN_DAY = { 'as-found': 0, renewed: 1, shimmed: 2, 'as-left': 3 } as const;

/** The machine an assembly sat on that day, or had come off last. */
function machineOn({ machineName }: NamedShop, sittings: readonly Sitting[], on: Day): string | null {
  const until = sittings.filter(({ from }) => from === null || from <= on);
  const machineId = until.findLast((sitting) => sitting.machineId !== null)?.machineId ?? firstMachine(sittings);
  return machineId === null ? null : (machineName.get(machineId) ?? null);
}

function moveRows(shop: NamedShop): RowToWrite<'moves.csv'>[] {
  const assemblies = new Map(shop.points.map((point) => [point.life.assemblyId, point]));
  return [...assemblies.values()].flatMap(({ life: { sittings }, machine, assembly }) =>
    sittings.flatMap(({ from, machineId, dialHours, toDialHours }, place) => {
      const before = sittings.slice(0, place);
      const left = before.findLast((sitting) => sitting.machineId !== null)?.machineId ?? null;
      if (from === null || left === null) return [];
      return [
        {
          machine: shop.machineName.get(left) ?? machine,
          assembly,
          date: from,
          dial_hours: dialHours,
          to_machine: machineId === null ? null : (shop.machineName.get(machineId) ?? null),
          to_dial_hours: toDialHours,
        },
      ];
    }),
  );
}

const classRows = ({ partClasses }: ShopLife): RowToWrite<'classes.csv'>[] =>
  partClasses.flatMap(({ name, tradeWear }) =>
    tradeWear === null
      ? []
      : [
          {
            part_class: name,
            wear_from_mm: tradeWear.wearFromMm,
            wear_to_mm: tradeWear.wearToMm,
            hours_from: tradeWear.hoursFrom,
            hours_to: tradeWear.hoursTo,
          },
        ],
  );

function findingRows(shop: NamedShop, findings: readonly Finding[]): RowToWrite<'findings.csv'>[] {
  const byAssembly = Map.groupBy(shop.points, ({ life }) => life.assemblyId);
  return findings.flatMap((finding) => {
    const points = byAssembly.get(finding.assemblyId);
    const [first] = points ?? [];
    if (!points || !first) return [];
    return [
      {
        machine: machineOn(shop, first.life.sittings, finding.takenOn) ?? first.machine,
        assembly: first.assembly,
        position:
          points.find(({ life }) => life.positionId === finding.positionId)?.position ??
          shop.positionName.get(finding.positionId ?? 0) ??
          null,
        date: finding.takenOn,
        finding: finding.kind,
        severity: finding.severity,
        note: finding.note,
        closed_date: finding.closedOn,
        outcome: finding.outcome,
      },
    ];
  });
}
