import { sql } from 'drizzle-orm';
import {
  type AnySQLiteColumn,
  blob,
  check,
  index,
  integer,
  real,
  sqliteTable,
  text,
  uniqueIndex,
} from 'drizzle-orm/sqlite-core';
import type { ContactAnswer, ContactWay } from '../shop/contact.ts';
import type { FindingKind, Severity } from '../shop/finding.ts';
import type { WorkType } from '../shop/forecastSettings.ts';
import type { JointPart } from '../shop/joint.ts';
import type { KeptWhy } from '../shop/keptForecast.ts';
import type { DialEventKind } from '../shop/machineLife.ts';
import type { RenewalKind, SizeEvent, WearsWay } from '../shop/measuringPoint.ts';
import type { RenewalWork, VisitStands, VisitWeek } from '../shop/visit.ts';
import type { Day } from '../units/day.ts';

/**
 * The record: everything the shop knows, in one file. Lengths are mm, times are hours, days are ISO text.
 *
 * Rows that feed a forecast belong to an entry: who made it, when, and whether it was undone. They are never changed.
 * A correction is a new row of the same chain that supersedes the old one; of a chain, the last row whose entry stands
 * counts, unless it is struck. Triggers in the migrations hold this against every program.
 */

const id = () => integer('id').primaryKey({ autoIncrement: true });
const entryId = () =>
  integer('entry_id')
    .notNull()
    .references(() => entries.id);
const dayText = (name: string) => text(name).$type<Day>();

/** Columns of a row that may be put right by a later one. */
const chain = (self: () => AnySQLiteColumn) => ({
  entryId: entryId(),
  /** the row this one takes the place of */
  supersedesId: integer('supersedes_id').references(self),
  /** first row of the chain; null: this is the first */
  chainId: integer('chain_id').references(self),
  /** true: the row only takes the old one's place, and says that there is nothing there */
  struck: integer('struck', { mode: 'boolean' }).notNull().default(false),
  /** why it was put right */
  reason: text('reason').notNull().default(''),
});

/** Index that finds the rows put in place of another: few, so it stays small. */
const chainIndex = (name: string, column: AnySQLiteColumn) => index(name).on(column).where(sql`chain_id IS NOT NULL`);

// ---- the record itself

/** One row: which record this is. */
export const recordAbout = sqliteTable('record_about', {
  id: integer('id').primaryKey(),
  /** made once, kept through renaming and copying: its backups are filed under it */
  identity: text('identity').notNull(),
  isDemo: integer('is_demo', { mode: 'boolean' }).notNull().default(false),
  startedAt: text('started_at').notNull(),
});

/** One act of one person: all its rows came in together, and go out together when it is undone. */
export const entries = sqliteTable(
  'entries',
  {
    id: id(),
    /** ISO instant, to the millisecond, UTC */
    madeAt: text('made_at').notNull(),
    madeBy: text('made_by').notNull(),
    /** the operation, "stripDown/save" */
    what: text('what').notNull(),
    undoneAt: text('undone_at'),
  },
  (t) => [index('entries_undone').on(t.undoneAt).where(sql`undone_at IS NOT NULL`)],
);

// ---- the shop

/** Each save is a new row; the last that stands counts. */
export const shopSettings = sqliteTable('shop_settings', {
  id: id(),
  entryId: entryId(),
  name: text('name').notNull(),
  headLines: text('head_lines', { mode: 'json' }).$type<string[]>().notNull(),
  phone: text('phone').notNull(),
  email: text('email').notNull(),
  /** month and day, "11-01" */
  winterFrom: text('winter_from').notNull(),
  winterTo: text('winter_to').notNull(),
  winterHoursPerWeek: real('winter_hours_per_week').notNull(),
  decimalMark: text('decimal_mark').$type<'.' | ','>().notNull(),
  /** relative use by month, January first */
  season: text('season', { mode: 'json' }).$type<number[]>().notNull(),
  hoursPerYearDefault: real('hours_per_year_default').notNull(),
  greaseAndWatch: text('grease_and_watch', { mode: 'json' }).$type<string[]>().notNull(),
  theme: text('theme').$type<'light' | 'dark' | 'system'>().notNull(),
  /** in which lengths are shown and typed; the record itself holds millimetres */
  lengths: text('lengths').$type<'mm' | 'inch'>().notNull().default('mm'),
});

export const fitters = sqliteTable('fitters', {
  id: id(),
  name: text('name').notNull().unique(),
  active: integer('active', { mode: 'boolean' }).notNull(),
});

/** A size keeps the error its gauge had when it was taken: changing a gauge changes no old size. */
export const gauges = sqliteTable('gauges', {
  id: id(),
  name: text('name').notNull().unique(),
  /** 1 sd */
  errorMm: real('error_mm').notNull(),
  stepMm: real('step_mm').notNull(),
  measures: text('measures', { mode: 'json' }).$type<string[]>().notNull(),
  active: integer('active', { mode: 'boolean' }).notNull(),
});

export const assemblyKinds = sqliteTable('assembly_kinds', {
  id: id(),
  name: text('name').notNull().unique(),
  /** positions, points, new sizes, classes and sketch, as the contract's assembly kind */
  template: text('template', { mode: 'json' }).$type<unknown>().notNull(),
});

export const partClasses = sqliteTable('part_classes', {
  id: id(),
  name: text('name').notNull().unique(),
  entryId: entryId(),
});

/** What the trade says of a class; each save is a new row, the last that stands counts. */
export const classKnowledge = sqliteTable(
  'class_knowledge',
  {
    id: id(),
    entryId: entryId(),
    partClassId: integer('part_class_id')
      .notNull()
      .references(() => partClasses.id),
    wearFromMm: real('wear_from_mm'),
    wearToMm: real('wear_to_mm'),
    hoursFrom: real('hours_from'),
    hoursTo: real('hours_to'),
    source: text('source'),
    newSizeTolMm: real('new_size_tol_mm'),
  },
  (t) => [
    index('class_knowledge_class').on(t.partClassId),
    check(
      'class_knowledge_whole',
      sql`(wear_from_mm IS NULL) = (wear_to_mm IS NULL) AND (wear_from_mm IS NULL) = (hours_from IS NULL) AND (wear_from_mm IS NULL) = (hours_to IS NULL)`,
    ),
  ],
);

