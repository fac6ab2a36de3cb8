import type { RefObject } from 'react';
import type { Fault } from '#core/contract/operation.ts';
import { day } from '#core/units/day.ts';
import type { Writing } from '#core/words/quantityText.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { Key, Letter } from '#renderer/controls/Key.tsx';
import { FaultBox, Question } from '#renderer/controls/Notice.tsx';
import { questionSentences } from '#renderer/words/questionText.ts';
import { stripDownWords as words } from '#renderer/words/stripDownWords.ts';
import { timeOfDay } from './benchBlock.ts';
import type { SizeEvent } from './sheet.ts';

/** Which of the two grids is being typed, and the key that saves both. */
export function SaveKeys({
  event,
  saveBox,
  disabled,
  onEvent,
  onSave,
}: {
  event: SizeEvent;
  saveBox: RefObject<HTMLDivElement | null>;
  disabled: boolean;
  onEvent: (event: SizeEvent) => void;
  onSave: () => void;
}) {
  return (
    <>
      <div className="bench-event">
        <Choice label={words.grid} labelled={false} options={GRIDS} value={event} onChange={onEvent} />
      </div>
      <div className="keys" ref={saveBox}>
        <Key first disabled={disabled} onPress={onSave}>
          {words.save}
          <Letter>{words.saveKeys}</Letter>
        </Key>
      </div>
    </>
  );
}

const GRIDS = [
  { value: 'as-found' as const, text: words.asFound },
  { value: 'as-left' as const, text: words.asLeft, letter: 'L' },
];

/** Why saving was refused: a dial that cannot be is said as it is asked about, the rest as any fault. */
export function SaveFault({ fault, writing }: { fault: Fault | null; writing: Writing }) {
  if (!fault) return null;
  const sentence = questionSentences[fault.code];
  if (!sentence) return <FaultBox fault={fault} />;
  const { fact } = sentence(fault.facts, { writing });
  return <FaultBox said={{ what: fact, safe: words.notSaved, next: words.notSavedNext }} />;
}

/** The code of the refusal that asks whether a second strip-down of the day is meant. */
export const MEANWHILE = 'measured-meanwhile';

/** The sheet was left open here while one of the same day was saved elsewhere: is it the same one, or another? */
export const MeanwhileAsk = ({
  facts,
  onSaveToo,
  onDiscard,
}: {
  facts: Fault['facts'];
  onSaveToo: () => void;
  onDiscard: () => void;
}) => (
  <Question
    fact={words.meanwhile(day(String(facts.takenOn)), String(facts.fitter))}
    then={words.meanwhileThen}
    keys={
      <>
        <Key first onPress={onSaveToo}>
          {words.meanwhileOther}
        </Key>
        <Key red onPress={onDiscard}>
          {words.meanwhileSame}
        </Key>
      </>
    }
  />
);

/** Another window typed on the same sheet: nothing here goes over it unasked. */
export const TypedMeanwhileAsk = ({
  facts,
  onTake,
  onKeep,
}: {
  facts: Fault['facts'];
  /** what was typed there comes in place of what stands here */
  onTake: () => void;
  /** what stands here goes in place of what was typed there: the instant at which that was kept */
  onKeep: (keptAt: string) => void;
}) => (
  <Question
    fact={words.typedMeanwhile(timeOfDay(String(facts.keptAt)), Number(facts.sizes))}
    then={words.typedMeanwhileThen}
    keys={
      <>
        <Key onPress={onTake}>{words.typedMeanwhileTake}</Key>
        <Key onPress={() => onKeep(String(facts.keptAt))}>{words.typedMeanwhileKeep}</Key>
      </>
    }
  />
);

export const DiscardAsk = ({ onYes, onNo }: { onYes: () => void; onNo: () => void }) => (
  <Question
    fact={words.discardAsk}
    keys={
      <>
        <Key red onPress={onYes}>
          {words.discardYes}
        </Key>
        <Key first autoFocus onPress={onNo}>
          {words.discardNo}
        </Key>
      </>
    }
  />
);
