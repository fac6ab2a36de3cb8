import { planningAidHead } from '../slipCautions.ts';
import { hoursPhrase } from '../slipFigures.ts';
import { thingOf } from '../slipNames.ts';
import { decidingText, headlineText, thenDoText } from '../slipWords.ts';
import { findingLine } from './findingWords.ts';
import { type LetterFacts, plainText } from './letterFacts.ts';

/** A mail to the machine's owner: what is found first, then when to come in and what that rests on. */
export function emailText(
  facts: LetterFacts,
  to: string,
): { to: string; subject: string; body: string; mailto: string } {
  const subject = plainText(subjectOf(facts));
  const body = plainText(paragraphs(facts).join('\n\n'));
  return { to, subject, body, mailto: mailtoOf(to, subject, body) };
}

function subjectOf({ slip, openFindings }: LetterFacts): string {
  const thing = `${thingOf(slip)} of ${slip.machine.name}`;
  if (openFindings[0]?.severity === 'do-not-use') return `DO NOT USE: ${thing}`;
  if (slip.headline.kind === 'come-in')
    return `${capital(thing)}: bring it in by ${hoursPhrase(slip, slip.headline.dialHours)}`;
  if (slip.headline.kind === 'passed') return `${capital(thing)}: bring it in now`;
  return `${capital(thing)}: when it should come in`;
}

function paragraphs({ slip, openFindings }: LetterFacts): string[] {
  const { shop, customer } = slip;
  const stopped = slip.headline.kind === 'do-not-use';
  return [
    customer.name === '' ? 'Good day,' : `Good day, ${customer.name},`,
    openFindings.length === 0
      ? ''
      : ['Found and still open:', ...openFindings.map((one) => `- ${findingLine(one)}`)].join('\n'),
    stopped
      ? `${headlineText(slip)} of ${slip.machine.name}. Ring us before it works again.`
      : `${slip.machine.name}: ${headlineText(slip)} ${decidingText(slip)}`,
    stopped ? '' : thenDoText(slip),
    stopped ? '' : 'Stop and ring us if it knocks or will not lock, or if you see a crack or a bend.',
    `${planningAidHead} The maker's instructions and the law where you work come first.`,
    'Tell us what the meter shows now, and when it suits you to bring it in.',
    [shop.name, ...shop.headLines, shop.phone, shop.email].filter((line) => line !== '').join('\n'),
  ].filter((text) => text !== '');
}

/** @source RFC 6068: line breaks are %0D%0A, and every other character outside its safe ones is escaped */
function mailtoOf(to: string, subject: string, body: string): string {
  const crlf = body.replace(/\r?\n/g, '\r\n');
  return `mailto:${encodeURIComponent(to).replace(/%40/g, '@')}?subject=${encodeURIComponent(subject)}&body=${encodeURIComponent(crlf)}`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
