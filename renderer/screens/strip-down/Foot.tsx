import { Letter } from '#renderer/controls/Key.tsx';
import { stripDownWords as words } from '#renderer/words/stripDownWords.ts';
import type { SizeEvent, Tally } from './sheet.ts';

/** Keys of the grid, and how far it has come. */
export function Foot({ event, tally, swapping }: { event: SizeEvent; tally: Tally; swapping: string | null }) {
  const { figures, rest } = words.tally(tally.typed, tally.boxes);
  return (
    <div className="bench-foot">
      {swapping === null ? (
        <ul>
          <Hint letter="Enter">{words.nextBox}</Hint>
          <Hint letter="+">{words.seenHint}</Hint>
          <Hint letter="R">{words.renewedKey[event]}</Hint>
          <Hint letter="P">{words.partHint}</Hint>
          <Hint letter="S">{words.swapHint}</Hint>
          <Hint letter="G">{words.gaugeHint}</Hint>
        </ul>
      ) : (
        <p role="status">{words.swapping(swapping)}</p>
      )}
      <p className="tally" aria-live="polite">
        <b>{figures}</b> {rest}
        {tally.questioned > 0 && (
          <>
            , <b className="questioned">{words.questioned(tally.questioned)}</b>
          </>
        )}
        {tally.notSizes > 0 && (
          <>
            , <b className="questioned">{words.notSizes(tally.notSizes)}</b>
          </>
        )}
        {tally.findings > 0 && `, ${words.findings(tally.findings)}`}
      </p>
    </div>
  );
}

const Hint = ({ letter, children }: { letter: string; children: string }) => (
  <li>
    <Letter>{letter}</Letter> {children}
  </li>
);
