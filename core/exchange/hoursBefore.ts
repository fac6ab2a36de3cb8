import type { DialEvent } from '../shop/machineLife.ts';

/** What of a first row says how far its dial had come. */
type FirstRow = Pick<DialEvent, 'kind' | 'dialHours'>;

/**
 * Hours a machine's first dial row does not show. A file gives the machine hours at that row ("before the first dial
 * row"); the record keeps what is to be added to the dial, which holds for the meter whatever it shows.
 *   hoursBefore = machine hours at the first row - what its dial shows
 *
 * @param machineHoursAtFirst column `hours_before` [h]; null: the first row's dial is the machine hours
 * @param first null: no dial row yet; the figure is then kept as what is to be added
 * @param meterDigits a first row that is a rollover has its full scale, 10^digits, behind it
 */
export function hoursBeforeOfFile(
  machineHoursAtFirst: number | null,
  first: FirstRow | null,
  meterDigits: number | null,
): number | null {
  return machineHoursAtFirst === null ? null : tidy(machineHoursAtFirst - shownBy(first, meterDigits));
}

/** The other way: column `hours_before` of a file, from what the record keeps. */
export function hoursBeforeForFile(
  hoursBefore: number | null,
  first: FirstRow | null,
  meterDigits: number | null,
): number | null {
  return hoursBefore === null ? null : tidy(hoursBefore + shownBy(first, meterDigits));
}

function shownBy(first: FirstRow | null, meterDigits: number | null): number {
  if (first === null) return 0;
  const lap = first.kind === 'rollover' && meterDigits !== null ? 10 ** meterDigits : 0;
  return lap + (first.dialHours ?? 0);
}

/** Without the tail a difference of two decimals leaves [h, to a millionth]. */
const tidy = (hours: number): number => Math.round(hours * 1e6) / 1e6;
