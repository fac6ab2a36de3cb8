import type { RefObject } from 'react';
import type { Question as Asks } from '#core/contract/shapes.ts';
import { type Day, isDay } from '#core/units/day.ts';
import { hoursText, type Writing } from '#core/words/quantityText.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { DayField } from '#renderer/controls/DayField.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { Question } from '#renderer/controls/Notice.tsx';
import { NumberField } from '#renderer/controls/NumberField.tsx';
import { answerText, questionText } from '#renderer/words/questionText.ts';
import { stripDownWords as words } from '#renderer/words/stripDownWords.ts';
import { readDial, type Sheet } from './sheet.ts';

/** So many fitters stand in sight as keys; a bigger shop types part of a name. */
const MOST_IN_SIGHT = 4;
const OTHER = '\u0000other';

/** What the box may say before anything is typed. */
function dialHint(expectedDialHours: number | null, dialMachine: string | null): { hint?: string } {
  if (dialMachine !== null) return { hint: words.dialOf(dialMachine) };
  return expectedDialHours === null ? {} : { hint: words.dialHint(hoursText(expectedDialHours)) };
}

/** Day, dial and fitter of the visit. */
export function Band({
  sheet,
  today,
  writing,
  fitters,
  expectedDialHours,
  dialMachine,
  dialQuestion,
  dayBox,
  onSheet,
  onDialAnswer,
}: {
  sheet: Sheet;
  today: Day;
  writing: Writing;
  fitters: readonly string[];
  expectedDialHours: number | null;
  /** whose dial its hours go by; null: its own */
  dialMachine: string | null;
  dialQuestion: Asks | null;
  dayBox: RefObject<HTMLDivElement | null>;
  onSheet: (sheet: Sheet) => void;
  onDialAnswer: (choice: string) => void;
}) {
  const asked = dialQuestion && questionText(dialQuestion, { writing });
  return (
    <>
      <div className="bench-band" ref={dayBox}>
        <DayField
          label={words.day}
          today={today}
          value={isDay(sheet.takenOn) ? sheet.takenOn : null}
          onChange={(takenOn) => onSheet({ ...sheet, takenOn: takenOn ?? '' })}
        />
        <NumberField
          label={words.dial}
          unit="h"
          writing={writing}
          value={readDial(sheet.dialText).dialHours}
          onChange={(_, dialText) => onSheet({ ...sheet, dialText })}
          {...dialHint(expectedDialHours, dialMachine)}
        />
        <FitterPick fitters={fitters} fitter={sheet.fitter} onFitter={(fitter) => onSheet({ ...sheet, fitter })} />
      </div>
      {asked && dialQuestion && (
        <Question
          fact={asked.fact}
          then={asked.meanwhile}
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

function FitterPick({
  fitters,
  fitter,
  onFitter,
}: {
  fitters: readonly string[];
  fitter: string;
  onFitter: (fitter: string) => void;
}) {
  const inSight = fitters.length > 0 && fitters.length <= MOST_IN_SIGHT;
  const known = fitters.includes(fitter);
  if (!inSight)
    return <TextField label={words.fitter} value={fitter} onChange={onFitter} offered={fitters} maxLength={120} />;
  return (
    <div className="bench-fitter">
      <Choice
        label={words.fitter}
        options={[...fitters.map((name) => ({ value: name, text: name })), { value: OTHER, text: words.otherFitter }]}
        value={known ? fitter : fitter === '' ? '' : OTHER}
        onChange={(chosen) => onFitter(chosen === OTHER ? ' ' : chosen)}
      />
      {!known && fitter !== '' && (
        <TextField
          label={words.fitterName}
          value={fitter.trimStart()}
          onChange={(name) => onFitter(name === '' ? ' ' : name)}
          maxLength={120}
          autoFocus
        />
      )}
    </div>
  );
}