/** What the shop has set otherwise in its forecasts, whole at each save; one chain, the last row of which counts. */
export const forecastSettings = sqliteTable(
  'forecast_settings',
  {
    id: id(),
    /** only what differs from the program's own: name and value */
    changed: text('changed', { mode: 'json' }).$type<Record<string, number>>().notNull(),
    /** kinds of work and how many times as fast parts wear in each */
    workTypes: text('work_types', { mode: 'json' }).$type<WorkType[]>().notNull(),
    ...chain((): AnySQLiteColumn => forecastSettings.id),
  },
  (t) => [
    chainIndex('forecast_settings_chain', t.chainId),
    check(
      'forecast_settings_json',
      sql`json_valid(changed) AND json_type(changed) = 'object' AND json_valid(work_types) AND json_type(work_types) = 'array'`,
    ),
  ],
);

// ---- customers and machines

export const customers = sqliteTable('customers', {
  id: id(),
  name: text('name').notNull(),
  place: text('place').notNull(),
  address: text('address').notNull(),
  phone: text('phone').notNull(),
  email: text('email').notNull(),
});

/** What a customer is called and how they are reached, as changed later: each save is a new row, the last that stands counts. */
export const customerDetails = sqliteTable(
  'customer_details',
  {
    id: id(),
    entryId: entryId(),
    customerId: integer('customer_id')
      .notNull()
      .references(() => customers.id),
    name: text('name').notNull(),
    place: text('place').notNull(),
    address: text('address').notNull(),
    phone: text('phone').notNull(),
    email: text('email').notNull(),
  },
  (t) => [index('customer_details_customer').on(t.customerId)],
);

/** Two rows of one customer: what refers to the one is the other's, while this stands. */
export const customerMerges = sqliteTable(
  'customer_merges',
  {
    id: id(),
    customerId: integer('customer_id')
      .notNull()
      .references(() => customers.id),
    intoCustomerId: integer('into_customer_id')
      .notNull()
      .references(() => customers.id),
    ...chain((): AnySQLiteColumn => customerMerges.id),
  },
  (t) => [
    index('customer_merges_customer').on(t.customerId),
    chainIndex('customer_merges_chain', t.chainId),
    check('customer_merges_two', sql`customer_id <> into_customer_id`),
  ],
);

/**
 * A customer's personal data was erased on request. While the erasing runs `done` is 0, and only then may texts of rows that
 * otherwise stay as written be blanked; a record at rest holds no row with 0.
 */
export const customerErasures = sqliteTable(
  'customer_erasures',
  {
    id: id(),
    entryId: entryId(),
    customerId: integer('customer_id')
      .notNull()
      .references(() => customers.id),
    /** texts that were blanked */
    texts: integer('texts').notNull(),
    done: integer('done', { mode: 'boolean' }).notNull(),
  },
  (t) => [
    index('customer_erasures_customer').on(t.customerId),
    index('customer_erasures_running').on(t.done).where(sql`done = 0`),
    check('customer_erasures_done', sql`done IN (0, 1)`),
  ],
);

/** Names are one machine's alone among those whose entry stands (machineStore holds it). */
export const machines = sqliteTable(
  'machines',
  {
    id: id(),
    entryId: entryId(),
    name: text('name').notNull(),
    make: text('make').notNull(),
    model: text('model').notNull(),
    serial: text('serial').notNull(),
    builtYear: integer('built_year'),
    note: text('note').notNull(),
  },
  (t) => [index('machines_name').on(t.name)],
);

/** Whose machine it is, from a day on; null: from the beginning. */
export const ownerships = sqliteTable(
  'ownerships',
  {
    id: id(),
    machineId: integer('machine_id')
      .notNull()
      .references(() => machines.id),
    customerId: integer('customer_id')
      .notNull()
      .references(() => customers.id),
    fromOn: dayText('from_on'),
    ...chain((): AnySQLiteColumn => ownerships.id),
  },
  (t) => [index('ownerships_machine').on(t.machineId), chainIndex('ownerships_chain', t.chainId)],
);

/** What is known of a machine's hour meter, beside what it shows. */
export const meters = sqliteTable(
  'meters',
  {
    id: id(),
    machineId: integer('machine_id')
      .notNull()
      .references(() => machines.id),
    /** full scale is 10^digits; null: not known */
    digits: integer('digits'),
    /** machine hours the first reading's dial does not show; null: its dial is the machine hours */
    hoursBefore: real('hours_before'),
    ...chain((): AnySQLiteColumn => meters.id),
  },
  (t) => [index('meters_machine').on(t.machineId), chainIndex('meters_chain', t.chainId)],
);

export const dialReadings = sqliteTable(
  'dial_readings',
  {
    id: id(),
    machineId: integer('machine_id')
      .notNull()
      .references(() => machines.id),
    takenOn: dayText('taken_on').notNull(),
    kind: text('kind').$type<DialEventKind>().notNull(),
    dialHours: real('dial_hours'),
    newDialHours: real('new_dial_hours'),
    /** 1 sd */
    errorHours: real('error_hours'),
    /** machine hours in one hour of the dial from here on; null: 1, or as before. Its reason stands in `reason` */
    hoursPerDialHour: real('hours_per_dial_hour'),
    /** place among the rows of its day, which else keep the order of entry; -1: before a change of meter of that day */
    inDay: integer('in_day').notNull().default(0),
    saidBy: text('said_by').notNull(),
    /** questioned and not answered: shown, feeds nothing */
    parked: integer('parked', { mode: 'boolean' }).notNull().default(false),
    /** code of what was odd about it, whether answered or not */
    question: text('question'),
    ...chain((): AnySQLiteColumn => dialReadings.id),
  },
  (t) => [
    index('dial_readings_machine').on(t.machineId, t.takenOn),
    index('dial_readings_entry').on(t.entryId, t.machineId, t.takenOn),
    chainIndex('dial_readings_chain', t.chainId),
    check('dial_readings_kind', sql`kind IN ('reading', 'estimate', 'new-meter', 'rollover')`),
    check('dial_readings_dial', sql`dial_hours IS NOT NULL OR kind = 'new-meter'`),
    check('dial_readings_new_dial', sql`(new_dial_hours IS NOT NULL) = (kind = 'new-meter')`),
  ],
);

