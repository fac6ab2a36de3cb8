import type { Fault } from '#core/contract/operation.ts';

type Facts = Fault['facts'];
type Said = { what: string; safe?: string; next?: string };

/** Nothing is kept on this screen, so nothing needs to be called kept. */
const said = (what: string, next: string): Said => ({ what, safe: '', next });
const mm = (fact: Facts[string] | undefined): string => `${Number(fact ?? 0)}\u00A0mm`;
const PARTS: Record<string, string> = { pin: 'the pin', eye: 'the eye', fork: 'the fork' };

/** What is said when a fit, a pressing or a straightening cannot be worked out. */
export const fitFaults: Record<string, (facts: Facts) => Said> = {
  'iso286-not-a-fit': (f) =>
    said(`“${f.written ?? ''}” is not a size with one hole and one shaft.`, 'Write it as on a drawing: 50 H7/g6.'),
  'iso286-not-a-class': (f) =>
    said(`“${f.written ?? ''}” is no tolerance class.`, 'Write a letter and a grade: H7, g6.'),
  'iso286-not-a-hole': (f) => said(`${f.written ?? ''} is a class of a shaft.`, 'A bore takes a capital letter: H8.'),
  'iso286-letter-unknown': (f) =>
    said(
      `The letter ${f.letter ?? ''} is not worked out here.`,
      `Take one of ${f.known ?? ''}, or look it up in ISO 286-2.`,
    ),
  'iso286-grade-unknown': (f) =>
    said(
      `Grade IT${f.grade ?? ''} is not worked out here.`,
      `Take IT${f.finest ?? 5} to IT${f.coarsest ?? 13}, or look it up in ISO 286-2.`,
    ),
  'iso286-size-outside': (f) =>
    said(
      `${mm(f.nominalMm)} is outside the tables.`,
      `They hold for sizes over 0 and up to ${mm(f.largestMm ?? 500)}.`,
    ),
  'iso286-not-tabulated': (f) =>
    said(
      `The standard has no ${f.toleranceClass ?? ''} at ${mm(f.nominalMm)}.`,
      'K goes up to IT8 above 3 mm: take a finer grade or another letter.',
    ),
  'press-clearance-fit': (f) =>
    said(
      `With these classes nothing presses: ${Number(f.leastClearanceMm ?? 0).toFixed(3)}\u00A0mm clearance or more is left.`,
      'Take a shaft of letter p, r or s, or glue the bush.',
    ),
  'press-no-interference': () => said('The parts do not press on one another.', 'Take a shaft of letter p, r or s.'),
  'press-no-boss-wall': (f) =>
    said(
      `A boss of ${mm(f.bossOutsideMm)} outside has no wall around ${mm(f.interfaceMm)}.`,
      'Look at the outside of the boss once more.',
    ),
  'press-no-bush-wall': (f) =>
    said(
      `A bore of ${mm(f.bushBoreMm)} leaves no wall in a bush of ${mm(f.interfaceMm)} outside.`,
      'Look at the bore of the bush once more.',
    ),
  'adhesive-bore-too-wide': () =>
    said('The limits of this bore take up the whole gap an adhesive fills.', 'Bore it to a finer grade.'),
  'pin-joint-size': (f) =>
    said(`A size of ${PARTS[String(f.part)] ?? 'the joint'} is not over 0.`, 'Look at the sizes once more.'),
  'pin-joint-no-ligament': (f) =>
    said(
      `Nothing is left of ${PARTS[String(f.part)] ?? 'the lug'} beside a hole of ${mm(f.boreMm)}.`,
      'Look at its width, its end and its hole once more.',
    ),
  'section-size': () =>
    said('These sizes make no section: one is not over 0, or its walls meet.', 'Look at the sizes once more.'),
  'straightening-span': (f) =>
    said(
      `Supports ${mm(f.spanMm)} apart are too close: the bar would be crushed rather than bent.`,
      `Set them at least ${mm(f.leastSpanMm)} apart, and give the steel’s yield stress.`,
    ),
};
