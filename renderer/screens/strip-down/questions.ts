import type { Question } from '#core/contract/shapes.ts';
import { answerText } from '#renderer/words/questionText.ts';
import { type Box, boxKey, type SheetRow } from './boxes.ts';
import type { Sheet, SizeEvent } from './sheet.ts';
import type { Judged } from './useJudged.ts';

/** A question still open, and the box it hangs from. */
export type OpenQuestion = { box: Box; key: string; question: Question };

/** Questions of one grid that nobody answered yet, in the order of its boxes. */
export function openQuestions(judged: Judged, sheet: Sheet, event: SizeEvent, boxes: readonly Box[]): OpenQuestion[] {
  return boxes.flatMap((box) => {
    const key = boxKey(box.pointId, box.station);
    if (sheet.sure[event][key]) return [];
    return judged.questions
      .filter((asked) => asked.event === event && boxKey(asked.pointId, asked.station) === key)
      .map(({ question }) => ({ box, key, question }));
  });
}

/** The question the letters answer: of the row in hand, else the first there is. */
export const questionInHand = (open: readonly OpenQuestion[], here: Box | null): OpenQuestion | null =>
  open.find(({ box }) => box.row === here?.row) ?? open[0] ?? null;

/** The size the program guesses was meant, where a slip of unit or place would explain it [mm]; null: no guess. */
export const likelyMm = (question: Question): number | null =>
  typeof question.facts.likelyMm === 'number' ? question.facts.likelyMm : null;

/** The answer a letter gives to a question; null: none of its keys has it. */
export function answerOfLetter(question: Question, letter: string): string | null {
  const pressed = letter.toUpperCase();
  if (pressed === 'T' && likelyMm(question) !== null) return 'take';
  return question.choices.find((choice) => answerText(choice).letter === pressed) ?? null;
}

/** "1 Slide strip, top front", with the point's name where its position is measured in more than one way. */
export function rowName(row: SheetRow, rows: readonly SheetRow[]): string {
  const alone = rows.every((other) => other === row || other.positionId !== row.positionId);
  return alone ? row.position : `${row.position}, ${row.point}`;
}
