import { useState } from 'react';
import type { QuestionedSize } from '#core/contract/oldSheets.ts';
import { sizeAnswer, sizePutRight } from '#core/contract/stripDown.ts';
import { type DecimalMark, decimalFigure } from '#core/words/quantityText.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { NumberField } from '#renderer/controls/NumberField.tsx';
import { RingSign } from '#renderer/marks/ItemRing.tsx';
import { Figures } from '#renderer/words/Figures.tsx';
import { oldSheetsWords as words } from '#renderer/words/oldSheetsWords.ts';
import { answerText, questionText } from '#renderer/words/questionText.ts';
import { useDeskDo } from './useDesk.ts';

/** Sizes kept aside: what is odd about each, and the answers, now or later. */
export function Waiting({
  sizes,
  mark,
  by,
  machineNamed,
}: {
  sizes: readonly QuestionedSize[];
  mark: DecimalMark;
  by: string;
  /** several machines stand in the list */
  machineNamed: boolean;
}) {
  const [open, setOpen] = useState<number | null>(null);
  return (
    <ul className="waiting-sizes">
      {sizes.map((size) => (
        <li key={size.sizeId}>
          <button
            type="button"
            className="waiting-size"
            aria-expanded={open === size.sizeId}
            onClick={() => setOpen(open === size.sizeId ? null : size.sizeId)}
          >
            <RingSign item={size.item} state="leave" />
            <span className="waiting-name">
              {[size.position, size.station].filter(Boolean).join(', ')}
              {machineNamed && <span className="second">{`${size.machine}, ${words.sheetLine(size.takenOn)}`}</span>}
            </span>
            <b className="figures">{decimalFigure(size.sizeMm, size.decimals, mark)}</b>
          </button>
          {open === size.sizeId && <Answers size={size} mark={mark} by={by} />}
        </li>
      ))}
    </ul>
  );
}

function Answers({ size, mark, by }: { size: QuestionedSize; mark: DecimalMark; by: string }) {
  const answer = useDeskDo(sizeAnswer);
  const putRight = useDeskDo(sizePutRight);
  const [another, setAnother] = useState<number | null>(null);
  const { sizeId, decimals, gaugeErrorMm, measures } = size;
  const said = questionText(size.question, { mark, decimals, gaugeErrorMm, measures });
  const choices = size.question.choices.filter(
    (choice): choice is 'right-as-read' | 'was-renewed' => choice === 'right-as-read' || choice === 'was-renewed',
  );
  const fault = answer.fault ?? putRight.fault;
  const busy = answer.busy || putRight.busy;
  return (
    <div className="waiting-answers">
      <p>
        <Figures>{said.fact}</Figures>
      </p>
      <div className="keys">
        {choices.map((choice) => (
          <Key key={choice} disabled={busy} onPress={() => void answer.run({ sizeId, answer: choice, by })}>
            {answerText(choice).text}
          </Key>
        ))}
        <Key
          disabled={busy}
          onPress={() => void putRight.run({ sizeId, sizeMm: null, reason: words.struckReason, by })}
        >
          {words.strike}
        </Key>
      </div>
      <div className="one-line">
        <NumberField label={words.anotherMm} unit="mm" mark={mark} value={another} onChange={setAnother} />
        <Key
          disabled={busy || another === null}
          onPress={() => void putRight.run({ sizeId, sizeMm: another, reason: words.reason, by })}
        >
          {words.putRight}
        </Key>
      </div>
      {fault && <FaultBox fault={fault} />}
    </div>
  );
}
