import type { ReactElement } from 'react';
import type { MeasuringSheet } from '../contract/measuringSheet.ts';
import { INK, strong, text, view } from './elements.ts';
import { tickBox } from './measuringSheetTable.ts';
import { openFindingText, sheetWords as words } from './measuringSheetWords.ts';
import { WEIGHT } from './paperFonts.ts';

/** 27 pt is 9.5 mm: a line to write on with a thick pencil. */
export const SEEN_LINE_PT = 27;
export const seenHeadPt = 34;
export const cautionPt = 52;

const ITEM_PT = 34;
const SEVERITY_PT = 78;

/** What was seen, told in full: the heading over its lines. */
export const seenHead = (): ReactElement =>
  view(
    {
      height: seenHeadPt,
      flexDirection: 'row',
      alignItems: 'flex-end',
      borderBottomWidth: 1.2,
      borderBottomColor: INK,
      paddingBottom: 3,
    },
    text({ face: 'table', sizePt: 11, weight: WEIGHT.head }, { width: ITEM_PT }, words.item),
    text({ face: 'table', sizePt: 11, weight: WEIGHT.head }, { flexGrow: 1, flexBasis: 0 }, words.seenHead),
  );

/** An empty line: the item, what and where, and how bad. */
export const seenLine = (): ReactElement =>
  line(
    view({ width: ITEM_PT, height: SEEN_LINE_PT, borderRightWidth: 0.5, borderRightColor: INK }),
    view({ flexGrow: 1 }),
    ...words.severities.map((severity, i) => ticked(severity, i === 2 ? SEVERITY_PT : SEVERITY_PT - 20)),
  );

/** A finding open from before: is it still so? */
export const openFindingLine = (finding: MeasuringSheet['openFindings'][number]): ReactElement =>
  line(
    text({ face: 'table', sizePt: 11, weight: WEIGHT.head }, { width: ITEM_PT }, String(finding.item ?? '')),
    text(
      { face: 'table', sizePt: 10.5, lines: 2 },
      { flexGrow: 1, flexBasis: 0, lineHeight: 1.1, paddingRight: 8 },
      openFindingText(finding),
    ),
    ticked(words.stillSo, SEVERITY_PT - 12),
    ticked(words.putRight, SEVERITY_PT),
  );

const line = (...cells: ReactElement[]): ReactElement =>
  view(
    {
      height: SEEN_LINE_PT,
      flexDirection: 'row',
      alignItems: 'center',
      borderBottomWidth: 0.5,
      borderBottomColor: INK,
    },
    ...cells,
  );

const ticked = (word: string, width: number): ReactElement =>
  view(
    { width, flexDirection: 'row', alignItems: 'center' },
    tickBox(),
    text({ face: 'table', sizePt: 10 }, { marginLeft: 4 }, word),
  );

/** What is left of the last page: to write on. */
export const notes = (heightPt: number): ReactElement =>
  view({ height: heightPt, paddingTop: 4 }, text({ face: 'table', sizePt: 11, weight: WEIGHT.head }, {}, words.notes));

export const caution = (): ReactElement =>
  view(
    { height: cautionPt, borderTopWidth: 0.8, borderTopColor: INK, paddingTop: 4 },
    text({ face: 'table', sizePt: 10, lines: 3 }, { lineHeight: 1.2 }, strong(words.cautionHead), ` ${words.caution}`),
  );
