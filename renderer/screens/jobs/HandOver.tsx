import { useState } from 'react';
import { machineRead } from '#core/contract/machine.ts';
import { type Rebuild, rebuildHandOver } from '#core/contract/rebuild.ts';
import type { Day } from '#core/units/day.ts';
import { decimalFigure, pointOf } from '#core/words/quantityText.ts';
import { DayField } from '#renderer/controls/DayField.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { Question } from '#renderer/controls/Notice.tsx';
import { NumberField } from '#renderer/controls/NumberField.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { useToday, useWriting } from '#renderer/record.tsx';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { faultText } from '#renderer/words/faultText.ts';
import { jobWords as words } from '#renderer/words/jobWords.ts';

/** Sizes as left close the loop: renewed points start their wear again there, and the job is closed. */
export function HandOver({ job }: { job: Rebuild }) {
  const today = useToday();
  const writing = pointOf(useWriting());
  const machine = useAsk(machineRead, { machineId: job.machineId });
  const handOver = useDo(rebuildHandOver);
  const [handedOverOn, setHandedOverOn] = useState<Day | null>(today);
  const [dialHours, setDialHours] = useState<number | null>(null);
  const [sizes, setSizes] = useState<ReadonlyMap<number, number | null>>(new Map());
  const [stamped, setStamped] = useState(false);
  const [note, setNote] = useState('');
  const [by, setBy] = useBy();
  const renewed = job.lines.filter(({ stands }) => stands === 'agreed').flatMap(({ renews }) => renews);
  const points = new Map((machine.value?.points ?? []).map((point) => [point.pointId, point]));
  const send = (sure: boolean) => {
    if (handedOverOn === null) return;
    const left = renewed.flatMap(({ pointId }) => {
      const sizeMm = sizes.get(pointId) ?? null;
      return sizeMm === null ? [] : [{ pointId, sizeMm }];
    });
    void handOver.run({
      ...{ rebuildId: job.rebuildId, handedOverOn, dialHours, note, sure, by },
      sizes: left.map((one) => ({
        ...one,
        station: '',
        event: 'as-left',
        gaugeId: null,
        answer: sure ? 'right-as-read' : null,
      })),
      renewals: renewed.map(({ pointId, kind }) => ({
        pointId,
        kind,
        sizeMm: sizes.get(pointId) ?? null,
        hoursKnown: true,
        ...(kind === 'oversize' && { stamped }),
      })),
    });
  };
  const isOut = handOver.fault?.code === 'out-of-intended-fit';
  return (
    <section>
      <h2>{words.handOverHead}</h2>
      <p className="second">{words.handOverNote}</p>
      <RowForm
        className="job-form"
        complete={handedOverOn !== null}
        doing={{ fault: isOut ? null : handOver.fault, busy: handOver.busy }}
        send={words.handOver}
        onSend={() => send(false)}
        above={
          <>
            {renewed.map(({ pointId, lowerMm, upperMm }) => (
              <NumberField
                key={pointId}
                label={words.asLeft(points.get(pointId)?.position ?? '', points.get(pointId)?.point ?? '')}
                hint={words.meant(`${decimalFigure(lowerMm, 2, writing)} to ${decimalFigure(upperMm, 2, writing)}`)}
                unit="mm"
                value={sizes.get(pointId) ?? null}
                onChange={(sizeMm) => setSizes(new Map([...sizes, [pointId, sizeMm]]))}
                writing={writing}
              />
            ))}
            {renewed.some(({ kind }) => kind === 'oversize') && (
              <label className="tick">
                <input type="checkbox" checked={stamped} onChange={(event) => setStamped(event.target.checked)} />
                {words.stamped}
              </label>
            )}
          </>
        }
        below={
          isOut &&
          handOver.fault && (
            <Question
              fact={words.outOfFit}
              then={faultText(handOver.fault).what}
              keys={<Key onPress={() => send(true)}>{words.handOverAll}</Key>}
            />
          )
        }
      >
        <DayField label={words.handedOverOn} value={handedOverOn} onChange={setHandedOverOn} today={today} />
        <NumberField label={words.dial} unit="h" value={dialHours} onChange={setDialHours} writing={writing} />
        <TextField label={words.note} value={note} onChange={setNote} maxLength={2000} />
        <ByField label={words.by} value={by} onChange={setBy} />
      </RowForm>
    </section>
  );
}
