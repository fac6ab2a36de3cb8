import type { ReactElement } from 'react';
import type { MeasuringSheet } from '../contract/measuringSheet.ts';
import { assertInvariant } from '../outcome.ts';
import { A4_HEIGHT_PT, MARGIN_PT, text, view } from './elements.ts';
import { assemblyHead, assemblyHeadPt, firstHead, firstHeadPt, laterHead, laterHeadPt } from './measuringSheetHead.ts';
import {
  caution,
  cautionPt,
  notes,
  openFindingLine,
  SEEN_LINE_PT,
  seenHead,
  seenHeadPt,
  seenLine,
} from './measuringSheetSeen.ts';
import { pointRow, pointRowPt, sheetColumns, tableHead, tableHeadPt } from './measuringSheetTable.ts';
import { sheetWords as words } from './measuringSheetWords.ts';

/** Something that is not split over two pages, and how high it is. `under` stands over it when it begins a page. */
type Piece = { heightPt: number; draw: () => ReactElement; under: Head | null };
/** A heading said again at the top of a page that goes on with what it heads. */
type Head = { heightPt: number; draw: () => ReactElement };

/** the title block along the bottom, and clear paper over it */
export const FOOT_PT = 44;
const ROOM_PT = A4_HEIGHT_PT - 2 * MARGIN_PT - FOOT_PT;

const FEWEST_SEEN_LINES = 4;
const MOST_SEEN_LINES = 8;
const LEAST_NOTES_PT = 60;

/**
 * What stands on each page, top to bottom. Heights are known beforehand, so the pages are laid out here and not by the
 * printer of the PDF: headings are said again on each page, and nothing is parted from its heading.
 */
export function sheetPages(sheet: MeasuringSheet): ReactElement[][] {
  const pages: ReactElement[][] = [];
  let roomPt = 0;
  let lastHead: Head | null = null;
  const beginPage = () => {
    const head = pages.length === 0 ? firstHead(sheet) : laterHead(sheet);
    roomPt = ROOM_PT - (pages.length === 0 ? firstHeadPt(sheet) : laterHeadPt);
    pages.push([head]);
    lastHead = null;
  };
  const put = (drawn: ReactElement, heightPt: number) => {
    pages.at(-1)!.push(drawn);
    roomPt -= heightPt;
  };
  const place = ({ heightPt, draw, under }: Piece, afterPt = 0) => {
    const headPt = under !== null && under !== lastHead ? under.heightPt : 0;
    if (headPt + heightPt + afterPt > roomPt) beginPage();
    if (under !== null && under !== lastHead) {
      put(under.draw(), under.heightPt);
      lastHead = under;
    }
    put(draw(), heightPt);
  };

  beginPage();
  for (const piece of tablePieces(sheet)) place(piece, piece.afterPt);
  const seen: Head = { heightPt: seenHeadPt, draw: seenHead };
  const open = sheet.openFindings.map(
    (finding): Piece => ({ heightPt: SEEN_LINE_PT, draw: () => openFindingLine(finding), under: seen }),
  );
  for (const piece of open) place(piece);
  const lines: Piece = {
    heightPt: FEWEST_SEEN_LINES * SEEN_LINE_PT,
    draw: () => view({}, ...Array.from({ length: FEWEST_SEEN_LINES }, seenLine)),
    under: seen,
  };
  place(lines, LEAST_NOTES_PT + cautionPt);
  const sparePt = roomPt - cautionPt - LEAST_NOTES_PT;
  const more = Math.min(MOST_SEEN_LINES - FEWEST_SEEN_LINES, Math.floor(sparePt / SEEN_LINE_PT));
  for (let i = 0; i < more; i++) put(seenLine(), SEEN_LINE_PT);
  put(notes(roomPt - cautionPt), roomPt - cautionPt);
  put(caution(), cautionPt);
  assertInvariant(roomPt > -1, 'what is laid on a page fits on it');
  return pages;
}

/** Rows of the assemblies, each under the heads of its table; a further assembly begins with its name and drawing. */
function tablePieces(sheet: MeasuringSheet): (Piece & { afterPt: number })[] {
  if (sheet.assemblies.every(({ points }) => points.length === 0)) return [{ ...nothing(), afterPt: 0 }];
  // one set of columns for the whole sheet: boxes stand under boxes
  const columns = sheetColumns(sheet.assemblies.flatMap(({ points }) => points));
  return sheet.assemblies.flatMap((assembly, i) => {
    const head: Head = { heightPt: tableHeadPt, draw: () => tableHead(sheet, columns) };
    const rows = assembly.points.map((point) => ({
      heightPt: pointRowPt(point),
      draw: () => pointRow(sheet, point, columns),
      under: head,
      afterPt: 0,
    }));
    const named = sheet.assemblies.length > 1 && (i > 0 || assembly.sketch === null);
    if (!named) return rows;
    // a name is not left alone at the foot of a page
    const firstPt = tableHeadPt + (rows[0]?.heightPt ?? 0);
    return [
      { heightPt: assemblyHeadPt(assembly), draw: () => assemblyHead(assembly), under: null, afterPt: firstPt },
      ...rows,
    ];
  });
}

const nothing = (): Piece => ({
  heightPt: 40,
  draw: () => text({ face: 'table', sizePt: 12 }, { paddingVertical: 12 }, words.empty),
  under: null,
});
