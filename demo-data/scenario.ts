import type { Work } from './use.ts';

/*
 * The invented shop's customers, machines and what happened to them. Every name is made up (README.md).
 * First day on record is in winter 2018/19 for the older machines; the last is in November 2026.
 */

export const FIRST_DAY = '2018-11-05';
export const LAST_DAY = '2026-11-06';

export type KindName = 'Front loader' | 'Drawbar and ring' | 'Telescopic pick-up hitch' | 'Rear linkage';

/** "Boom foot pin, left/slack" */
export type PointKey = string;

export type AssemblyPlan = {
  name: string;
  kind: KindName;
  /** machine hours at fitting: 0 as built; null: the shop does not know (the truth is drawn) */
  fittedMachineHours: number | null;
  /** limits the shop entered where the kind has none, or its own in place of the kind's */
  limits?: Record<PointKey, { renewAtMm: number | null; rejectAtMm: number | null; source: string | null }>;
  /** set in place of drawn: harshness and spread together, 1 is the typical rate of the class */
  rateFactor?: Record<PointKey, number>;
};

export type VisitPlan = {
  on: string;
  /** chance that a point is measured for which there is no reason; below 0.3: a call-out */
  look: number;
  /** only this assembly */
  assembly?: string;
  /** measured whatever `look` says */
  must?: PointKey[];
  /** not got at, whatever `look` says */
  leaveOut?: PointKey[];
  /** renewed though not yet worn out */
  renew?: PointKey[];
  /** renewed, and nothing left to measure */
  renewUnmeasured?: PointKey[];
  /** left though due: the customer said no, or has it for the winter after */
  decline?: PointKey[];
  /** measured only; the work is for the winter */
  leaveAll?: boolean;
  /** sizes carry no dial figure: taken from the hours by date */
  noDial?: boolean;
};

export type MeterPlan =
  | { on: string; what: 'new-meter'; lastDialKnown: boolean; newDialHours: number }
  | { on: string; what: 'broken'; until: string };

export type MachinePlan = {
  machine: string;
  customer: string;
  make: string;
  model: string;
  serial: string;
  builtYear: number | null;
  /** null: no meter, hours are estimates */
  meterDigits: number | null;
  hoursBefore: number | null;
  work: Work;
  hoursPerYear: number;
  workShare: number;
  firstDay: string;
  machineHoursAtFirst: number;
  harshness?: number;
  meter?: MeterPlan[];
  /** nobody has read the hours since */
  lastHoursOn?: string;
  /** taken in, its hours still to come */
  noHours?: true;
  assemblies: AssemblyPlan[];
  visits: VisitPlan[];
  /** looked at, never measured */
  neverMeasured?: PointKey[];
  /** renewed by somebody else: the shop was told, with no hours */
  renewedElsewhere?: { assembly: string; point: PointKey; trulyOn: string; toldOn: string }[];
  /** read in place of what is drawn: better than the last, within gauge error */
  sizeAsRead?: { on: string; point: PointKey; station: string; sizeMm: number }[];
};

const HOOK = { renewAtMm: 3, rejectAtMm: 4, source: "hook maker's wear card" };
const KEEPER = { renewAtMm: 8, rejectAtMm: 10, source: "hook maker's wear card" };
const RING_BORE = { renewAtMm: 52, rejectAtMm: 52.5, source: "ring maker's wear page: 52.5 is the end" };
const RING_SECTION = { renewAtMm: 27.5, rejectAtMm: 27, source: "ring maker's wear page: 27.0 is the end" };
const LINK_HOOK = { renewAtMm: 3, rejectAtMm: 4, source: "shop's own rule: a tenth of the section" };
const HITCH_LIMITS = { 'Hook/throat seat depth': HOOK, 'Keeper/gap to ring': KEEPER };
const RING_LIMITS = { 'Ring/eye bore': RING_BORE, 'Ring/least section': RING_SECTION };
const LINKAGE_LIMITS = {
  'Lower link hook, left/seat depth': LINK_HOOK,
  'Lower link hook, right/seat depth': LINK_HOOK,
};

const loader = (fittedMachineHours: number | null): AssemblyPlan => ({
  name: 'Front loader',
  kind: 'Front loader',
  fittedMachineHours,
});
const hitch = (fittedMachineHours: number | null): AssemblyPlan => ({
  name: 'Pick-up hitch',
  kind: 'Telescopic pick-up hitch',
  fittedMachineHours,
  limits: HITCH_LIMITS,
});
const drawbar = (fittedMachineHours: number | null): AssemblyPlan => ({
  name: 'Drawbar',
  kind: 'Drawbar and ring',
  fittedMachineHours,
  limits: RING_LIMITS,
});
const linkage = (fittedMachineHours: number | null): AssemblyPlan => ({
  name: 'Rear linkage',
  kind: 'Rear linkage',
  fittedMachineHours,
  limits: LINKAGE_LIMITS,
});

