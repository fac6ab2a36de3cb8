import { type Day, day } from '#core/units/day.ts';
import {
  dayText,
  gaugeErrorText,
  hoursFigure,
  limitFigure,
  monthYearText,
  type Range,
  rateFigure,
  rateUnit,
  type Writing,
} from '#core/words/quantityText.ts';
import { limitWords } from './markWords.ts';

/** Words of the wear chart and of the picture it stands in. */
export const chartWords = {
  putRight: (size: string, on: string): string => `${size} typed, put right ${dayText(day(on))}`,
  fitted: (hours: number, on: Day): string => `fitted at ${hoursFigure(hours)}\u00A0h, ${monthYearText(on)}`,
  asBuilt: 'as built',
  fittedSomeTime: (from: number, to: number): string =>
    `renewed some time from ${hoursFigure(from)} to ${hoursFigure(to)}\u00A0h`,
  rate: ({ low, middle, high }: Range, writing: Writing): string | null =>
    middle === null
      ? null
      : `${rateFigure(middle / 1000, writing)}\u00A0${rateUnit(writing)}${low === null || high === null ? '' : ` (${rateFigure(low / 1000, writing)} to ${rateFigure(high / 1000, writing)})`}`,
  limit: (kind: keyof typeof limitWords, sizeMm: number, tolMm: number | null, writing: Writing): string =>
    `${limitWords[kind]} ${limitFigure(sizeMm, writing)}${tolMm ? ` ±${limitFigure(tolMm / 2, writing)}` : ''}`,
  gauge: (gauge: string, errorSdMm: number, writing: Writing): string =>
    `${gauge || 'gauge'}, ${gaugeErrorText(errorSdMm, writing)}`,
  source: (source: string): string => `limits: ${source}`,
} as const;
