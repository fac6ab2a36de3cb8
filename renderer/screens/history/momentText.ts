import { day } from '#core/units/day.ts';
import { dayText } from '#core/words/quantityText.ts';

/** An ISO instant on this computer's clock: "9 Nov 2026, 14:02". */
export function momentText(instant: string): string {
  const at = new Date(instant);
  const two = (n: number) => String(n).padStart(2, '0');
  const on = day(`${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`);
  return `${dayText(on)}, ${two(at.getHours())}:${two(at.getMinutes())}`;
}
