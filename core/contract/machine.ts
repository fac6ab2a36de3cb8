import { z } from 'zod';
import type { ListGroup } from '../shop/role.ts';
import { zPointForecast } from './forecast.ts';
import { zClock, zHoursSource } from './hours.ts';
import { operation } from './operation.ts';
import { zStandingPhoto } from './photo.ts';
import {
  zDay,
  zDecides,
  zDeclined,
  zDialEventKind,
  zFindingKind,
  zHours,
  zId,
  zJobFault,
  zMeasures,
  zMeterDigits,
  zName,
  zNote,
  zRange,
  zRenewalKind,
  zRole,
  zSeverity,
  zShare,
  zSizeEvent,
  zSizeMm,
  zWears,
} from './shapes.ts';
import { zKindJoint, zSketch } from './shop.ts';

export const zCustomer = z.object({
  customerId: zId,
  name: z.string(),
  place: z.string(),
  address: z.string(),
  phone: z.string(),
  email: z.string(),
});

/** Where a machine's hours stand on the as-of day. */
export const zHoursNow = z.object({
  /** machine hours; null: no hours on record yet */
  machineHours: z.number().nullable(),
  sdHours: z.number(),
  estimated: z.boolean(),
  machineHoursRead: z.number().nullable(),
  readOn: zDay.nullable(),
  /** what the present meter should show today [h]; of a machine that has none, the dial it goes by */
  dialHours: z.number().nullable(),
  /** the machine whose dial it goes by, where that is another's: the one that pulls it */
  dialMachine: z.object({ machineId: zId, name: z.string() }).nullable(),
});
export type HoursNow = z.infer<typeof zHoursNow>;

/** A winter on the machine's hours axis, at its own use. */
export const zWinterBand = z.object({
  name: z.string(),
  from: zDay,
  to: zDay,
  fromMachineHours: z.number(),
  toMachineHours: z.number(),
});

export const zFinding = z.object({
  findingId: zId,
  machineId: zId,
  assemblyId: zId,
  positionId: zId.nullable(),
  item: z.int().nullable(),
  position: z.string().nullable(),
  takenOn: zDay,
  kind: zFindingKind,
  severity: zSeverity,
  note: z.string(),
  closedOn: zDay.nullable(),
  outcome: z.string().nullable(),
  /** what a customer last said who does not want it made good; it stays open all the same */
  declined: zDeclined.nullable(),
});
export type Finding = z.infer<typeof zFinding>;

/** Said by a customer who does not want a finding made good; struck when it was noted wrongly. */
export const zDecline = zDeclined.extend({ declineId: zId, struck: z.boolean(), reason: z.string() });

/** With its photos, and all that customers said of it. */
export const zFindingWhole = zFinding.extend({ photos: z.array(zStandingPhoto), declines: z.array(zDecline) });
export type FindingWhole = z.infer<typeof zFindingWhole>;

export const zListGroup = z.enum([
  'do-not-use',
  'may-be-passed',
  'this-winter',
  'later',
  'no-forecast',
] satisfies ListGroup[]);

/** What a machine is called and whose it is. */
export const zMachineNames = z.object({
  machineId: zId,
  name: z.string(),
  makeModel: z.string(),
  serial: z.string(),
  customer: z.string(),
  place: z.string(),
});
export type MachineNames = z.infer<typeof zMachineNames>;

/** One line of the Machines list: the point that reaches its limit first, and the others as thin lines. */
export const zMachineLine = zMachineNames.extend({
  assemblies: z.array(z.string()),
  hours: zHoursNow,
  hoursPerYear: z.number().nullable(),
  /** the winter being planned and the next two in hours from now, at this machine's use */
  winters: z.array(z.object({ name: z.string(), fromHours: z.number(), toHours: z.number() })),
  /** hours from now to the start of the winter after the one being planned */
  planLineHours: z.number().nullable(),
  planWinter: z.string(),
  group: zListGroup,
  first: z
    .object({
      pointId: zId,
      item: z.int(),
      position: z.string(),
      point: z.string(),
      hoursLeft: zRange,
      decides: zDecides,
      decidingHoursLeft: z.number().nullable(),
      dateMiddle: zDay.nullable(),
      /** when the deciding hours are reached */
      dateDeciding: zDay.nullable(),
      ownReadings: z.int(),
      likeParts: z.int(),
      chancePastLimit: z.number().nullable(),
      pastLimitMm: z.number().nullable(),
    })
    .nullable(),
  /** the next two points */
  others: z.array(z.object({ item: z.int(), hoursLeft: zRange })),
  openFindings: z.array(zFinding),
});
export type MachineLine = z.infer<typeof zMachineLine>;

