/** Hours a step takes, from and to, and what is usual [h]. */
export type StepHours = { low: number; typical: number; high: number };

/**
 * One step of opening an assembly or of putting it back, done once a visit however many positions ask for it.
 *  - off: what must come off or be made ready, after the steps it `needs`
 *  - back: what follows when all work is done, in the order of the tree
 */
export type StripDownStep = {
  code: string;
  name: string;
  when: 'off' | 'back';
  hours: StepHours;
  /** codes of steps that come before it */
  needs: readonly string[];
  /** codes of back steps it brings with it */
  brings: readonly string[];
  /** whose figure the hours are */
  source: string;
};

/**
 * What comes off to reach what, in an assembly of one kind; the shop changes it as it changes the kind.
 */
export type StripDownTree = {
  steps: readonly StripDownStep[];
  /** what must be off before each position can be worked on, by item number */
  reach: readonly { item: number; needs: readonly string[] }[];
  /** steps of every visit, whatever is done */
  always: readonly string[];
};
