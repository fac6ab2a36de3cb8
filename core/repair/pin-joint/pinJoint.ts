/** One lug, or one plate of a fork: a plate with a hole that the pin goes through. */
export type Lug = {
  boreMm: number;
  thicknessMm: number;
  /** across the pull, through the middle of the hole; of a round boss: its outside diameter [mm] */
  widthMm: number;
  /** from the middle of the hole to the end it pulls against; of a round boss: half its outside diameter [mm] */
  endMm: number;
};

/** A pin through an eye between the two plates of a fork: two shear planes. */
export type PinJoint = {
  pinMm: number;
  eye: Lug;
  /** each of the two plates */
  fork: Lug;
  /** side gap between eye and fork, on each side [mm] */
  gapEachSideMm: number;
};

/** A round boss as a lug. */
export const roundBoss = (of: { boreMm: number; outsideMm: number; thicknessMm: number }): Lug => ({
  boreMm: of.boreMm,
  thicknessMm: of.thicknessMm,
  widthMm: of.outsideMm,
  endMm: of.outsideMm / 2,
});
