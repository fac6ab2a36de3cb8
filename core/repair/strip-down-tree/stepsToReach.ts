import { type Outcome, ok, refuse } from '../../outcome.ts';
import type { StripDownStep, StripDownTree } from '../../shop/stripDownTree.ts';

/**
 * The steps that open a set of positions and put all back again, each once, in an order in which they can be done: what comes
 * off after what it needs, then what goes back, in the order of the tree. A position the tree does not name is reached by the
 * steps of every visit.
 *
 * @refuses strip-down-step-unknown (the tree names a step it does not have), strip-down-goes-round (a step needs itself);
 *   each with the step's code
 */
export function stepsToReach(tree: StripDownTree, items: readonly number[]): Outcome<StripDownStep[]> {
  const byCode = new Map(tree.steps.map((step) => [step.code, step]));
  const asked = tree.reach.filter(({ item }) => items.includes(item)).flatMap(({ needs }) => needs);
  const done: StripDownStep[] = [];
  const refusal = [...tree.always, ...asked].reduce<ReturnType<typeof visit>>(
    (found, code) => found ?? visit(code, byCode, done, []),
    null,
  );
  if (refusal) return refuse(refusal);
  const back = tree.steps.filter((step) => step.when === 'back' && done.includes(step));
  return ok([...done.filter(({ when }) => when === 'off'), ...back]);
}

/** Takes in a step after those it needs, then those it brings. */
function visit(
  code: string,
  byCode: ReadonlyMap<string, StripDownStep>,
  done: StripDownStep[],
  above: readonly string[],
): { code: string; facts: { step: string } } | null {
  const step = byCode.get(code);
  if (!step) return { code: 'strip-down-step-unknown', facts: { step: code } };
  if (above.includes(code)) return { code: 'strip-down-goes-round', facts: { step: code } };
  if (done.includes(step)) return null;
  for (const needed of step.needs) {
    const refusal = visit(needed, byCode, done, [...above, code]);
    if (refusal) return refusal;
  }
  done.push(step);
  for (const brought of step.brings) {
    const refusal = visit(brought, byCode, done, [...above, code]);
    if (refusal) return refusal;
  }
  return null;
}
