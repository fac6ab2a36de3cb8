import { thingOf } from '../slipNames.ts';
import { decidingText, thenDoText } from '../slipWords.ts';
import { findingLine } from './findingWords.ts';
import { type LetterFacts, plainText } from './letterFacts.ts';
import { spokenAnswer } from './spokenAnswer.ts';

/** What to say on the telephone, in order: who rings, what is found, the answer, what to ask, how to end. */
export function phoneScript(facts: LetterFacts): string[] {
  const { slip, openFindings } = facts;
  const from = slip.shop.name === '' ? 'your workshop' : slip.shop.name;
  const stopped = slip.headline.kind === 'do-not-use';
  const then = stopped ? '' : thenDoText(slip);
  return [
    `This is ${from}, about the ${thingOf(slip)} of your ${slip.machine.name}.`,
    ...openFindings.map((one) => `We found: ${findingLine(one)}`),
    spokenAnswer(facts),
    'What does the meter show today?',
    ...(stopped ? [] : [`If asked why: ${decidingText(slip)}`]),
    ...(then === '' ? [] : [`At that visit: ${then}`]),
    stopped ? 'When can we fetch it, or make it good where it stands?' : 'Which week suits you to bring it in?',
    'Till then: stop and ring us if it knocks or will not lock, or if you see a crack or a bend.',
  ].map(plainText);
}
