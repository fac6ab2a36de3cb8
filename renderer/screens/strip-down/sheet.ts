import type { z } from 'zod';
import type { StripDownDraft, zFindingEntry } from '#core/contract/stripDown.ts';
import { isDay } from '#core/units/day.ts';
import { decimalFigure, hoursFigure, sizeEcho, type Writing } from '#core/words/quantityText.ts';
import { readNumber } from '../../words/readNumber.ts';
import { type Box, boxKey, type SheetRow } from './boxes.ts';
import { typedSize } from './typedSize.ts';

export type SizeEvent = 'as-found' | 'as-left';
type Renewal = StripDownDraft['renewals'][number];
export type FindingEntry = z.infer<typeof zFindingEntry>;

/** What was done in a renewal: of the whole part, or of some of its stations alone. */
export type RenewedHow = {
  kind: Renewal['kind'];
  /** pieces renewed by themselves; none: the whole part */
  stations: readonly string[];
  /** of the part put in; null: the new size */
  sizeMm: number | null;
  /** an oversize part carries its size; null: not said */
  stamped: boolean | null;
  /** somebody said of its size: right as read */
  sure: boolean;
};

/** The renewal of a point in a visit: by somebody since the last size (hours not known), or now, on this bench. */
export type Renewed = { sinceLast: boolean; now: boolean; how: RenewedHow };

/** A strip-down as it stands on the screen: texts as typed, not yet numbers. */
export type Sheet = {
  /** how its texts are written, and read */
  writing: Writing;
  machineId: number;
  /** the machine's last strip-down when it was laid out; undefined: not known of a draft kept by an earlier program */
  afterStripDownId: number | null | undefined;
  takenOn: string;
  dialText: string;
  fitter: string;
  note: string;
  texts: Record<SizeEvent, Record<string, string>>;
  /** boxes of which somebody said: right as read */
  sure: Record<SizeEvent, Record<string, boolean>>;
  /** gauge per point, where it is another than the point's own */
  gauges: Record<number, number>;
  renewed: Record<number, Renewed>;
  /** packing put in, per point; below 0 taken out [mm] */
  shims: Record<number, number>;
  findings: FindingEntry[];
};

export const emptySheet = (
  machineId: number,
  today: string,
  fitter: string,
  writing: Writing,
  afterStripDownId?: number | null,
): Sheet => ({
  writing,
  machineId,
  afterStripDownId,
  takenOn: today,
  dialText: '',
  fitter,
  note: '',
  texts: { 'as-found': {}, 'as-left': {} },
  sure: { 'as-found': {}, 'as-left': {} },
  gauges: {},
  renewed: {},
  shims: {},
  findings: [],
});

const A_NEW_PART: RenewedHow = { kind: 'new-part', stations: [], sizeMm: null, stamped: null, sure: false };
export const NOT_RENEWED: Renewed = { sinceLast: false, now: false, how: A_NEW_PART };
export const isRenewed = ({ sinceLast, now }: Renewed): boolean => sinceLast || now;

/** A size typed anew is a new claim: what was said of the old one is let go. */
export function withText(sheet: Sheet, event: SizeEvent, key: string, text: string): Sheet {
  if (text === (sheet.texts[event][key] ?? '')) return sheet;
  return {
    ...sheet,
    texts: { ...sheet.texts, [event]: { ...sheet.texts[event], [key]: text } },
    sure: { ...sheet.sure, [event]: { ...sheet.sure[event], [key]: false } },
  };
}

/** Rewrites a text without taking it for a new claim: the echo of a box that was left. */
export const withEcho = (sheet: Sheet, event: SizeEvent, key: string, text: string): Sheet =>
  text === (sheet.texts[event][key] ?? '')
    ? sheet
    : { ...sheet, texts: { ...sheet.texts, [event]: { ...sheet.texts[event], [key]: text } } };

export const withSure = (sheet: Sheet, event: SizeEvent, key: string): Sheet => ({
  ...sheet,
  sure: { ...sheet.sure, [event]: { ...sheet.sure[event], [key]: true } },
});

/** The two boxes' texts change places; both are new claims. */
export function withSwapped(sheet: Sheet, event: SizeEvent, one: string, other: string): Sheet {
  const texts = sheet.texts[event];
  const swapped = withText(sheet, event, one, texts[other] ?? '');
  return withText(swapped, event, other, texts[one] ?? '');
}

/**
 * In the as-found grid a part was renewed by somebody since the last size; in the as-left grid it is renewed now. A part
 * is renewed once in a visit, so the one takes the other's place.
 */