/** Share of a machine's hours in which its assemblies work, from a day on; null: from the beginning. */
export const workShares = sqliteTable(
  'work_shares',
  {
    id: id(),
    machineId: integer('machine_id')
      .notNull()
      .references(() => machines.id),
    fromOn: dayText('from_on'),
    share: real('share').notNull(),
    workType: text('work_type'),
    ...chain((): AnySQLiteColumn => workShares.id),
  },
  (t) => [
    index('work_shares_machine').on(t.machineId),
    chainIndex('work_shares_chain', t.chainId),
    check('work_shares_share', sql`share > 0 AND share <= 1`),
  ],
);

/**
 * Where a machine's hours come from while no meter of its own tells them, from a day on until the next row: a share of the
 * hours of the machine that pulls it, so many hours a year, or (own) its own dial again.
 */
export const hoursSources = sqliteTable(
  'hours_sources',
  {
    id: id(),
    machineId: integer('machine_id')
      .notNull()
      .references(() => machines.id),
    fromOn: dayText('from_on').notNull(),
    kind: text('kind').$type<'pulled' | 'yearly' | 'own'>().notNull(),
    pullerId: integer('puller_id').references(() => machines.id),
    /** share of the puller's hours */
    share: real('share'),
    hoursPerYear: real('hours_per_year'),
    /** 1 sd of one year's hours, as a share of them; null: the usual of an estimate */
    errorShare: real('error_share'),
    saidBy: text('said_by').notNull(),
    ...chain((): AnySQLiteColumn => hoursSources.id),
  },
  (t) => [
    index('hours_sources_machine').on(t.machineId),
    chainIndex('hours_sources_chain', t.chainId),
    check('hours_sources_kind', sql`kind IN ('pulled', 'yearly', 'own')`),
    check(
      'hours_sources_pulled',
      sql`(puller_id IS NOT NULL) = (kind = 'pulled') AND (share IS NOT NULL) = (kind = 'pulled')`,
    ),
    check('hours_sources_yearly', sql`(hours_per_year IS NOT NULL) = (kind = 'yearly')`),
    check('hours_sources_share', sql`share > 0 AND share <= 1`),
    check('hours_sources_hours', sql`hours_per_year > 0`),
    check('hours_sources_error', sql`error_share >= 0 AND error_share <= 2`),
    check('hours_sources_puller', sql`puller_id <> machine_id`),
  ],
);

// ---- assemblies and what is measured on them

export const assemblies = sqliteTable('assemblies', {
  id: id(),
  entryId: entryId(),
  kindId: integer('kind_id').references(() => assemblyKinds.id),
  name: text('name').notNull(),
  serial: text('serial').notNull(),
});

/** Where an assembly sits from a day on (null: from the beginning): a machine, or the shelf (null). */
export const sittings = sqliteTable(
  'sittings',
  {
    id: id(),
    assemblyId: integer('assembly_id')
      .notNull()
      .references(() => assemblies.id),
    machineId: integer('machine_id').references(() => machines.id),
    fromOn: dayText('from_on'),
    /** dial of the machine it came off, and of the one it went on; first row of each reading's chain */
    offDialReadingId: integer('off_dial_reading_id').references(() => dialReadings.id),
    onDialReadingId: integer('on_dial_reading_id').references(() => dialReadings.id),
    ...chain((): AnySQLiteColumn => sittings.id),
  },
  (t) => [
    index('sittings_assembly').on(t.assemblyId),
    index('sittings_machine').on(t.machineId),
    chainIndex('sittings_chain', t.chainId),
  ],
);

export const positions = sqliteTable(
  'positions',
  {
    id: id(),
    entryId: entryId(),
    assemblyId: integer('assembly_id')
      .notNull()
      .references(() => assemblies.id),
    /** ring number: the same on drawing, sheet, slip */
    item: integer('item').notNull(),
    name: text('name').notNull(),
    /** towing or lifting */
    safety: integer('safety', { mode: 'boolean' }).notNull(),
    /** it interchanges with others: no oversize pin or bore here */
    mustStayStandard: integer('must_stay_standard', { mode: 'boolean' }).notNull().default(false),
  },
  (t) => [index('positions_assembly').on(t.assemblyId)],
);

/**
 * Where a position has gone by itself, from a day on: to another assembly, or to the shelf (null). Without a row it sits in
 * the assembly it was laid out in; either way it goes where that assembly goes.
 */
export const positionSittings = sqliteTable(
  'position_sittings',
  {
    id: id(),
    positionId: integer('position_id')
      .notNull()
      .references(() => positions.id),
    assemblyId: integer('assembly_id').references(() => assemblies.id),
    fromOn: dayText('from_on').notNull(),
    /** dial of the machine it came off, and of the one it went on; first row of each reading's chain */
    offDialReadingId: integer('off_dial_reading_id').references(() => dialReadings.id),
    onDialReadingId: integer('on_dial_reading_id').references(() => dialReadings.id),
    ...chain((): AnySQLiteColumn => positionSittings.id),
  },
  (t) => [
    index('position_sittings_position').on(t.positionId),
    index('position_sittings_assembly').on(t.assemblyId),
    chainIndex('position_sittings_chain', t.chainId),
  ],
);

export const measuringPoints = sqliteTable(
  'measuring_points',
  {
    id: id(),
    entryId: entryId(),
    positionId: integer('position_id')
      .notNull()
      .references(() => positions.id),
    name: text('name').notNull(),
    measures: text('measures').$type<'thickness' | 'diameter' | 'bore' | 'slack' | 'section' | 'depth'>().notNull(),
    wears: text('wears').$type<WearsWay>().notNull(),
    partClassId: integer('part_class_id')
      .notNull()
      .references(() => partClasses.id),
    /** 1 sd */
    gaugeErrorMm: real('gauge_error_mm').notNull(),
    /** machine hours when the first part on record was fitted: 0 as built; null: not known */
    fittedMachineHours: real('fitted_machine_hours'),
    stations: text('stations', { mode: 'json' }).$type<string[]>().notNull(),
  },
  (t) => [
    index('measuring_points_position').on(t.positionId),
    index('measuring_points_class').on(t.partClassId),
    index('measuring_points_entry').on(t.entryId),
    check('measuring_points_wears', sql`wears IN ('down', 'up')`),
    check('measuring_points_gauge_error', sql`gauge_error_mm > 0`),
  ],
);

