/** Between which values a figure may be set, the ends included; whole: counts take no fractions. */
export type Bounds = { from: number; to: number; whole: boolean };

/** Whether a value, a finite number, keeps to its bounds. */
export const isWithin = ({ from, to, whole }: Bounds, value: number): boolean =>
  value >= from && value <= to && (!whole || Number.isInteger(value));

/** Usual values with what was changed of them; a name not among them, or a value beyond its bounds, is passed over. */
export function withChanged<Name extends string>(
  usual: Readonly<Record<Name, number>>,
  bounds: Readonly<Record<Name, Bounds>>,
  changed: Readonly<Record<string, number>>,
): Record<Name, number> {
  const values: Record<Name, number> = { ...usual };
  for (const name of Object.keys(usual) as Name[]) {
    const value = changed[name];
    if (value !== undefined && isWithin(bounds[name], value)) values[name] = value;
  }
  return values;
}
