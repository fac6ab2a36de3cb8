import type { ReactElement } from 'react';
import { struckBoxPath } from '../axis/struckBox.ts';
import { shortenMiddle, textWidth } from '../axis/textWidth.ts';
import type { MeasuringSheet } from '../contract/measuringSheet.ts';
import { lengthUnit } from '../words/quantityText.ts';
import { digitBoxes } from './digitBoxes.ts';
import { A4_WIDTH_PT, INK, MARGIN_PT, path, picture, text, view } from './elements.ts';
import { TICK_BOX_PT, tickBox } from './measuringSheetTable.ts';
import {
  assemblyName,
  customerLine,
  gaugeText,
  openFindingText,
  plateLine,
  sheetWords as words,
} from './measuringSheetWords.ts';
import { WEIGHT } from './paperFonts.ts';
import { paperHead } from './paperHead.ts';
import { sketchDrawing } from './sketchDrawing.ts';

const SKETCH = { widthPt: 214, heightPt: 146 } as const;
const STOP_PT = 26;
/** shop's head, machine's name and line, boxes to be filled in */
const HEAD_PT = 44 + 46;

/** Room the head of the first page takes [pt]. */
export const firstHeadPt = (sheet: MeasuringSheet): number =>
  HEAD_PT + fillInPt(sheet) + stopped(sheet).length * STOP_PT;

/** The first page begins with the shop, the machine, what must not be used, the boxes to fill in and the drawing. */
export const firstHead = (sheet: MeasuringSheet): ReactElement =>
  view(
    { height: firstHeadPt(sheet) },
    paperHead(sheet.shop, [words.title, words.printed(sheet)]),
    view(
      { height: 46, justifyContent: 'center' },
      text({ sizePt: NAME_PT, weight: WEIGHT.head, lines: 1 }, { lineHeight: 1.15 }, onOneLine(nameAndCustomer(sheet))),
      text({ face: 'table', sizePt: 11, lines: 1 }, {}, plateLine(sheet)),
    ),
    ...stopped(sheet).map(stopLine),
    fillIn(sheet),
  );

const NAME_PT = 17;
/** the face of sentences runs so much wider than that of tables, whose widths are known */
const WIDER = 1.14;

/** Machine and customer stand at the ends: what is too long loses its middle. */
const onOneLine = (words: string): string => shortenMiddle(words, (A4_WIDTH_PT - 2 * MARGIN_PT) / WIDER, NAME_PT);

const nameAndCustomer = (sheet: MeasuringSheet): string =>
  [sheet.machine.name, customerLine(sheet)].filter((part) => part !== '').join(', ');

/** The first of a machine's findings that forbid use; the rest stand among what was seen. */
const stopped = ({ openFindings }: MeasuringSheet) =>
  openFindings.filter(({ severity }) => severity === 'do-not-use').slice(0, 2);

const stopLine = (finding: MeasuringSheet['openFindings'][number]): ReactElement =>
  view(
    {
      height: STOP_PT - 4,
      marginBottom: 4,
      flexDirection: 'row',
      alignItems: 'center',
      borderWidth: 1.5,
      borderColor: INK,
    },
    picture({ width: 30, height: 22, widthPt: 27 }, path(struckBoxPath(3, 4, 24, 14), { width: 1.6 })),
    text({ sizePt: 11.5, weight: WEIGHT.head }, { marginLeft: 4, marginRight: 8 }, words.doNotUse),
    text({ face: 'table', sizePt: 11, lines: 1 }, { flexGrow: 1, flexBasis: 0 }, itemAnd(finding)),
  );

const itemAnd = (finding: MeasuringSheet['openFindings'][number]): string =>
  `${finding.item === null ? '' : `${finding.item} `}${openFindingText(finding)}`;

/** Gauges named on the sheet, each once. */
const gaugesOf = ({ assemblies, shop }: MeasuringSheet): string[] => [
  ...new Set(
    assemblies
      .flatMap(({ points }) => points)
      .filter(({ gauge }) => gauge !== '')
      .map((point) => gaugeText(point, shop.writing)),
  ),
];

const GAUGE_LINE_PT = 17;
const FIELDS_PT = 84;
const MOST_GAUGES = 8;

const GAUGE_PT = 9.5;
/** beside the widest drawing */
const HALF_PT = (A4_WIDTH_PT - 2 * MARGIN_PT - SKETCH.widthPt - 10) / 2;

