import type { Fault } from '#core/contract/operation.ts';
import type { Question as Asks } from '#core/contract/shapes.ts';
import type { Writing } from '#core/words/quantityText.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox, Question } from '#renderer/controls/Notice.tsx';
import { oldSheetsWords as words } from '#renderer/words/oldSheetsWords.ts';
import { answerText, questionText } from '#renderer/words/questionText.ts';
import { MEANWHILE, MeanwhileAsk, TypedMeanwhileAsk } from '../strip-down/SaveKeys.tsx';

/** What is odd about a sheet as a whole: its dial, its day, or that it was here before. Nothing waits for the answers. */
export function DeskQuestions({
  faults,
  meanwhile,
  onTakeOther,
  onKeepThis,
  onSaveToo,
  writing,
  dialQuestion,
  twiceOn,
  wasHere,
  onDiscard,
  onDialAnswer,
}: {
  faults: readonly (Fault | null)[];
  /** another window has typed on the same sheet */
  meanwhile: Fault | null;
  onTakeOther: () => void;
  onKeepThis: (keptAt: string) => void;
  /** it is another sheet than the one of that day saved meanwhile */
  onSaveToo: () => void;
  writing: Writing;
  dialQuestion: Asks | null;
  /** the machine has a strip-down of that day already */
  twiceOn: string | null;
  wasHere: string | null;
  onDiscard: () => void;
  onDialAnswer: (choice: string) => void;
}) {
  const asked = dialQuestion && questionText(dialQuestion, { writing });
  const saved = faults.find((one) => one?.code === MEANWHILE);
  const fault = faults.find((one) => one !== null && one !== meanwhile && one !== saved);
  return (
    <>
      {meanwhile && <TypedMeanwhileAsk facts={meanwhile.facts} onTake={onTakeOther} onKeep={onKeepThis} />}
      {saved && <MeanwhileAsk facts={saved.facts} onSaveToo={onSaveToo} onDiscard={onDiscard} />}
      {fault && <FaultBox fault={fault} />}
      {wasHere !== null && !saved && (
        <Question
          fact={words.wasHere(wasHere)}
          then={words.wasHereThen}
          keys={<Key onPress={onDiscard}>{words.discard}</Key>}
        />
      )}
      {wasHere === null && twiceOn !== null && !saved && (
        <Question fact={words.twice(twiceOn)} then={words.twiceThen} keys={null} />
      )}
      {asked && dialQuestion && (
        <Question
          fact={asked.fact}
          then={words.dialAside}
          keys={dialQuestion.choices.map((choice) => (
            <Key key={choice} onPress={() => onDialAnswer(choice)}>
              {answerText(choice).text}
            </Key>
          ))}
        />
      )}
    </>
  );
}
