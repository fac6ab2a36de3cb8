import type { Slip } from '../contract/slip.ts';
import type { PartRenewal, PartVisit } from '../series/partVisits.ts';
import { wearOf } from '../series/visitSizes.ts';
import type { Finding } from '../shop/finding.ts';
import type { WearsWay } from '../shop/measuringPoint.ts';
import { type Day, daysBetween } from '../units/day.ts';

/** What a slip tells of a point's last visit. */
export type VisitedPoint = {
  positionId: number;
  item: number;
  label: string;
  wears: WearsWay;
  gaugeErrorMm: number;
  history: readonly PartVisit[];
  renewals: readonly PartRenewal[];
};

/** A finding with the item and the name it is known by on the slip. */
export type NamedFinding = { finding: Finding; item: number | null; label: string };

export type SlipVisit = Pick<Slip, 'foundOn' | 'found' | 'doneOn' | 'done'> & { renewedItems: ReadonlySet<string> };

/** Work on what was found may be entered this long after it [d] (common practice, no source). */
const DAYS_TILL_DONE = 120;

/**
 * What was found at the last strip-down and what was done about it.
 * Found: the as-found sizes of the last day that has any, and findings from that day on. Done: renewals, as-left sizes and
 * findings closed from that day on.
 */
export function slipVisit(points: readonly VisitedPoint[], findings: readonly NamedFinding[], asOf: Day): SlipVisit {
  const foundOn =
    lastDay([...points.flatMap(({ history }) => history.filter(isFound).map(({ takenOn }) => takenOn))]) ??
    lastDay(findings.map(({ finding }) => finding.takenOn));
  const since = (on: Day) =>
    foundOn !== null && on >= foundOn && on <= asOf && daysBetween(foundOn, on) <= DAYS_TILL_DONE;
  const done = points.flatMap((point) => doneAt(point, since));
  const closed = findings.filter(({ finding }) => finding.closedOn !== null && since(finding.closedOn));
  const doneDays = [...done.map(({ on }) => on), ...closed.map(({ finding }) => finding.closedOn!)];
  return {
    foundOn,
    found: [
      ...findings.filter(({ finding }) => since(finding.takenOn)).map(foundFinding),
      ...points.flatMap((point) => foundSizes(point, foundOn)),
    ]
      .sort(worstFirst)
      .map(({ row }) => row),
    doneOn: lastDay(doneDays),
    done: [...closed.map(closedFinding), ...done.map(({ row }) => row)],
    renewedItems: new Set(done.filter(({ row }) => row.what === 'renewed').map(({ row }) => row.label)),
  };
}

const isFound = (visit: PartVisit): boolean => visit.event === 'as-found' && visit.stations.length > 0;

const lastDay = (days: readonly Day[]): Day | null =>
  days.reduce<Day | null>((a, b) => (a !== null && a > b ? a : b), null);

/** A hundredth unless the gauge is far coarser. */
const decimalsOf = ({ gaugeErrorMm }: VisitedPoint): number => (gaugeErrorMm >= 0.1 ? 1 : 2);

/** A line of what was found, and how much it matters. */
type Ranked = { row: Slip['found'][number]; gravity: number };

function foundSizes(point: VisitedPoint, foundOn: Day | null): Ranked[] {
  return point.history
    .filter((visit) => isFound(visit) && visit.takenOn === foundOn && visit.governing !== null)
    .map((visit) => {
      const sizeMm = visit.governing!.sizeMm;
      const { newSizeMm, renewAtMm } = visit.limits;
      const pastMm = renewAtMm === null ? null : wearOf(point.wears, renewAtMm, sizeMm);
      const limitWearMm = renewAtMm === null ? 0 : wearOf(point.wears, newSizeMm, renewAtMm);
      const row = {
        items: [point.item],
        label: point.label,
        sizeMm,
        renewAtMm,
        decimals: decimalsOf(point),
        pastMm: pastMm !== null && pastMm > 0 ? pastMm : null,
        finding: null,
        severity: null,
        doNotUse: false,
        note: '',
        declined: null,
      };
      return { row, gravity: limitWearMm > 0 ? visit.governing!.wearMm / limitWearMm : 0 };
    });
}

const foundFinding = ({ finding, item, label }: NamedFinding): Ranked => ({
  gravity: GRAVITY[finding.severity],
  row: {
    items: item === null ? [] : [item],
    label,
    sizeMm: null,
    renewAtMm: null,
    decimals: 2,
    pastMm: null,
    finding: finding.kind,
    severity: finding.severity,
    doNotUse: finding.severity === 'do-not-use',
    note: finding.note,
    declined: finding.closedOn === null ? finding.declined : null,
  },
});

const closedFinding = ({ finding, item, label }: NamedFinding): Slip['done'][number] => ({
  items: item === null ? [] : [item],
  label,
  what: 'closed',
  sizeMm: null,
  decimals: 2,
  note: finding.outcome ?? '',
});

type Done = { on: Day; row: Slip['done'][number] };

function doneAt(point: VisitedPoint, since: (on: Day) => boolean): Done[] {
  const row = (what: 'renewed' | 'left-at', sizeMm: number | null, renewal: PartRenewal | null = null) => ({
    items: [point.item],
    label: point.label,
    what,
    sizeMm,
    decimals: decimalsOf(point),
    note: '',
    ...(renewal && { kind: renewal.kind, stamped: renewal.stamped }),
  });
  const leftAt = (on: Day) =>
    point.history.findLast((visit) => visit.event === 'as-left' && visit.takenOn === on)?.governing?.sizeMm ?? null;
  // slack that begins again with a new pin is no work of its own
  const renewals = point.renewals.filter(({ takenOn, renewalId }) => since(takenOn) && renewalId > 0);
  const renewed = renewals.map((renewal) => ({
    on: renewal.takenOn,
    row: row('renewed', leftAt(renewal.takenOn) ?? renewal.newSizeMm, renewal),
  }));
  const left = point.history
    .filter(
      (visit) =>
        visit.event === 'as-left' &&
        since(visit.takenOn) &&
        visit.governing !== null &&
        !renewals.some(({ takenOn }) => takenOn === visit.takenOn),
    )
    .map((visit) => ({ on: visit.takenOn, row: row('left-at', visit.governing!.sizeMm) }));
  return [...renewed, ...left];
}

/** Findings before sizes, the gravest first; then sizes, those furthest on their way to their limit first. */
const worstFirst = (a: Ranked, b: Ranked): number =>
  b.gravity - a.gravity || (a.row.items[0] ?? 0) - (b.row.items[0] ?? 0);

const GRAVITY = { 'do-not-use': 4000, repair: 3000, watch: 2000 } as const;