/** What may be ticked, in two columns; one whose name is too long for that has a line of its own. */
const gaugeTicks = (sheet: MeasuringSheet): { name: string; isLong: boolean }[] =>
  [...gaugesOf(sheet).slice(0, MOST_GAUGES), words.otherGauge].map((name) => ({
    name,
    isLong: textWidth(name, GAUGE_PT) > HALF_PT - TICK_BOX_PT - 8,
  }));

/** The short ones stand first, side by side. */
const inOrder = (sheet: MeasuringSheet) => gaugeTicks(sheet).sort((a, b) => Number(a.isLong) - Number(b.isLong));

const gaugeLines = (sheet: MeasuringSheet): number => {
  const long = gaugeTicks(sheet).filter(({ isLong }) => isLong).length;
  return long + Math.ceil((gaugeTicks(sheet).length - long) / 2);
};

const fillInPt = (sheet: MeasuringSheet): number =>
  Math.max(FIELDS_PT + 16 + gaugeLines(sheet) * GAUGE_LINE_PT, hasSketch(sheet) ? SKETCH.heightPt : 0) + 6;

const hasSketch = ({ assemblies }: MeasuringSheet): boolean => Boolean(assemblies[0]?.sketch);

/** Date, meter, fitter and gauges at the left, the drawing at the right. */
function fillIn(sheet: MeasuringSheet): ReactElement {
  const sketch = sheet.assemblies[0]?.sketch;
  return view(
    { height: fillInPt(sheet), flexDirection: 'row', justifyContent: 'space-between' },
    view(
      { flexGrow: 1, flexBasis: 0, paddingRight: 10 },
      view(
        { height: FIELDS_PT / 2, flexDirection: 'row', justifyContent: 'space-between' },
        field(words.date, dateBoxes()),
        field(words.dial(sheet.dialHours), digitBoxes(Math.min(6, sheet.meterDigits ?? 5))),
      ),
      view({ height: FIELDS_PT / 2 }, field(words.fitter, writingLine())),
      small(words.gauges(lengthUnit(sheet.shop.writing))),
      view({ flexDirection: 'row', flexWrap: 'wrap' }, ...inOrder(sheet).map(gaugeTick)),
    ),
    ...(sketch ? [sketchDrawing(sketch, SKETCH)] : []),
  );
}

const small = (content: string): ReactElement => text({ face: 'table', sizePt: 9.5, lines: 1 }, {}, content);

const field = (name: string, boxes: ReactElement): ReactElement => view({}, small(name), boxes);

const dateBoxes = (): ReactElement =>
  view({ flexDirection: 'row', gap: 6 }, digitBoxes(2), digitBoxes(2), digitBoxes(4));

const writingLine = (): ReactElement => view({ height: 26, borderWidth: 0.9, borderColor: INK });

const gaugeTick = ({ name, isLong }: { name: string; isLong: boolean }): ReactElement =>
  view(
    { width: isLong ? '100%' : '50%', height: GAUGE_LINE_PT, flexDirection: 'row', alignItems: 'center' },
    tickBox(),
    text(
      { face: 'table', sizePt: GAUGE_PT, lines: 1 },
      { marginLeft: 4, flexGrow: 1, flexBasis: 0, paddingRight: 4 },
      name,
    ),
  );

export const laterHeadPt = 24;

/** What every later page begins with: whose sheet it is. */
export const laterHead = (sheet: MeasuringSheet): ReactElement =>
  view(
    { height: laterHeadPt, borderBottomWidth: 1.5, borderBottomColor: INK, marginBottom: 0 },
    text({ sizePt: 12, weight: WEIGHT.head, lines: 1 }, {}, `${words.title}: ${nameAndCustomer(sheet)}`),
  );

const ASSEMBLY_SKETCH = { widthPt: A4_WIDTH_PT - 2 * MARGIN_PT - 200, heightPt: 118 } as const;

export const assemblyHeadPt = ({ sketch }: MeasuringSheet['assemblies'][number]): number =>
  sketch ? ASSEMBLY_SKETCH.heightPt + 10 : 26;

/** A further assembly begins with its name and its own drawing: item numbers are those of that drawing. */
export const assemblyHead = (assembly: MeasuringSheet['assemblies'][number]): ReactElement =>
  view(
    { height: assemblyHeadPt(assembly), flexDirection: 'row', paddingTop: 6 },
    text(
      { sizePt: 12, weight: WEIGHT.head, lines: 3 },
      { width: 190, paddingRight: 10 },
      capital(assemblyName(assembly)),
    ),
    ...(assembly.sketch ? [sketchDrawing(assembly.sketch, ASSEMBLY_SKETCH)] : []),
  );

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