/** A pin and the bores it runs in, known by the point where their slack stands. */
export const joints = sqliteTable(
  'joints',
  {
    id: id(),
    slackPointId: integer('slack_point_id')
      .notNull()
      .references(() => measuringPoints.id),
    ...chain((): AnySQLiteColumn => joints.id),
  },
  (t) => [index('joints_slack_point').on(t.slackPointId), chainIndex('joints_chain', t.chainId)],
);

/** Its pin and its bores, by the points they are measured at. */
export const jointMembers = sqliteTable(
  'joint_members',
  {
    id: id(),
    entryId: entryId(),
    /** first row of the joint's chain */
    jointId: integer('joint_id')
      .notNull()
      .references(() => joints.id),
    pointId: integer('point_id')
      .notNull()
      .references(() => measuringPoints.id),
    part: text('part').$type<JointPart>().notNull(),
  },
  (t) => [
    index('joint_members_joint').on(t.jointId),
    index('joint_members_point').on(t.pointId),
    check('joint_members_part', sql`part IN ('pin', 'bore')`),
  ],
);

/** Sizes a point is judged by, from a day on; null: from the beginning. A change is a new row from its own day. */
export const pointLimits = sqliteTable(
  'point_limits',
  {
    id: id(),
    pointId: integer('point_id')
      .notNull()
      .references(() => measuringPoints.id),
    fromOn: dayText('from_on'),
    newSizeMm: real('new_size_mm').notNull(),
    /** whole width */
    newSizeTolMm: real('new_size_tol_mm'),
    renewAtMm: real('renew_at_mm'),
    rejectAtMm: real('reject_at_mm'),
    source: text('source'),
    enteredBy: text('entered_by').notNull(),
    /** first row of the renewal that brought another standard: what was found that day is still judged by the one before */
    renewalId: integer('renewal_id').references((): AnySQLiteColumn => renewals.id),
    ...chain((): AnySQLiteColumn => pointLimits.id),
  },
  (t) => [
    index('point_limits_point').on(t.pointId),
    index('point_limits_entry').on(t.entryId),
    chainIndex('point_limits_chain', t.chainId),
  ],
);

// ---- visits

/** A visit in which parts are opened and measured. */
export const stripDowns = sqliteTable(
  'strip_downs',
  {
    id: id(),
    /** the machine it was done on; null: the assembly lay on the shelf */
    machineId: integer('machine_id').references(() => machines.id),
    takenOn: dayText('taken_on').notNull(),
    /** as it stands on the sheet; null: no dial read, hours go by the date */
    dialHours: real('dial_hours'),
    /** first row of the reading's chain: once put right, it goes before the sheet. Null: no reading of its own */
    dialReadingId: integer('dial_reading_id').references(() => dialReadings.id),
    fitter: text('fitter').notNull(),
    note: text('note').notNull(),
    ...chain((): AnySQLiteColumn => stripDowns.id),
  },
  (t) => [
    index('strip_downs_machine').on(t.machineId, t.takenOn),
    index('strip_downs_entry').on(t.entryId),
    chainIndex('strip_downs_chain', t.chainId),
  ],
);

export const sizes = sqliteTable(
  'sizes',
  {
    id: id(),
    /** first row of the strip-down's chain */
    stripDownId: integer('strip_down_id')
      .notNull()
      .references(() => stripDowns.id),
    pointId: integer('point_id')
      .notNull()
      .references(() => measuringPoints.id),
    /** "front", "A"; empty where the point has one station */
    station: text('station').notNull(),
    event: text('event').$type<SizeEvent>().notNull(),
    sizeMm: real('size_mm').notNull(),
    gaugeId: integer('gauge_id').references(() => gauges.id),
    /** 1 sd, as the gauge was then; null: the point's own */
    gaugeErrorMm: real('gauge_error_mm'),
    /** reading step; 0 when not known */
    gaugeStepMm: real('gauge_step_mm').notNull().default(0),
    /** questioned and not answered: shown, feeds nothing */
    parked: integer('parked', { mode: 'boolean' }).notNull().default(false),
    /** code of what was odd about it, whether answered or not */
    question: text('question'),
    ...chain((): AnySQLiteColumn => sizes.id),
  },
  (t) => [
    index('sizes_point').on(t.pointId),
    index('sizes_strip_down').on(t.stripDownId),
    index('sizes_entry').on(t.entryId, t.stripDownId),
    chainIndex('sizes_chain', t.chainId),
    check('sizes_event', sql`event IN ('as-found', 'as-left')`),
  ],
);

/** The moment a position's wear starts again. */
export const renewals = sqliteTable(
  'renewals',
  {
    id: id(),
    stripDownId: integer('strip_down_id')
      .notNull()
      .references(() => stripDowns.id),
    pointId: integer('point_id')
      .notNull()
      .references(() => measuringPoints.id),
    hoursKnown: integer('hours_known', { mode: 'boolean' }).notNull(),
    /** size of the part put in; null: the new size */
    sizeMm: real('size_mm'),
    kind: text('kind').$type<RenewalKind>().notNull().default('new-part'),
    /** only this station's piece was renewed; empty: the whole part */
    station: text('station').notNull().default(''),
    /** an oversize part's size stands stamped on it; null: nobody said, or there is nothing to stamp */
    stamped: integer('stamped', { mode: 'boolean' }),
    /** its size was questioned and not answered: the renewal counts, its size does not */
    parked: integer('parked', { mode: 'boolean' }).notNull().default(false),
    /** code of what was odd about its size, whether answered or not */
    question: text('question'),
    ...chain((): AnySQLiteColumn => renewals.id),
  },
  (t) => [
    index('renewals_point').on(t.pointId),
    index('renewals_entry').on(t.entryId, t.stripDownId),
    chainIndex('renewals_chain', t.chainId),
  ],
);

/** Packing put behind a part: slack goes, no metal comes back. */
export const shims = sqliteTable(
  'shims',
  {
    id: id(),
    stripDownId: integer('strip_down_id')
      .notNull()
      .references(() => stripDowns.id),
    pointId: integer('point_id')
      .notNull()
      .references(() => measuringPoints.id),
    /** below 0: taken out */
    shimMm: real('shim_mm').notNull(),
    ...chain((): AnySQLiteColumn => shims.id),
  },
  (t) => [
    index('shims_point').on(t.pointId),
    chainIndex('shims_chain', t.chainId),
    check('shims_some', sql`shim_mm <> 0`),
  ],
);

