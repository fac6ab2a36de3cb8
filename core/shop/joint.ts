/** What runs in what. */
export type JointPart = 'pin' | 'bore';

/**
 * A pin and the bores it runs in. Their slack is bore less pin: worked out where both were measured in one visit, measured
 * by itself (feeler, lift and drop) where they were not.
 */
export type Joint = {
  jointId: number;
  /** measuring point where the slack stands, with its limits */
  slackPointId: number;
  pinPointId: number;
  /** at least one; the widest governs */
  borePointIds: readonly number[];
};
