import { type Outcome, ok } from '../../outcome.ts';
import { JOINT_FIGURES, type JointFigure, jointStresses } from './jointStresses.ts';
import type { PinJoint } from './pinJoint.ts';

/** One figure of the repaired joint beside the same as drawn. */
export type ComparedFigure = {
  figure: JointFigure;
  /** stresses under the force asked about [MPa]; null: no force is known, the ratio holds for any */
  asDrawnMpa: number | null;
  repairedMpa: number | null;
  /** repaired over as drawn; over 1: worse */
  ratio: number;
  word: 'better' | 'the same' | 'worse';
};

export type NotWorse = {
  figures: ComparedFigure[];
  /** no figure is worse than as drawn. No statement that the joint is strong enough: only that repairing did not weaken it */
  notWorse: boolean;
  /** the figure that suffers most */
  worst: ComparedFigure;
};

/** Figures within this share of one another are called the same: a tenth of a per cent, well under what a vernier decides. Common practice, no source. */
const SAME_WITHIN = 0.001;

/**
 * A repaired pin joint beside the same joint as drawn, figure by figure.
 *   ratio = stress repaired / stress as drawn
 * Structural rules are for new structures; a repaired joint is held to its own drawing instead.
 *
 * @param forceN the pull both carry [N]; null: none is known
 * @refuses what jointStresses refuses
 * @source own derivation: stresses are in proportion to the force, so their ratio holds for any
 * @checked tests/reference/pin-joint/pinJoint.test.ts
 */
export function notWorse(asDrawn: PinJoint, repaired: PinJoint, forceN: number | null): Outcome<NotWorse> {
  const [before, after] = [jointStresses(asDrawn, forceN ?? 1), jointStresses(repaired, forceN ?? 1)];
  if (!before.ok) return before;
  if (!after.ok) return after;
  const compared = JOINT_FIGURES.map((figure): ComparedFigure => {
    const [asDrawnMpa, repairedMpa] = [before.value[figure], after.value[figure]];
    const ratio = repairedMpa / asDrawnMpa;
    const word = Math.abs(ratio - 1) <= SAME_WITHIN ? 'the same' : ratio > 1 ? 'worse' : 'better';
    return forceN === null
      ? { figure, asDrawnMpa: null, repairedMpa: null, ratio, word }
      : { figure, asDrawnMpa, repairedMpa, ratio, word };
  });
  const worst = compared.reduce((most, figure) => (figure.ratio > most.ratio ? figure : most));
  return ok({ figures: compared, notWorse: compared.every(({ word }) => word !== 'worse'), worst });
}