/** The forecasting of a large shop that runs beside the program: a job, and the share of it that is done. */
const zForecasting = z.object({ jobId: z.string(), share: z.number() });
export type Forecasting = z.infer<typeof zForecasting>;

export const machinesList = operation(
  'machines/list',
  z.object({
    /** do not wait where nothing has been learned yet: forecast from what the trade says, and learn meanwhile */
    atOnce: z.boolean().default(false),
  }),
  z.object({
    asOf: zDay,
    machines: z.array(zMachineLine),
    /** figures are from what the trade says; the classes are being learned, to be asked again soon */
    learning: z.boolean(),
    forecasting: zForecasting.nullable(),
  }),
  { title: 'All machines, soonest first by deciding hours' },
);

/** An id out of the record, among thousands: to look closer at each than this costs as much as to read them. */
const zIdGiven = z.number();

export type ListRange = { fromHours: number; toHours: number };

export const machinesOrder = operation(
  'machines/order',
  z.object({
    /** words that stand in a machine's names, its owner's, its place or its assemblies; empty: all machines */
    find: z.string().max(200).default(''),
    atOnce: z.boolean().default(false),
  }),
  z.object({
    asOf: zDay,
    /** of all machines, whatever is found */
    count: z.int(),
    /** not to be used, may be past a limit, or reach one before the next winter */
    thisWinter: z.int(),
    /** name of the winter after the one being planned; null: no machine's hours are known */
    winterAfter: z.string().nullable(),
    /** hours left that one scale for all machines shows */
    range: z.object({ fromHours: z.number(), toHours: z.number() }),
    /** machines found, group by group, soonest first */
    groups: z.array(z.object({ group: zListGroup, machineIds: z.array(zIdGiven) })),
    /** figures are from what the trade says; the classes are being learned */
    fromPriors: z.boolean(),
    /** machines of a large shop whose figures are older than what they rest on, or that have none yet */
    older: z.int(),
    /** null: none is wanted, it is held off, or it waits for other long work */
    forecasting: zForecasting.nullable(),
    /** somebody broke the forecasting off, or it came to grief on a fault: it begins again when asked for */
    heldOff: z.object({ fault: zJobFault.nullable() }).nullable(),
  }),
  { title: 'Which machines stand in the list, in its order, without their lines' },
);
export type MachinesOrder = z.infer<typeof machinesOrder.zReply>;

export const machinesLines = operation(
  'machines/lines',
  z.object({ machineIds: z.array(zId).max(200) }),
  /** those on record, in the order asked */
  z.object({ lines: z.array(zMachineLine) }),
  { title: 'Lines of the list of some machines' },
);

export const machinesNames = operation('machines/names', z.object({}), z.object({ machines: z.array(zMachineNames) }), {
  title: 'What all machines are called and whose they are, by name',
});

/** Who entered a row and when; put right, it stays visible and counts no more. */
const rowHistory = {
  madeAt: z.string(),
  madeBy: z.string(),
  /** why it took another's place */
  reason: z.string(),
  superseded: z.boolean(),
  /** only says that the row it took the place of never held */
  struck: z.boolean(),
};

export const machinesStopped = operation('machines/stopped', z.object({}), z.object({ findings: z.array(zFinding) }), {
  title: 'Open findings that forbid the use of a machine, of all machines',
});

export const zDialRow = z.object({
  dialReadingId: zId,
  takenOn: zDay,
  kind: zDialEventKind,
  dialHours: z.number().nullable(),
  newDialHours: z.number().nullable(),
  errorHours: z.number().nullable(),
  machineHours: z.number().nullable(),
  sdHours: z.number(),
  saidBy: z.string(),
  /** machine hours in one hour of the dial from here on; null: as before */
  hoursPerDialHour: z.number().nullable(),
  ...rowHistory,
  cautions: z.array(z.string()),
});

/** A share of work, from a day on. */
export const zWorkShareRow = z.object({
  workShareId: zId,
  from: zDay.nullable(),
  share: z.number(),
  workType: z.string(),
  ...rowHistory,
});
export type WorkShareRow = z.infer<typeof zWorkShareRow>;

