import { type Sourced, sourced } from '../howKnown.ts';

/** How the two surfaces meet while one is pressed in. */
export const LUBRICATION = ['dry', 'oiled'] as const;
export type Lubrication = (typeof LUBRICATION)[number];

/** From and to: friction is never one figure. */
export const FRICTION: Readonly<Record<Lubrication, Sourced<{ low: number; high: number }>>> = {
  dry: sourced({ low: 0.1, high: 0.15 }, 'published', 'a public engineering page on press fits'),
  oiled: sourced({ low: 0.05, high: 0.08 }, 'published', 'a public engineering page on press fits'),
};

/**
 * Force at the end of pressing in, when the whole length bears.
 *   F = mu pi d L p
 *
 * @param friction mu
 * @returns [N]
 * @source Coulomb friction on the whole cylinder, in any machine-design text
 * @checked tests/reference/press-fit/pressFit.test.ts
 * @example pressForceN({ pressureMpa: 63, interfaceMm: 25, lengthMm: 20, friction: 0.1 }) // 9896
 */
export const pressForceN = (of: {
  pressureMpa: number;
  interfaceMm: number;
  lengthMm: number;
  friction: number;
}): number => of.friction * Math.PI * of.interfaceMm * of.lengthMm * of.pressureMpa;

/**
 * Turning moment the fit carries before it slips.
 *   T = F d / 2
 * @param forceN force that would slide it along, at the same friction [N]
 * @returns [N mm]
 * @source in any machine-design text
 */
export const slipTorqueNmm = (forceN: number, interfaceMm: number): number => (forceN * interfaceMm) / 2;
