import { type Finding, findingIsOpen } from '../shop/finding.ts';
import type { PointOnRecord, ShopLife } from '../shop/shopLife.ts';
import type { Day } from '../units/day.ts';
import { pointsOfShop } from './pointsOfShop.ts';

/** Findings open on a day, by where they stand. */
export type OpenFindings = {
  /** at a point's position, or on its assembly as a whole; oldest first */
  ofPoint(point: PointOnRecord): readonly Finding[];
  /** on any assembly the machine carries */
  ofMachine(machineId: number): readonly Finding[];
};

export const isStop = (finding: Finding): boolean => finding.severity === 'do-not-use';

/** A finding goes with its assembly: where that sits now counts, not the machine it was found on. */
export function openFindings(life: ShopLife, asOf: Day): OpenFindings {
  const known = sorted.get(life);
  if (known?.asOf === asOf) return known.findings;
  const findings = sortOut(life, asOf);
  sorted.set(life, { asOf, findings });
  return findings;
}

/** Asked for once a machine and once a point: sorted out once for each life of a shop, which is never changed. */
const sorted = new WeakMap<ShopLife, { asOf: Day; findings: OpenFindings }>();

function sortOut(life: ShopLife, asOf: Day): OpenFindings {
  const open = life.findings
    .filter((finding) => findingIsOpen(finding, asOf))
    .sort((a, b) => (a.takenOn < b.takenOn ? -1 : a.takenOn > b.takenOn ? 1 : a.id - b.id));
  const byAssembly = Map.groupBy(open, (finding) => finding.assemblyId);
  const points = pointsOfShop(life.points);
  const byMachine = Map.groupBy(open, (finding) => seatOf(finding, points.ofAssembly(finding.assemblyId)));
  return {
    ofPoint: ({ assemblyId, positionId }) =>
      (byAssembly.get(assemblyId) ?? []).filter(
        (finding) => finding.positionId === null || finding.positionId === positionId,
      ),
    ofMachine: (machineId) => byMachine.get(machineId) ?? [],
  };
}

/** The machine its position sits on now, or its assembly; half of the assembly may lie apart on the shelf. */
function seatOf(finding: Finding, points: readonly PointOnRecord[]): number {
  const own = points.filter(({ positionId }) => finding.positionId === null || finding.positionId === positionId);
  const sits = own.some(({ machineId }) => machineId === finding.machineId);
  return sits ? finding.machineId : ((own.at(-1) ?? points.at(-1))?.machineId ?? finding.machineId);
}