export const findings = sqliteTable(
  'findings',
  {
    id: id(),
    assemblyId: integer('assembly_id')
      .notNull()
      .references(() => assemblies.id),
    /** null: the assembly as a whole */
    positionId: integer('position_id').references(() => positions.id),
    stripDownId: integer('strip_down_id').references(() => stripDowns.id),
    takenOn: dayText('taken_on').notNull(),
    kind: text('kind').$type<FindingKind>().notNull(),
    severity: text('severity').$type<Severity>().notNull(),
    note: text('note').notNull(),
    foundBy: text('found_by').notNull(),
    ...chain((): AnySQLiteColumn => findings.id),
  },
  (t) => [
    index('findings_assembly').on(t.assemblyId),
    chainIndex('findings_chain', t.chainId),
    check('findings_kind', sql`kind IN ('crack', 'bent', 'broken', 'seized', 'missing', 'other')`),
    check('findings_severity', sql`severity IN ('watch', 'repair', 'do-not-use')`),
  ],
);

/** What became of a finding. */
export const findingClosings = sqliteTable(
  'finding_closings',
  {
    id: id(),
    /** first row of the finding's chain */
    findingId: integer('finding_id')
      .notNull()
      .references(() => findings.id),
    closedOn: dayText('closed_on').notNull(),
    outcome: text('outcome').notNull(),
    closedBy: text('closed_by').notNull(),
    ...chain((): AnySQLiteColumn => findingClosings.id),
  },
  (t) => [index('finding_closings_finding').on(t.findingId), chainIndex('finding_closings_chain', t.chainId)],
);

/** Pictures as the window made them small; one that stands at no finding yet belongs to a sheet being typed. */
export const photos = sqliteTable(
  'photos',
  {
    id: id(),
    jpeg: blob('jpeg', { mode: 'buffer' }).notNull(),
    widthPx: integer('width_px').notNull(),
    heightPx: integer('height_px').notNull(),
    keptAt: text('kept_at').notNull(),
  },
  () => [
    check('photos_small', sql`length(jpeg) <= 300000`),
    check('photos_sides', sql`width_px BETWEEN 1 AND 1600 AND height_px BETWEEN 1 AND 1600`),
  ],
);

/** Which pictures show a finding. */
export const findingPhotos = sqliteTable(
  'finding_photos',
  {
    id: id(),
    /** first row of the finding's chain */
    findingId: integer('finding_id')
      .notNull()
      .references(() => findings.id),
    photoId: integer('photo_id')
      .notNull()
      .references(() => photos.id),
    ...chain((): AnySQLiteColumn => findingPhotos.id),
  },
  (t) => [
    index('finding_photos_finding').on(t.findingId),
    index('finding_photos_photo').on(t.photoId),
    chainIndex('finding_photos_chain', t.chainId),
  ],
);

/** A customer was told of a finding and does not want it made good: in their own words. The finding stays open. */
export const findingDeclines = sqliteTable(
  'finding_declines',
  {
    id: id(),
    /** first row of the finding's chain */
    findingId: integer('finding_id')
      .notNull()
      .references(() => findings.id),
    saidOn: dayText('said_on').notNull(),
    saidBy: text('said_by').notNull(),
    words: text('words').notNull(),
    ...chain((): AnySQLiteColumn => findingDeclines.id),
  },
  (t) => [index('finding_declines_finding').on(t.findingId), chainIndex('finding_declines_chain', t.chainId)],
);

// ---- jobs

/** A job on one machine, from intake to hand-over. */
export const rebuilds = sqliteTable(
  'rebuilds',
  {
    id: id(),
    number: text('number').notNull(),
    machineId: integer('machine_id')
      .notNull()
      .references(() => machines.id),
    /** whose job it was when it was taken in */
    customerId: integer('customer_id').references(() => customers.id),
    takenInOn: dayText('taken_in_on').notNull(),
    wantedBy: dayText('wanted_by'),
    complaint: text('complaint').notNull(),
    /** as noted at intake */
    dialHours: real('dial_hours'),
    /** first row of the job it comes back from */
    comebackOfId: integer('comeback_of_id').references((): AnySQLiteColumn => rebuilds.id),
    /** where the machine is worked on: in the yard, at the farm, elsewhere; and the bay, the field, the road to it */
    whereabouts: text('whereabouts').notNull().default('not-said'),
    whereaboutsNote: text('whereabouts_note').notNull().default(''),
    ...chain((): AnySQLiteColumn => rebuilds.id),
  },
  (t) => [index('rebuilds_machine').on(t.machineId), chainIndex('rebuilds_chain', t.chainId)],
);

/** Which pictures were taken of a machine as it came in. */
export const rebuildPhotos = sqliteTable(
  'rebuild_photos',
  {
    id: id(),
    /** first row of the job's chain */
    rebuildId: integer('rebuild_id')
      .notNull()
      .references(() => rebuilds.id),
    photoId: integer('photo_id')
      .notNull()
      .references(() => photos.id),
    ...chain((): AnySQLiteColumn => rebuildPhotos.id),
  },
  (t) => [
    index('rebuild_photos_rebuild').on(t.rebuildId),
    index('rebuild_photos_photo').on(t.photoId),
    chainIndex('rebuild_photos_chain', t.chainId),
  ],
);

/** What is to be done at one place of a job. */
export const rebuildLines = sqliteTable(
  'rebuild_lines',
  {
    id: id(),
    /** first row of the job's chain */
    rebuildId: integer('rebuild_id')
      .notNull()
      .references(() => rebuilds.id),
    positionId: integer('position_id').references(() => positions.id),
    /** take-offs, hours, cuts, parts to make, points renewed: as the contract's work of a line */
    work: text('work', { mode: 'json' }).$type<unknown>().notNull(),
    stands: text('stands').$type<'proposed' | 'agreed' | 'declined'>().notNull(),
    /** in the customer's own words */
    declinedWords: text('declined_words').notNull(),
    ...chain((): AnySQLiteColumn => rebuildLines.id),
  },
  (t) => [
    index('rebuild_lines_rebuild').on(t.rebuildId),
    chainIndex('rebuild_lines_chain', t.chainId),
    check('rebuild_lines_stands', sql`stands IN ('proposed', 'agreed', 'declined')`),
  ],
);

