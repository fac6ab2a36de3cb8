import { Fragment, useState } from 'react';
import { hoursPutRight } from '#core/contract/hours.ts';
import type { MachineSheet } from '#core/contract/machine.ts';
import { type Day, day } from '#core/units/day.ts';
import { dayText, decimalFigure, hoursFigure } from '#core/words/quantityText.ts';
import { DayField } from '#renderer/controls/DayField.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { Empty } from '#renderer/controls/Notice.tsx';
import { NumberField } from '#renderer/controls/NumberField.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { useToday, useWriting } from '#renderer/record.tsx';
import { openHours } from '#renderer/screens/hours/openHours.ts';
import { useDo } from '#renderer/useAsk.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { panelWords } from '#renderer/words/machineWords.ts';
import { momentText } from '../../history/momentText.ts';
import { ByField, useBy } from './ByField.tsx';
import { HoursSources } from './HoursSources.tsx';
import { MeterFacts } from './MeterFacts.tsx';
import { WorkShares } from './WorkShares.tsx';

type DialRow = MachineSheet['dialRows'][number];

/** All that the machine's hours rest on: what the meters showed, its meter, its work, what else tells its hours. */
export const HoursPanel = ({ sheet }: { sheet: MachineSheet }) => (
  <div className="hours-facts">
    <Dials sheet={sheet} />
    {hasMeter(sheet) && <MeterFacts sheet={sheet} />}
    <HoursSources sheet={sheet} />
    <WorkShares sheet={sheet} />
  </div>
);

/** Some meter was read on it; estimates alone speak of none. */
const hasMeter = ({ dialRows }: MachineSheet): boolean => dialRows.some(({ kind }) => kind !== 'estimate');

/** What the meters showed, newest first, and the machine hours that stand for; a wrong one is pressed to put it right. */
function Dials({ sheet }: { sheet: MachineSheet }) {
  const [mending, setMending] = useState<number | null>(null);
  const enter = <Key onPress={() => openHours({ machineId: sheet.machineId })}>{panelWords.enterHours}</Key>;
  if (sheet.dialRows.length === 0) return <Empty head={panelWords.noDials} keys={enter} />;
  return (
    <section aria-label={panelWords.dialsHead}>
      <table className="table dials-table">
        <thead>
          <tr>
            <th>{panelWords.day}</th>
            <th className="figures">{panelWords.dial}</th>
            <th className="after-figures">{panelWords.event}</th>
            <th className="figures">{panelWords.machineHours}</th>
            <th className="figures">{panelWords.giveOrTake}</th>
            <th className="after-figures">{panelWords.saidBy}</th>
            <th>{panelWords.entered}</th>
          </tr>
        </thead>
        <tbody>
          {newestFirst(sheet.dialRows).map((row) => (
            <Fragment key={row.dialReadingId}>
              <DialLine
                row={row}
                pressed={mending === row.dialReadingId}
                onMend={() => setMending((was) => (was === row.dialReadingId ? null : row.dialReadingId))}
              />
              {mending === row.dialReadingId && (
                <tr className="form-row">
                  <td colSpan={7}>
                    <DialForm row={row} onClose={() => setMending(null)} />
                  </td>
                </tr>
              )}
            </Fragment>
          ))}
        </tbody>
      </table>
      <Keys>{enter}</Keys>
    </section>
  );
}

const newestFirst = (rows: readonly DialRow[]): DialRow[] =>
  rows
    .map((row, i) => ({ row, i }))
    .sort((a, b) => (a.row.takenOn === b.row.takenOn ? b.i - a.i : a.row.takenOn < b.row.takenOn ? 1 : -1))
    .map(({ row }) => row);

function DialLine({ row, pressed, onMend }: { row: DialRow; pressed: boolean; onMend: () => void }) {
  const writing = useWriting();
  const dial = row.dialHours === null ? '' : hoursFigure(row.dialHours);
  const on = dayText(day(row.takenOn));
  const parked = row.cautions.length > 0;
  return (
    <tr className={row.superseded ? 'superseded' : undefined}>
      <td className="nw">{on}</td>
      <td className="figures">
        {row.superseded || row.dialHours === null ? (
          <s>{dial}</s>
        ) : (
          <button
            type="button"
            className={parked ? 'size-key parked' : 'size-key'}
            aria-expanded={pressed}
            aria-label={panelWords.putDialRight(dial, on)}
            onClick={onMend}
          >
            {dial}
            {parked && ' ?'}
          </button>
        )}
      </td>
      <td className="after-figures">
        <Figures>
          {[
            panelWords.kinds[row.kind],
            row.newDialHours === null ? '' : panelWords.newDial(hoursFigure(row.newDialHours)),
            row.hoursPerDialHour === null ? '' : panelWords.clock(decimalFigure(row.hoursPerDialHour, 2, writing)),
            row.reason,
            row.superseded ? panelWords.dialPutRight : parked ? panelWords.dialParked : '',
          ]
            .filter(Boolean)
            .join(', ')}
        </Figures>
      </td>
      <td className="figures">{row.machineHours === null ? '' : hoursFigure(row.machineHours)}</td>
      <td className="figures second">{row.sdHours >= 1 ? hoursFigure(2 * row.sdHours) : ''}</td>
      <td className="after-figures">{row.saidBy}</td>
      <td className="nw second">{enteredText(row)}</td>
    </tr>
  );
}

/** When it was entered, and by whom where that is another than the one who said it. */
const enteredText = ({ madeAt, madeBy, saidBy }: DialRow): string =>
  [momentText(madeAt), madeBy === saidBy ? '' : madeBy].filter(Boolean).join(', ');

function DialForm({ row, onClose }: { row: DialRow; onClose: () => void }) {
  const writing = useWriting();
  const today = useToday();
  const putRight = useDo(hoursPutRight);
  const [dialHours, setDialHours] = useState<number | null>(null);
  const [takenOn, setTakenOn] = useState<Day | null>(day(row.takenOn));
  const [reason, setReason] = useState('');
  const [by, setBy] = useBy();
  const send = async () => {
    if (dialHours === null || takenOn === null) return;
    if (await putRight.run({ dialReadingId: row.dialReadingId, takenOn, dialHours, reason, by })) onClose();
  };
  return (
    <RowForm
      fact={
        <Figures>
          {panelWords.putDialFact(row.dialHours === null ? '' : hoursFigure(row.dialHours), dayText(day(row.takenOn)))}
        </Figures>
      }
      complete={dialHours !== null && takenOn !== null}
      doing={putRight}
      send={panelWords.putRight}
      onSend={send}
      onLeave={onClose}
    >
      <NumberField
        label={panelWords.rightDial}
        unit="h"
        writing={writing}
        value={dialHours}
        onChange={setDialHours}
        autoFocus
      />
      <DayField label={panelWords.day} value={takenOn} onChange={setTakenOn} today={today} />
      <TextField label={panelWords.why} hint={panelWords.whyHint} value={reason} onChange={setReason} />
      <ByField value={by} onChange={setBy} />
    </RowForm>
  );
}
