import { FigureField } from './FigureField.tsx';

/** A figure of a form: which text of it, and what it is called. */
export type FigureRow<Name extends string> = { name: Name; label: string; unit: string; hint?: string };

/** Figures of a form, one box each, in the order they are asked for; each is kept as its text. */
export function FigureFields<Name extends string>({
  rows,
  texts,
  onText,
}: {
  rows: readonly FigureRow<Name>[];
  texts: Readonly<Partial<Record<Name, string>>>;
  onText: (name: Name, text: string) => void;
}) {
  return rows.map(({ name, label, unit, hint }) => (
    <FigureField
      key={name}
      label={label}
      unit={unit}
      reads="mm"
      text={texts[name] ?? ''}
      onText={(text) => onText(name, text)}
      {...(hint !== undefined && { hint })}
    />
  ));
}
