/**
 * What a position asks for:
 *  - stop: it must not be used
 *  - this-winter: its deciding hours end before the winter after the one being planned begins
 *  - with-it: its assembly is opened this winter anyway, and it ends before the winter after that
 *  - leave: it can wait
 *  - none: nothing is known, or it has no limit
 */
export type Role = 'this-winter' | 'with-it' | 'leave' | 'stop' | 'none';

/** Under which head of the list a machine stands, by the part that comes first. */
export type ListGroup = 'do-not-use' | 'may-be-passed' | 'this-winter' | 'later' | 'no-forecast';

export type PointOutlook = {
  assemblyId: number;
  /** an open do-not-use finding stands at its position, or on its assembly as a whole */
  doNotUse: boolean;
  /** it has a limit and its machine has hours, so there is something to forecast */
  hasForecast: boolean;
  /** hours left by the figure that decides; null: beyond reckoning, or none */
  decidingHoursLeft: number | null;
};

/** Hours from now to the start of the winter after the one being planned, and of the one after that. */
export type PlanLine = { nextWinterHours: number | null; winterAfterHours: number | null };

/**
 * The role of each point, in the order given.
 * An assembly counts as opened when one of its points is this winter's work or must not be used: what then ends
 * within one more year would have it opened again for itself, so it is worth doing along.
 */
export function rolesOf(points: readonly PointOutlook[], line: PlanLine): Role[] {
  const first = points.map((point) => ownRole(point, line));
  const opened = new Set(
    points.filter((_, i) => first[i] === 'this-winter' || first[i] === 'stop').map((point) => point.assemblyId),
  );
  return points.map((point, i) => {
    const own = first[i] ?? 'none';
    return own === 'leave' && opened.has(point.assemblyId) && endsBefore(point, line.winterAfterHours)
      ? 'with-it'
      : own;
  });
}

function ownRole(point: PointOutlook, line: PlanLine): Role {
  if (point.doNotUse) return 'stop';
  if (!point.hasForecast) return 'none';
  return endsBefore(point, line.nextWinterHours) ? 'this-winter' : 'leave';
}

/** Without known use no winter can be placed: then only what has gone by already counts. */
const endsBefore = (point: PointOutlook, hours: number | null): boolean =>
  point.decidingHoursLeft !== null && point.decidingHoursLeft < (hours ?? 0);
