import { type Ref, useState } from 'react';
import {
  decimalFigure,
  hoursFigure,
  inInches,
  lengthUnit,
  pointOf,
  sizeEcho,
  type Writing,
} from '#core/words/quantityText.ts';
import { useWriting } from '#renderer/record.tsx';
import { numberFaultWords } from '#renderer/words/fieldWords.ts';
import { readLength, readNumber } from '#renderer/words/readNumber.ts';
import { FieldFrame } from './Field.tsx';

export type NumberFieldProps = {
  label: string;
  unit: 'mm' | 'h';
  /** null: empty, or not readable as typed */
  value: number | null;
  /** how figures are written; absent: as the shop does */
  writing?: Writing;
  /** `typed` is the text as it stands, for forms that keep it; value null with a text that could not be read */
  onChange: (value: number | null, typed: string) => void;
  hint?: string;
  /** a fault of the form's own, beside those of reading */
  fault?: string | null;
  /** must not stay empty: said once the box was left */
  needed?: boolean;
  autoFocus?: boolean;
  ref?: Ref<HTMLInputElement>;
};

/** A size or hours: comma and point alike, echoed as understood, questioned where it could be read two ways. */
export function NumberField({
  label,
  unit,
  value,
  onChange,
  writing: given,
  hint,
  fault,
  needed = false,
  autoFocus,
  ref,
}: NumberFieldProps) {
  const shops = useWriting();
  const writing = given ?? shops;
  const [typed, setTyped] = useState<string | null>(null);
  const [left, setLeft] = useState(false);
  const text =
    typed !== null && sameValue(typed, value, unit, writing)
      ? typed
      : value === null
        ? (typed ?? '')
        : asTyped(value, unit, writing);
  const read = reading(text, unit, writing);
  const unreadable =
    !read.ok && (read.why === 'empty' ? needed && left : true) ? numberFaultWords(read.why, unit, writing) : null;
  return (
    <FieldFrame
      label={label}
      hint={hint}
      unit={unit === 'mm' ? lengthUnit(writing) : unit}
      fault={fault ?? unreadable}
      echo={read.ok ? echoOf(read.value, unit, writing, text) : null}
    >
      {({ id, describedBy }) => (
        <input
          ref={ref}
          id={id}
          className="number"
          inputMode="decimal"
          autoComplete="off"
          // biome-ignore lint/a11y/noAutofocus: a form opened by a key starts in its first box
          autoFocus={autoFocus}
          value={text}
          aria-describedby={describedBy}
          aria-invalid={(fault ?? unreadable) ? true : undefined}
          onBlur={() => setLeft(true)}
          onChange={(event) => {
            setTyped(event.target.value);
            const now = reading(event.target.value, unit, writing);
            onChange(now.ok ? now.value : null, event.target.value);
          }}
        />
      )}
    </FieldFrame>
  );
}

/** What was typed still says what the form holds: it stays as typed, even half typed ("10,"). */
function sameValue(typed: string, value: number | null, unit: 'mm' | 'h', writing: Writing): boolean {
  const read = reading(typed, unit, writing);
  return read.ok ? read.value === value : value === null;
}

const reading = (text: string, unit: 'mm' | 'h', writing: Writing) =>
  unit === 'mm' ? readLength(text, writing) : readNumber(text, unit);

const asTyped = (value: number, unit: 'mm' | 'h', writing: Writing): string =>
  unit === 'mm' && inInches(writing) ? sizeEcho(value, 2, writing) : String(value).replace('.', pointOf(writing));

/** Only where it tells something the typed text does not: a comma turned, thousands parted, a unit dropped. */
function echoOf(value: number, unit: 'mm' | 'h', writing: Writing, typed: string): string {
  if (unit === 'mm' && inInches(writing))
    return `${sizeEcho(value, 2, writing)}\u00A0in, ${decimalFigure(value, 2, writing)}\u00A0mm`;
  const places = Math.max(unit === 'mm' ? 2 : 0, Math.min(3, (String(value).split('.')[1] ?? '').length));
  const figure = unit === 'h' && Number.isInteger(value) ? hoursFigure(value) : decimalFigure(value, places, writing);
  return figure === typed ? '' : `${figure}\u00A0${unit}`;
}