/** What else was done on a job, in order: quotes, approvals, sizes bored, checks answered, hand-over. */
export const rebuildSteps = sqliteTable(
  'rebuild_steps',
  {
    id: id(),
    entryId: entryId(),
    rebuildId: integer('rebuild_id')
      .notNull()
      .references(() => rebuilds.id),
    /** first row of the line's chain */
    lineId: integer('line_id').references(() => rebuildLines.id),
    kind: text('kind').$type<'quote' | 'approval' | 'bored' | 'check' | 'handed-over'>().notNull(),
    saidOn: dayText('said_on').notNull(),
    saidBy: text('said_by').notNull(),
    facts: text('facts', { mode: 'json' }).$type<unknown>().notNull(),
  },
  (t) => [
    index('rebuild_steps_rebuild').on(t.rebuildId),
    check('rebuild_steps_kind', sql`kind IN ('quote', 'approval', 'bored', 'check', 'handed-over')`),
  ],
);

/** Prices of the shop, in its own money; each save is a new row, the last that stands counts. */
export const shopRates = sqliteTable('shop_rates', {
  id: id(),
  entryId: entryId(),
  currency: text('currency').notNull(),
  hourPrice: real('hour_price').notNull(),
  stripAndReportPrice: real('strip_and_report_price').notNull(),
});

// ---- who is contacted, and what came of it

/** A customer was written to, rang or was rung: what was sent or said, the answer, and when to ring again. */
export const contacts = sqliteTable(
  'contacts',
  {
    id: id(),
    /** whose machine it was then: stays theirs when it is sold on */
    customerId: integer('customer_id')
      .notNull()
      .references(() => customers.id),
    /** null: about nothing of one machine */
    machineId: integer('machine_id').references(() => machines.id),
    madeOn: dayText('made_on').notNull(),
    way: text('way').$type<ContactWay>().notNull(),
    slipId: integer('slip_id').references(() => slips.id),
    /** whom it was spoken of with */
    saidBy: text('said_by').notNull(),
    note: text('note').notNull(),
    /** null: none yet */
    answer: text('answer').$type<ContactAnswer>(),
    /** booked: the day the machine comes in; later: not before this day; null: no day was named */
    answerOn: dayText('answer_on'),
    callBackOn: dayText('call_back_on'),
    ...chain((): AnySQLiteColumn => contacts.id),
  },
  (t) => [
    index('contacts_customer').on(t.customerId),
    index('contacts_machine').on(t.machineId),
    chainIndex('contacts_chain', t.chainId),
    check('contacts_way', sql`way IN ('slip', 'email', 'message', 'phone', 'in-person')`),
    check('contacts_answer', sql`answer IN ('booked', 'later', 'declined', 'sold')`),
    check('contacts_answer_on', sql`answer_on IS NULL OR answer IN ('booked', 'later')`),
  ],
);

/** What is to be kept to in reaching a customer; one chain a customer, the last row of which counts. */
export const contactTerms = sqliteTable(
  'contact_terms',
  {
    id: id(),
    customerId: integer('customer_id')
      .notNull()
      .references(() => customers.id),
    /** asked not to be contacted */
    noContact: integer('no_contact', { mode: 'boolean' }).notNull(),
    saidOn: dayText('said_on').notNull(),
    /** the wish in their words, or what else is to be known */
    words: text('words').notNull(),
    /** by road, one way */
    distanceKm: real('distance_km'),
    driveMinutes: real('drive_minutes'),
    /** last month and day of the farm's season, "10-15"; null: up to the shop's next winter */
    seasonTo: text('season_to'),
    ...chain((): AnySQLiteColumn => contactTerms.id),
  },
  (t) => [
    index('contact_terms_customer').on(t.customerId),
    chainIndex('contact_terms_chain', t.chainId),
    check('contact_terms_distance', sql`distance_km >= 0 AND drive_minutes >= 0`),
  ],
);

/** Days in which a customer is not to be disturbed, both included. */
export const quietPeriods = sqliteTable(
  'quiet_periods',
  {
    id: id(),
    customerId: integer('customer_id')
      .notNull()
      .references(() => customers.id),
    fromOn: dayText('from_on').notNull(),
    toOn: dayText('to_on').notNull(),
    why: text('why').notNull(),
    ...chain((): AnySQLiteColumn => quietPeriods.id),
  },
  (t) => [
    index('quiet_periods_customer').on(t.customerId),
    chainIndex('quiet_periods_chain', t.chainId),
    check('quiet_periods_order', sql`from_on <= to_on`),
  ],
);

/** How early the shop calls machines in; each save is a new row, the last that stands counts. */
export const recallSettings = sqliteTable(
  'recall_settings',
  {
    id: id(),
    entryId: entryId(),
    /** from the call to the machine standing finished: parts, a free week, the work */
    leadDays: integer('lead_days').notNull(),
  },
  () => [check('recall_settings_lead', sql`lead_days BETWEEN 0 AND 365`)],
);

// ---- the winter plan

/** What the plan goes by: one chain, whoever saves takes the last row's place. */
export const planSettings = sqliteTable(
  'plan_settings',
  {
    id: id(),
    /** only what differs from the program's own, by its name */
    changed: text('changed', { mode: 'json' }).$type<Record<string, number>>().notNull(),
    /** work and cost of renewing a part of a class, where the shop has its own */
    renewals: text('renewals', { mode: 'json' }).$type<RenewalWork[]>().notNull(),
    ...chain((): AnySQLiteColumn => planSettings.id),
  },
  (t) => [
    chainIndex('plan_settings_chain', t.chainId),
    check(
      'plan_settings_json',
      sql`json_valid(changed) AND json_type(changed) = 'object' AND json_valid(renewals) AND json_type(renewals) = 'array'`,
    ),
  ],
);

