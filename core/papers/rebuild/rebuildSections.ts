import type { ReactElement } from 'react';
import type { Rebuild } from '../../contract/rebuild.ts';
import type { SizeEvent } from '../../shop/measuringPoint.ts';
import { handOverCheckNames } from '../../words/handOverChecks.ts';
import { pressingLines } from '../../words/pressingText.ts';
import { decimalFigure, decimalsOfGauge, type Writing } from '../../words/quantityText.ts';
import { findingText, severityWords } from '../slipNames.ts';
import type { FoundAtPlace } from './foundAtPlace.ts';
import { partToMake } from './partToMake.ts';
import type { OnPaper } from './rebuildPaper.ts';
import {
  hoursFigure1,
  limitsMmText,
  makeSizesText,
  partName,
  sizeMmText,
  rebuildWords as words,
} from './rebuildWords.ts';
import { type Column, remark, sentences, tableSection } from './table.ts';

const { heads } = words;
const agreedOf = ({ lines }: Rebuild) => lines.filter(({ stands }) => stands === 'agreed');
const itemText = ({ item }: { item: number | null }): string => (item === null ? '' : String(item));

/** Complaint, what comes off, the work agreed, parts, what was declined, cautions. */
export const jobCard = (paper: OnPaper): ReactElement[] => {
  const { rebuild, writing } = paper;
  const agreed = agreedOf(rebuild);
  const hours = (figure: number) => hoursFigure1(figure, writing);
  const works: Column[] = [
    { head: heads.item, share: 0.7 },
    { head: heads.position, share: 3 },
    { head: heads.work, share: 5 },
    { head: heads.hours, share: 0.8, align: 'right' },
    { head: heads.done, share: 1, box: true },
  ];
  return [
    sentences(words.complaint, [rebuild.complaint]),
    tableSection(
      words.takeOffs,
      [
        { head: heads.takeOff, share: 7 },
        { head: heads.hours, share: 0.8, align: 'right' },
        { head: heads.done, share: 1, box: true },
      ],
      rebuild.takeOffs.map((one) => [one.name, hours(one.hours), '']),
      agreed.length === 0 ? words.nothingAgreed : words.nothingOff,
    ),
    tableSection(
      words.works,
      works,
      agreed.map((one) => [itemText(one), one.position, one.what, hours(one.ownHours), '']),
      words.nothingAgreed,
    ),
    ...pressingSections(paper),
    partsTable(paper),
    ...declinedTable(rebuild),
    ...cautionLines(paper),
  ];
};

/** What is read at the press, for each part that is pressed straight. */
const pressingSections = ({ rebuild, writing }: OnPaper): ReactElement[] =>
  agreedOf(rebuild).flatMap(({ what, pressing }) =>
    pressing ? [sentences(what, pressingLines(pressing, writing))] : [],
  );

/** One line a cut: what, where its centre goes, its limits, and a box for what it came to. */
export const machiningList = (paper: OnPaper): ReactElement[] => {
  const { rebuild, writing } = paper;
  const cuts = agreedOf(rebuild).flatMap((one) =>
    one.cuts.map((cut, place) => ({ one, cut, bored: one.boredMm[place] })),
  );
  return [
    remark(words.sides),
    tableSection(
      words.cuts,
      [
        { head: heads.item, share: 0.7 },
        { head: heads.cut, share: 3.4 },
        { head: heads.centre, share: 3.6 },
        { head: heads.limits, share: 2.4, align: 'right' },
        { head: heads.bored, share: 1.5, align: 'right', box: true },
      ],
      cuts.map(({ one, cut, bored }) => [
        itemText(one),
        cut.what,
        cut.centre,
        limitsMmText(cut.lowerMm, cut.upperMm, writing),
        bored == null ? '' : sizeMmText(bored, writing),
      ]),
      words.noCuts,
    ),
    ...cautionLines(paper),
  ];
};

/** Parts to make and to buy, each part to make with its drawing. */
export const cutList = (paper: OnPaper): ReactElement[] => {
  const makes = agreedOf(paper.rebuild).flatMap((one) => one.makes.map((make) => ({ one, make })));
  return [
    partsTable(paper),
    ...(makes.length === 0 ? [] : [remark(words.inMm)]),
    ...makes.filter(({ make }) => !make.bought).map(({ one, make }) => partToMake(itemText(one), make, paper.writing)),
  ];
};

