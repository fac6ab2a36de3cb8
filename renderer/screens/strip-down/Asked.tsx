import type { Question as Asks } from '#core/contract/shapes.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { Picture } from '#renderer/marks/Picture.tsx';
import { QuestionRing } from '#renderer/marks/Questioned.tsx';
import { Figures } from '#renderer/words/Figures.tsx';
import { answerText, type QuestionContext, questionText } from '#renderer/words/questionText.ts';
import { stripDownWords as words } from '#renderer/words/stripDownWords.ts';

/**
 * A question under the row of its box, on a leader to it. Nothing waits for it: the next box has the focus already.
 * Only the question in hand has letters on its keys, so that a letter means one thing.
 */
export function Asked({
  id,
  question,
  context,
  column,
  columns,
  more,
  inHand,
  take,
  onAnswer,
}: {
  id: string;
  question: Asks;
  context: QuestionContext;
  /** the box it hangs from */
  column: number;
  columns: number;
  /** further questions of the same row */
  more: number;
  inHand: boolean;
  /** "Take 29.97", where the program can guess what was meant */
  take: string | null;
  onAnswer: (choice: string) => void;
}) {
  const said = questionText(question, context);
  const letterOf = (letter: string) => (inHand ? { letter } : {});
  return (
    <tr className="asked-row">
      <td colSpan={columns}>
        <div className="asked" style={{ ['--column' as string]: column }} aria-live="polite">
          <div className="asked-words" id={id}>
            <b>
              <Figures>{said.fact}</Figures>
            </b>{' '}
            {said.meanwhile}
            {more > 0 && ` ${words.moreAsked(more)}`}
          </div>
          <Picture width={34} height={62} label={null} className="asked-leader">
            <path d="M17 30V2M12 9l5-8 5 8" className="l-brass-leader" />
            <QuestionRing x={17} y={44} radiusPx={14} />
          </Picture>
          <div className="keys">
            {take !== null && (
              <Key {...letterOf('T')} onPress={() => onAnswer('take')}>
                {take}
              </Key>
            )}
            {question.choices.map((choice) => {
              const { text, letter } = answerText(choice);
              return (
                <Key key={choice} {...letterOf(letter)} onPress={() => onAnswer(choice)}>
                  {text}
                </Key>
              );
            })}
          </div>
        </div>
      </td>
    </tr>
  );
}