/** Where the hours come from, from a day on. */
export const zHoursSourceRow = z.object({
  hoursSourceId: zId,
  from: zDay,
  kind: z.enum(['pulled', 'yearly', 'own']),
  puller: z.object({ machineId: zId, name: z.string() }).nullable(),
  share: z.number().nullable(),
  hoursPerYear: z.number().nullable(),
  /** 1 sd of one year's hours, as a share of them */
  errorShare: z.number(),
  ...rowHistory,
});
export type HoursSourceRow = z.infer<typeof zHoursSourceRow>;

export const zLimits = z.object({
  from: zDay.nullable(),
  newSizeMm: z.number(),
  newSizeTolMm: z.number().nullable(),
  renewAtMm: z.number().nullable(),
  rejectAtMm: z.number().nullable(),
  source: z.string().nullable(),
});

/** A position of another size than the drawn one: its own standard since a day, and whether it is stamped on it. */
export const zOversize = z.object({
  standardMm: z.number(),
  drawnMm: z.number(),
  since: zDay,
  stamped: z.boolean().nullable(),
});

export const zStationSize = z.object({
  sizeId: zId,
  station: z.string(),
  sizeMm: z.number(),
  /** questioned and not answered: shown, kept out of the forecast */
  parked: z.boolean(),
  /** worst of its visit: the one that governs */
  governs: z.boolean(),
});

export const zVisit = z.object({
  takenOn: zDay,
  machineHours: z.number(),
  partHours: z.number(),
  event: zSizeEvent,
  /** null: every size of the visit is parked */
  governingSizeMm: z.number().nullable(),
  /** 1 sd; screens show U = 2 sd */
  errorSdMm: z.number(),
  stations: z.array(zStationSize),
  by: z.string(),
  gauge: z.string(),
});

export const zRenewalMark = z.object({
  takenOn: zDay,
  machineHours: z.number(),
  /** where it may have been, when its hours are not known */
  fromMachineHours: z.number(),
  toMachineHours: z.number(),
  known: z.boolean(),
  sizeMm: z.number().nullable(),
  /** null: the first part on record */
  kind: zRenewalKind.nullable(),
});

/** An old reading that was put right: struck, dated, never removed. */
export const zPutRight = z.object({
  takenOn: zDay,
  machineHours: z.number(),
  sizeMm: z.number(),
  putRightOn: zDay,
  newSizeMm: z.number().nullable(),
});

/** Size at some machine hours: low, middle, high of the true size [mm], in the order of size, not of wear. */
export const zCurvePoint = z.object({
  machineHours: z.number(),
  low: z.number(),
  middle: z.number(),
  high: z.number(),
});

export const zPointSheet = z.object({
  pointId: zId,
  assemblyId: zId,
  positionId: zId,
  item: z.int(),
  position: z.string(),
  point: z.string(),
  measures: zMeasures,
  wears: zWears,
  safety: z.boolean(),
  stations: z.array(z.string()),
  gaugeErrorMm: z.number(),
  limits: zLimits,
  oversize: zOversize.nullable(),
  mustStayStandard: z.boolean(),
  /** pieces renewed by themselves since the present part went in */
  stationRenewals: z.array(z.object({ station: z.string(), takenOn: zDay, kind: zRenewalKind })),
  /** packing noted here */
  shims: z.array(z.object({ takenOn: zDay, shimMm: z.number() })),
  role: zRole,
  forecast: zPointForecast,
  visits: z.array(zVisit),
  renewals: z.array(zRenewalMark),
  /** renewals whose size was questioned and waits for an answer */
  renewalsQuestioned: z.array(zId),
  putRight: z.array(zPutRight),
  /** fitted wear over the present part's life, and the fan beyond the last reading up to the limit */
  fitted: z.array(zCurvePoint),
  fan: z.array(zCurvePoint),
});
export type PointSheet = z.infer<typeof zPointSheet>;

export const zAssemblySheet = z.object({
  assemblyId: zId,
  name: z.string(),
  kind: z.string().nullable(),
  serial: z.string(),
  sketch: zSketch.nullable(),
  positions: z.array(
    z.object({
      positionId: zId,
      item: z.int(),
      name: z.string(),
      safety: z.boolean(),
      mustStayStandard: z.boolean(),
    }),
  ),
});

/** Whose a machine is from a day on. */
export const zOwner = z.object({
  ownershipId: zId,
  /** who they go by now, when merged */
  customerId: zId,
  /** empty: erased on request */
  name: z.string(),
  place: z.string(),
  /** null: from the beginning */
  fromOn: zDay.nullable(),
  struck: z.boolean(),
  /** why it was put right or struck */
  reason: z.string(),
});
export type Owner = z.infer<typeof zOwner>;

