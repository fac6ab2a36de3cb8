import type { z } from 'zod';
import type { zHowKnown } from '#core/contract/fits.ts';

type HowKnown = z.infer<typeof zHowKnown>;

/** How a figure of the program's own is known, as it stands beside the figure. */
export const howKnownWords: Readonly<Record<HowKnown, string>> = {
  published: 'published',
  maker: 'a maker’s figure for that maker’s part',
  scope: 'named in a standard, its figures not read',
  analogy: 'published for something like it',
  'worked-out': 'worked out',
  'common-practice': 'common practice, no source',
  'from-memory': 'from memory, not checked',
  draft: 'from a working draft',
};
