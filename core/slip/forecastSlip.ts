import type { PointForecast } from '../contract/forecast.ts';
import type { Slip } from '../contract/slip.ts';
import { rolesOf } from '../shop/role.ts';
import type { Day } from '../units/day.ts';
import { hasPassed, type SlipWinter, slipHeadline, winterBefore } from './slipHeadline.ts';
import { dialOf, dialRange, type SlipHours } from './slipHours.ts';
import { slipLabels } from './slipLabel.ts';
import { type NamedFinding, slipVisit, type VisitedPoint } from './slipVisit.ts';

/** All a slip is made from; of one machine. */
export type SlipFrom = {
  head: Pick<Slip, 'number' | 'madeOn' | 'shop' | 'customer' | 'measuredBy' | 'greaseAndWatch' | 'sketch'> & {
    machine: { name: string; makeModel: string; serial: string };
  };
  asOf: Day;
  /** null: the machine has no hours on record */
  hours: SlipHours | null;
  /** whose dial that is, where it is not the machine's own */
  dialMachine: string | null;
  estimated: boolean;
  readOn: Day | null;
  meterDigits: number | null;
  hoursPerYear: number | null;
  /** from the one being planned on, enough of them to reach any come-in that names a month */
  winters: readonly SlipWinter[];
  points: readonly (PointForecast & { assemblyId: number; visited: Omit<VisitedPoint, 'label' | 'item'> })[];
  /** of the machine's assemblies, closed ones too, oldest first; `open`: on the as-of day */
  findings: readonly (NamedFinding & { open: boolean })[];
};

/** The farmer's page as facts: what was found and done, when to come in, and what to do then. */
export function forecastSlip(from: SlipFrom): Slip {
  const { head, asOf, hours } = from;
  const points = [...from.points].sort(soonestFirst);
  const open = from.findings.filter((finding) => finding.open);
  const stops = open.filter(({ finding }) => finding.severity === 'do-not-use');
  const assembly = assemblyOf(from, stops[0], points[0]);
  const labelOf = slipLabels(from.points, assembly);
  const headline = slipHeadline({ asOf, hours, winters: from.winters, points, stops, labelOf });
  const visit = slipVisit(
    from.points.map((point) => ({ ...point.visited, item: point.item, label: labelOf(point) })),
    from.findings,
    asOf,
  );
  const headlineFinding = headline.kind === 'do-not-use' ? stops[0]?.finding : undefined;
  return {
    ...head,
    asOf,
    machine: { ...head.machine, assembly },
    hoursAre: hours?.dialHoursNow == null ? 'machine' : 'dial',
    dialMachine: from.dialMachine,
    meterDigits: from.meterDigits,
    dialHours: hours && dialOf(hours, hours.machineHoursNow),
    estimated: from.estimated,
    readOn: from.readOn,
    hoursPerYear: from.hoursPerYear,
    headline,
    foundOn: visit.foundOn,
    found: visit.found,
    doneOn: visit.doneOn,
    done: visit.done,
    axis:
      headline.kind === 'do-not-use' || !hours
        ? null
        : slipAxis(from, hours, points, headline, labelOf, visit.renewedItems),
    thenDo: headline.kind === 'do-not-use' ? [] : thenDo(from, points, labelOf),
    watch: open.filter(({ finding }) => finding !== headlineFinding).map(watchLine),
    cautions: cautionCodes(from, points),
    restsOn: restsOn(points),
  };
}

/** By deciding hours; parts beyond reckoning after those, by their low figure; parts without a forecast last. */
function soonestFirst(a: PointForecast, b: PointForecast): number {
  const key = (point: PointForecast): number =>
    point.decidingHoursLeft ?? point.hoursLeft.low ?? Number.POSITIVE_INFINITY;
  const group = (point: PointForecast): number =>
    point.decidingHoursLeft !== null ? 0 : point.hoursLeft.low !== null ? 1 : 2;
  return group(a) - group(b) || (key(a) === key(b) ? 0 : key(a) - key(b)) || a.item - b.item;
}

const assemblyOf = (from: SlipFrom, stop: NamedFinding | undefined, first: PointForecast | undefined): string => {
  const stopped = stop && from.points.find((point) => point.assemblyId === stop.finding.assemblyId)?.assembly;
  return stopped ?? first?.assembly ?? '';
};

