import type { DialEvent, MachineLife } from '../shop/machineLife.ts';
import type { PointLife, Shim, Sitting } from '../shop/measuringPoint.ts';
import type { ShopLife } from '../shop/shopLife.ts';
import type { Day } from '../units/day.ts';
import type { KnownRows } from './knownRows.ts';
import type { MisreadNames } from './misreadNames.ts';
import type { RowOf } from './readFolder.ts';
import type { Line, Remark } from './remark.ts';

/** What the record holds already, as far as an import has to know. */
export type KnownShop = {
  life: ShopLife;
  customers: readonly { id: number; name: string }[];
  machines: readonly { id: number; name: string; make: string; model: string; serial: string }[];
  assemblies: readonly { id: number; name: string }[];
  positions: readonly { id: number; laidOutIn: number; item: number; name: string; safety: boolean }[];
  /** where positions went by themselves, in order; null: to the shelf */
  homes: readonly { positionId: number; assemblyId: number | null; fromOn: Day }[];
  /** in order of day */
  sittings: readonly { assemblyId: number; machineId: number | null; fromOn: Day | null }[];
  kinds: readonly KnownKind[];
  rows: KnownRows;
};

/** An assembly kind as an import uses it: items, what is measured and at which stations. */
export type KnownKind = {
  id: number;
  name: string;
  positions: readonly {
    item: number;
    name: string;
    points: readonly { name: string; measures: PlannedPoint['measures']; stations: readonly string[] }[];
  }[];
};

/**
 * An import thought through before anything is written. Things the record has already carry its id; `id: null` is to be
 * written. While planning, machines and points not yet written go by a negative number of their own (`key`).
 */
export type Plan = {
  customers: PlannedCustomer[];
  machines: PlannedMachine[];
  classes: PlannedClass[];
  assemblies: PlannedAssembly[];
  visits: PlannedVisit[];
  findings: PlannedFinding[];
};

export type PlannedCustomer = { id: number | null; name: string };

export type PlannedMachine = {
  id: number | null;
  /** the id, or a negative number until there is one */
  key: number;
  name: string;
  customer: PlannedCustomer | null;
  row: RowOf<'machines.csv'> | null;
  /** the record's rows and the new ones, in order */
  life: MachineLife;
  /** the new ones, by the id they have in `life` */
  newDials: Map<number, PlannedDial>;
  /** all that ever sat on it */
  assemblies: Set<PlannedAssembly>;
};

export type PlannedDial = {
  event: DialEvent;
  line: Line;
  column: string;
  /** -1: before a change of meter of its day */
  inDay: number;
  question: string | null;
};

export type PlannedClass = { name: string; row: RowOf<'classes.csv'> | null };

export type PlannedAssembly = {
  id: number | null;
  key: number;
  name: string;
  kind: KnownKind | null;
  sittings: PlannedSitting[];
  positions: PlannedPosition[];
};

/** `move`: the row it comes from; null: it is there already, or it is where a new assembly starts */
export type PlannedSitting = Sitting & {
  machine: PlannedMachine | null;
  move: RowOf<'moves.csv'> | null;
  isNew: boolean;
};

export type PlannedPosition = {
  id: number | null;
  name: string;
  item: number;
  safety: boolean;
  points: PlannedPoint[];
  /** the assemblies it was in, by their keys, where it ever went by itself; it then stands in each of them */
  stays?: readonly { assembly: number | null; from: Day | null }[];
};

export type PlannedPoint = {
  id: number | null;
  name: string;
  measures: 'thickness' | 'diameter' | 'bore' | 'slack' | 'section' | 'depth';
  stations: string[];
  row: RowOf<'points.csv'> | null;
  /** the record's sizes and renewals, and the new ones under negative ids */
  life: PointLife & { sizes: PointLife['sizes'][number][]; renewals: PointLife['renewals'][number][]; shims: Shim[] };
};

/** Sizes of one machine (null: the shelf), day and dial: one strip-down. */
export type PlannedVisit = {
  machine: PlannedMachine | null;
  takenOn: Day;
  dialHours: number | null;
  sizes: PlannedSize[];
  renewals: { point: PlannedPoint; row: RowOf<'sizes.csv'>; hoursKnown: boolean }[];
  shims: { point: PlannedPoint; shimMm: number }[];
};

export type PlannedSize = {
  /** its id in the point's life while planning */
  key: number;
  point: PlannedPoint;
  row: RowOf<'sizes.csv'> & { size_mm: number };
  event: 'as-found' | 'as-left';
  parked: boolean;
  question: string | null;
};

export type PlannedFinding = {
  /** already in the record: only its closing is new */
  id: number | null;
  assembly: PlannedAssembly;
  position: PlannedPosition | null;
  row: RowOf<'findings.csv'>;
  closes: boolean;
};

/** What was found on the way, and the negative numbers given out. */
export type Planning = {
  known: KnownShop;
  plan: Plan;
  /** by their names in small letters */
  machineByName: Map<string, PlannedMachine>;
  misread: MisreadNames;
  faults: Remark[];
  cautions: Remark[];
  notes: Remark[];
  nextKey(): number;
};

/** Names are the same written large or small. */
export const sameName = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();