export const MACHINES: MachinePlan[] = [
  // The loader of the README: three strip-downs, one pin renewed, one pivot at its limit this winter.
  {
    machine: 'Durvane 412',
    customer: 'Hobbrigg Farm',
    make: 'Durvane',
    model: '412',
    serial: 'DV412-00871',
    builtYear: 2017,
    meterDigits: 5,
    hoursBefore: null,
    work: 'livestock',
    hoursPerYear: 650,
    workShare: 0.7,
    firstDay: '2018-11-20',
    machineHoursAtFirst: 905,
    harshness: 1,
    assemblies: [
      {
        ...loader(0),
        rateFactor: {
          'Boom foot pin, left/slack': 1.46,
          'Boom foot pin, right/slack': 0.92,
          'Lift ram pin, rod end, right/pin diameter': 2.4,
          'Tool lock pin, left/pin diameter': 0.94,
          'Tool lock pin, right/pin diameter': 0.92,
          'Carrier pivot, left/bush bore': 0.95,
        },
      },
    ],
    visits: [
      { on: '2020-01-14', look: 0.65, must: ['Boom foot pin, left/slack', 'Tool lock pin, left/pin diameter'] },
      {
        on: '2023-01-10',
        look: 0.9,
        must: [
          'Boom foot pin, left/slack',
          'Boom foot pin, right/slack',
          'Lift ram pin, rod end, right/pin diameter',
          'Tool lock pin, left/pin diameter',
        ],
        renew: ['Lift ram pin, rod end, right/pin diameter'],
      },
      {
        on: '2025-12-09',
        look: 1,
        must: ['Boom foot pin, left/slack', 'Tool lock pin, left/pin diameter'],
        decline: ['Boom foot pin, left/slack', 'Tool lock pin, left/pin diameter'],
      },
    ],
    neverMeasured: ['Tilt ram pin, boom end/slack'],
  },
  {
    machine: 'Durvane 412 no. 2',
    customer: 'Low Tharrow Dairy',
    make: 'Durvane',
    model: '412',
    serial: 'DV412-01302',
    builtYear: 2019,
    meterDigits: 5,
    hoursBefore: null,
    work: 'livestock',
    hoursPerYear: 790,
    workShare: 0.75,
    firstDay: '2019-09-16',
    machineHoursAtFirst: 0,
    assemblies: [loader(0), linkage(0)],
    visits: [
      { on: '2022-11-29', look: 0.4, assembly: 'Front loader' },
      {
        on: '2025-01-21',
        look: 0.7,
        must: ['Tilt ram pin, boom end/slack'],
        renew: ['Tilt ram pin, boom end/slack'],
        renewUnmeasured: ['Top link eye/eye bore'],
      },
    ],
  },
  {
    machine: 'Tillmere 96-4',
    customer: 'Low Tharrow Dairy',
    make: 'Tillmere',
    model: '96-4',
    serial: '96S-2207',
    builtYear: 2014,
    meterDigits: 5,
    hoursBefore: null,
    work: 'grass',
    hoursPerYear: 560,
    workShare: 0.6,
    firstDay: '2018-11-27',
    machineHoursAtFirst: 2430,
    assemblies: [{ ...hitch(0), rateFactor: { 'Hook-frame pivot, left/bush bore': 1.2 } }],
    visits: [
      { on: '2019-01-22', look: 0.4 },
      { on: '2022-01-18', look: 0.3 },
      { on: '2024-12-12', look: 0.6 },
    ],
  },
  // A hitch moves from the first of these two to the second.
  {
    machine: 'Tillmere 118',
    customer: 'Ostwithen Contracting',
    make: 'Tillmere',
    model: '118',
    serial: '118S-0419',
    builtYear: 2018,
    meterDigits: 5,
    hoursBefore: null,
    work: 'grass',
    hoursPerYear: 800,
    workShare: 0.8,
    firstDay: '2019-02-11',
    machineHoursAtFirst: 640,
    assemblies: [hitch(0), { ...linkage(0), rateFactor: { 'Lift rod pin, upper left/pin diameter': 0.66 } }],
    visits: [
      { on: '2021-12-07', look: 0.4 },
      { on: '2023-11-21', look: 0.4, assembly: 'Pick-up hitch' },
      { on: '2024-12-03', look: 0.7, assembly: 'Rear linkage' },
      {
        on: '2026-03-24',
        look: 0.05,
        assembly: 'Rear linkage',
        must: ['Lift rod pin, upper left/pin diameter', 'Lower link hook, left/seat depth'],
        leaveAll: true,
      },
    ],
  },
  {
    machine: 'Tillmere 118 no. 2',
    customer: 'Ostwithen Contracting',
    make: 'Tillmere',
    model: '118',
    serial: '118S-0933',
    builtYear: 2023,
    meterDigits: 5,
    hoursBefore: null,
    work: 'grass',
    hoursPerYear: 760,
    workShare: 0.8,
    firstDay: '2023-10-02',
    machineHoursAtFirst: 12,
    assemblies: [linkage(0)],
    visits: [{ on: '2025-11-25', look: 0.5, assembly: 'Rear linkage' }],
  },
  {
    machine: 'Meddrick M61',
    customer: 'Ostwithen Contracting',
    make: 'Meddrick',
    model: 'M61',
    serial: 'M61-1150',
    builtYear: 2020,
    meterDigits: 5,
    hoursBefore: null,
    work: 'forager',
    hoursPerYear: 900,
    workShare: 0.35,
    firstDay: '2020-04-06',
    machineHoursAtFirst: 0,
    assemblies: [hitch(0)],
    visits: [
      { on: '2022-12-20', look: 0.3 },
      { on: '2024-12-10', look: 0.7 },
    ],
  },
  // Sixty hours a year.
  {
    machine: 'Pellgrave Rondel 44',
    customer: 'Cullathorn Farm',
    make: 'Pellgrave',
    model: 'Rondel 44',
    serial: 'R44-3071',
    builtYear: 2012,
    meterDigits: 5,
    hoursBefore: null,
    work: 'baler',
    hoursPerYear: 60,
    workShare: 1,
    firstDay: '2018-11-14',
    machineHoursAtFirst: 388,
    assemblies: [drawbar(0)],
    visits: [
      { on: '2020-02-11', look: 0.3 },
      { on: '2024-01-30', look: 0.9, must: ['Ring/eye bore'] },
    ],
  },
  // No meters: hours are the haulier's estimates.
  {
    machine: 'Yarrowmet 14 t trailer',
    customer: 'Ostwithen Contracting',
    make: 'Yarrowmet',
    model: '14 t',
    serial: 'YM14-5528',
    builtYear: 2015,
    meterDigits: null,
    hoursBefore: null,
    work: 'haulage',
    hoursPerYear: 310,
    workShare: 1,
    firstDay: '2018-12-03',
    machineHoursAtFirst: 1100,
    assemblies: [drawbar(0)],
    visits: [
      {
        on: '2020-02-04',
        look: 0.65,
        renew: ['Ring/eye bore', 'Ring/least section'],
        renewUnmeasured: ['Ring shank/neck diameter'],
      },
      {
        on: '2024-11-19',
        look: 0.65,
        must: ['Ring/eye bore', 'Ring/least section', 'Spring shackle pin, lower/pin diameter'],
      },
    ],
  },
  {
    machine: 'Hulverd 2200 tanker',
    customer: 'Tollivray Slurry and Haulage',
    make: 'Hulverd',
    model: '2200',
    serial: 'HT-22-0087',
    builtYear: 2016,
    meterDigits: null,
    hoursBefore: null,
    work: 'haulage',
    hoursPerYear: 420,
    workShare: 1,
    firstDay: '2019-01-08',
    machineHoursAtFirst: 900,
    assemblies: [drawbar(0)],
    visits: [
      { on: '2021-01-19', look: 0.4 },
      { on: '2023-02-28', look: 0.3 },
      { on: '2025-02-18', look: 0.9, must: ['Ring/eye bore'] },
      { on: '2026-04-14', look: 0.05, must: ['Spring shackle pin, lower/pin diameter'], leaveAll: true },
    ],
  },
  {
    machine: 'Yarrowmet 10 t trailer',
    customer: 'Tollivray Slurry and Haulage',
    make: 'Yarrowmet',
    model: '10 t',
    serial: 'YM10-2914',
    builtYear: null,
    meterDigits: null,
    hoursBefore: null,
    work: 'haulage',
    hoursPerYear: 240,
    workShare: 1,
    firstDay: '2019-11-12',
    machineHoursAtFirst: 2400,
    assemblies: [{ name: 'Drawbar', kind: 'Drawbar and ring', fittedMachineHours: null }],
    visits: [
      { on: '2022-01-25', look: 0.6 },
      { on: '2025-03-04', look: 0.6 },
    ],
  },
  // Cracked hook, found this autumn.
  {
    machine: 'Ardwen Ridge 150',
    customer: 'Pennark Mains',
    make: 'Ardwen',
    model: 'Ridge 150',
    serial: 'AR150-0266',
    builtYear: 2016,
    meterDigits: 5,
    hoursBefore: null,
    work: 'grass',
    hoursPerYear: 690,
    workShare: 0.7,
    firstDay: '2018-12-11',
    machineHoursAtFirst: 1610,
    assemblies: [hitch(0)],
    visits: [
      { on: '2021-02-02', look: 0.65, must: ['Hook/throat seat depth'] },
      { on: '2024-01-16', look: 0.65, must: ['Hook/throat seat depth'] },
      {
        on: '2026-10-20',
        look: 0.45,
        must: ['Hook/throat seat depth', 'Slide strip, bottom rear/thickness'],
        leaveAll: true,
      },
    ],
  },
  // Four digits: past 9999 the meter starts again.
  {
    machine: 'Ardwen Ridge 130',
    customer: 'Pennark Mains',
    make: 'Ardwen',
    model: 'Ridge 130',
    serial: 'AR130-0034',
    builtYear: 2006,
    meterDigits: 4,
    hoursBefore: null,
    work: 'tillage',
    hoursPerYear: 480,
    workShare: 0.7,
    firstDay: '2018-11-05',
    machineHoursAtFirst: 7480,
    assemblies: [linkage(null)],
    visits: [
      { on: '2019-02-05', look: 0.4 },
      { on: '2023-02-14', look: 0.4 },
      { on: '2025-12-16', look: 0.6 },
    ],
  },
  // Meter replaced, its last figure written down.
  {
    machine: 'Saxholt 13/4',
    customer: 'Dunfallow',
    make: 'Saxholt',
    model: '13/4',
    serial: 'SX134-7120',
    builtYear: 2013,
    meterDigits: 5,
    hoursBefore: null,
    work: 'livestock',
    hoursPerYear: 610,
    workShare: 0.65,
    firstDay: '2018-12-18',
    machineHoursAtFirst: 3240,
    meter: [{ on: '2022-03-08', what: 'new-meter', lastDialKnown: true, newDialHours: 0 }],
    assemblies: [{ ...loader(0), rateFactor: { 'Tilt ram pin, carrier end/slack': 1.005 } }],
    visits: [
      { on: '2019-12-10', look: 0.4 },
      { on: '2021-11-30', look: 0.3 },
      {
        on: '2024-12-03',
        look: 0.7,
        must: ['Tilt ram pin, carrier end/slack', 'Carrier pivot, left/bush bore'],
        renew: ['Boom foot pin, left/slack', 'Tilt ram pin, boom end/slack'],
      },
      { on: '2026-02-17', look: 0.05, must: ['Tilt ram pin, carrier end/slack'], leaveAll: true },
    ],
  },
  // Meter replaced, nobody wrote down its last figure.
  {
    machine: 'Saxholt 15/6',
    customer: 'Skelmarsh Grassland',
    make: 'Saxholt',
    model: '15/6',
    serial: 'SX156-2215',
    builtYear: 2015,
    meterDigits: 5,
    hoursBefore: null,
    work: 'grass',
    hoursPerYear: 720,
    workShare: 0.75,
    firstDay: '2018-11-13',
    machineHoursAtFirst: 2310,
    meter: [{ on: '2021-06-21', what: 'new-meter', lastDialKnown: false, newDialHours: 0 }],
    assemblies: [{ ...hitch(0), rateFactor: { 'Latch pin, left/tip diameter': 1.2 } }],
    visits: [
      { on: '2021-12-14', look: 0.58 },
      {
        on: '2024-02-06',
        look: 0.1,
        must: ['Side pad, left/thickness'],
        renewUnmeasured: ['Side pad, right/thickness'],
      },
    ],
  },
  // Meter dead from May 2023 to May 2024.
  {
    machine: 'Tillmere 74',
    customer: 'Ravensough Farm',
    make: 'Tillmere',
    model: '74',
    serial: '74L-1838',
    builtYear: 2016,
    meterDigits: 5,
    hoursBefore: null,
    work: 'livestock',
    hoursPerYear: 520,
    workShare: 0.7,
    firstDay: '2019-01-15',
    machineHoursAtFirst: 1290,
    meter: [{ on: '2023-05-10', what: 'broken', until: '2024-05-14' }],
    assemblies: [loader(0)],
    visits: [
      { on: '2020-11-24', look: 0.4 },
      { on: '2023-12-19', look: 0.3, noDial: true },
      { on: '2026-01-27', look: 0.7, must: ['Carrier pivot, left/bush bore'] },
    ],
  },
  // A latch pin and a strip renewed by a dealer: told on the telephone, no hours.
  {
    machine: 'Durvane 515',
    customer: 'Yeldersough Estate',
    make: 'Durvane',
    model: '515',
    serial: 'DV515-00219',
    builtYear: 2015,
    meterDigits: 5,
    hoursBefore: null,
    work: 'grass',
    hoursPerYear: 650,
    workShare: 0.7,
    firstDay: '2018-11-28',
    machineHoursAtFirst: 2080,
    assemblies: [hitch(0)],
    visits: [
      { on: '2020-01-28', look: 0.65, must: ['Latch pin, left/tip diameter', 'Slide strip, bottom rear/thickness'] },
      {
        on: '2024-11-26',
        look: 0.65,
        must: [
          'Latch pin, left/tip diameter',
          'Slide strip, bottom rear/thickness',
          'Hook-frame pivot, left/bush bore',
        ],
        renew: ['Slide strip, bottom front/thickness'],
      },
    ],
    renewedElsewhere: [
      {
        assembly: 'Pick-up hitch',
        point: 'Latch pin, left/tip diameter',
        trulyOn: '2022-04-12',
        toldOn: '2023-06-30',
      },
      {
        assembly: 'Pick-up hitch',
        point: 'Slide strip, bottom rear/thickness',
        trulyOn: '2022-04-12',
        toldOn: '2023-06-30',
      },
    ],
  },
  // Bought second-hand with a new meter: 4300 h before it, by the seller's word; nothing known of its parts.
  {
    machine: 'Ardwen Ridge 110',
    customer: 'Lumbrey College Farm',
    make: 'Ardwen',
    model: 'Ridge 110',
    serial: 'AR110-0771',
    builtYear: 2011,
    meterDigits: 5,
    hoursBefore: 4300,
    work: 'livestock',
    hoursPerYear: 430,
    workShare: 0.6,
    firstDay: '2021-09-06',
    machineHoursAtFirst: 4300,
    assemblies: [loader(null), linkage(null)],
    visits: [
      { on: '2022-01-11', look: 0.5, assembly: 'Front loader' },
      { on: '2025-01-28', look: 0.6 },
    ],
  },
  // Two looks within 150 hours: the second reads better.
  {
    machine: 'Tillmere 88',
    customer: 'Wethermoss Machinery Pool',
    make: 'Tillmere',
    model: '88',
    serial: '88S-1126',
    builtYear: 2017,
    meterDigits: 5,
    hoursBefore: null,
    work: 'grass',
    hoursPerYear: 600,
    workShare: 0.7,
    firstDay: '2019-02-19',
    machineHoursAtFirst: 700,
    assemblies: [
      { ...hitch(0), rateFactor: { 'Slide strip, top rear/thickness': 0.9, 'Slide strip, top front/thickness': 1.5 } },
    ],
    visits: [
      { on: '2022-02-08', look: 0.58, must: ['Slide strip, top rear/thickness'] },
      {
        on: '2025-02-04',
        look: 0.58,
        must: ['Slide strip, top rear/thickness', 'Slide strip, top front/thickness'],
        decline: ['Slide strip, top front/thickness'],
      },
      {
        on: '2025-05-27',
        look: 0.1,
        must: ['Slide strip, top rear/thickness', 'Slide strip, top front/thickness', 'Latch pin, right/tip diameter'],
        decline: ['Slide strip, top front/thickness'],
      },
    ],
    sizeAsRead: [{ on: '2025-05-27', point: 'Slide strip, top rear/thickness', station: 'rear', sizeMm: 11.2 }],
  },
  // Taken in, never measured.
  {
    machine: 'Durvane 310',
    customer: 'Brindlathe Smallholding',
    make: 'Durvane',
    model: '310',
    serial: 'DV310-00066',
    builtYear: 2021,
    meterDigits: 5,
    hoursBefore: null,
    work: 'livestock',
    hoursPerYear: 330,
    workShare: 0.6,
    firstDay: '2023-03-21',
    machineHoursAtFirst: 540,
    assemblies: [loader(0)],
    visits: [],
  },
  // Nobody has read its hours for over a year; long names.
  {
    machine: 'Saxholt 11/2',
    customer: 'Threepwater Common Graziers and Hedge-laying Partnership of Upper and Nether Lumbrey',
    make: 'Saxholt',
    model: '11/2 narrow-track with front ballast carrier',
    serial: 'SX112-0009-B',
    builtYear: 2009,
    meterDigits: 5,
    hoursBefore: null,
    work: 'tillage',
    hoursPerYear: 380,
    workShare: 0.6,
    firstDay: '2019-01-29',
    machineHoursAtFirst: 3950,
    lastHoursOn: '2025-08-19',
    assemblies: [{ ...linkage(null), name: 'Rear linkage with side stabilisers and quick-fit hook ends' }],
    visits: [
      { on: '2020-02-18', look: 0.4 },
      { on: '2024-01-09', look: 0.6 },
    ],
  },
  {
    machine: 'Saxholt 15/6 high-clearance, on long loan to the machinery pool',
    customer: 'Wethermoss Machinery Pool',
    make: 'Saxholt',
    model: '15/6 high-clearance',
    serial: 'SX156-3380',
    builtYear: 2020,
    meterDigits: 5,
    hoursBefore: null,
    work: 'livestock',
    hoursPerYear: 710,
    workShare: 0.6,
    firstDay: '2020-10-12',
    machineHoursAtFirst: 35,
    assemblies: [loader(0)],
    visits: [
      { on: '2023-11-14', look: 0.4 },
      { on: '2026-02-10', look: 0.7 },
    ],
  },
  // The rest: ordinary machines.
  {
    machine: 'Ardwen Ridge 150 no. 2',
    customer: 'Mossavell Biogas',
    make: 'Ardwen',
    model: 'Ridge 150',
    serial: 'AR150-0512',
    builtYear: 2019,
    meterDigits: 5,
    hoursBefore: null,
    work: 'grass',
    hoursPerYear: 890,
    workShare: 0.7,
    firstDay: '2019-10-07',
    machineHoursAtFirst: 60,
    assemblies: [hitch(0)],
    visits: [
      { on: '2022-12-06', look: 0.4 },
      { on: '2025-12-11', look: 0.7, must: ['Latch pin, right/tip diameter', 'Slide strip, bottom front/thickness'] },
    ],
  },
  {
    machine: 'Durvane 515 no. 2',
    customer: 'Mossavell Biogas',
    make: 'Durvane',
    model: '515',
    serial: 'DV515-00604',
    builtYear: 2018,
    meterDigits: 5,
    hoursBefore: null,
    work: 'livestock',
    hoursPerYear: 780,
    workShare: 0.8,
    firstDay: '2018-11-19',
    machineHoursAtFirst: 150,
    harshness: 1.45,
    assemblies: [loader(0)],
    visits: [
      { on: '2021-01-12', look: 0.4 },
      { on: '2023-01-24', look: 0.4, renewUnmeasured: ['Lift ram pin, foot end, left/pin diameter'] },
      {
        on: '2025-01-14',
        look: 0.6,
        must: ['Tilt ram pin, boom end/slack'],
        decline: ['Tilt ram pin, boom end/slack', 'Carrier pivot, left/bush bore'],
      },
      { on: '2026-04-21', look: 0.05, must: ['Tilt ram pin, boom end/slack'], leaveAll: true },
    ],
  },
  {
    machine: 'Tillmere 96-4 no. 2',
    customer: 'Skelmarsh Grassland',
    make: 'Tillmere',
    model: '96-4',
    serial: '96S-2561',
    builtYear: 2016,
    meterDigits: 5,
    hoursBefore: null,
    work: 'grass',
    hoursPerYear: 540,
    workShare: 0.6,
    firstDay: '2019-02-26',
    machineHoursAtFirst: 1380,
    assemblies: [{ ...hitch(0), rateFactor: { 'Ram pin, cap end/pin diameter': 1.05 } }],
    visits: [
      { on: '2020-12-01', look: 0.3 },
      { on: '2024-02-20', look: 0.6, must: ['Ram pin, cap end/pin diameter'] },
    ],
  },
  {
    machine: 'Saxholt 13/4 no. 2',
    customer: 'Ravensough Farm',
    make: 'Saxholt',
    model: '13/4',
    serial: 'SX134-7944',
    builtYear: 2014,
    meterDigits: 5,
    hoursBefore: null,
    work: 'tillage',
    hoursPerYear: 510,
    workShare: 0.7,
    firstDay: '2019-11-05',
    machineHoursAtFirst: 2620,
    assemblies: [{ ...linkage(0), rateFactor: { 'Top link pin/pin diameter': 0.785 } }],
    visits: [
      { on: '2021-12-14', look: 0.4 },
      { on: '2024-12-17', look: 0.6 },
      {
        on: '2026-02-24',
        look: 0.05,
        must: ['Top link pin/pin diameter', 'Lower link hook, left/seat depth', 'Lower link hook, right/seat depth'],
        leaveAll: true,
      },
    ],
  },
  {
    machine: 'Durvane 412 no. 3',
    customer: 'Yeldersough Estate',
    make: 'Durvane',
    model: '412',
    serial: 'DV412-01655',
    builtYear: 2020,
    meterDigits: 5,
    hoursBefore: null,
    work: 'livestock',
    hoursPerYear: 590,
    workShare: 0.65,
    firstDay: '2020-11-09',
    machineHoursAtFirst: 48,
    assemblies: [{ ...loader(420) }],
    visits: [
      { on: '2022-12-13', look: 0.3 },
      { on: '2025-02-11', look: 0.6 },
    ],
  },
  {
    machine: 'Tillmere 74 no. 2',
    customer: 'Brindlathe Smallholding',
    make: 'Tillmere',
    model: '74',
    serial: '74L-2190',
    builtYear: 2018,
    meterDigits: 5,
    hoursBefore: null,
    work: 'grass',
    hoursPerYear: 400,
    workShare: 0.5,
    firstDay: '2021-02-15',
    machineHoursAtFirst: 930,
    assemblies: [linkage(0)],
    visits: [{ on: '2023-12-05', look: 0.6 }],
  },
  {
    machine: 'Ardwen Ridge 130 no. 2',
    customer: 'Dunfallow',
    make: 'Ardwen',
    model: 'Ridge 130',
    serial: 'AR130-0418',
    builtYear: 2017,
    meterDigits: 5,
    hoursBefore: null,
    work: 'grass',
    hoursPerYear: 570,
    workShare: 0.6,
    firstDay: '2020-01-20',
    machineHoursAtFirst: 1490,
    assemblies: [hitch(0)],
    visits: [
      { on: '2023-02-07', look: 0.4 },
      { on: '2025-12-02', look: 0.6 },
    ],
  },
  {
    machine: 'Durvane 310 no. 2',
    customer: 'Cullathorn Farm',
    make: 'Durvane',
    model: '310',
    serial: 'DV310-00145',
    builtYear: 2018,
    meterDigits: 5,
    hoursBefore: null,
    work: 'livestock',
    hoursPerYear: 450,
    workShare: 0.7,
    firstDay: '2019-03-12',
    machineHoursAtFirst: 210,
    harshness: 0.75,
    assemblies: [loader(0)],
    visits: [
      { on: '2022-02-15', look: 0.4 },
      { on: '2026-01-20', look: 0.6 },
    ],
  },
  {
    machine: 'Pellgrave Rondel 52',
    customer: 'Ostwithen Contracting',
    make: 'Pellgrave',
    model: 'Rondel 52',
    serial: 'R52-0418',
    builtYear: 2019,
    meterDigits: 5,
    hoursBefore: null,
    work: 'baler',
    hoursPerYear: 190,
    workShare: 1,
    firstDay: '2019-11-26',
    machineHoursAtFirst: 205,
    assemblies: [drawbar(0)],
    visits: [
      { on: '2022-01-18', look: 0.4 },
      { on: '2025-12-18', look: 0.6 },
    ],
  },
  {
    machine: 'Yarrowmet 18 t trailer',
    customer: 'Mossavell Biogas',
    make: 'Yarrowmet',
    model: '18 t',
    serial: 'YM18-0771',
    builtYear: 2020,
    meterDigits: null,
    hoursBefore: null,
    work: 'haulage',
    hoursPerYear: 520,
    workShare: 1,
    firstDay: '2020-05-18',
    machineHoursAtFirst: 0,
    assemblies: [drawbar(0)],
    visits: [
      { on: '2023-01-31', look: 0.4 },
      { on: '2026-01-13', look: 0.7 },
    ],
  },
  {
    machine: 'Saxholt 11/2 no. 2',
    customer: 'Upper Garvoth',
    make: 'Saxholt',
    model: '11/2',
    serial: 'SX112-0131',
    builtYear: 2012,
    meterDigits: 5,
    hoursBefore: null,
    work: 'livestock',
    hoursPerYear: 350,
    workShare: 0.7,
    firstDay: '2019-12-02',
    machineHoursAtFirst: 2210,
    assemblies: [loader(null)],
    visits: [
      { on: '2020-12-08', look: 0.4 },
      { on: '2025-02-25', look: 0.6 },
    ],
  },
  {
    machine: 'Tillmere 88 no. 2',
    customer: 'Upper Garvoth',
    make: 'Tillmere',
    model: '88',
    serial: '88S-1470',
    builtYear: 2020,
    meterDigits: 5,
    hoursBefore: null,
    work: 'grass',
    hoursPerYear: 500,
    workShare: 0.6,
    firstDay: '2020-12-01',
    machineHoursAtFirst: 90,
    assemblies: [hitch(0)],
    visits: [
      { on: '2023-01-17', look: 0.3 },
      { on: '2025-12-04', look: 0.6 },
    ],
  },
  {
    machine: 'Durvane 515 no. 3',
    customer: 'Oskerby Seeds',
    make: 'Durvane',
    model: '515',
    serial: 'DV515-00911',
    builtYear: 2021,
    meterDigits: 5,
    hoursBefore: null,
    work: 'tillage',
    hoursPerYear: 620,
    workShare: 0.75,
    firstDay: '2021-03-29',
    machineHoursAtFirst: 0,
    assemblies: [linkage(0)],
    visits: [
      { on: '2023-11-28', look: 0.4 },
      { on: '2026-02-03', look: 0.6 },
    ],
  },
  // Taken in this autumn: one with its hours still to come, one with nothing listed on it yet.
  {
    machine: 'Hulverd 1600 tanker',
    customer: 'Tollivray Slurry and Haulage',
    make: 'Hulverd',
    model: '1600',
    serial: 'HT-16-0213',
    builtYear: 2019,
    meterDigits: null,
    hoursBefore: null,
    work: 'haulage',
    hoursPerYear: 350,
    workShare: 1,
    firstDay: '2026-10-13',
    machineHoursAtFirst: 2300,
    noHours: true,
    assemblies: [drawbar(null)],
    visits: [],
  },
  {
    machine: 'Meddrick M48',
    customer: 'Oskerby Seeds',
    make: 'Meddrick',
    model: 'M48',
    serial: 'M48-0327',
    builtYear: 2018,
    meterDigits: 5,
    hoursBefore: null,
    work: 'forager',
    hoursPerYear: 420,
    workShare: 0.4,
    firstDay: '2026-10-27',
    machineHoursAtFirst: 2893,
    assemblies: [],
    visits: [],
  },
];

