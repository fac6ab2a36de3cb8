import { decimalFigure, hoursFigure, inInches, lengthUnit, pointOf, sizeEcho } from '#core/words/quantityText.ts';
import { FieldFrame } from '#renderer/controls/Field.tsx';
import { useWriting } from '#renderer/record.tsx';
import { readLength, readNumber } from '#renderer/words/readNumber.ts';

/** Typed just as the shop writes it: an echo would tell nothing. */
const isPlain = (text: string, value: number, writing: string): boolean =>
  !text.trim().includes(writing === '.' ? ',' : '.') &&
  Number(text.trim().replace(writing, '.')) === value &&
  value < 1000;

/** A figure kept as its text, for forms that must not lose what could not be read; echoed as understood. */
export function FigureField({
  label,
  unit,
  reads = 'h',
  text,
  onText,
  hint,
  fault,
}: {
  label: string;
  /** printed beside the box */
  unit?: string;
  /** read as hours, as a plain decimal, or as a length in the shop's unit */
  reads?: 'mm' | 'h' | 'length';
  text: string;
  onText: (text: string) => void;
  hint?: string;
  fault?: string | null;
}) {
  const writing = useWriting();
  const read = reads === 'length' ? readLength(text, writing) : readNumber(text, reads);
  const echo = !read.ok
    ? null
    : reads === 'length' && inInches(writing)
      ? `${sizeEcho(read.value, 2, writing)}\u00A0in, ${decimalFigure(read.value, 2, writing)}\u00A0mm`
      : Number.isInteger(read.value)
        ? hoursFigure(read.value)
        : decimalFigure(read.value, reads === 'h' ? 1 : 2, writing);
  return (
    <FieldFrame
      label={label}
      unit={reads === 'length' ? lengthUnit(writing) : unit}
      hint={hint}
      fault={fault}
      echo={
        read.ok && (reads !== 'length' || !inInches(writing)) && isPlain(text, read.value, pointOf(writing))
          ? null
          : echo
      }
    >
      {({ id, describedBy }) => (
        <input
          id={id}
          className="number"
          inputMode="decimal"
          autoComplete="off"
          value={text}
          aria-describedby={describedBy}
          aria-invalid={fault ? true : undefined}
          onChange={(event) => onText(event.target.value)}
        />
      )}
    </FieldFrame>
  );
}