type Sorted = readonly SlipFrom['points'][number][];

function slipAxis(
  from: SlipFrom,
  hours: SlipHours,
  points: Sorted,
  headline: Slip['headline'],
  labelOf: (point: PointForecast) => string,
  renewed: ReadonlySet<string>,
): Slip['axis'] {
  return {
    nowDialHours: dialOf(hours, hours.machineHoursNow),
    comeInDialHours: headline.kind === 'come-in' ? headline.dialHours : null,
    winters: from.winters.map(({ name, fromMachineHours, toMachineHours }) => ({
      name,
      fromDialHours: dialOf(hours, fromMachineHours),
      toDialHours: dialOf(hours, toMachineHours),
    })),
    rows: points
      .filter((point) => point.hoursLeft.low !== null)
      .map((point) => ({
        items: [point.item],
        label: labelOf(point),
        dialHours: dialRange(hours, point.machineHoursAtLimit),
        decides: point.decides,
        ownReadings: point.ownReadings,
        likeParts: point.likeParts,
        renewed: renewed.has(labelOf(point)),
      })),
  };
}

/**
 * What the visit the headline asks for is for: parts whose deciding hours end before the winter after it, and parts of
 * the same assembly that end before the winter after that.
 */
function thenDo(from: SlipFrom, points: Sorted, labelOf: (point: PointForecast) => string): Slip['thenDo'] {
  const first = points[0];
  const now = from.hours?.machineHoursNow;
  const at = first?.machineHoursAtLimit[first.decides];
  if (!first || now === undefined || at == null) return [];
  const visit = hasPassed(first) ? undefined : winterBefore(from.winters, at);
  const next = from.winters.filter(
    (winter) => winter.fromMachineHours > (visit?.fromMachineHours ?? Math.max(now, at)),
  );
  const left = (winter: SlipWinter | undefined) => (winter ? winter.fromMachineHours - now : null);
  const roles = rolesOf(
    points.map((point) => ({
      assemblyId: point.assemblyId,
      doNotUse: false,
      hasForecast: point.hoursLeft.low !== null,
      decidingHoursLeft: point.decidingHoursLeft,
    })),
    { nextWinterHours: left(next[0]), winterAfterHours: left(next[1]) },
  );
  return points.flatMap((point, i): Slip['thenDo'] => {
    const role = point === first ? 'this-winter' : roles[i];
    const named = { items: [point.item], label: labelOf(point) };
    if (role === 'this-winter') return [{ ...named, role: 'due' as const }];
    return role === 'with-it' ? [{ ...named, role: 'with-it' as const }] : [];
  });
}

const watchLine = ({ finding, item, label }: NamedFinding): Slip['watch'][number] => ({
  items: item === null ? [] : [item],
  label,
  finding: finding.kind,
  severity: finding.severity,
  foundOn: finding.takenOn,
  note: finding.note,
  declined: finding.declined,
});

/** What a farmer should know of how sure this is: from the deciding part, and from the machine's hours. */
function cautionCodes(from: SlipFrom, points: Sorted): string[] {
  const first = points[0];
  const parked = points.some((point) => point.visited.history.some((visit) => visit.excluded === 'parked'));
  return [
    'planning-aid',
    ...(from.estimated ? ['hours-estimated'] : []),
    ...(parked ? ['sizes-questioned'] : []),
    ...(first?.cautions.filter((code) => code !== 'machine-has-do-not-use') ?? []),
  ];
}

/** Own readings of the parts shown, and the like parts of their classes, each class counted once. */
function restsOn(points: Sorted): Slip['restsOn'] {
  const forecast = points.filter((point) => point.hoursLeft.low !== null);
  const likeByClass = new Map<string, number>();
  for (const { partClass, likeParts } of forecast) {
    likeByClass.set(partClass, Math.max(likeParts, likeByClass.get(partClass) ?? 0));
  }
  return {
    ownReadings: forecast.reduce((sum, point) => sum + point.ownReadings, 0),
    likeParts: [...likeByClass.values()].reduce((sum, parts) => sum + parts, 0),
  };
}