/** Everything the machine's page shows. */
export const zMachineSheet = z.object({
  asOf: zDay,
  machineId: zId,
  name: z.string(),
  make: z.string(),
  model: z.string(),
  serial: z.string(),
  builtYear: z.int().nullable(),
  note: z.string(),
  meter: z.object({
    digits: z.int().nullable(),
    /** machine hours its first reading's dial did not show; null: the dial was the machine hours */
    hoursBefore: z.number().nullable(),
    /** machine hours in one hour of the present dial */
    hoursPerDialHour: z.number(),
    clockReason: z.string(),
  }),
  workShare: z.number(),
  workType: z.string(),
  workShares: z.array(zWorkShareRow),
  hoursSources: z.array(zHoursSourceRow),
  /** machines that it pulls now, by name */
  pulls: z.array(z.object({ machineId: zId, name: z.string() })),
  customer: zCustomer.nullable(),
  /** whose it was and is, oldest first; a sale that never was stays in sight, struck */
  owners: z.array(zOwner),
  hours: zHoursNow,
  /** this machine's use [h a year]; borrowed: too few readings of its own */
  hoursPerYear: zRange,
  useBorrowed: z.boolean(),
  dialRows: z.array(zDialRow),
  winters: z.array(zWinterBand),
  planWinter: z.string(),
  /** machine hours at the start of the winter after the one being planned */
  planLineMachineHours: z.number().nullable(),
  assemblies: z.array(zAssemblySheet),
  points: z.array(zPointSheet),
  findings: z.array(zFindingWhole),
  slips: z.array(z.object({ slipId: zId, number: z.string(), madeOn: zDay })),
  stripDowns: z.array(
    z.object({ stripDownId: zId, takenOn: zDay, machineHours: z.number().nullable(), fitter: z.string() }),
  ),
});
export type MachineSheet = z.infer<typeof zMachineSheet>;

export const machineRead = operation('machine/read', z.object({ machineId: zId }), zMachineSheet, {
  title: "Everything on a machine's page",
});