/** The complaint; place by place what was found, what was done with the sizes bored, what was left; checks; what was declined. */
export const closeOutSheet = (paper: OnPaper): ReactElement[] => {
  const { rebuild, found } = paper;
  return [
    sentences(words.complaint, [rebuild.complaint]),
    tableSection(
      words.titles['close-out'],
      [
        { head: heads.item, share: 0.6 },
        { head: heads.position, share: 2 },
        { head: heads.found, share: 3.5 },
        { head: heads.work, share: 3 },
        { head: heads.left, share: 2.4 },
      ],
      closeOutRows(paper),
      words.nothingAgreed,
    ),
    ...(found.length === 0 ? [remark(words.nothingFound)] : []),
    ...declinedTable(rebuild),
    tableSection(
      words.checks,
      [
        { head: heads.check, share: 5 },
        { head: heads.answer, share: 2, box: true },
        { head: heads.by, share: 2, box: true },
      ],
      rebuild.checks.map(({ check, answer, by }) => [
        handOverCheckNames[check] ?? check,
        answer === null ? '' : (words.answers[answer] ?? ''),
        by,
      ]),
    ),
    ...cautionLines(paper),
  ];
};

/** A row for each work agreed, and one for each place that was measured or looked at where no work is agreed; by item. */
function closeOutRows({ rebuild, found, writing }: OnPaper): string[][] {
  const agreed = agreedOf(rebuild);
  const sizesOf = (place: FoundAtPlace | undefined, event: SizeEvent) =>
    place ? foundSizes(place, event, writing) : [];
  const told = new Set<FoundAtPlace>();
  const works = agreed.map((one) => {
    const place = found.find(({ positionId }) => positionId !== null && positionId === one.positionId);
    const first = place && !told.has(place) ? place : undefined; // a second work at the same place repeats nothing
    if (first) told.add(first);
    const bored = one.boredMm.flatMap((size) => (size === null ? [] : [words.asBored(sizeMmText(size, writing))]));
    const seen = [...sizesOf(first, 'as-found'), ...(first ? foundFindings(first) : [])];
    return { one, cells: [seen, [one.what, ...bored], sizesOf(first, 'as-left')], position: one.position };
  });
  const others = found
    .filter((place) => !told.has(place))
    .map((place) => ({
      one: place,
      cells: [[...sizesOf(place, 'as-found'), ...foundFindings(place)], [words.noWork], sizesOf(place, 'as-left')],
      position: place.place,
    }));
  return [...works, ...others]
    .sort((a, b) => (a.one.item ?? LAST) - (b.one.item ?? LAST))
    .map(({ one, cells, position }) => [itemText(one), position, ...cells.map((lines) => lines.join('\n'))]);
}

/** Work on the machine as a whole, and what was seen of an assembly as a whole, stand behind the items. */
const LAST = 1000;

/** "thickness: front 10.20, rear 10.41", one line a measuring point. */
const foundSizes = ({ sizes }: FoundAtPlace, event: SizeEvent, writing: Writing): string[] =>
  [
    ...Map.groupBy(
      sizes.filter((size) => size.event === event),
      ({ point }) => point,
    ),
  ].map(([point, all]) =>
    words.foundSizes(
      point,
      all.map(({ station, sizeMm, stepMm, parked }) =>
        words.foundSize(station, decimalFigure(sizeMm, decimalsOfGauge(stepMm), writing), parked),
      ),
    ),
  );

const foundFindings = ({ findings }: FoundAtPlace): string[] =>
  findings.map(({ kind, severity, note }) => `${findingText({ finding: kind, note })}; ${severityWords[severity]}`);

function partsTable({ rebuild, writing }: OnPaper): ReactElement {
  const rows = agreedOf(rebuild).flatMap((one) =>
    one.makes.map((make) => [
      itemText(one),
      partName(make),
      make.material,
      String(make.count),
      makeSizesText(make, writing),
      make.stock,
      make.bought ? words.bought(make.leadDays) : words.made,
    ]),
  );
  return tableSection(
    words.parts,
    [
      { head: heads.item, share: 0.6 },
      { head: heads.part, share: 2.2 },
      { head: heads.material, share: 1.2 },
      { head: heads.count, share: 0.5 },
      { head: heads.sizes, share: 4.4 },
      { head: heads.stock, share: 1.6 },
      { head: heads.from, share: 1.2 },
    ],
    rows,
    words.noParts,
  );
}

function declinedTable(rebuild: Rebuild): ReactElement[] {
  const declined = rebuild.lines.filter(({ stands }) => stands === 'declined');
  if (declined.length === 0) return [];
  return [
    tableSection(
      words.declined,
      [
        { head: heads.item, share: 0.7 },
        { head: heads.work, share: 4 },
        { head: heads.words, share: 4 },
      ],
      declined.map((one) => [itemText(one), [one.position, one.what].filter(Boolean).join(': '), one.declinedWords]),
    ),
  ];
}

const cautionLines = ({ rebuild }: OnPaper): ReactElement[] => [sentences(words.cautions, rebuild.cautions)];
