import { type Sourced, sourced } from '../howKnown.ts';
import type { Material } from './material.ts';

/** Where the shop's cold comes from, and how cold that is [°C]. */
export const COLD: Readonly<Record<'freezer' | 'dry-ice' | 'liquid-nitrogen', Sourced<number>>> = {
  freezer: sourced(-18, 'common-practice', 'common practice'),
  'dry-ice': sourced(-78, 'published', 'carbon dioxide goes over to gas at -78.5 °C'),
  'liquid-nitrogen': sourced(-196, 'published', 'nitrogen boils at -195.8 °C'),
};
export const COLDS = ['freezer', 'dry-ice', 'liquid-nitrogen'] as const satisfies readonly (keyof typeof COLD)[];
export type Cold = (typeof COLDS)[number];

/** Room the part needs to drop in before it grips, for each mm of diameter. */
export const ENTRY_CLEARANCE_SHARE: Sourced<number> = sourced(0.001, 'from-memory', 'from memory');

/**
 * Change of temperature that opens a boss (or shrinks a bush) by the interference and room to enter.
 *   dT = (delta + c) / (alpha d)
 *
 * @param expansionPerK lengthening for each kelvin [1/K]
 * @returns [K], positive
 * @source linear expansion, in any machine-design text
 * @checked tests/reference/press-fit/pressFit.test.ts
 * @example temperatureChangeK({ interfaceMm: 50, interferenceMm: 0.059, entryClearanceMm: 0.05, expansionPerK: 11.5e-6 }) // 189.6
 */
export const temperatureChangeK = (of: {
  interfaceMm: number;
  interferenceMm: number;
  entryClearanceMm: number;
  expansionPerK: number;
}): number => (of.interferenceMm + of.entryClearanceMm) / (of.expansionPerK * of.interfaceMm);

/** Ways to put a bush in without pressing. */
export type ShrinkPlan = {
  entryClearanceMm: number;
  /** boss alone heated to this [°C], and whether its material stands it */
  heatToC: number;
  heatTooHot: boolean;
  /** the warmest cold that does it alone with the boss at room temperature; null: not even liquid nitrogen */
  freezeWith: Cold | null;
  freezeToC: number | null;
  /** bush cooled in each cold, and the boss heated to this for the rest [°C]; not needed: room temperature */
  both: { cold: Cold; coldC: number; heatToC: number; heatNeeded: boolean; heatTooHot: boolean }[];
};

/**
 * Heat for the boss, cold for the bush, or some of both.
 *
 * @param interferenceMm the most the fit may have, diametral [mm]
 * @param roomC [°C]
 * @source linear expansion, in any machine-design text; mean shortening in the cold as {@link Material} tells it
 * @checked tests/reference/press-fit/pressFit.test.ts
 */
export function shrinkPlan(of: {
  interfaceMm: number;
  interferenceMm: number;
  roomC: number;
  boss: Pick<Material, 'expansionPerK' | 'heatUpToC'>;
  bush: Pick<Material, 'contractionPerK'>;
}): ShrinkPlan {
  const { interfaceMm, interferenceMm, roomC, boss, bush } = of;
  const entryClearanceMm = ENTRY_CLEARANCE_SHARE.value * interfaceMm;
  const heatToC = roomC + temperatureChangeK({ ...of, entryClearanceMm, expansionPerK: boss.expansionPerK });
  const freezeToC = roomC - temperatureChangeK({ ...of, entryClearanceMm, expansionPerK: bush.contractionPerK });
  const freezeWith = COLDS.find((cold) => COLD[cold].value <= freezeToC) ?? null;
  const both = COLDS.map((cold) => {
    const coldC = COLD[cold].value;
    const shrunkMm = bush.contractionPerK * interfaceMm * (roomC - coldC);
    const leftMm = Math.max(0, interferenceMm + entryClearanceMm - shrunkMm);
    const heat = roomC + leftMm / (boss.expansionPerK * interfaceMm);
    return { cold, coldC, heatToC: heat, heatNeeded: leftMm > 0, heatTooHot: heat > boss.heatUpToC };
  });
  const heatTooHot = heatToC > boss.heatUpToC;
  return { entryClearanceMm, heatToC, heatTooHot, freezeWith, freezeToC: freezeWith && freezeToC, both };
}
