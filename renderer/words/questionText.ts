import type { Question } from '#core/contract/shapes.ts';
import { isDay } from '#core/units/day.ts';
import { dayText, gaugeErrorText, hoursFigure, lengthText, limitText, type Writing } from '#core/words/quantityText.ts';
import { counted } from './english.ts';

/**
 * Questions about something typed: the fact first, then what is done with it meanwhile. The answers are keys.
 * A question's code is that of the caution or refusal it was made from.
 */
export type QuestionSaid = { fact: string; meanwhile: string };

export type QuestionContext = {
  writing: Writing;
  /** decimals of the gauge the size was read with */
  decimals?: number;
  /** 1 sd of that gauge */
  gaugeErrorMm?: number;
  measures?: 'thickness' | 'diameter' | 'bore' | 'slack' | 'section' | 'depth';
};

type Facts = Question['facts'];
type Sentence = (facts: Facts, context: QuestionContext) => QuestionSaid;

const KEPT_OUT = 'Kept, and left out of the forecast until answered.';
const NOT_YET_KEPT = 'Not kept until you say.';

/** "thicker", "smaller": what better than the last reading looks like on the part. */
const BETTER = {
  thickness: 'thicker',
  diameter: 'thicker',
  section: 'thicker',
  bore: 'smaller',
  slack: 'less',
  depth: 'less',
} as const;

const size = (value: Facts[string] | undefined, { writing, decimals = 2 }: QuestionContext): string =>
  typeof value === 'number' ? lengthText(value, decimals, writing) : String(value ?? '');

const hours = (value: Facts[string] | undefined): string =>
  typeof value === 'number' ? hoursFigure(value) : String(value ?? '');

const on = (value: Facts[string] | undefined): string =>
  typeof value === 'string' && isDay(value) ? ` on ${dayText(value)}` : '';

const gaugeError = ({ gaugeErrorMm, writing }: QuestionContext): string =>
  gaugeErrorMm === undefined ? '' : `; gauge error ${gaugeErrorText(gaugeErrorMm, writing)}`;

const better = ({ measures }: QuestionContext): string => (measures ? BETTER[measures] : 'better');

const within = (days: Facts[string] | undefined): string =>
  typeof days === 'number' ? ` in ${days} ${counted(days, 'day', 'days')}` : '';

