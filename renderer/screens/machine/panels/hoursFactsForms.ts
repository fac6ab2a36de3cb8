import type { hoursMeter, hoursShare, hoursSource } from '#core/contract/hours.ts';
import type { HoursSourceRow, MachineSheet, WorkShareRow } from '#core/contract/machine.ts';
import type { AskOf } from '#core/contract/operation.ts';
import type { Day } from '#core/units/day.ts';
import { pointOf, type Writing } from '#core/words/quantityText.ts';
import { percentFigure, hoursFactsWords as words } from '../../../words/hoursFactsWords.ts';
import { readNumber } from '../../../words/readNumber.ts';

/** Forms of a machine's hours facts as typed, and the requests they stand for. A fault names what was expected. */

export type Faults<Field extends string> = Partial<Record<Field, string>>;
type Read<Is, Field extends string> = { is: Is; faults: null } | { is: null; faults: Faults<Field> };

/** A figure within bounds; null: it cannot be read, is empty, or lies outside. */
function figure(text: string, from: number, to: number): number | null {
  const read = readNumber(text.replace('%', ''), 'h');
  return read.ok && read.value >= from && read.value <= to ? read.value : null;
}

export type ShareForm = { from: Day | null; fromBeginning: boolean; workType: string; shareText: string };

export const shareForm = (row: WorkShareRow | null, today: Day, writing: Writing): ShareForm => ({
  from: row?.from ? (row.from as Day) : today,
  fromBeginning: row !== null && row.from === null,
  workType: row?.workType ?? '',
  shareText: row ? percentFigure(row.share, writing) : '',
});

export function shareOf(form: ShareForm): Read<NonNullable<AskOf<typeof hoursShare>['is']>, 'share' | 'from'> {
  const percent = figure(form.shareText, 1, 100);
  const faults: Faults<'share' | 'from'> = {
    ...(percent === null && { share: words.remarks.share }),
    ...(form.from === null && !form.fromBeginning && { from: words.remarks.from }),
  };
  if (percent === null || Object.keys(faults).length > 0) return { is: null, faults };
  const from = form.fromBeginning ? null : form.from;
  return { is: { from, share: percent / 100, workType: form.workType.trim() }, faults: null };
}

export type SourceForm = {
  kind: HoursSourceRow['kind'];
  from: Day | null;
  pullerId: number | null;
  shareText: string;
  hoursPerYearText: string;
  /** U = 2 sd of one year's hours, per cent; empty: the usual */
  errorText: string;
};

export const sourceForm = (row: HoursSourceRow | null, today: Day, writing: Writing): SourceForm => ({
  kind: row?.kind ?? 'pulled',
  from: row ? (row.from as Day) : today,
  pullerId: row?.puller?.machineId ?? null,
  shareText: row?.share == null ? '' : percentFigure(row.share, writing),
  hoursPerYearText: row?.hoursPerYear == null ? '' : String(row.hoursPerYear),
  errorText: row && row.kind !== 'own' ? percentFigure(2 * row.errorShare, writing) : '',
});

type SourceIs = NonNullable<AskOf<typeof hoursSource>['is']>;
export type SourceField = 'from' | 'puller' | 'share' | 'hoursPerYear' | 'errorShare';

export function sourceOf(form: SourceForm): Read<SourceIs, SourceField> {
  const { kind, from, pullerId } = form;
  const share = figure(form.shareText, 1, 100);
  const hoursPerYear = figure(form.hoursPerYearText, 1, 8760);
  const error = figure(form.errorText, 0, 400);
  const isEmpty = form.errorText.trim() === '';
  const faults: Faults<SourceField> = {
    ...(from === null && { from: words.remarks.from }),
    ...(kind === 'pulled' && pullerId === null && { puller: words.remarks.puller }),
    ...(kind === 'pulled' && share === null && { share: words.remarks.share }),
    ...(kind === 'yearly' && hoursPerYear === null && { hoursPerYear: words.remarks.hoursPerYear }),
    ...(kind !== 'own' && error === null && !isEmpty && { errorShare: words.remarks.errorShare }),
  };
  if (from === null || Object.keys(faults).length > 0) return { is: null, faults };
  const errorShare = error === null ? null : error / 200;
  if (kind === 'own') return { is: { kind, from }, faults: null };
  const is: SourceIs =
    kind === 'pulled'
      ? { kind, from, pullerId: pullerId!, share: share! / 100, errorShare }
      : { kind, from, hoursPerYear: hoursPerYear!, errorShare };
  return { is, faults: null };
}

export type MeterForm = { digitsText: string; hoursBeforeText: string; clockText: string };

export const meterForm = ({ meter }: Pick<MachineSheet, 'meter'>, writing: Writing): MeterForm => ({
  digitsText: meter.digits === null ? '' : String(meter.digits),
  hoursBeforeText: meter.hoursBefore === null ? '' : String(meter.hoursBefore),
  clockText: String(meter.hoursPerDialHour).replace('.', pointOf(writing)),
});

type MeterIs = Pick<AskOf<typeof hoursMeter>, 'meterDigits' | 'hoursBefore' | 'hoursPerDialHour'>;

export function meterOf(form: MeterForm, reason: string): Read<MeterIs, 'digits' | 'hours' | 'clock' | 'why'> {
  const empty = (text: string) => text.trim() === '';
  const digits = figure(form.digitsText, 3, 8);
  const hoursBefore = figure(form.hoursBeforeText, 0, 10_000_000);
  const clock = figure(form.clockText, 0.1, 10);
  const faults: Faults<'digits' | 'hours' | 'clock' | 'why'> = {
    ...(!empty(form.digitsText) && (digits === null || !Number.isInteger(digits)) && { digits: words.remarks.digits }),
    ...(!empty(form.hoursBeforeText) && hoursBefore === null && { hours: words.remarks.hours }),
    ...(clock === null && { clock: words.remarks.clock }),
    ...(empty(reason) && { why: words.remarks.why }),
  };
  if (clock === null || Object.keys(faults).length > 0) return { is: null, faults };
  return { is: { meterDigits: digits, hoursBefore, hoursPerDialHour: clock }, faults: null };
}