/** A week with other hours than usual: a holiday, a fitter away. One chain a week; struck: the usual hours again. */
export const planWeeks = sqliteTable(
  'plan_weeks',
  {
    id: id(),
    /** its Monday */
    weekFrom: dayText('week_from').notNull(),
    benchHours: real('bench_hours').notNull(),
    note: text('note').notNull(),
    ...chain((): AnySQLiteColumn => planWeeks.id),
  },
  (t) => [
    index('plan_weeks_week').on(t.weekFrom),
    chainIndex('plan_weeks_chain', t.chainId),
    check('plan_weeks_hours', sql`bench_hours BETWEEN 0 AND 10000`),
  ],
);

/** Days in which a customer's machines cannot come in: away, or too busy to do without them. */
export const customerAway = sqliteTable(
  'customer_away',
  {
    id: id(),
    customerId: integer('customer_id')
      .notNull()
      .references(() => customers.id),
    fromOn: dayText('from_on').notNull(),
    /** the last day of it */
    toOn: dayText('to_on').notNull(),
    note: text('note').notNull(),
    ...chain((): AnySQLiteColumn => customerAway.id),
  },
  (t) => [
    index('customer_away_customer').on(t.customerId),
    chainIndex('customer_away_chain', t.chainId),
    check('customer_away_days', sql`from_on <= to_on`),
  ],
);

/** A machine's visit in a winter: proposed by the plan, or settled by the manager. Struck: there is none any more. */
export const planVisits = sqliteTable(
  'plan_visits',
  {
    id: id(),
    machineId: integer('machine_id')
      .notNull()
      .references(() => machines.id),
    /** year in which the winter begins */
    winterYear: integer('winter_year').notNull(),
    stands: text('stands').$type<VisitStands>().notNull(),
    /** weeks it is worked on, by their Mondays, and bench hours in each; empty: none yet */
    weeks: text('weeks', { mode: 'json' }).$type<VisitWeek[]>().notNull(),
    /** day it is promised to be ready */
    promisedOn: dayText('promised_on'),
    /** what is renewed and done, and why: as the contract's work of a visit */
    work: text('work', { mode: 'json' }).$type<unknown>().notNull(),
    /** whom it was agreed with */
    saidBy: text('said_by').notNull(),
    note: text('note').notNull(),
    /** the shop goes out to it: its hours are worked at the farm, with the way there and setting up on top */
    atFarm: integer('at_farm', { mode: 'boolean' }).notNull().default(false),
    ...chain((): AnySQLiteColumn => planVisits.id),
  },
  (t) => [
    index('plan_visits_machine').on(t.machineId),
    chainIndex('plan_visits_chain', t.chainId),
    check('plan_visits_stands', sql`stands IN ('proposed', 'pinned', 'agreed', 'postponed', 'done')`),
    check(
      'plan_visits_json',
      sql`json_valid(weeks) AND json_type(weeks) = 'array' AND json_valid(work) AND json_type(work) = 'object'`,
    ),
  ],
);

/** A plan as it was proposed: what it costs, what bound was proven, what found no room. The last that stands counts. */
export const plans = sqliteTable(
  'plans',
  {
    id: id(),
    entryId: entryId(),
    madeOn: dayText('made_on').notNull(),
    winterYear: integer('winter_year').notNull(),
    facts: text('facts', { mode: 'json' }).$type<unknown>().notNull(),
  },
  () => [check('plans_json', sql`json_valid(facts) AND json_type(facts) = 'object'`)],
);

// ---- what feeds no forecast

/** A strip-down as typed so far. */
export const drafts = sqliteTable('drafts', {
  machineId: integer('machine_id')
    .primaryKey()
    .references(() => machines.id),
  draft: text('draft', { mode: 'json' }).$type<unknown>().notNull(),
  keptAt: text('kept_at').notNull(),
});

/** Forecast slips as they were made. */
export const slips = sqliteTable(
  'slips',
  {
    id: id(),
    number: text('number').notNull().unique(),
    machineId: integer('machine_id')
      .notNull()
      .references(() => machines.id),
    /** whose slip it is: stays theirs when the machine is sold on */
    customerId: integer('customer_id').references(() => customers.id),
    madeOn: dayText('made_on').notNull(),
    madeAt: text('made_at').notNull(),
    madeBy: text('made_by').notNull(),
    slip: text('slip', { mode: 'json' }).$type<unknown>().notNull(),
  },
  (t) => [index('slips_machine').on(t.machineId)],
);

/** What the forecast has learned from the shop, kept so that it need not be learned again at each start. */
export const learnings = sqliteTable('learnings', {
  key: text('key').primaryKey(),
  /** of what it was learned from: another one, and it is learned anew */
  fingerprint: text('fingerprint').notNull(),
  learning: text('learning', { mode: 'json' }).$type<unknown>().notNull(),
});

/**
 * What was last forecast of each machine, so that the list need not be worked out again at each start. Derived: it is
 * neither exported nor brought in, and may be dropped at any time.
 */
export const machineForecasts = sqliteTable(
  'machine_forecasts',
  {
    machineId: integer('machine_id')
      .primaryKey()
      .references(() => machines.id),
    asOf: dayText('as_of').notNull(),
    /** name of what the classes had taught then, of the settings and of the model */
    learned: text('learned').notNull(),
    /** something was entered since that it rests on */
    stale: integer('stale', { mode: 'boolean' }).notNull(),
    /** under which head of the list it stands */
    listGroup: text('list_group').notNull(),
    /** deciding hours left of what reaches its limit first, and its low and middle hours left [h]; null: none, or beyond */
    soonestHours: real('soonest_hours'),
    lowHours: real('low_hours'),
    middleHours: real('middle_hours'),
    /** hours from that day to the winter after the one being planned [h]; null: no hours on record */
    planLineHours: real('plan_line_hours'),
    /** names of its assemblies, one a line: what it is found by besides its own names */
    assemblies: text('assemblies').notNull(),
    /** its line of the list, as the contract's machine line */
    line: text('line', { mode: 'json' }).$type<unknown>().notNull(),
    /** what its owner is called for, as the recall list needs it */
    due: text('due', { mode: 'json' }).$type<unknown>().notNull(),
  },
  // the list is put in order from this alone, whatever else its rows hold
  (table) => [
    index('machine_forecasts_listed').on(
      table.asOf,
      table.learned,
      table.stale,
      table.listGroup,
      table.soonestHours,
      table.lowHours,
      table.middleHours,
      table.planLineHours,
    ),
  ],
);

