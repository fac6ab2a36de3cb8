import { type Outcome, ok, refuse } from '../../outcome.ts';
import { type Sourced, sourced } from '../howKnown.ts';
import { USUAL_SHOP_FIGURES } from '../shopFigures.ts';

/** Diameters a shop finds at its steel dealer [mm]; each shop keeps its own list. */
export const ROUND_BARS_MM: Sourced<readonly number[]> = sourced(
  [
    ...[16, 18, 20, 22, 25, 28, 30, 32, 35, 38, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95, 100],
    ...[105, 110, 115, 120, 125, 130, 135, 140, 145, 150, 160, 170, 180, 200],
  ],
  'from-memory',
  'EN 10060, usual sizes; from memory',
);

/**
 * The thinnest bar that a diameter can be turned from.
 * @param finishedMm largest finished diameter [mm]
 * @refuses no-bar-that-thick, with the largest there is
 */
export function roundBarFor(
  finishedMm: number,
  barsMm: readonly number[] = ROUND_BARS_MM.value,
  turnedOffMm: number = USUAL_SHOP_FIGURES.turnedOffMm,
): Outcome<number> {
  const fitting = barsMm.filter((barMm) => barMm >= finishedMm + turnedOffMm);
  return fitting.length > 0
    ? ok(Math.min(...fitting))
    : refuse({ code: 'no-bar-that-thick', facts: { finishedMm, thickestMm: Math.max(...barsMm, 0) } });
}

/** Cut length of a part of a finished length, both ends faced [mm]. */
export const cutLengthMm = (finishedMm: number, facedEachEndMm: number): number => finishedMm + 2 * facedEachEndMm;
