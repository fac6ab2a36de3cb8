/**
 * What a step gives back.
 *  - an answer: `{ ok: true, value }`
 *  - a refusal: there is no honest answer, and that was to be expected; it carries facts, no sentences
 * A broken invariant is neither: it throws, and the door (shells/answer.ts) reports it.
 */
export type Outcome<T, R extends Refusal = Refusal> = { ok: true; value: T } | { ok: false; refusal: R };

/** Why there is no answer: a code the renderer has words for, and the facts those words need. */
export type Refusal = { code: string; facts?: Record<string, string | number | boolean | null> };

/** A reading of an answer that is thin but honest: travels with the answer, is shown wherever the answer is. */
export type Caution = { code: string; facts?: Record<string, string | number | boolean | null> };

export const ok = <T>(value: T): { ok: true; value: T } => ({ ok: true, value });

export const refuse = <R extends Refusal>(refusal: R): { ok: false; refusal: R } => ({ ok: false, refusal });

/** Thrown by a use case to leave its transaction; the door turns it into a fault for the asker. */
export class RefusedError extends Error {
  readonly refusal: Refusal;
  constructor(refusal: Refusal) {
    super(refusal.code);
    this.name = 'RefusedError';
    this.refusal = refusal;
  }
}

/** The value of an outcome, or the refusal thrown on to the door. */
export function orRefuse<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  throw new RefusedError(outcome.refusal);
}

export function assertInvariant(condition: unknown, invariant: string): asserts condition {
  if (!condition) throw new Error(`Broken invariant: ${invariant}`);
}
