import type { KeyboardEvent, RefObject } from 'react';
import { type Day, isDay } from '#core/units/day.ts';
import { hoursText, type Writing } from '#core/words/quantityText.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { DayField } from '#renderer/controls/DayField.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { NumberField } from '#renderer/controls/NumberField.tsx';
import { oldSheetsWords as words } from '#renderer/words/oldSheetsWords.ts';
import { stripDownWords } from '#renderer/words/stripDownWords.ts';
import { readDial, type Sheet, type SizeEvent } from '../strip-down/sheet.ts';
import { type DeskMachine, MachineBox } from './MachineBox.tsx';

const EVENTS = [
  { value: 'as-found' as const, text: words.asFound },
  { value: 'as-left' as const, text: words.asLeft, letter: 'L' },
];

/** What a sheet says once, at its head: machine, day, dial, fitter. Enter goes from one to the next, then to the sizes. */
export function DeskBand({
  machines,
  picked,
  machineBox,
  sheet,
  event,
  today,
  writing,
  fitters,
  aboutDialHours,
  onPick,
  onNew,
  onSheet,
  onEvent,
  onDone,
}: {
  machines: readonly DeskMachine[];
  picked: DeskMachine | null;
  machineBox: RefObject<HTMLInputElement | null>;
  sheet: Sheet;
  event: SizeEvent;
  today: Day;
  writing: Writing;
  fitters: readonly string[];
  aboutDialHours: number | null;
  onPick: (machineId: number) => void;
  onNew: (name: string) => void;
  onSheet: (next: Partial<Sheet>) => void;
  onEvent: (event: SizeEvent) => void;
  /** Enter after the last thing that is still to be said */
  onDone: () => void;
}) {
  const onEnter = (pressed: KeyboardEvent<HTMLDivElement>) => {
    const { target } = pressed;
    if (pressed.key !== 'Enter' || pressed.ctrlKey || !(target instanceof HTMLInputElement) || target.type === 'radio')
      return;
    pressed.preventDefault();
    const boxes = [...pressed.currentTarget.querySelectorAll<HTMLInputElement>('input:not([type=radio])')];
    const next = boxes[boxes.indexOf(target) + 1];
    // a fitter carried over from the sheet before stands already
    if (next && !(next === boxes.at(-1) && sheet.fitter.trim() !== '')) next.focus();
    else onDone();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: keys of the boxes in it
    <div className="desk-band" onKeyDown={onEnter}>
      <MachineBox machines={machines} picked={picked} boxRef={machineBox} onPick={onPick} onNew={onNew} />
      <DayField
        label={words.day}
        today={today}
        value={isDay(sheet.takenOn) ? sheet.takenOn : null}
        onChange={(takenOn) => onSheet({ takenOn: takenOn ?? '' })}
      />
      <NumberField
        label={words.dial}
        unit="h"
        writing={writing}
        value={readDial(sheet.dialText).dialHours}
        onChange={(_, dialText) => onSheet({ dialText })}
        {...(aboutDialHours !== null && { hint: words.dialHint(hoursText(aboutDialHours)) })}
      />
      <TextField
        label={words.fitter}
        value={sheet.fitter}
        onChange={(fitter) => onSheet({ fitter })}
        offered={fitters}
        maxLength={120}
      />
      <Choice label={stripDownWords.grid} labelled={false} options={EVENTS} value={event} onChange={onEvent} />
    </div>
  );
}
