import { decimalFigure, type Writing } from './quantityText.ts';

const NBSP = '\u00A0';
const N_PER_TONNE_FORCE = 9806.65;

/** A bent part under the press, as the contract's job has it. */
type Pressing = {
  spanMm: number;
  yieldMpa: number;
  goSlowlyN: { from: number; to: number };
  pressForN: number;
  springBackMm: { low: number; high: number };
  strain: number | null;
  openedBy: { by: string; reference: string } | null;
};

/** What is read at the press, sentence by sentence, on screen and job card alike. */
export function pressingLines(pressing: Pressing, writing: Writing = '.'): string[] {
  const { spanMm, goSlowlyN, pressForN, springBackMm, strain, openedBy, yieldMpa } = pressing;
  const kn = (newton: number) => `${decimalFigure(newton / 1000, 0, writing)}${NBSP}kN`;
  const mm = (length: number, places = 1) => decimalFigure(length, places, writing);
  const tonnes = decimalFigure(pressForN / N_PER_TONNE_FORCE, 1, writing);
  return [
    `Supports ${mm(spanMm, 0)}${NBSP}mm apart, pushed in the middle: it begins to stay bent at ${kn(goSlowlyN.from)}; a press of ${kn(pressForN)} (${tonnes} tonne-force) copes. Go slowly between the two: it gives suddenly.`,
    `It springs back by ${mm(springBackMm.low)} to ${mm(springBackMm.high)}${NBSP}mm: push past straight by that, in small steps. Reckoned with a yield of ${mm(yieldMpa, 0)}${NBSP}MPa, as the shop said it; steel often yields at more.`,
    ...(strain === null
      ? []
      : [
          `The bow has stretched the skin by ${decimalFigure(strain * 100, 1, writing)}${NBSP}%, more where it is kinked. Look for cracks before and after; reject on a crack.`,
        ]),
    ...(openedBy
      ? [`By the maker’s written procedure ${openedBy.reference}, given by ${openedBy.by}: that procedure prevails.`]
      : []),
  ];
}
