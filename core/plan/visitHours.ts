/** What the hours of a visit are made of. */
export type HoursOfVisit = {
  positions: readonly { ownHours: number }[];
  takeOffs: readonly { hours: number }[];
  visitHours: number;
  extras: readonly { hours: number }[];
};

const sumOf = (numbers: readonly number[]): number => numbers.reduce((sum, one) => sum + one, 0);

/** Bench hours of a visit: every take-off once, each position's own work, what a visit costs, and other work. */
export const hoursOfVisit = ({ positions, takeOffs, visitHours, extras }: HoursOfVisit): number =>
  sumOf(positions.map(({ ownHours }) => ownHours)) +
  sumOf(takeOffs.map(({ hours }) => hours)) +
  visitHours +
  sumOf(extras.map(({ hours }) => hours));
