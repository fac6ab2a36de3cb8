import { type exchangeLookAtSheet, type SheetMapping, type SheetNoun, zSheetMapping } from '../contract/exchange.ts';
import type { Handler } from '../contract/operation.ts';
import { findDecimalMark } from '../exchange/decimalMark.ts';
import { csvSheetLines, type SheetDelimiter } from '../exchange/sheetCsv.ts';
import { findDateOrder } from '../exchange/sheetDay.ts';
import { foldHead, likelyNouns, matchHeads } from '../exchange/sheetHeads.ts';
import { cellAsText, type SheetLine } from '../exchange/sheetLines.ts';
import { columnsOfNoun, sheetNouns } from '../exchange/sheetNouns.ts';
import { RefusedError } from '../outcome.ts';
import { nounsOfHeads, readMapping } from '../record/mappingStore.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import { headsKey } from './bringInSheet.ts';
import type { Context } from './context.ts';
import { type FileInHand, fileInHand } from './givenFiles.ts';
import { delimiterOf, isWorkbook, sheetOfWorkbook } from './sheetInHand.ts';

/** Heads are looked for in the first rows: above them a sheet may have its title. */
const HEADS_WITHIN = 15;
const SAMPLES = 3;
const LAST_BYTES = 200_000;

/** What a sheet seems to hold. Nothing is read from it yet: a person confirms it first. */
export const exchangeLookAtSheetHandler: Handler<typeof exchangeLookAtSheet, Context> = async (context, asked) => {
  const file = fileInHand(context, asked.file);
  const seen = await lookedAt(file, asked.sheet);
  const headLine = headLineOf(seen.lines, asked.headRow);
  const heads = headLine.cells.map(cellAsText);
  const rows = seen.lines.filter(({ row }) => row > headLine.row);
  const noun = asked.noun ?? likelyNoun(context.record, heads);
  const remembered = context.record && rememberedMapping(context.record, noun, heads);
  const columns = columnsSeen(noun, heads, remembered);
  const days = columns.filter(({ holds, place }) => holds === 'day' && place !== null).map(({ place }) => place);
  const textsAt = (places: readonly (number | null)[]) =>
    [...rows, ...seen.atTheEnd].flatMap(({ cells }) =>
      places.map((place) => cellAsText(place === null ? null : cells[place])),
    );
  return {
    ...seen.about,
    name: file.name,
    bytes: file.bytes.length,
    rows: rows.length,
    noun,
    headRow: headLine.row,
    heads: headsSeen(heads, rows),
    columns,
    remembered: remembered !== null,
    dateOrder: findDateOrder(textsAt(days)).order ?? remembered?.dateOrder ?? (days.length === 0 ? 'ymd' : null),
    decimalMark: markSeen([...rows, ...seen.atTheEnd]) ?? remembered?.decimalMark ?? null,
  };
};

type Seen = {
  lines: SheetLine[];
  /** of a file too long to look through: its last rows, which may tell what the first do not */
  atTheEnd: SheetLine[];
  about: { kind: 'csv' | 'xlsx'; sheets: string[]; sheet: string; wholeFile: boolean };
};

async function lookedAt(file: FileInHand, sheetName: string | null): Promise<Seen> {
  if (isWorkbook(file)) {
    const { sheet, names } = await sheetOfWorkbook(file.bytes, sheetName);
    return {
      lines: sheet.lines,
      atTheEnd: [],
      about: { kind: 'xlsx', sheets: names, sheet: sheet.name, wholeFile: true },
    };
  }
  const delimiter = delimiterOf(file.bytes);
  for (const { lines, bytesRead } of csvSheetLines(file.bytes, delimiter)) {
    const wholeFile = bytesRead === file.bytes.length;
    const atTheEnd = wholeFile ? [] : lastLines(file.bytes, delimiter);
    return { lines, atTheEnd, about: { kind: 'csv', sheets: [file.name], sheet: file.name, wholeFile } };
  }
  throw new RefusedError({ code: 'file-empty' });
}

