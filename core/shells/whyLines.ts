import type { Why } from '../contract/forecast.ts';
import { cautionText } from '../words/cautionText.ts';
import { hoursText } from '../words/quantityText.ts';
import { useSentence, whyStep, widthLines, widthSentence } from '../words/whyText.ts';

/** Why one forecast says what it says, as lines for a terminal: the words of the window's panel. */
export function whyLines({ forecast, steps, width }: Why, asOf: string): string {
  const { machine, assembly, position, point } = forecast;
  const told = steps.map((step) => whyStep(step, '.'));
  const wide = Math.max(...told.map(({ head }) => head.length));
  const lines = [
    `${[machine, assembly, position, point].filter(Boolean).join(' / ')}, as of ${asOf}`,
    '',
    ...told.map(({ head, sentence }) => `${head.padEnd(wide)}  ${sentence}`),
    ...(width ? ['', ...widthRows(width)] : []),
    ...cautionRows(forecast.cautionFacts),
    '',
    'A planning aid, not a certificate.',
  ];
  return `${lines.map(plainSpaces).join('\n')}\n`;
}

function widthRows(width: NonNullable<Why['width']>): string[] {
  const lines = widthLines(width);
  const wide = Math.max(0, ...lines.map(({ name }) => name.length));
  const use = useSentence(width);
  return [
    widthSentence(width),
    ...lines.map(({ name, withoutHours }) => `  ${name.padEnd(wide)}  ${hoursText(withoutHours).padStart(9)}`),
    ...(use ? [use] : []),
  ];
}

const cautionRows = (cautions: Why['forecast']['cautionFacts']): string[] =>
  cautions.length === 0 ? [] : ['', ...cautions.map(({ code, facts }) => `- ${cautionText(code, facts)}`)];

/** Terminals show thin and no-break spaces as they please. */
const plainSpaces = (line: string): string => line.replaceAll('\u00A0', ' ').replaceAll('\u2009', ' ');
