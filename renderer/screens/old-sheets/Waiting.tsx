import { useState } from 'react';
import type { QuestionedSize } from '#core/contract/oldSheets.ts';
import { renewalAnswer, renewalPutRight, sizeAnswer, sizePutRight } from '#core/contract/stripDown.ts';
import { lengthText, type Writing } from '#core/words/quantityText.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { NumberField } from '#renderer/controls/NumberField.tsx';
import { RingSign } from '#renderer/marks/ItemRing.tsx';
import { Figures } from '#renderer/words/Figures.tsx';
import { oldSheetsWords as words } from '#renderer/words/oldSheetsWords.ts';
import { answerText, questionText } from '#renderer/words/questionText.ts';
import { useDeskDo } from './useDesk.ts';
import './waiting.css';

/** Sizes kept aside: what is odd about each, and the answers, now or later. */
export function Waiting({
  sizes,
  writing,
  by,
  machineNamed,
  startOpen = false,
  onAnswered,
}: {
  sizes: readonly QuestionedSize[];
  writing: Writing;
  by: string;
  /** several machines stand in the list */
  machineNamed: boolean;
  /** the first is asked at once */
  startOpen?: boolean;
  onAnswered?: () => void;
}) {
  const [open, setOpen] = useState<string | null>(startOpen && sizes[0] ? idOf(sizes[0]) : null);
  return (
    <ul className="waiting-sizes">
      {sizes.map((size) => (
        <li key={idOf(size)}>
          <button
            type="button"
            className="waiting-size"
            aria-expanded={open === idOf(size)}
            onClick={() => setOpen(open === idOf(size) ? null : idOf(size))}
          >
            <RingSign item={size.item} state="leave" />
            <span className="waiting-name">
              {[size.position, size.station, size.renewalId === null ? '' : words.putIn].filter(Boolean).join(', ')}
              {machineNamed && <span className="second">{`${size.machine}, ${words.sheetLine(size.takenOn)}`}</span>}
            </span>
            <b className="figures">{lengthText(size.sizeMm, size.decimals, writing)}</b>
          </button>
          {open === idOf(size) && <Answers size={size} writing={writing} by={by} {...(onAnswered && { onAnswered })} />}
        </li>
      ))}
    </ul>
  );
}

const idOf = ({ sizeId, renewalId }: QuestionedSize): string => (sizeId === null ? `put in ${renewalId}` : `${sizeId}`);

function Answers({
  size,
  writing,
  by,
  onAnswered,
}: {
  size: QuestionedSize;
  writing: Writing;
  by: string;
  onAnswered?: () => void;
}) {
  const { sizeId, renewalId } = size;
  const answer = useDeskDo(sizeAnswer);
  const putRight = useDeskDo(sizePutRight);
  const putInAnswer = useDeskDo(renewalAnswer);
  const putInRight = useDeskDo(renewalPutRight);
  const told = (reply: unknown) => reply !== null && onAnswered?.();
  const say = (choice: 'right-as-read' | 'was-renewed') => {
    if (sizeId !== null) void answer.run({ sizeId, answer: choice, by }).then(told);
    else if (renewalId !== null) void putInAnswer.run({ renewalId, answer: 'right-as-read', by }).then(told);
  };
  /** null: it was not so */
  const put = (sizeMm: number | null, reason: string) => {
    if (sizeId !== null) void putRight.run({ sizeId, sizeMm, reason, by }).then(told);
    else if (renewalId !== null)
      void putInRight.run({ renewalId, right: sizeMm === null ? null : { sizeMm }, reason, by }).then(told);
  };
  const [another, setAnother] = useState<number | null>(null);
  const { decimals, gaugeErrorMm, measures } = size;
  const said = questionText(size.question, { writing, decimals, gaugeErrorMm, measures });
  const choices = size.question.choices.filter(
    (choice): choice is 'right-as-read' | 'was-renewed' => choice === 'right-as-read' || choice === 'was-renewed',
  );
  const doing = [answer, putRight, putInAnswer, putInRight];
  const fault = doing.find((one) => one.fault)?.fault ?? null;
  const busy = doing.some((one) => one.busy);
  return (
    <div className="waiting-answers">
      <p>
        <Figures>{said.fact}</Figures>
      </p>
      <div className="keys">
        {choices.map((choice) => (
          <Key key={choice} disabled={busy} onPress={() => say(choice)}>
            {answerText(choice).text}
          </Key>
        ))}
        <Key disabled={busy} onPress={() => put(null, words.struckReason)}>
          {words.strike}
        </Key>
      </div>
      <div className="one-line">
        <NumberField label={words.anotherMm} unit="mm" writing={writing} value={another} onChange={setAnother} />
        <Key disabled={busy || another === null} onPress={() => put(another, words.reason)}>
          {words.putRight}
        </Key>
      </div>
      {fault && <FaultBox fault={fault} />}
    </div>
  );
}
