import type { Rebuild } from '../../contract/rebuild.ts';
import { decimalFigure, type Writing } from '../../words/quantityText.ts';
import type { ShopOnPaper } from '../paperHead.ts';
import { printListPaper } from './listPaper.ts';
import { partToMake } from './partToMake.ts';
import { rebuildWords as words } from './rebuildWords.ts';
import { remark, sentences, tableSection } from './table.ts';

export type CutListPaper = {
  shop: ShopOnPaper;
  printedOn: string;
  writing: Writing;
  /** whose parts; empty: of every machine */
  machine: string;
  groups: readonly {
    bar: string;
    makes: readonly Rebuild['lines'][number]['makes'][number][];
    bars: readonly { barMm: number; piecesMm: readonly number[]; leftMm: number; keep: boolean }[];
    proven: boolean;
  }[];
};

/** Parts to make for the repairs chosen, bar by bar: how each bar is cut, and each part with its drawing. */
export const printCutList = ({ shop, printedOn, writing, machine, groups }: CutListPaper): Promise<Uint8Array> => {
  const mm = (sizeMm: number) => decimalFigure(sizeMm, 0, writing);
  return printListPaper({
    ...{ title: words.titles['cut-list'], shop, printedOn },
    sections:
      groups.length === 0
        ? [sentences(words.nothingChosen, [])]
        : [
            remark(words.inMm),
            ...groups.flatMap(({ bar, makes, bars, proven }) => [
              tableSection(
                bar,
                [
                  { head: words.heads.bar, share: 1.2, align: 'right' },
                  { head: words.heads.cutsOff, share: 6 },
                  { head: words.heads.leftOver, share: 2.4 },
                  { head: words.heads.done, share: 1, box: true },
                ],
                bars.map((one) => [
                  mm(one.barMm),
                  one.piecesMm.map(mm).join(' + '),
                  `${mm(one.leftMm)}${one.keep ? words.keepEnd : ''}`,
                  '',
                ]),
                words.noParts,
              ),
              ...(proven ? [] : [sentences(words.notProven, [])]),
              ...makes.map((make) => partToMake('', make, writing)),
            ]),
          ],
    cells: [
      [words.machine, machine === '' ? words.everyMachine : machine, 6],
      [words.printed, printedOn, 2],
    ],
  });
};
