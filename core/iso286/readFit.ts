import { type Outcome, ok, refuse } from '../outcome.ts';
import { type HoleClass, readClass, type ShaftClass } from './toleranceClass.ts';

/** "50", "Ø50", "50,5", and whatever stands behind it. */
const SIZE_THEN_REST = /^[Øø⌀]?\s*(\d+(?:[.,]\d+)?)\s*(?:mm\b)?\s*([A-Za-z].*)$/;

/**
 * Reads a fit as it stands on a drawing: "50 H7/g6", "Ø50H7/g6", "50,5 H7 / g6", either part first.
 *
 * @refuses iso286-not-a-fit (no size, or not one hole and one shaft), what readClass refuses
 * @example readFit('50 H7/g6') // { ok: true, value: { nominalMm: 50, hole: H7, shaft: g6 } }
 */
export function readFit(written: string): Outcome<{ nominalMm: number; hole: HoleClass; shaft: ShaftClass }> {
  const notAFit = refuse({ code: 'iso286-not-a-fit', facts: { written } });
  const found = SIZE_THEN_REST.exec(written.trim());
  if (!found) return notAFit;
  const pair = readPair(found[2] ?? '');
  if (!pair.ok) return pair.refusal.code === 'iso286-not-a-fit' ? notAFit : pair;
  return ok({ nominalMm: Number((found[1] ?? '').replace(',', '.')), ...pair.value });
}

/**
 * Reads the two classes of a fit, either part first: "H7/g6".
 * @refuses iso286-not-a-fit (not one hole and one shaft), what readClass refuses
 */
export function readPair(written: string): Outcome<{ hole: HoleClass; shaft: ShaftClass }> {
  const notAFit = refuse({ code: 'iso286-not-a-fit', facts: { written } });
  const [one, other, ...more] = written.split(/[/-]|\s+/).filter((text) => text !== '');
  if (one === undefined || other === undefined || more.length > 0) return notAFit;
  const [first, second] = [readClass(one), readClass(other)];
  if (!first.ok) return first;
  if (!second.ok) return second;
  const both = [first.value, second.value];
  const hole = both.find((part) => part.of === 'hole');
  const shaft = both.find((part) => part.of === 'shaft');
  return hole && shaft ? ok({ hole, shaft }) : notAFit;
}