/** Lines of a file's last part but for the first, of which the beginning is missing; none when a quote is open there. */
function lastLines(bytes: Uint8Array, delimiter: SheetDelimiter): SheetLine[] {
  try {
    return [...csvSheetLines(bytes.subarray(-LAST_BYTES), delimiter)].flatMap(({ lines }) => lines).slice(1);
  } catch (thrown) {
    if (thrown instanceof RefusedError) return [];
    throw thrown;
  }
}

/** The row that looks most like heads; where none does, the first with two cells filled. */
function headLineOf(lines: readonly SheetLine[], asked: number | null): SheetLine {
  const scored = lines.slice(0, HEADS_WITHIN).map((line) => {
    const heads = line.cells.map(cellAsText);
    return { line, filled: heads.filter((head) => head !== '').length, matches: mostMatches(heads) };
  });
  const best = scored.reduce<(typeof scored)[number] | null>(
    (most, one) => (one.matches > (most?.matches ?? 0) ? one : most),
    null,
  );
  const first = scored.find(({ filled }) => filled > 1) ?? scored[0];
  const found = asked === null ? (best ?? first)?.line : lines.find(({ row }) => row === asked);
  if (!found) throw new RefusedError({ code: 'file-empty' });
  return found;
}

const mostMatches = (heads: readonly string[]): number =>
  Math.max(
    ...sheetNouns.map((noun) => [...matchHeads(noun, heads).values()].filter(({ how }) => how !== 'near').length),
  );

function likelyNoun(record: ReadableRecord | null, heads: readonly string[]): SheetNoun {
  const likely = likelyNouns(heads);
  const before = record ? nounsOfHeads(record, headsKey(heads)) : [];
  return likely.find((noun) => before.includes(noun)) ?? likely[0] ?? 'sizes';
}

function rememberedMapping(record: ReadableRecord, noun: SheetNoun, heads: readonly string[]): SheetMapping | null {
  const kept = zSheetMapping.safeParse(readMapping(record, noun, headsKey(heads)));
  return kept.success ? kept.data : null;
}

function columnsSeen(noun: SheetNoun, heads: readonly string[], remembered: SheetMapping | null) {
  const matches = matchHeads(noun, heads);
  return columnsOfNoun(noun).map(({ name, needed, holds, unit, kind }) => {
    const kept = remembered?.columns.find(({ column }) => column === name);
    const match = remembered ? undefined : matches.get(name);
    const place = kept ? kept.place : (match?.place ?? null);
    const expected = kind.read('', { mark: '.', unclear: false });
    return {
      column: name,
      needed,
      holds,
      unit,
      words: 'expected' in expected && expected.expected.includes(' | ') ? expected.expected.split(' | ') : [],
      place,
      how: kept ? ('remembered' as const) : (match?.how ?? null),
      fixed: kept?.fixed ?? '',
      sheetUnit: kept?.unit ?? (place === null ? null : foldHead(heads[place] ?? '').unit),
    };
  });
}

const headsSeen = (heads: readonly string[], rows: readonly SheetLine[]) =>
  heads.map((head, place) => ({
    place,
    head,
    samples: [...new Set(rows.slice(0, 200).map(({ cells }) => cellAsText(cells[place])))]
      .filter((text) => text !== '')
      .slice(0, SAMPLES)
      .map((text) => text.slice(0, 60)),
  }));

/** Numbers of a workbook need no mark; texts tell it as those of a CSV file do. Null: they do not. */
function markSeen(rows: readonly SheetLine[]): '.' | ',' | null {
  const texts = rows.flatMap(({ cells }) => cells.flatMap((cell) => (typeof cell === 'string' ? [cell] : [])));
  const numbers = texts
    .map((text) => text.replace(/\s*(mm|h|in|")$/i, ''))
    .filter((text) => /^[+-]?\d*[.,]\d+$/.test(text));
  if (numbers.length === 0) return '.';
  const { mark, unclear } = findDecimalMark(numbers, ',');
  const other = findDecimalMark(numbers, ';');
  // told by the numbers themselves: what parts the cells has no say
  return unclear || other.unclear || mark !== other.mark ? null : mark;
}
