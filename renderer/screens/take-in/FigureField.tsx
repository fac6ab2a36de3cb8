import { decimalFigure, hoursFigure } from '#core/words/quantityText.ts';
import { FieldFrame } from '#renderer/controls/Field.tsx';
import { useDecimalMark } from '#renderer/record.tsx';
import { readNumber } from '#renderer/words/readNumber.ts';

/** Typed just as the shop writes it: an echo would tell nothing. */
const isPlain = (text: string, value: number, mark: string): boolean =>
  !text.trim().includes(mark === '.' ? ',' : '.') && Number(text.trim().replace(mark, '.')) === value && value < 1000;

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
  /** read as hours or as mm */
  reads?: 'mm' | 'h';
  text: string;
  onText: (text: string) => void;
  hint?: string;
  fault?: string | null;
}) {
  const mark = useDecimalMark();
  const read = readNumber(text, reads);
  const echo = !read.ok
    ? null
    : Number.isInteger(read.value)
      ? hoursFigure(read.value)
      : decimalFigure(read.value, reads === 'mm' ? 2 : 1, mark);
  return (
    <FieldFrame
      label={label}
      unit={unit}
      hint={hint}
      fault={fault}
      echo={read.ok && isPlain(text, read.value, mark) ? null : echo}
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
