import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { dialLog } from './dialLog.ts';
import { pointHistory, type SizeRow, type TruthRow } from './pointHistory.ts';
import {
  type AssemblyPlan,
  FINDINGS,
  LAST_DAY,
  MACHINES,
  type MachinePlan,
  MOVES,
  TRADE_WEAR,
  VISITS_AFTER_MOVE,
} from './scenario.ts';
import { machineLifeHours } from './use.ts';

/**
 * Writes the invented shop: `node demo-data/make.ts` (Node 24). The same files every time, byte for byte.
 * Beside the CSV folder goes truth.csv: what the sizes were drawn from, for judging forecasts; the program never reads it.
 */
const HERE = import.meta.dirname;
const SEED: number = JSON.parse(readFileSync(join(HERE, 'seed.json'), 'utf8')).seed;

type Row = Record<string, string | number>;

/** Columns of each file, in the order of the import format. */
export const COLUMNS = {
  'machines.csv': [
    'machine',
    'customer',
    'make',
    'model',
    'serial',
    'built_year',
    'meter_digits',
    'hours_before',
    'work_share',
  ],
  'hours.csv': ['machine', 'date', 'dial_hours', 'event', 'new_dial_hours', 'hours_error'],
  'points.csv': [
    'machine',
    'assembly',
    'position',
    'point',
    'part_class',
    'safety',
    'wears',
    'new_size_mm',
    'new_size_tol_mm',
    'renew_at_mm',
    'reject_at_mm',
    'limit_source',
    'gauge_error_mm',
    'fitted_machine_hours',
  ],
  'sizes.csv': [
    'machine',
    'assembly',
    'position',
    'point',
    'station',
    'date',
    'dial_hours',
    'size_mm',
    'event',
    'gauge_error_mm',
  ],
  'moves.csv': ['machine', 'assembly', 'date', 'dial_hours', 'to_machine', 'to_dial_hours'],
  'classes.csv': ['part_class', 'wear_from_mm', 'wear_to_mm', 'hours_from', 'hours_to'],
  'findings.csv': ['machine', 'assembly', 'position', 'date', 'finding', 'severity', 'note', 'closed_date', 'outcome'],
} as const;
const TRUTH_COLUMNS = [
  'machine',
  'assembly',
  'position',
  'point',
  'part_class',
  'as_of',
  'true_machine_hours',
  'true_wear_mm',
  'true_hours_left',
];

/** Everything the generator writes, file name to text. */
export function demoFiles(): Map<string, string> {
  const lives = new Map(MACHINES.map((plan) => [plan.machine, machineLife(plan)]));
  const moves = MOVES.map((move) => ({
    ...move,
    fromPlan: MACHINES.find((plan) => plan.machine === move.machine)!,
    toPlan: MACHINES.find((plan) => plan.machine === move.toMachine)!,
  }));
  const sizes: SizeRow[] = [];
  const truth: TruthRow[] = [];
  const points: Row[] = [];
  for (const plan of MACHINES) {
    const life = lives.get(plan.machine)!;
    for (const assembly of plan.assemblies) {
      const move = moves.find((at) => at.machine === plan.machine && at.assembly === assembly.name);
      const history = pointHistory(SEED, plan, assembly, life, {
        move: move ? { on: move.on, toPlan: move.toPlan, toLife: lives.get(move.toMachine)! } : null,
        visitsAfterMove: VISITS_AFTER_MOVE.filter(
          (at) => at.machine === plan.machine && at.assembly === assembly.name,
        ).map((at) => at.visit),
      });
      points.push(...history.points);
      sizes.push(...history.sizes);
      truth.push(...history.truth);
    }
  }
  const rows: Record<keyof typeof COLUMNS, Row[]> = {
    'machines.csv': MACHINES.map(machineRow),
    'hours.csv': MACHINES.flatMap((plan) => lives.get(plan.machine)!.rows),
    'points.csv': points,
    'sizes.csv': sizes,
    'moves.csv': moves.map((move) => ({
      machine: move.machine,
      assembly: move.assembly,
      date: move.on,
      dial_hours: lives.get(move.machine)!.dialOn(move.on)!,
      to_machine: move.toMachine,
      to_dial_hours: lives.get(move.toMachine)!.dialOn(move.on)!,
    })),
    'classes.csv': TRADE_WEAR.map(([part_class, wear_from_mm, wear_to_mm, hours_from, hours_to]) => ({
      part_class,
      wear_from_mm,
      wear_to_mm,
      hours_from,
      hours_to,
    })),
    'findings.csv': FINDINGS,
  };
  const files = new Map<string, string>();
  for (const [name, columns] of Object.entries(COLUMNS))
    files.set(join('workshop', name), csv(columns, rows[name as keyof typeof COLUMNS]));
  files.set('truth.csv', csv(TRUTH_COLUMNS, truth));
  return files;
}

export function writeDemo(folder: string): void {
  mkdirSync(join(folder, 'workshop'), { recursive: true });
  for (const [name, text] of demoFiles()) writeFileSync(join(folder, name), text);
}

const csv = (columns: readonly string[], rows: Row[]): string =>
  `${Papa.unparse({ fields: [...columns], data: rows.map((row) => columns.map((column) => row[column] ?? '')) }, { newline: '\n' })}\n`;

function machineRow(plan: MachinePlan): Row {
  return {
    machine: plan.machine,
    customer: plan.customer,
    make: plan.make,
    model: plan.model,
    serial: plan.serial,
    built_year: plan.builtYear ?? '',
    meter_digits: plan.meterDigits ?? '',
    hours_before: plan.hoursBefore ?? '',
    work_share: plan.workShare === 1 ? '' : plan.workShare,
  };
}

/** A machine's true hours and the dial figures written down of them. */
function machineLife(plan: MachinePlan) {
  const use = machineLifeHours(SEED, plan.machine, {
    first: plan.firstDay,
    last: LAST_DAY,
    hoursAtFirst: plan.machineHoursAtFirst,
    hoursPerYear: plan.hoursPerYear,
    work: plan.work,
  });
  const otherDays = [
    ...MOVES.filter((move) => move.machine === plan.machine || move.toMachine === plan.machine).map((move) => move.on),
  ];
  return { hoursAt: use.hoursAt, ...dialLog(SEED, plan, use.hoursAt, otherDays) };
}

export type MachineLife = ReturnType<typeof machineLife>;
export type { AssemblyPlan };

if (process.argv[1] === import.meta.filename) writeDemo(HERE);