export function withRenewedToggled(sheet: Sheet, event: SizeEvent, pointId: number): Sheet {
  const { sinceLast, now, how } = sheet.renewed[pointId] ?? NOT_RENEWED;
  const renewed: Renewed =
    event === 'as-found' ? { sinceLast: !sinceLast, now: false, how } : { sinceLast: false, now: !now, how };
  return { ...sheet, renewed: { ...sheet.renewed, [pointId]: renewed } };
}

/** What was done is said: a part not yet marked is renewed by that, in the grid's own sense. A size said anew is a new claim. */
export function withHow(sheet: Sheet, event: SizeEvent, pointId: number, change: Partial<RenewedHow>): Sheet {
  const marked = isRenewed(sheet.renewed[pointId] ?? NOT_RENEWED) ? sheet : withRenewedToggled(sheet, event, pointId);
  const renewed = marked.renewed[pointId] ?? NOT_RENEWED;
  const how = { ...renewed.how, ...('sizeMm' in change && { sure: false }), ...change };
  return { ...marked, renewed: { ...marked.renewed, [pointId]: { ...renewed, how } } };
}

/** @param shimMm null or 0: none */
export function withShim(sheet: Sheet, pointId: number, shimMm: number | null): Sheet {
  const { [pointId]: _, ...others } = sheet.shims;
  return { ...sheet, shims: shimMm ? { ...others, [pointId]: shimMm } : others };
}

/**
 * The answer "was renewed" to a size better than the last: on this bench when that last one was found on the sheet's own
 * day, else by somebody since.
 *
 * @param lastOn day of the size it is better than
 */
export function withWasRenewed(sheet: Sheet, pointId: number, lastOn: unknown): Sheet {
  const { sinceLast, now } = sheet.renewed[pointId] ?? NOT_RENEWED;
  const here = lastOn === sheet.takenOn;
  return (here ? now : sinceLast) ? sheet : withRenewedToggled(sheet, here ? 'as-left' : 'as-found', pointId);
}

/** The station whose size is worn furthest, as typed; null: no size in the row yet. */
export function worstTyped(sheet: Sheet, event: SizeEvent, row: SheetRow): string | null {
  const sizes = sizesOfRow(sheet, event, row);
  const worse = (a: number, b: number) => (row.wears === 'down' ? a < b : a > b);
  return sizes.reduce((worst, size) => (worse(size.sizeMm, worst.sizeMm) ? size : worst), sizes[0] ?? NO_SIZE).station;
}

const NO_SIZE = { sizeMm: Number.NaN, station: null };

/** Why a sheet cannot be kept as it stands; the rest of it is kept all the same where the field may be left out. */
export type SheetRemark = { field: 'takenOn' | 'dial'; why: 'not-a-day' | 'not-a-number' };

export function readDial(text: string): { dialHours: number | null; remark: SheetRemark | null } {
  const read = readNumber(text, 'h');
  if (read.ok && read.value >= 0) return { dialHours: read.value, remark: null };
  if (!read.ok && read.why === 'empty') return { dialHours: null, remark: null };
  return { dialHours: null, remark: { field: 'dial', why: 'not-a-number' } };
}

/**
 * The sheet as the record keeps it: what reads as a size or an hour figure, in the order of the grid.
 * @returns draft null when the day is no day: nothing can be kept under it
 */
export function draftOf(
  sheet: Sheet,
  rows: readonly SheetRow[],
): { draft: StripDownDraft | null; remarks: SheetRemark[] } {
  const dial = readDial(sheet.dialText);
  const remarks: SheetRemark[] = dial.remark ? [dial.remark] : [];
  if (!isDay(sheet.takenOn)) return { draft: null, remarks: [{ field: 'takenOn', why: 'not-a-day' }, ...remarks] };
  return {
    remarks,
    draft: {
      machineId: sheet.machineId,
      takenOn: sheet.takenOn,
      dialHours: dial.dialHours,
      fitter: sheet.fitter.trim(),
      note: sheet.note,
      sizes: (['as-found', 'as-left'] as const).flatMap((event) =>
        rows.flatMap((row) => sizesOfRow(sheet, event, row)),
      ),
      renewals: rows.flatMap(({ pointId }) => {
        const renewed = sheet.renewed[pointId] ?? NOT_RENEWED;
        return isRenewed(renewed) ? renewalsOf(pointId, renewed) : [];
      }),
      shims: rows.flatMap(({ pointId }) => {
        const shimMm = sheet.shims[pointId];
        return shimMm ? [{ pointId, shimMm }] : [];
      }),
      findings: sheet.findings,
      afterStripDownId: sheet.afterStripDownId,
    },
  };
}

