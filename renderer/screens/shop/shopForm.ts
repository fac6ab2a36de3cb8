import type { ShopSettings } from '#core/contract/shop.ts';
import { decimalFigure, hoursFigure, type Writing } from '#core/words/quantityText.ts';
import { readNumber } from '../../words/readNumber.ts';
import { dayOfYearEcho, readDayOfYear } from './dayOfYear.ts';
import { seasonOf, seasonPercent } from './season.ts';

/** The shop's settings as typed. */
export type ShopForm = {
  name: string;
  headText: string;
  phone: string;
  email: string;
  winterFromText: string;
  winterToText: string;
  winterHoursText: string;
  decimalMark: ShopSettings['decimalMark'];
  seasonTexts: string[];
  hoursPerYearText: string;
  watchText: string;
  theme: ShopSettings['theme'];
  lengths: ShopSettings['lengths'];
};

export type ShopField = keyof ShopForm;
/** Fields that could not be read. */
export type ShopRemarks = ReadonlySet<ShopField>;

const MOST_HEAD_LINES = 4;
const MOST_WATCH_LINES = 8;

export const shopForm = (settings: ShopSettings): ShopForm => ({
  name: settings.name,
  headText: settings.headLines.join('\n'),
  phone: settings.phone,
  email: settings.email,
  winterFromText: dayOfYearEcho(settings.winterFrom),
  winterToText: dayOfYearEcho(settings.winterTo),
  winterHoursText: plain(settings.winterHoursPerWeek, settings.decimalMark),
  decimalMark: settings.decimalMark,
  seasonTexts: seasonPercent(settings.season).map((share) => plain(share, settings.decimalMark)),
  hoursPerYearText: hoursFigure(settings.hoursPerYearDefault),
  watchText: settings.greaseAndWatch.join('\n'),
  theme: settings.theme,
  lengths: settings.lengths,
});

const plain = (value: number, writing: Writing): string =>
  Number.isInteger(value) ? String(value) : decimalFigure(value, 1, writing);

const linesOf = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');

/** The settings the form stands for; null where a field could not be read. */
export function shopSettings(form: ShopForm): { settings: ShopSettings | null; remarks: ShopRemarks } {
  const remarks = new Set<ShopField>();
  const day = (field: 'winterFromText' | 'winterToText'): string => {
    const read = readDayOfYear(form[field]);
    if (read === null) remarks.add(field);
    return read ?? '';
  };
  const figure = (field: 'winterHoursText' | 'hoursPerYearText', from: number, to: number): number => {
    const read = readNumber(form[field], 'h');
    if (read.ok && read.value >= from && read.value <= to) return read.value;
    remarks.add(field);
    return 0;
  };
  const months = form.seasonTexts.map((text) => {
    const read = readNumber(text.replace('%', ''), 'h');
    if (!read.ok && read.why === 'empty') return 0;
    return read.ok && read.value >= 0 ? read.value : Number.NaN;
  });
  const season = months.some(Number.isNaN) ? null : seasonOf(months);
  if (season === null) remarks.add('seasonTexts');
  const headLines = linesOf(form.headText);
  if (headLines.length > MOST_HEAD_LINES) remarks.add('headText');
  const greaseAndWatch = linesOf(form.watchText);
  if (greaseAndWatch.length > MOST_WATCH_LINES) remarks.add('watchText');
  const settings: ShopSettings = {
    name: form.name.trim(),
    headLines,
    phone: form.phone.trim(),
    email: form.email.trim(),
    winterFrom: day('winterFromText'),
    winterTo: day('winterToText'),
    winterHoursPerWeek: figure('winterHoursText', 0, 1000),
    decimalMark: form.decimalMark,
    season: season ?? [],
    hoursPerYearDefault: figure('hoursPerYearText', 1, 8760),
    greaseAndWatch,
    theme: form.theme,
    lengths: form.lengths,
  };
  return { settings: remarks.size === 0 ? settings : null, remarks };
}
