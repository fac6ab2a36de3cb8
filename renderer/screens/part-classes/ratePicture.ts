import { type IntervalBar, intervalBar, type ThinInterval, thinInterval } from '#core/axis/intervalBar.ts';
import { type HoursScale, hoursScale, hoursToPx } from '#core/axis/scale.ts';
import type { PartClassSheet } from '#core/contract/partClass.ts';

export type RateRow = { sheet: PartClassSheet; bar: IntervalBar | null; before: ThinInterval | null };

/** A mark of the scale: its rate in the shop's unit, and the decimals it is written with. */
export type RateTick = { rate: number; x: number; places: number };

/** Steps a scale of rates may be cut in [the shop's unit in 1 000 h]. */
const STEPS = [0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10];

/**
 * Rates of all classes on one scale from nought. The bars are those of the hours axis: a bar runs from low to high on
 * whatever scale it is given, here of mm in 1 000 h.
 *
 * @param unitMm what the shop's lengths are counted in [mm]
 */
export function ratePicture(
  sheets: readonly PartClassSheet[],
  widthPx: number,
  unitMm: number,
): { rows: RateRow[]; ticks: RateTick[] } {
  const highs = sheets.map(({ ratePer1000hNowMm }) => ratePer1000hNowMm.high).filter((mm) => mm !== null);
  highs.sort((a, b) => a - b);
  // one class that nobody knows anything of must not squeeze the rest
  const usual = highs[Math.floor(highs.length * 0.8)] ?? 1;
  const step = STEPS.find((unit) => unit * 5 * unitMm >= usual) ?? 20;
  const steps = Math.max(2, Math.ceil(usual / unitMm / step));
  const places = Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
  const scale: HoursScale = hoursScale({ fromHours: 0, toHours: steps * step * unitMm, fromPx: 6, toPx: widthPx - 18 });
  const ticks = Array.from({ length: steps + 1 }, (_, i) => ({
    rate: i * step,
    x: hoursToPx(scale, i * step * unitMm),
    places,
  }));
  return {
    ticks,
    rows: sheets.map((sheet) => {
      const now = sheet.ratePer1000hNowMm;
      return {
        sheet,
        bar:
          now.low === null
            ? null
            : intervalBar({ ...now, nowHours: 0, decides: 'middle', ownReadings: ownOf(sheet) }, scale),
        before: thinInterval(sheet.ratePer1000hBeforeMm, scale),
      };
    }),
  };
}

/** Learned here is solid, a few readings hatched, none open: the rule of the forecasts' bars. */
const ownOf = ({ state, readings }: PartClassSheet): number => (state === 'learned' ? 3 : readings > 0 ? 1 : 0);