/** The one assembly that changed machines. */
export const MOVES = [
  { machine: 'Tillmere 118', assembly: 'Pick-up hitch', on: '2023-11-28', toMachine: 'Tillmere 118 no. 2' },
];
/** Strip-downs of an assembly after it moved: its sizes stay under the machine it was listed with, by date. */
export const VISITS_AFTER_MOVE: { machine: string; assembly: string; visit: VisitPlan }[] = [
  { machine: 'Tillmere 118', assembly: 'Pick-up hitch', visit: { on: '2025-11-25', look: 0.58, noDial: true } },
];

export type FindingRow = {
  machine: string;
  assembly: string;
  position: string;
  date: string;
  finding: 'crack' | 'bent' | 'broken' | 'seized' | 'missing' | 'other';
  severity: 'watch' | 'repair' | 'do-not-use';
  note: string;
  closed_date: string;
  outcome: string;
};

const found = (
  machine: string,
  assembly: string,
  position: string,
  date: string,
  [finding, severity]: [FindingRow['finding'], FindingRow['severity']],
  note: string,
  closed?: [string, string],
): FindingRow => ({
  machine,
  assembly,
  position,
  date,
  finding,
  severity,
  note,
  closed_date: closed?.[0] ?? '',
  outcome: closed?.[1] ?? '',
});

