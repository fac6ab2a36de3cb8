import { day, yearOf } from '../../units/day.ts';
import { hoursPhrase, longDay, monthName } from '../slipFigures.ts';
import { midSentence, thingOf } from '../slipNames.ts';
import { findingClause } from './findingWords.ts';
import { type LetterFacts, plainText } from './letterFacts.ts';

/** The answer in one sentence, to be read aloud: what is found before what is forecast, and what must not be used alone. */
export function spokenAnswer(facts: LetterFacts): string {
  const stop = facts.openFindings.find(({ severity }) => severity === 'do-not-use');
  if (stop) {
    const thing = `the ${thingOf(facts.slip)} of ${facts.slip.machine.name}`;
    const found = longDay(day(stop.foundOn));
    return plainText(
      `Please do not use ${thing}: ${findingClause(stop)}, as we found on ${found}, so bring it in before it works again.`,
    );
  }
  const [first] = facts.openFindings;
  const said = forecastClause(facts.slip);
  return plainText(first ? `First, ${findingClause(first)}; ${said}.` : `${capital(said)}.`);
}

function forecastClause(slip: LetterFacts['slip']): string {
  const { headline } = slip;
  const thing = `the ${thingOf(slip)} of ${slip.machine.name}`;
  switch (headline.kind) {
    case 'passed':
      return `bring ${thing} in now, since the ${midSentence(headline.label)} may be worn past its limit`;
    case 'not-measured':
      return `have ${thing} measured ${headline.winter === null ? 'at its next visit' : `in winter ${headline.winter}`}, since nobody has measured the ${midSentence(headline.label)} yet`;
    case 'come-in': {
      const hours = hoursPhrase(slip, headline.dialHours);
      const why = headline.decides === 'low' ? ', going by the early figure because it tows or lifts' : '';
      // past two seasons no month is named, as on the slip
      if (headline.about === null)
        return `have ${thing} looked at next winter, and bring it in by ${hours}, for the ${midSentence(headline.label)}${why}`;
      const winter = headline.winter === null ? '' : `during winter ${headline.winter}, or `;
      const about = `, about ${monthName(day(headline.about))} ${yearOf(day(headline.about))} at your use`;
      return `bring ${thing} in ${winter}by ${hours}${about}, for the ${midSentence(headline.label)}${why}`;
    }
    default:
      return `nothing can be said yet of when ${thing} should come in, so please read us its meter`;
  }
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
