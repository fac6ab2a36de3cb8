import type { Fault } from '#core/contract/operation.ts';
import { closedBecause, reasonText } from './repairReasons.ts';

type Facts = Fault['facts'];
type Said = { what: string; safe?: string; next?: string };

/** Refusals of the repair screen, by code. */
export const repairFaults: Record<string, (facts: Facts) => Said> = {
  'not-a-joint': () => ({
    what: 'No hole, pin or slack is measured at this position.',
    safe: '',
    next: 'Choose a position with a bore, a pin or a slack.',
  }),
  'repair-not-worked-out': () => ({
    what: 'Not enough is measured to work anything out.',
    next: 'Fill in a diameter of the hole, the outside of the boss and its length.',
  }),
  'repair-closed': (f) => ({
    what: `This choice is closed. ${reasonText(closedBecause, { code: String(f.because ?? ''), facts: f })}`.trim(),
    next: 'Take one that is open.',
  }),
  'clean-up-no-readings': () => ({
    what: 'The hole was not measured.',
    safe: '',
    next: 'Read its diameter on four axes, or on two at least.',
  }),
  'clean-up-size-not-positive': (f) => ({
    what: `A size of the hole is ${f.sizeMm ?? 'none'} mm.`,
    safe: '',
    next: 'Look at the sizes once more.',
  }),
  'piece-longer-than-bars': (f) => ({
    what: `A piece of ${f.pieceMm ?? ''} mm is longer than any bar of ${f.bar ?? 'its sort'}.`,
    safe: '',
    next: 'Cut it from a longer bar, or have it made.',
  }),
  'not-enough-bars': (f) => ({
    what: `There are not bars enough of ${f.bar ?? 'a sort'}.`,
    safe: '',
    next: 'Buy more.',
  }),
  'not-a-slide': () => ({
    what: 'This assembly has no slide strips at top and bottom, front and rear.',
    safe: '',
    next: 'Name its positions so: “Slide strip, top front”.',
  }),
  'slide-length-not-positive': () => ({
    what: 'Without the two lengths nothing can be said of the hook.',
    safe: '',
    next: 'Measure them on the hitch.',
  }),
  'slide-choice-closed': (f) => ({
    what: `This is closed for that strip. ${reasonText(closedBecause, { code: String(f.because ?? ''), facts: f })}`.trim(),
    safe: '',
    next: 'Leave it, or renew it.',
  }),
  'strip-down-step-unknown': (f) => ({
    what: `The strip-down of this kind names a step “${f.step ?? ''}” that it does not have.`,
    safe: '',
    next: 'Put the kind of assembly right.',
  }),
  'strip-down-goes-round': (f) => ({
    what: `In the strip-down of this kind the step “${f.step ?? ''}” needs itself.`,
    safe: '',
    next: 'Put the kind of assembly right.',
  }),
};
