import type { Question } from '../contract/shapes.ts';
import type { HoursLine } from '../reading/hoursLine.ts';
import { type DialJudgement, judgeDial } from '../reading/judgeDial.ts';
import type { DialEvent } from '../shop/machineLife.ts';

/** A dial figure, what is asked about it, and whether it cannot be kept as it is even when somebody is sure. */
export type AskedDial = { question: Question | null; cannotBe: boolean };

/** Tells, and asks nothing: the digits of a meter are no matter of what it shows. */
const ONLY_TOLD = 'meter-digits-not-known';

/** What is odd about a dial row, as a question to the one who typed it. */
export function askAboutDial(line: HoursLine, event: DialEvent): AskedDial {
  const judged = judgeDial(line, event);
  const cautions = judged.cautions.filter(({ code }) => code !== ONLY_TOLD);
  // of several the one that says what it may have been
  const odd = judged.refusal ?? cautions.find(({ code }) => code === 'ten-times-off') ?? cautions[0] ?? null;
  if (!odd) return { question: null, cannotBe: false };
  return {
    question: { code: odd.code, facts: odd.facts ?? {}, choices: choicesOf(event, judged) },
    cannotBe: judged.refusal !== null,
  };
}

/** What it may have been instead. */
function choicesOf({ kind }: DialEvent, { refusal }: DialJudgement): string[] {
  if (refusal?.code === 'dial-went-back') return ['typed-wrong', 'new-meter', 'rollover', 'right-as-read'];
  if (refusal) return ['typed-wrong', 'right-as-read'];
  return kind === 'reading' ? ['right-as-read', 'typed-wrong', 'estimate'] : ['right-as-read', 'typed-wrong'];
}
