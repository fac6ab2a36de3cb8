import type { Slip } from '../../contract/slip.ts';
import { forecastFigure, meterOf } from '../slipFigures.ts';
import { findingText, midSentence, thingOf } from '../slipNames.ts';
import { type LetterFacts, plainText } from './letterFacts.ts';

/**
 * A message of one part holds 160 characters.
 * @source 3GPP TS 23.040 and 23.038: 140 octets, which is 160 characters of seven bits
 */
const MOST_CHARACTERS = 159;

/** The fewest words that say it, shorter and shorter until they fit: names are cut before anything that matters is. */
export function shortMessage(facts: LetterFacts): string {
  const { slip } = facts;
  const core = coreOf(facts);
  for (const room of [60, 30, 20, 12]) {
    const name = (text: string) => cut(text, room);
    const from = slip.shop.name === '' ? '' : `${name(slip.shop.name)}: `;
    const ring = slip.shop.phone === '' ? 'Ring us.' : `Ring ${cut(slip.shop.phone, 24)}.`;
    for (const text of [`${from}${core(name)} ${ring}`, `${core(name)} ${ring}`]) {
      const said = plainText(text);
      if (said.length <= MOST_CHARACTERS) return said;
    }
  }
  return cut(plainText(core((text) => cut(text, 10))), MOST_CHARACTERS);
}

type Name = (text: string) => string;

function coreOf({ slip, openFindings }: LetterFacts): (name: Name) => string {
  const [first] = openFindings;
  const thing = (name: Name) => `${name(thingOf(slip))} of ${name(slip.machine.name)}`;
  if (first?.severity === 'do-not-use')
    return (name) => `DO NOT USE the ${thing(name)}: ${name(midSentence(first.label))} ${word(first)}.`;
  const seen = (name: Name) =>
    first
      ? `${name(first.label)} ${word(first)}${first.severity === 'repair' ? ', needs repair' : ', watch it'}. `
      : '';
  return (name) => `${seen(name)}${ask(slip, name, thing(name))}`;
}

const word = ({ finding }: { finding: Slip['watch'][number]['finding'] }): string => findingText({ finding, note: '' });

function ask(slip: Slip, name: Name, thing: string): string {
  const { headline } = slip;
  switch (headline.kind) {
    case 'passed':
      return `Bring in the ${thing} now: it may be worn past a limit.`;
    case 'not-measured':
      return `Have the ${thing} measured${headline.winter === null ? '' : ` in winter ${headline.winter}`}.`;
    case 'come-in': {
      const dial =
        slip.hoursAre === 'dial' ? ` on ${slip.dialMachine === null ? 'the meter' : name(meterOf(slip))}` : '';
      const winter = headline.winter === null ? '' : `in winter ${headline.winter}, or `;
      return `Bring in the ${thing} ${winter}by ${forecastFigure(slip, headline.dialHours)} h${dial}.`;
    }
    default:
      return `Tell us the hours on the meter of ${name(slip.machine.name)}.`;
  }
}

/** Cut at a character, with two points to show it. */
const cut = (text: string, most: number): string => {
  const letters = [...text];
  return text.length <= most ? text : `${fitting(letters, most - 2).trimEnd()}..`;
};

/** Whole characters that fit in so many units of two bytes. */
function fitting(letters: readonly string[], most: number): string {
  let text = '';
  for (const letter of letters) {
    if (text.length + letter.length > most) break;
    text += letter;
  }
  return text;
}
