import { useState } from 'react';
import { addDays, type Day } from '#core/units/day.ts';
import { dayText } from '#core/words/quantityText.ts';
import { fieldWords } from '#renderer/words/fieldWords.ts';
import { readDay } from '#renderer/words/readDay.ts';
import { FieldFrame } from './Field.tsx';

export type DayFieldProps = {
  label: string;
  /** null: empty, or not readable as typed */
  value: Day | null;
  onChange: (value: Day | null) => void;
  today: Day;
  /** a day to come is taken too; readings and findings are never of tomorrow */
  future?: boolean;
  hint?: string;
  fault?: string | null;
  autoFocus?: boolean;
};

/** A day as a person writes it, echoed as understood. Arrow up and down move it by a day. */
export function DayField({ label, value, onChange, today, future = false, hint, fault, autoFocus }: DayFieldProps) {
  const [typed, setTyped] = useState<string | null>(null);
  const text = typed !== null && readDay(typed, today) === value ? typed : (value ?? typed ?? '');
  const read = readDay(text, today);
  const early = read !== null && (future || read <= today);
  const unreadable =
    text.trim() === '' ? null : read === null ? fieldWords.unreadDay : early ? null : fieldWords.futureDay;

  const take = (day: Day | null) => onChange(day !== null && (future || day <= today) ? day : null);
  return (
    <FieldFrame label={label} hint={hint} fault={fault ?? unreadable} echo={read && early ? dayText(read) : null}>
      {({ id, describedBy }) => (
        <input
          id={id}
          className="day"
          autoComplete="off"
          // biome-ignore lint/a11y/noAutofocus: a form opened by a key starts in its first box
          autoFocus={autoFocus}
          value={text}
          aria-describedby={describedBy}
          aria-invalid={(fault ?? unreadable) ? true : undefined}
          onChange={(event) => {
            setTyped(event.target.value);
            take(readDay(event.target.value, today));
          }}
          onKeyDown={(event) => {
            const by = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : 0;
            if (by === 0 || read === null) return;
            event.preventDefault();
            setTyped(null);
            take(addDays(read, by));
          }}
        />
      )}
    </FieldFrame>
  );
}
