import { day } from '../../units/day.ts';
import { shared } from '../../words/english.ts';
import { longDay } from '../slipFigures.ts';
import { findingText, midSentence, severityWords } from '../slipNames.ts';
import type { LetterFacts } from './letterFacts.ts';

type Finding = LetterFacts['openFindings'][number];

/** "Hook: cracked, at the weld toe, found 12 October 2026: DO NOT USE." */
export const findingLine = ({ label, foundOn, severity, ...finding }: Finding): string =>
  `${label}: ${findingText(finding)}, found ${longDay(day(foundOn))}: ${verdict(severity)}.`;

/** "the hook is cracked and must not be used": within a sentence. */
export const findingClause = ({ label, finding, severity }: Finding): string =>
  `the ${midSentence(label)}${label.includes(',') ? ',' : ''} is ${findingText({ finding, note: '' })} and ${SPOKEN[severity]}`;

const verdict = (severity: Finding['severity']): string =>
  severity === 'do-not-use' ? shared.doNotUse : severityWords[severity];

const SPOKEN = { 'do-not-use': 'must not be used', repair: 'needs repair', watch: 'is to be watched' } as const;
