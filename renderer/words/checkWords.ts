import type { ClassCheck, checkRead, Explanation, SizeAgainst } from '#core/contract/check.ts';
import type { ReplyOf } from '#core/contract/operation.ts';
import { day } from '#core/units/day.ts';
import {
  countWord,
  dayText,
  decimalFigure,
  hoursLeftFigure,
  hoursText,
  type Writing,
  wholeFigure,
} from '#core/words/quantityText.ts';
import { counted } from './english.ts';

const count = (n: number, one: string, many: string): string => `${wholeFigure(n)} ${counted(n, one, many)}`;
const percent = (share: number): string => `${Math.round(100 * share)}\u00A0%`;
const mm = (value: number, writing: Writing): string => `${decimalFigure(value, 2, writing)}\u00A0mm`;
const number = (fact: unknown): number | null => (typeof fact === 'number' ? fact : null);
const hours = (fact: unknown): string => {
  const value = number(fact);
  return value === null ? 'not known' : hoursText(value);
};
const dayOf = (fact: unknown): string => (typeof fact === 'string' ? dayText(day(fact)) : 'it was new');

type Kept = ReplyOf<typeof checkRead>['kept'];
type Limits = ReplyOf<typeof checkRead>['limits'];

/** Words of the Forecast check screens. */
export const checkWords = {
  tab: 'Check',
  title: 'Forecast check',
  sub: 'What was foretold, laid against what was measured.',
  loading: 'Laying sizes against their forecasts',
  emptyHead: 'No size has had a forecast before it yet',
  emptyNext:
    'Measure a part a second time, and the size is laid against what was foretold for it here. The first look at a part has the class’s forecast before it.',
  toStripDown: 'Enter a strip-down',
  caption: 'How forecasts of each class did',
  class: 'Part class',
  fell: 'Where sizes fell',
  fellNote: 'less worn · as foretold · more worn',
  inside: 'In range',
  insideNote: '8 in 10 is said',
  bias: 'Off the middle',
  width: 'Range',
  score: 'Miss',
  line: 'Line’s miss',
  rate: 'mm in 1 000 h',
  rateNote: 'before, and with this shop’s sizes',
  verdict: 'So',
  sizes: (one: ClassCheck) =>
    one.sizes === 0
      ? 'no size yet'
      : `${count(one.sizes, 'size', 'sizes')}, ${one.kept === 0 ? 'all rebuilt' : `${wholeFigure(one.kept)} kept`}`,
  insideOf: ({ inside, sizes }: ClassCheck) => `${wholeFigure(inside)} of ${wholeFigure(sizes)}`,
  insideShare: ({ inside, sizes }: ClassCheck) => percent(inside / sizes),
  biasText: ({ biasMm }: ClassCheck, writing: Writing) =>
    biasMm === null || Math.abs(biasMm) < 0.005
      ? 'none'
      : `${mm(Math.abs(biasMm), writing)} ${biasMm > 0 ? 'more worn' : 'less worn'}`,
  millimetres: (value: number | null, writing: Writing) => (value === null ? '' : decimalFigure(value, 2, writing)),
  rateText: (range: ClassCheck['ratePer1000hNowMm'], writing: Writing) =>
    range.low === null || range.high === null
      ? 'not known'
      : `${decimalFigure(range.low, 2, writing)} to ${decimalFigure(range.high, 2, writing)}`,
  verdicts: (one: ClassCheck, writing: Writing): string =>
    ({
      'too-few': 'too few sizes to say',
      'as-said': 'as said',
      'too-wide': 'wider than need be',
      'too-narrow':
        one.widenedBy > 1
          ? `too sure of itself: told ${decimalFigure(one.widenedBy, 2, writing)} times as wide`
          : `too sure of itself: would have to be ${decimalFigure(one.widenBy, 2, writing)} times as wide; switched off`,
    })[one.verdict],
  fellSentence: (one: ClassCheck) =>
    `${one.partClass}: ${wholeFigure(one.inside)} of ${count(one.sizes, 'size', 'sizes')} within the range; ${wholeFigure(one.tenths[0] ?? 0)} less worn than it, ${wholeFigure(one.tenths[9] ?? 0)} more worn`,
  classNote: (least: number) =>
    `Ten columns: the tenths of the chance that was given, least worn at left. Forecasts that are right fill them alike, up to the thin chain; the outer two lie beyond the 80\u00A0% range. Miss: how far a whole forecast was from what came, in mm (less is better), beside a straight line through new and the last size. A class is called too sure of itself, or too wide, after at least ${least} sizes, when it is off by more than chance.`,
  rebuiltNote:
    'Kept: the forecast as it stood, on a slip, in an agreed visit, or just before the strip-down. Rebuilt: of sizes that had none kept, from the machine’s sizes before them, with what the classes hold today.',
  settingsKey: 'Widening, and every other figure',
  keptSentence: (kept: Kept): string => {
    const all = kept.slip + kept.plan + kept.stripDown;
    if (all === 0)
      return 'No forecast has been kept yet: the first is with the next slip, the next agreed visit or the next strip-down.';
    const scored =
      kept.scored === 0
        ? 'none of them has been measured since'
        : `${count(kept.scored, 'size has', 'sizes have')} come in since, ${wholeFigure(kept.inside)} within range (${percent(kept.inside / kept.scored)})`;
    return `${count(all, 'forecast is', 'forecasts are')} kept (${wholeFigure(kept.slip)} on slips, ${wholeFigure(kept.plan)} in agreed visits, ${wholeFigure(kept.stripDown)} before strip-downs): ${scored}. ${wholeFigure(kept.waiting)} wait; ${wholeFigure(kept.renewedEarly)} ended with a part renewed early, and were not wrong.`;
  },
  limitsSentence: ({ within, tooEarly, tooLate }: Limits): string | null => {
    const all = within + tooEarly + tooLate;
    return all === 0
      ? null
      : `Hours at limit, where two sizes had the limit between them: ${wholeFigure(within)} of ${wholeFigure(all)} within range, ${wholeFigure(tooEarly)} came later than said, ${wholeFigure(tooLate)} earlier.`;
  },

  beyondHead: 'Sizes that came out beyond their range',
  beyondNote: 'Two in ten do when all is well. Look first at those far out, and at many in one visit.',
  noneBeyond: 'None of the sizes looked at came out beyond its range.',
  measuredOn: 'Measured',
  where: 'Where',
  size: 'Size, mm',
  foretoldRange: 'Foretold, mm',
  origin: 'Forecast',
  origins: { kept: 'kept', rebuilt: 'rebuilt' },
  explain: 'What would explain it',
  explainOf: (one: SizeAgainst) => `What would explain it: ${one.machine}, ${one.position}, ${one.point}`,
  sizeText: (value: number, writing: Writing) => decimalFigure(value, 2, writing),
  rangeText: (one: Pick<SizeAgainst, 'leastWornMm' | 'mostWornMm'>, writing: Writing) => {
    const [low, high] = [one.leastWornMm, one.mostWornMm].sort((a, b) => a - b);
    return `${decimalFigure(low ?? 0, 2, writing)} to ${decimalFigure(high ?? 0, 2, writing)}`;
  },

  worthHead: 'Worth measuring at the next visit',
  worthNote:
    'Each size is imagined as it is foretold, and carried through the whole forecast: by how much all ranges of the machine would narrow.',
  worthPick: 'Machine that comes in',
  worthLoading: 'Imagining each point measured',
  worthBest: (best: { pointIds: readonly number[]; minutes: number; narrowsHours: number; widthHours: number }) =>
    `${best.pointIds.length === 1 ? 'Measure this one' : `Measure these ${countWord(best.pointIds.length)}`}: about ${wholeFigure(best.minutes)} minutes, narrows the ranges of the machine by ${hoursText(best.narrowsHours)} in all, of ${hoursText(best.widthHours)}.`,
  worthNone: 'No point of this machine would tell more by being measured now.',
  worthNarrows: 'Narrows all ranges by, h',
  worthMinutes: 'Minutes a point: common practice, no source. With the part in reach.',

  explainTitle: 'A size against its forecast',
  back: 'To the forecast check',
  toMachine: 'To the machine',
  explainLoading: 'Working through what would explain it',
  explainHead: (one: SizeAgainst, writing: Writing): string =>
    `${one.position}, ${one.point}: measured ${decimalFigure(one.sizeMm, 2, writing)} mm on ${dayText(day(one.takenOn))}; foretold was ${checkWords.rangeText(one, writing)} mm. ${
      one.inside ? 'It lies within the range.' : `It came out ${one.pit > 0.5 ? 'more' : 'less'} worn.`
    }`,
  visitSentence: ({ sizes, sameSide }: { sizes: number; sameSide: number }): string =>
    sizes < 2
      ? 'No other size of that visit had a forecast.'
      : `Of ${count(sizes, 'size', 'sizes')} of that visit ${wholeFigure(sameSide)} lay to the same side of the middle${
          sizes >= 4 && sameSide >= 0.8 * sizes ? ': look for what they have in common, hours, gauge or work.' : '.'
        }`,
  rowThen: (asOf: string, kept: boolean) => `Then, ${dayText(day(asOf))}${kept ? '' : ' (rebuilt)'}`,
  rowNow: 'Now, as recorded',
  rowWith: {
    hours: 'If the hours were wrong',
    renewal: 'If it was renewed and not noted',
    gauge: 'If the size is wrong',
    share: 'If it worked in another share of hours',
    'hard-worked': 'If the machine works otherwise than said',
  } satisfies Record<Explanation['code'], string>,
  causeText: ({ code, facts, explains }: Explanation, writing: Writing): string => {
    const fits = explains === true ? ' The size would be as foretold.' : '';
    switch (code) {
      case 'hours':
        return number(facts.wouldBe) === null
          ? 'No hours since its last size would give this one.'
          : `At ${hours(facts.wouldBe)} instead of ${hours(facts.machineHours)} it would be just as foretold${
              facts.possible
                ? '.'
                : `; but the readings about it allow only ${hours(facts.earliest ?? 0)} to ${number(facts.latest) === null ? 'any later' : hours(facts.latest)}.`
            }${fits}`;
      case 'renewal':
        return `Another part may have gone in between ${dayOf(facts.fromOn)} and ${dayOf(facts.toOn)}.${explains === false ? ' Even then it would be beyond the range of a newer part.' : fits}`;
      case 'gauge':
        return `It lies ${mm(number(facts.offMm) ?? 0, writing)} beyond the range, ${decimalFigure(number(facts.gaugeErrors) ?? 0, 1, writing)} times its gauge’s error (1 sd). The bar is without it: measure again, or put the figure right.`;
      case 'share':
        return explains === false && number(facts.wouldBe) !== null && (number(facts.wouldBe) ?? 0) > 1
          ? `It would have to have worked ${percent(number(facts.wouldBe) ?? 0)} of the machine’s hours since ${dayOf(facts.since)}: it cannot.`
          : `${percent(number(facts.wouldBe) ?? 0)} of the machine’s hours since ${dayOf(facts.since)}, not ${percent(number(facts.share) ?? 1)}, would give it.${fits}`;
      case 'hard-worked':
        return typeof facts.word === 'string'
          ? `If it were said to work “${facts.word}” (${decimalFigure(number(facts.times) ?? 1, 2, writing)} times as fast).${
              explains
                ? fits
                : ' That alone would not bring it into the range: such parts differ more than their machines do.'
            }`
          : `No kind of work on the shop’s list is ${facts.harder ? 'harder' : 'lighter'} than what it is said to do. Nothing to correct: its sizes carry the forecast.`;
    }
  },
  correct: {
    hours: 'Put the hours right',
    renewal: 'Note the renewal',
    gauge: 'Put the size right',
    share: 'Change the share',
    'hard-worked': 'Change the kind of work',
  } satisfies Record<Explanation['code'], string>,
  cause: 'Cause',
  atLimit: 'Machine hours at limit',
  notReckoned: 'none to reckon',
  figure: (value: number | null) => (value === null ? 'beyond' : hoursLeftFigure(value)),
  savesNothing: 'Bars of corrections show what would be; nothing is saved till it is put right.',
  wellSaid: 'It may also be just one of the two in ten.',

  savedBeyond: (beyond: number, sizes: number) =>
    `${count(beyond, 'size', 'sizes')} of ${wholeFigure(sizes)} came out beyond the range that stood before. Two in ten do when all is well.`,
  savedBeyondOne: (
    one: { item: number; position: string; point: string; sizeMm: number; leastWornMm: number; mostWornMm: number },
    writing: Writing,
  ) =>
    `${one.item} ${one.position}, ${one.point}: ${decimalFigure(one.sizeMm, 2, writing)} mm; foretold was ${checkWords.rangeText(one, writing)} mm.`,
  block: {
    asOf: 'As of',
    sizes: 'Sizes laid against forecasts',
    range: 'Range',
    rangeIs: '80\u00A0%: 1 in 10 below, 1 in 10 above',
    corrections: 'Corrections',
  },
} as const;
