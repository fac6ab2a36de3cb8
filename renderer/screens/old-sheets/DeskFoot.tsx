import { Letter } from '#renderer/controls/Key.tsx';
import { oldSheetsWords } from '#renderer/words/oldSheetsWords.ts';
import { stripDownWords } from '#renderer/words/stripDownWords.ts';
import type { Box } from '../strip-down/boxes.ts';
import { type Sheet, type SizeEvent, tallyOf } from '../strip-down/sheet.ts';

const words = oldSheetsWords.gridHints;

/** Letters of the grid, and how far the sheet has come. */
export function DeskFoot({
  event,
  sheet,
  boxes,
  questioned,
}: {
  event: SizeEvent;
  sheet: Sheet;
  boxes: readonly Box[];
  questioned: number;
}) {
  const tally = tallyOf(sheet, event, boxes, questioned);
  const { figures, rest } = stripDownWords.tally(tally.typed, tally.boxes);
  return (
    <div className="desk-foot">
      <ul>
        <Hint letter="Enter">{words.next}</Hint>
        <Hint letter="+">{words.seen}</Hint>
        <Hint letter="R">{words.renewed[event]}</Hint>
        <Hint letter="P">{words.part}</Hint>
        <Hint letter="S">{words.swapBoxes}</Hint>
        <Hint letter="W">{words.swapPoints}</Hint>
        <Hint letter="A">{words.addPoint}</Hint>
        <Hint letter="L">{words.otherGrid}</Hint>
      </ul>
      <p className="tally" aria-live="polite">
        <b>{figures}</b> {rest}
        {tally.questioned > 0 && <b className="questioned">{`, ${stripDownWords.questioned(tally.questioned)}`}</b>}
        {tally.notSizes > 0 && <b className="questioned">{`, ${stripDownWords.notSizes(tally.notSizes)}`}</b>}
        {tally.findings > 0 && `, ${stripDownWords.findings(tally.findings)}`}
      </p>
    </div>
  );
}

const Hint = ({ letter, children }: { letter: string; children: string }) => (
  <li>
    <Letter>{letter}</Letter> {children}
  </li>
);
