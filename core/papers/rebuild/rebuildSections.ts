import type { ReactElement } from 'react';
import type { Rebuild } from '../../contract/rebuild.ts';
import { handOverCheckNames } from '../../words/handOverChecks.ts';
import { pressingLines } from '../../words/pressingText.ts';
import { partToMake } from './partToMake.ts';
import type { OnPaper } from './rebuildPaper.ts';
import { hoursFigure1, limitsMmText, makeSizesText, sizeMmText, rebuildWords as words } from './rebuildWords.ts';
import { type Column, sentences, tableSection } from './table.ts';

const { heads } = words;
const agreedOf = ({ lines }: Rebuild) => lines.filter(({ stands }) => stands === 'agreed');
const itemText = ({ item }: { item: number | null }): string => (item === null ? '' : String(item));

/** Complaint, what comes off, the work agreed, parts, what was declined, cautions. */
export const jobCard = (paper: OnPaper): ReactElement[] => {
  const { rebuild, mark } = paper;
  const agreed = agreedOf(rebuild);
  const hours = (figure: number) => hoursFigure1(figure, mark);
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
const pressingSections = ({ rebuild, mark }: OnPaper): ReactElement[] =>
  agreedOf(rebuild).flatMap(({ what, pressing }) => (pressing ? [sentences(what, pressingLines(pressing, mark))] : []));

/** One line a cut: what, where its centre goes, its limits, and a box for what it came to. */
export const machiningList = (paper: OnPaper): ReactElement[] => {
  const { rebuild, mark } = paper;
  const cuts = agreedOf(rebuild).flatMap((one) =>
    one.cuts.map((cut, place) => ({ one, cut, bored: one.boredMm[place] })),
  );
  return [
    sentences(words.sides, []),
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
        limitsMmText(cut.lowerMm, cut.upperMm, mark),
        bored == null ? '' : sizeMmText(bored, mark),
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
    ...makes.filter(({ make }) => !make.bought).map(({ one, make }) => partToMake(itemText(one), make, paper.mark)),
  ];
};

/** What was found, what was done with the sizes bored, what was left, checks, and what was declined. */
export const closeOutSheet = (paper: OnPaper): ReactElement[] => {
  const { rebuild, mark } = paper;
  return [
    sentences(words.found, [rebuild.complaint]),
    tableSection(
      words.works,
      [
        { head: heads.item, share: 0.7 },
        { head: heads.position, share: 3 },
        { head: heads.work, share: 4 },
        { head: heads.left, share: 3 },
      ],
      agreedOf(rebuild).map((one) => [
        itemText(one),
        one.position,
        one.what,
        [
          ...one.boredMm.flatMap((size) => (size === null ? [] : [words.asBored(sizeMmText(size, mark))])),
          ...one.left.map(({ point, sizeMm }) => words.asLeft(point, sizeMmText(sizeMm, mark))),
        ].join('; '),
      ]),
      words.nothingAgreed,
    ),
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

function partsTable({ rebuild, mark }: OnPaper): ReactElement {
  const rows = agreedOf(rebuild).flatMap((one) =>
    one.makes.map((make) => [
      itemText(one),
      [words.kinds[make.kind], make.what].filter(Boolean).join(', '),
      make.material,
      String(make.count),
      makeSizesText(make, mark),
      make.stock,
      make.bought ? words.bought(make.leadDays) : words.made,
    ]),
  );
  return tableSection(
    words.parts,
    [
      { head: heads.item, share: 0.6 },
      { head: heads.part, share: 2.6 },
      { head: heads.material, share: 1.6 },
      { head: heads.count, share: 0.6, align: 'right' },
      { head: heads.sizes, share: 3.4 },
      { head: heads.stock, share: 1.5 },
      { head: heads.from, share: 1.4 },
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
