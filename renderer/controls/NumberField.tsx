import { type Ref, useState } from 'react';
import {
  type DecimalMark,
  decimalFigure,
  hoursFigure,
  inInches,
  lengthUnit,
  pointOf,
  sizeEcho,
} from '#core/words/quantityText.ts';
import { useDecimalMark } from '#renderer/record.tsx';
import { numberFaultWords } from '#renderer/words/fieldWords.ts';
import { readLength, readNumber } from '#renderer/words/readNumber.ts';
import { FieldFrame } from './Field.tsx';

export type NumberFieldProps = {
  label: string;
  unit: 'mm' | 'h';
  /** null: empty, or not readable as typed */
  value: number | null;
  /** how figures are written; absent: as the shop does */
  mark?: DecimalMark;
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
  mark: given,
  hint,
  fault,
  needed = false,
  autoFocus,
  ref,
}: NumberFieldProps) {
  const shops = useDecimalMark();
  const mark = given ?? shops;
  const [typed, setTyped] = useState<string | null>(null);
  const [left, setLeft] = useState(false);
  const text =
    typed !== null && sameValue(typed, value, unit, mark)
      ? typed
      : value === null
        ? (typed ?? '')
        : asTyped(value, unit, mark);
  const read = reading(text, unit, mark);
  const unreadable =
    !read.ok && (read.why === 'empty' ? needed && left : true) ? numberFaultWords(read.why, unit, mark) : null;
  return (
    <FieldFrame
      label={label}
      hint={hint}
      unit={unit === 'mm' ? lengthUnit(mark) : unit}
      fault={fault ?? unreadable}
      echo={read.ok ? echoOf(read.value, unit, mark, text) : null}
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
            const now = reading(event.target.value, unit, mark);
            onChange(now.ok ? now.value : null, event.target.value);
          }}
        />
      )}
    </FieldFrame>
  );
}

/** What was typed still says what the form holds: it stays as typed, even half typed ("10,"). */
function sameValue(typed: string, value: number | null, unit: 'mm' | 'h', mark: DecimalMark): boolean {
  const read = reading(typed, unit, mark);
  return read.ok ? read.value === value : value === null;
}

const reading = (text: string, unit: 'mm' | 'h', mark: DecimalMark) =>
  unit === 'mm' ? readLength(text, mark) : readNumber(text, unit);

const asTyped = (value: number, unit: 'mm' | 'h', mark: DecimalMark): string =>
  unit === 'mm' && inInches(mark) ? sizeEcho(value, 2, mark) : String(value).replace('.', pointOf(mark));

/** Only where it tells something the typed text does not: a comma turned, thousands parted, a unit dropped. */
function echoOf(value: number, unit: 'mm' | 'h', mark: DecimalMark, typed: string): string {
  if (unit === 'mm' && inInches(mark))
    return `${sizeEcho(value, 2, mark)}\u00A0in, ${decimalFigure(value, 2, mark)}\u00A0mm`;
  const places = Math.max(unit === 'mm' ? 2 : 0, Math.min(3, (String(value).split('.')[1] ?? '').length));
  const figure = unit === 'h' && Number.isInteger(value) ? hoursFigure(value) : decimalFigure(value, places, mark);
  return figure === typed ? '' : `${figure}\u00A0${unit}`;
}