function renewalsOf(pointId: number, { now, how }: Renewed): StripDownDraft['renewals'] {
  const { kind, stations, sizeMm, stamped, sure } = how;
  const pieces = stations.length > 0 ? stations : [''];
  return pieces.map((station) => ({
    pointId,
    sizeMm,
    hoursKnown: now,
    kind,
    station,
    stamped: kind === 'oversize' ? stamped : null,
    answer: sure ? ('right-as-read' as const) : null,
  }));
}

function sizesOfRow(sheet: Sheet, event: SizeEvent, row: SheetRow): StripDownDraft['sizes'] {
  return row.stations.flatMap(({ station }) => {
    const key = boxKey(row.pointId, station);
    const typed = typedSize(sheet.texts[event][key] ?? '', sheet.writing);
    if (typed.state !== 'size') return [];
    return [
      {
        pointId: row.pointId,
        station,
        event,
        sizeMm: typed.sizeMm,
        gaugeId: sheet.gauges[row.pointId] ?? row.gaugeId,
        answer: sheet.sure[event][key] ? ('right-as-read' as const) : null,
      },
    ];
  });
}

/** A kept draft put back on the screen. Sizes of points that are no longer in the grid stay away. */
export function sheetOf(draft: StripDownDraft, rows: readonly SheetRow[], writing: Writing): Sheet {
  const rowOf = new Map(rows.map((row) => [row.pointId, row]));
  const sheet = emptySheet(draft.machineId, draft.takenOn, draft.fitter, writing, draft.afterStripDownId);
  sheet.dialText = draft.dialHours === null ? '' : dialEcho(draft.dialHours, writing);
  sheet.note = draft.note;
  sheet.findings = draft.findings;
  for (const size of draft.sizes) {
    const row = rowOf.get(size.pointId);
    if (!row) continue;
    const key = boxKey(size.pointId, size.station);
    sheet.texts[size.event][key] = sizeEcho(size.sizeMm, row.decimals, writing);
    if (size.answer) sheet.sure[size.event][key] = true;
    if (size.gaugeId !== null && size.gaugeId !== row.gaugeId) sheet.gauges[size.pointId] = size.gaugeId;
  }
  for (const { pointId, hoursKnown, kind, station, sizeMm, stamped, answer } of draft.renewals) {
    const pieces = sheet.renewed[pointId]?.how.stations ?? [];
    const stations = station === '' ? pieces : [...pieces, station];
    const how = { kind, stations, sizeMm, stamped, sure: answer !== null };
    sheet.renewed[pointId] = { sinceLast: !hoursKnown, now: hoursKnown, how };
  }
  for (const { pointId, shimMm } of draft.shims) if (rowOf.has(pointId)) sheet.shims[pointId] = shimMm;
  return sheet;
}

/** A dial figure in a box: whole with thousands gaps, or with the tenths some meters show. */
export const dialEcho = (dialHours: number, writing: Writing): string =>
  Number.isInteger(dialHours) ? hoursFigure(dialHours) : decimalFigure(dialHours, 1, writing);

export type Tally = { typed: number; boxes: number; questioned: number; notSizes: number; findings: number };

/** What stands in the grid's foot: "22 of 28 readings in, 1 questioned, 2 findings". */
export function tallyOf(sheet: Sheet, event: SizeEvent, boxes: readonly Box[], questioned: number): Tally {
  const states = boxes.map(
    (box) => typedSize(sheet.texts[event][boxKey(box.pointId, box.station)] ?? '', sheet.writing).state,
  );
  return {
    typed: states.filter((state) => state === 'size').length,
    boxes: boxes.length,
    questioned,
    notSizes: states.filter((state) => state === 'not-a-size').length,
    findings: sheet.findings.length,
  };
}

/** True while there is nothing in the sheet that a person would miss. */
export const isBlank = (sheet: Sheet): boolean =>
  [...Object.values(sheet.texts['as-found']), ...Object.values(sheet.texts['as-left'])].every((t) => t.trim() === '') &&
  sheet.findings.length === 0 &&
  sheet.note.trim() === '' &&
  Object.keys(sheet.shims).length === 0 &&
  Object.values(sheet.renewed).every((renewed) => !isRenewed(renewed));
