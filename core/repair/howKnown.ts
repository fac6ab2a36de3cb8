/**
 * How a figure that the program puts forward is known; it is shown beside the figure wherever that appears.
 * Only what is published or worked out may be a check value; all the rest are defaults that a shop may set otherwise.
 */
export const HOW_KNOWN = [
  /** read in a public text */
  'published',
  /** read on a maker's page, for that maker's part */
  'maker',
  /** a public text covers it; its figures were not read */
  'scope',
  /** published for something like it */
  'analogy',
  /** follows from a published formula */
  'worked-out',
  'common-practice',
  'from-memory',
  /** stood in a working draft */
  'draft',
] as const;
export type HowKnown = (typeof HOW_KNOWN)[number];

/** A default figure or range with where it comes from. */
export type Sourced<T> = { value: T; howKnown: HowKnown; source: string };

export const sourced = <T>(value: T, howKnown: HowKnown, source: string): Sourced<T> => ({ value, howKnown, source });

/** How a default is known, without its figure. */
export const knownOf = ({ howKnown, source }: { howKnown: HowKnown; source: string }) => ({ howKnown, source });