/** A measuring point to be laid out at a position. */
export const zNewPoint = z.object({
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
export const zNewPosition = z.object({
  item: z.int().min(1).max(999),
  name: zName,
  safety: z.boolean(),
  /** it interchanges with others: no oversize here */
  mustStayStandard: z.boolean().default(false),
  points: z.array(zNewPoint).max(20),
});
export const zNewAssembly = z.object({
  kind: zName.nullable(),
  name: zName,
  serial: z.string().max(120),
  /** machine hours when the parts now in it were fitted: 0 as built; null: not known */
  fittedMachineHours: zHours.nullable(),
  positions: z.array(zNewPosition).min(1).max(80),
  joints: z.array(zKindJoint).max(80).default([]),
});

export const zNewCustomer = z.object({
  name: zName,
  place: z.string().max(200),
  address: z.string().max(500),
  phone: z.string().max(60),
  email: z.string().max(200),
});

export const machineTakeIn = operation(
  'machine/takeIn',
  z.object({
    /** an existing customer, or a new one */
    customerId: zId.nullable(),
    customer: zNewCustomer.nullable(),
    machine: z.object({
      name: zName,
      make: z.string().max(120),
      model: z.string().max(120),
      serial: z.string().max(120),
      builtYear: z.int().min(1900).max(2100).nullable(),
      note: zNote,
      meterDigits: zMeterDigits,
      /** machine hours before the meter now fitted; null: the dial is the machine hours */
      hoursBefore: zHours.nullable(),
      workShare: zShare,
      /** "silage", "loader"; empty: not said */
      workType: z.string().trim().max(120).default(''),
      /** where its hours come from while it has no meter; null: its own dial and estimates */
      hoursSource: zHoursSource.nullable().default(null),
      /** machine hours in one hour of its dial, and why; null: 1 */
      clock: zClock.nullable().default(null),
    }),
    /** null: no meter, or not read yet */
    dial: z.object({ takenOn: zDay, dialHours: zHours, estimate: z.boolean(), saidBy: z.string().max(120) }).nullable(),
    assemblies: z.array(zNewAssembly).max(10),
  }),
  z.object({ machineId: zId, customerId: zId }),
  { title: 'Take in a machine: customer, machine, meter and assemblies at once' },
);

export const machineChange = operation(
  'machine/change',
  z.object({
    machineId: zId,
    name: zName,
    make: z.string().max(120),
    model: z.string().max(120),
    serial: z.string().max(120),
    builtYear: z.int().min(1900).max(2100).nullable(),
    note: zNote,
  }),
  z.object({ machineId: zId }),
  { title: "Change a machine's name, make, model or note" },
);

export const assemblyAdd = operation(
  'assembly/add',
  z.object({ machineId: zId, from: zDay.nullable(), assembly: zNewAssembly }),
  z.object({ assemblyId: zId }),
  { title: 'Lay out an assembly on a machine' },
);

export const assemblyMove = operation(
  'assembly/move',
  z.object({
    assemblyId: zId,
    takenOn: zDay,
    dialHours: zHours.nullable(),
    /** null: to the shelf */
    toMachineId: zId.nullable(),
    toDialHours: zHours.nullable(),
  }),
  z.object({ assemblyId: zId }),
  { title: 'Move an assembly to another machine, or to the shelf' },
);

/** Positions that go together when half of an assembly is swapped: its carrier. */
export const zHalf = z.object({
  group: z.string(),
  positions: z.array(z.object({ positionId: zId, item: z.int(), name: z.string() })),
});
export type Half = z.infer<typeof zHalf>;

const zWhere = z.object({
  assemblyId: zId,
  assembly: z.string(),
  /** null: the assembly lies on the shelf */
  machineId: zId.nullable(),
  machine: z.string().nullable(),
});

export const assemblyHalves = operation(
  'assembly/halves',
  z.object({ assemblyId: zId }),
  zWhere.extend({
    kind: z.string().nullable(),
    /** none: an assembly of this kind moves as one whole */
    halves: z.array(zHalf),
    /** assemblies of the same kind, with what is in them now */
    others: z.array(zWhere.extend({ halves: z.array(zHalf) })),
    /** halves of assemblies of this kind that lie apart on the shelf, with where they were last */
    shelf: z.array(zHalf.extend({ since: zDay, last: zWhere })),
  }),
  { title: 'What of an assembly can be swapped by itself, and where it could go' },
);

/** A pin, the bores it runs in, and the point where their slack stands. */
const zJointOfPoints = z.object({ slackPointId: zId, pinPointId: zId, borePointIds: z.array(zId).min(1).max(8) });
export type JointOfPoints = z.infer<typeof zJointOfPoints>;

export const assemblyJoints = operation(
  'assembly/joints',
  z.object({ assemblyId: zId }),
  z.object({
    /** points that a joint can be made of: slacks, pins and bores */
    points: z.array(
      z.object({
        ...{ pointId: zId, item: z.int(), position: z.string(), point: z.string() },
        part: z.enum(['slack', 'pin', 'bore']),
      }),
    ),
    joints: z.array(zJointOfPoints),
  }),
  { title: 'Which points of an assembly are the joint of a pin and its bores' },
);

export const assemblySaveJoints = operation(
  'assembly/saveJoints',
  z.object({ assemblyId: zId, joints: z.array(zJointOfPoints).max(80), by: z.string().max(120) }),
  z.object({ struck: z.int(), laidOut: z.int() }),
  { title: 'Say anew which points of an assembly make joints; what stood before stays in sight, struck' },
);

export const assemblyMoveHalf = operation(
  'assembly/moveHalf',
  z.object({
    /** all positions of one half, where they are together now */
    positionIds: z.array(zId).min(1).max(80),
    takenOn: zDay,
    /** dial of the machine it comes off */
    dialHours: zHours.nullable(),
    /** null: to the shelf */
    toAssemblyId: zId.nullable(),
    /** dial of the machine it goes to */
    toDialHours: zHours.nullable(),
    /** what becomes of the same half there: it comes where this one was, or goes to the shelf; null: there is none */
    theirs: z.enum(['in-exchange', 'shelf']).nullable(),
  }),
  z.object({ positionIds: z.array(zId) }),
  { title: 'Move half of an assembly, its parts and their wear with it, to another of its kind or to the shelf' },
);

export const pointLimits = operation(
  'point/limits',
  z.object({
    pointId: zId,
    from: zDay,
    newSizeMm: zSizeMm,
    newSizeTolMm: zSizeMm.nullable(),
    renewAtMm: zSizeMm.nullable(),
    rejectAtMm: zSizeMm.nullable(),
    source: zNote.nullable(),
    enteredBy: z.string().max(120),
  }),
  z.object({ pointId: zId }),
  { title: 'Set the sizes a point is judged by, from a day on' },
);

export const customersList = operation('customers/list', z.object({}), z.object({ customers: z.array(zCustomer) }), {
  title: 'All customers by name',
});
