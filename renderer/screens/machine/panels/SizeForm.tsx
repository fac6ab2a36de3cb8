import { useState } from 'react';
import type { PointSheet } from '#core/contract/machine.ts';
import { sizeAnswer, sizePutRight } from '#core/contract/stripDown.ts';
import { day } from '#core/units/day.ts';
import { dayText } from '#core/words/quantityText.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox, Question } from '#renderer/controls/Notice.tsx';
import { NumberField } from '#renderer/controls/NumberField.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { useWriting } from '#renderer/record.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { panelWords, sizeText } from '#renderer/words/machineWords.ts';
import { ByField, useBy } from './ByField.tsx';

type SizeFormProps = {
  station: PointSheet['visits'][number]['stations'][number];
  takenOn: string;
  /** what the visit before read there [mm] */
  before: number | null;
  /** the size it was put right to is odd as well, and asked about under its own number */
  onAsked: (sizeId: number) => void;
  onClose: () => void;
};

/** A kept size: a questioned one is answered, any can be put right or struck out. The old figure is never removed. */
export function SizeForm(props: SizeFormProps) {
  const [mending, setMending] = useState(!props.station.parked);
  return mending ? <PutRightForm {...props} /> : <AnswerKeys {...props} onMend={() => setMending(true)} />;
}

function AnswerKeys({ station, before, onClose, onMend }: SizeFormProps & { onMend: () => void }) {
  const writing = useWriting();
  const answer = useDo(sizeAnswer);
  const [by] = useBy();
  const say = async (said: 'right-as-read' | 'was-renewed') => {
    if (await answer.run({ sizeId: station.sizeId, answer: said, by })) onClose();
  };
  return (
    <>
      <Question
        fact={
          <Figures>
            {panelWords.questionFact(
              sizeText(station.sizeMm, writing),
              station.station,
              before === null ? null : sizeText(before, writing),
            )}
          </Figures>
        }
        then={panelWords.questionThen}
        keys={
          <>
            <Key letter="K" disabled={answer.busy} onPress={() => say('right-as-read')}>
              {panelWords.rightAsRead}
            </Key>
            <Key letter="R" disabled={answer.busy} onPress={() => say('was-renewed')}>
              {panelWords.wasRenewed}
            </Key>
            <Key letter="M" onPress={onMend}>
              {panelWords.putRight}
            </Key>
          </>
        }
      />
      {answer.fault && <FaultBox fault={answer.fault} />}
    </>
  );
}

function PutRightForm({ station, takenOn, onAsked, onClose }: SizeFormProps) {
  const writing = useWriting();
  const putRight = useDo(sizePutRight);
  const [sizeMm, setSizeMm] = useState<number | null>(null);
  const [reason, setReason] = useState('');
  const [by, setBy] = useBy();
  const send = async (to: number | null) => {
    const done = await putRight.run({ sizeId: station.sizeId, sizeMm: to, reason, by });
    // odd itself: the question about it is shown where this form stood
    if (done?.question) onAsked(done.sizeId);
    else if (done) onClose();
  };
  return (
    <RowForm
      fact={
        <Figures>
          {panelWords.putRightFact(sizeText(station.sizeMm, writing), station.station, dayText(day(takenOn)))}
        </Figures>
      }
      complete={sizeMm !== null}
      doing={putRight}
      send={panelWords.putRight}
      onSend={() => send(sizeMm)}
      keys={
        <Key red disabled={putRight.busy} onPress={() => send(null)}>
          {panelWords.strikeOut}
        </Key>
      }
      onLeave={onClose}
    >
      <NumberField
        label={panelWords.rightSize}
        unit="mm"
        writing={writing}
        value={sizeMm}
        onChange={setSizeMm}
        autoFocus
      />
      <TextField label={panelWords.why} hint={panelWords.whyHint} value={reason} onChange={setReason} />
      <ByField value={by} onChange={setBy} />
    </RowForm>
  );
}