/** Every code a size or a dial figure may be questioned with. */
export const questionSentences: Record<string, Sentence> = {
  'better-than-last': (f, c) => ({
    fact: `${size(f.sizeMm, c)} is ${better(c)} than ${size(f.lastSizeMm, c)}${on(f.lastOn)}${gaugeError(c)}.`,
    meanwhile: KEPT_OUT,
  }),
  'worse-than-later': (f, c) => ({
    fact: `${size(f.laterSizeMm, c)}, read later${on(f.laterOn)}, is ${better(c)} than ${size(f.sizeMm, c)}${gaugeError(c)}.`,
    meanwhile: KEPT_OUT,
  }),
  'better-than-new': (f, c) => ({
    fact: `${size(f.sizeMm, c)} is ${better(c)} than new, ${limitText(Number(f.newSizeMm), c.writing)}${gaugeError(c)}.`,
    meanwhile: KEPT_OUT,
  }),
  'ten-times-off': (f, c) =>
    typeof f.likelyMm === 'number'
      ? { fact: `${size(f.sizeMm, c)} is far out; ${size(f.likelyMm, c)} would fit.`, meanwhile: KEPT_OUT }
      : {
          fact: `${hours(f.dialHours)} h is far more than ${hours(f.lastDialHours)} h${on(f.lastReadOn)}; ${hours(f.likelyDialHours)} h would fit.`,
          meanwhile: NOT_YET_KEPT,
        },
  'wrong-unit': (f, c) => ({
    fact: `${size(f.sizeMm, { ...c, decimals: Math.max(2, c.decimals ?? 2) })} is far out; read as ${f.unit} it would be ${size(f.likelyMm, c)}.`,
    meanwhile: KEPT_OUT,
  }),
  'not-oversize': (f, c) => ({
    fact: `${size(f.sizeMm, c)} is no larger than the standard here, ${limitText(Number(f.newSizeMm), c.writing)}.`,
    meanwhile: KEPT_OUT,
  }),
  'put-in-worn': (f, c) => ({
    fact: `${size(f.sizeMm, c)} put in is at its limit already, ${limitText(Number(f.renewAtMm), c.writing)}.`,
    meanwhile: KEPT_OUT,
  }),
  'put-in-larger': (f, c) => ({
    fact: `${size(f.sizeMm, c)} put in is larger than new, ${limitText(Number(f.newSizeMm), c.writing)}: is it oversize?`,
    meanwhile: KEPT_OUT,
  }),
  'put-in-smaller': (f, c) => ({
    fact: `${size(f.sizeMm, c)} put in is smaller than new, ${limitText(Number(f.newSizeMm), c.writing)}: is it a used part?`,
    meanwhile: KEPT_OUT,
  }),
  'past-reject': (f, c) => ({
    fact: `${size(f.sizeMm, c)} is past reject at ${limitText(Number(f.rejectAtMm), c.writing)}.`,
    meanwhile: 'It goes in as it is. Say with + if the part must not be used.',
  }),
  'dial-went-back': (f) => ({
    fact: `${hours(f.lastDialHours)} h${on(f.lastReadOn)}, ${hours(f.dialHours)} h now: the dial went back.`,
    meanwhile:
      `${f.rolloverPlausible ? 'It may have rolled over.' : ''} ${f.tenTimesFits ? `${hours(Number(f.dialHours) * 10)} h would fit.` : ''} ${NOT_YET_KEPT}`.replace(
        / {2,}/g,
        ' ',
      ),
  }),
  'dial-above-later': (f) => ({
    fact: `${hours(f.dialHours)} h is more than ${hours(f.laterDialHours)} h, read later${on(f.laterReadOn)}.`,
    meanwhile: NOT_YET_KEPT,
  }),
  'rollover-without-fall': (f) => ({
    fact: `${hours(f.dialHours)} h is not below ${hours(f.lastDialHours)} h${on(f.lastReadOn)}: the meter cannot have rolled over.`,
    meanwhile: NOT_YET_KEPT,
  }),
  'rise-over-24-a-day': (f) => ({
    fact: `${hours(f.riseHours)} h more${within(f.days)} is over 24 hours a day; ${hours(f.lastDialHours)} h${on(f.lastReadOn)}.`,
    meanwhile: NOT_YET_KEPT,
  }),
  'dial-over-full-scale': (f) => ({
    fact: `${hours(f.dialHours)} h is more than this meter can show: it turns over at ${hours(f.fullScaleHours)} h.`,
    meanwhile: NOT_YET_KEPT,
  }),
  'meter-may-have-stopped': (f) => ({
    fact: `${hours(f.dialHours)} h, as${on(f.lastReadOn) || ' last time'}: the meter may have stopped.`,
    meanwhile: NOT_YET_KEPT,
  }),
};

/** What to say of a question; a code nobody has words for is still said, with what is known. */
export function questionText(question: Question, context: QuestionContext): QuestionSaid {
  const sentence = questionSentences[question.code];
  if (sentence) return trimmed(sentence(question.facts, context));
  const plain = question.code.replaceAll('-', ' ');
  return { fact: `${plain.charAt(0).toUpperCase()}${plain.slice(1)}.`, meanwhile: KEPT_OUT };
}

const trimmed = ({ fact, meanwhile }: QuestionSaid): QuestionSaid => ({ fact, meanwhile: meanwhile.trim() });

/** Answers as keys: what is done, and the letter printed on it. */
export const answerWords: Record<string, { text: string; letter: string }> = {
  'measure-again': { text: 'Measure again', letter: 'M' },
  'right-as-read': { text: 'Right as read', letter: 'K' },
  'was-renewed': { text: 'Was renewed', letter: 'R' },
  'wrong-place': { text: 'Wrong box', letter: 'B' },
  'new-meter': { text: 'New meter', letter: 'N' },
  rollover: { text: 'Rolled over', letter: 'O' },
  'typed-wrong': { text: 'Typed wrong', letter: 'T' },
  estimate: { text: 'Keep as an estimate', letter: 'E' },
};

/** An answer nobody has words for is still offered, by its code. */
export const answerText = (choice: string): { text: string; letter: string } =>
  answerWords[choice] ?? { text: choice.replaceAll('-', ' '), letter: choice.charAt(0).toUpperCase() };