export const FINDINGS: FindingRow[] = [
  found(
    'Ardwen Ridge 150',
    'Pick-up hitch',
    'Hook',
    '2026-10-20',
    ['crack', 'do-not-use'],
    'Crack across the throat, 18 mm, seen with dye. Farmer told by telephone the same day; hook tied up and tagged.',
  ),
  found(
    'Hulverd 2200 tanker',
    'Drawbar',
    'Drawbar pivot, right',
    '2025-02-18',
    ['other', 'watch'],
    'Keeper bolt of the pivot pin loose again. New bolt offered with a bracket; customer declined: "it will see the season out".',
  ),
  found(
    'Durvane 412',
    'Front loader',
    'Tilt ram pin, carrier end',
    '2023-01-10',
    ['seized', 'repair'],
    'Pin stuck in the ram eye, grease way blocked.',
    ['2023-01-13', 'Pressed out, grease way drilled clear, pin refitted.'],
  ),
  found(
    'Durvane 515 no. 2',
    'Front loader',
    'Lift ram pin, foot end, left',
    '2023-01-24',
    ['bent', 'repair'],
    'Pin bent about 1 mm over its length.',
    ['2023-01-26', 'New pin made and fitted.'],
  ),
  found(
    'Saxholt 15/6',
    'Pick-up hitch',
    'Side pad, right',
    '2024-02-06',
    ['missing', 'repair'],
    'Pad gone, two screws sheared.',
    ['2024-02-08', 'New pad and screws fitted.'],
  ),
  found(
    'Tillmere 96-4',
    'Pick-up hitch',
    'Latch pin, right',
    '2024-12-12',
    ['other', 'watch'],
    'Spring weak: latch closes by hand only. To be looked at next time the carrier is out.',
  ),
  found(
    'Yarrowmet 14 t trailer',
    'Drawbar',
    'Ring shank',
    '2020-02-04',
    ['other', 'do-not-use'],
    'Nut of the ring shank slack, thread damaged over three turns.',
    ['2020-02-11', 'Ring, shank and nut replaced as one bought part.'],
  ),
  found(
    'Durvane 412 no. 2',
    'Rear linkage',
    'Top link eye',
    '2025-01-21',
    ['crack', 'repair'],
    'Hairline at the weld of the eye, 6 mm.',
    ['2025-01-24', 'Top link replaced.'],
  ),
  found(
    'Saxholt 13/4 no. 2',
    'Rear linkage',
    'Lower link hook, left',
    '2024-12-17',
    ['broken', 'repair'],
    'Release lever of the hook broken off.',
    ['2024-12-18', 'Lever replaced, lock tried three times.'],
  ),
  found(
    'Ardwen Ridge 110',
    'Front loader',
    'Carrier pivot, right',
    '2025-01-28',
    ['other', 'watch'],
    'Weld of an earlier repair under the pivot, not ours; no crack seen.',
  ),
  found(
    'Durvane 515 no. 2',
    'Front loader',
    'Carrier pivot, left',
    '2025-01-14',
    ['other', 'repair'],
    'Bush 35.92, renew at 36.1. New bush and pin offered; customer put them off: silage first. Loader has not been in for it since.',
  ),
  found(
    'Durvane 515 no. 2',
    'Front loader',
    'Tilt ram pin, boom end',
    '2026-04-21',
    ['other', 'watch'],
    '1.4 slack, felt from the seat. In for a hose only; to be done with the carrier pivot this winter.',
  ),
  found(
    'Saxholt 15/6',
    'Pick-up hitch',
    'Hook',
    '2024-02-06',
    ['other', 'watch'],
    'Nothing measured but the left pad: tractor wanted back the same evening. Asked to bring it in for a strip-down.',
  ),
  found(
    'Hulverd 2200 tanker',
    'Drawbar',
    'Spring shackle pin, lower',
    '2026-04-14',
    ['other', 'watch'],
    'Looked at while the tank was in for a valve: dry, greased. Renew with the upper one when the springs come out.',
  ),
  found(
    'Tillmere 88',
    'Pick-up hitch',
    'Slide strip, top front',
    '2025-05-27',
    ['other', 'watch'],
    '10.1 at the front end, renew at 9.5. Left for the winter: full set of strips to be ordered beforehand.',
  ),
  found(
    'Meddrick M61',
    'Pick-up hitch',
    'Ram pin, rod end',
    '2022-12-20',
    ['seized', 'repair'],
    'Pin would not turn, cross-drilling full of old grease.',
    ['2022-12-22', 'Drilled clear, pin polished, refitted.'],
  ),
  found(
    'Ardwen Ridge 130',
    'Rear linkage',
    'Lift rod pin, lower left',
    '2023-02-14',
    ['bent', 'repair'],
    'Pin bent, rod could not be turned by hand.',
    ['2023-02-16', 'New pin made and fitted.'],
  ),
  found(
    'Yarrowmet 18 t trailer',
    'Drawbar',
    'Spring eye, front',
    '2023-01-31',
    ['other', 'repair'],
    'Bush walked out of the eye by 8 mm.',
    ['2023-02-02', 'Pressed back, two spots of weld on the collar.'],
  ),
  found(
    'Yarrowmet 14 t trailer',
    'Drawbar',
    'Spring shackle pin, upper',
    '2024-11-19',
    ['missing', 'repair'],
    'Grease nipple gone, hole full of dirt.',
    ['2024-11-19', 'Cleaned, new nipple, greased till clean.'],
  ),
  found(
    'Pellgrave Rondel 52',
    'Drawbar',
    'Drawbar pivot, right',
    '2022-01-18',
    ['missing', 'repair'],
    'Retaining ring of the pin missing.',
    ['2022-01-18', 'New ring fitted.'],
  ),
  found(
    'Tillmere 74',
    'Front loader',
    'Tool lock pin, right',
    '2020-11-24',
    ['bent', 'repair'],
    'Lock lever bent, pin goes home only half way.',
    ['2020-11-26', 'Lever straightened, travel of the pin checked.'],
  ),
  found(
    'Tillmere 96-4 no. 2',
    'Pick-up hitch',
    'Side pad, left',
    '2024-02-20',
    ['broken', 'watch'],
    'Corner of the pad broken off, about 15 mm; the rest sits well.',
  ),
  found(
    'Durvane 412 no. 3',
    'Front loader',
    'Boom foot pin, right',
    '2022-12-13',
    ['seized', 'repair'],
    'Pin turns with the boom in its lug.',
    ['2022-12-15', 'Pressed out, lug bore cleaned, stop plate renewed.'],
  ),
  found(
    'Saxholt 11/2',
    'Rear linkage with side stabilisers and quick-fit hook ends',
    'Top link pin',
    '2024-01-09',
    ['missing', 'repair'],
    'Linch pin replaced by a bent nail.',
    ['2024-01-09', 'Proper linch pin on a chain.'],
  ),
  found(
    'Saxholt 15/6 high-clearance, on long loan to the machinery pool',
    'Front loader',
    'Carrier pivot, left',
    '2023-11-14',
    ['seized', 'repair'],
    'Bush dry, nipple painted over.',
    ['2023-11-16', 'Nipple freed, bush flushed and greased.'],
  ),
  found(
    'Durvane 515 no. 3',
    'Rear linkage',
    'Lower link hook, right',
    '2023-11-28',
    ['other', 'repair'],
    'Lock does not spring back, packed with soil.',
    ['2023-11-28', 'Taken apart, cleaned, new spring.'],
  ),
  found(
    'Durvane 310 no. 2',
    'Front loader',
    'Lift ram pin, foot end, right',
    '2022-02-15',
    ['bent', 'repair'],
    'Stop plate bent, one screw sheared; the pin itself is straight.',
    ['2022-02-16', 'New plate and screws.'],
  ),
  found(
    'Ardwen Ridge 150 no. 2',
    'Pick-up hitch',
    'Latch pin, right',
    '2022-12-06',
    ['broken', 'repair'],
    'Return spring of the latch broken.',
    ['2022-12-08', 'Both springs renewed.'],
  ),
  found(
    'Tillmere 118',
    'Pick-up hitch',
    'Keeper',
    '2021-12-07',
    ['bent', 'repair'],
    'Keeper bent upward by about 3 mm, closes on the ring.',
    ['2021-12-10', 'Keeper renewed as a bought part, gap measured again.'],
  ),
  found(
    'Durvane 515',
    'Pick-up hitch',
    'Hook-frame pivot, right',
    '2024-11-26',
    ['crack', 'repair'],
    'Hairline in the weld of the grease pipe bracket, not in the frame.',
    ['2024-11-28', 'Bracket cut off, ground, welded anew.'],
  ),
  found(
    'Durvane 412',
    'Front loader',
    'Tool lock pin, left',
    '2025-12-09',
    ['other', 'watch'],
    '24.26 mm, renew at 24.0 mm. To be renewed with the boom foot pins next winter; farmer told and agrees.',
  ),
];

/** What the trade says of the classes; common practice, no source. "Swivel collar" has none. */
export const TRADE_WEAR = [
  ['Nylon slide strip', 2, 3, 5000, 6000],
  ['Greased pin', 0.8, 1.2, 4500, 7000],
  ['Greased bush', 0.8, 1.2, 4000, 6500],
  ['Pivot slack', 1, 1.5, 4000, 5500],
  ['Latch and lock pin', 0.8, 1.2, 4000, 6000],
  ['Towing hook and keeper', 2.5, 3.5, 5000, 8000],
  ['Towing ring', 2, 3, 3500, 5000],
  ['Lift shaft bush', 0.1, 0.2, 5000, 8000],
  ['Linkage eye', 1.5, 2.5, 5000, 8000],
  ['Linkage hook', 2.5, 3.5, 6000, 9000],
] as const;
