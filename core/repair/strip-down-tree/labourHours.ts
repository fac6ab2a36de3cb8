import type { StepHours } from '../../shop/stripDownTree.ts';
import { type Sourced, sourced } from '../howKnown.ts';

/** Work on one part, whatever was taken off to reach it; `set-up-line-bore` once for all holes on its line. */
export const WORK_STEPS = [
  'renew-strip',
  'shim-strip',
  'turn-strip',
  'set-up-line-bore',
  'bore-boss',
  'make-bush',
  'press-bush',
  'weld-and-re-bore',
  'make-boss',
  'fit-boss',
  'make-pin',
  'seized-pin-out',
  'straighten',
  'crack-check',
  'measure',
  'paint-and-papers',
] as const;
export type WorkStep = (typeof WORK_STEPS)[number];

const hours = (low: number, typical: number, high: number): Sourced<StepHours> =>
  sourced({ low, typical, high }, 'common-practice', 'common practice, no source');

/** What each takes [h], for one; the shop's own figures prevail. */
export const LABOUR_HOURS: Readonly<Record<WorkStep, Sourced<StepHours>>> = {
  'renew-strip': hours(0.2, 0.3, 0.6),
  'shim-strip': hours(0.2, 0.3, 0.5),
  'turn-strip': hours(0.2, 0.3, 0.5),
  'set-up-line-bore': hours(1, 1.5, 3),
  'bore-boss': hours(0.4, 0.7, 1.2),
  'make-bush': hours(0.4, 0.6, 1),
  'press-bush': hours(0.2, 0.3, 0.6),
  'weld-and-re-bore': hours(1.2, 2, 3.5),
  'make-boss': hours(0.8, 1, 1.5),
  'fit-boss': hours(0.8, 1.2, 2),
  'make-pin': hours(0.6, 1, 2),
  'seized-pin-out': hours(0.3, 1, 4),
  straighten: hours(0.5, 1, 3),
  'crack-check': hours(0.2, 0.3, 0.6),
  measure: hours(0.5, 0.8, 1.5),
  'paint-and-papers': hours(0.3, 0.5, 1),
};