/** One row: the revision of the record up to which stale forecasts are marked; another one, and all of them are stale. */
export const forecastsMarked = sqliteTable('forecasts_marked', {
  id: integer('id').primaryKey(),
  revision: text('revision').notNull(),
});

/** What an import had to say about rows it kept out of the forecast. */
export const importRemarks = sqliteTable('import_remarks', {
  id: id(),
  entryId: entryId(),
  file: text('file').notNull(),
  row: integer('row'),
  column: text('column'),
  value: text('value').notNull(),
  code: text('code').notNull(),
  facts: text('facts', { mode: 'json' }).$type<Record<string, string | number | boolean | null>>().notNull(),
  sizeId: integer('size_id').references(() => sizes.id),
  dialReadingId: integer('dial_reading_id').references(() => dialReadings.id),
});

/** How a sheet with these heads was read, so that the next one like it is read alike: one a noun and set of heads. */
export const sheetMappings = sqliteTable(
  'sheet_mappings',
  {
    id: id(),
    /** what its rows are: "sizes" */
    noun: text('noun').notNull(),
    /** heads in small plain letters, in their order */
    heads: text('heads', { mode: 'json' }).$type<string[]>().notNull(),
    /** which column stands for what, date order, decimal mark, as the contract's sheet mapping */
    mapping: text('mapping', { mode: 'json' }).$type<unknown>().notNull(),
    keptAt: text('kept_at').notNull(),
  },
  (t) => [uniqueIndex('sheet_mappings_heads').on(t.noun, t.heads)],
);

/**
 * What the bench says of a worn hole for its repair: sizes on several axes, the boss, its steel, as the contract's repair facts.
 * One chain a position: whoever saves takes the last row's place.
 */
export const repairFacts = sqliteTable(
  'repair_facts',
  {
    id: id(),
    positionId: integer('position_id')
      .notNull()
      .references(() => positions.id),
    facts: text('facts', { mode: 'json' }).$type<unknown>().notNull(),
    ...chain((): AnySQLiteColumn => repairFacts.id),
  },
  (t) => [
    index('repair_facts_position').on(t.positionId),
    chainIndex('repair_facts_chain', t.chainId),
    check('repair_facts_json', sql`json_valid(facts) AND json_type(facts) = 'object'`),
  ],
);

/** Lengths, channel wear and strip holes of an assembly's slide. One chain an assembly: whoever saves takes the last row's place. */
export const slideFacts = sqliteTable(
  'slide_facts',
  {
    id: id(),
    assemblyId: integer('assembly_id')
      .notNull()
      .references(() => assemblies.id),
    facts: text('facts', { mode: 'json' }).$type<unknown>().notNull(),
    ...chain((): AnySQLiteColumn => slideFacts.id),
  },
  (t) => [
    index('slide_facts_assembly').on(t.assemblyId),
    chainIndex('slide_facts_chain', t.chainId),
    check('slide_facts_json', sql`json_valid(facts) AND json_type(facts) = 'object'`),
  ],
);

/** What this shop goes by otherwise than the program's usual figures of repair; each save is a new row, the last that stands counts. */
export const repairFigures = sqliteTable(
  'repair_figures',
  {
    id: id(),
    entryId: entryId(),
    figures: text('figures', { mode: 'json' }).$type<unknown>().notNull(),
  },
  () => [check('repair_figures_json', sql`json_valid(figures) AND json_type(figures) = 'object'`)],
);

/** The repair chosen for a position, with its sizes as they were shown. One chain a position; struck: none is chosen. */
export const repairChoices = sqliteTable(
  'repair_choices',
  {
    id: id(),
    positionId: integer('position_id')
      .notNull()
      .references(() => positions.id),
    chosenOn: dayText('chosen_on').notNull(),
    choice: text('choice').notNull(),
    /** the option as the contract's repair option */
    option: text('option', { mode: 'json' }).$type<unknown>().notNull(),
    ...chain((): AnySQLiteColumn => repairChoices.id),
  },
  (t) => [
    index('repair_choices_position').on(t.positionId),
    chainIndex('repair_choices_chain', t.chainId),
    check('repair_choices_json', sql`json_valid(option) AND json_type(option) = 'object'`),
  ],
);

/**
 * A forecast that stood: on a slip, in an agreed visit, or just before a strip-down opened the part. Kept with the sizes it foretold,
 * so that it can be scored when the part is measured without the program that made it.
 */
export const keptForecasts = sqliteTable(
  'kept_forecasts',
  {
    id: id(),
    why: text('why').$type<KeptWhy>().notNull(),
    /** of the visit agreed, or of the strip-down; counts no more when that is undone. Null: a slip's */
    entryId: integer('entry_id').references(() => entries.id),
    slipId: integer('slip_id').references(() => slips.id),
    stripDownId: integer('strip_down_id').references(() => stripDowns.id),
    pointId: integer('point_id')
      .notNull()
      .references(() => measuringPoints.id),
    /** which of the point's parts: 0 is the first on record */
    partOrdinal: integer('part_ordinal').notNull(),
    asOf: dayText('as_of').notNull(),
    /** ISO instant: what had been entered by then */
    knownAt: text('known_at').notNull(),
    modelVersion: integer('model_version').notNull(),
    /** of what the classes had been learned from */
    learnedFrom: text('learned_from').notNull(),
    /** hours ahead and the sizes foretold at them, hours at limit, what it rested on: as core/check/foretold.ts */
    foretold: text('foretold', { mode: 'json' }).$type<unknown>().notNull(),
  },
  (t) => [
    index('kept_forecasts_point').on(t.pointId, t.asOf),
    index('kept_forecasts_entry').on(t.entryId).where(sql`entry_id IS NOT NULL`),
    index('kept_forecasts_strip_down').on(t.stripDownId).where(sql`strip_down_id IS NOT NULL`),
    check('kept_forecasts_why', sql`why IN ('slip', 'plan', 'strip-down')`),
    check(
      'kept_forecasts_whose',
      sql`(slip_id IS NOT NULL) = (why = 'slip') AND (strip_down_id IS NOT NULL) = (why = 'strip-down') AND (entry_id IS NULL) = (why = 'slip')`,
    ),
    check('kept_forecasts_json', sql`json_valid(foretold) AND json_type(foretold) = 'object'`),
  ],
);
