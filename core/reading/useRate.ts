import type { Day } from '../units/day.ts';
import { EVEN_USE, type Season, seasonDays } from './season.ts';

/** How fast a machine gathers hours: one rate with its doubt, spread over the year by its season. Plain data. */
export type UseRate = {
  /** middle (median) machine hours per average day [h/d] */
  hoursPerDay: number;
  /** 1 sd of the rate's natural logarithm */
  sdLnRate: number;
  season: Season;
  /** hours come in jobs of about this length (phi): the variance of the hours run is this times their mean [h]; absent: the usual */
  jobHours?: number;
};

/** Length of the jobs a machine's hours come in, before the shop's readings speak [h]. Common practice, no source. */
export const USUAL_JOB_HOURS = 40;

/** A tractor in mixed farming, before anything is known of it: 500 h a year, within a factor of 2 in most cases. Common practice, no source. */
export const USUAL_USE: UseRate = { hoursPerDay: 500 / 365, sdLnRate: 0.5, season: EVEN_USE };

export type UseBetween = { hours: number; sdHours: number };

/**
 * Machine hours run between two days at a rate, and their doubt:
 *   H = rho S,   var = phi rho S + (sd_ln H)^2
 *
 * @param use the rate
 * @param from last day known; not counted
 * @param to day asked for; at or before `from` gives 0
 * @returns hours and 1 sd [h]
 * @source own derivation: mean and first-order variance of a gamma count of hours (shape rho S/phi, scale phi) with a lognormal rate
 */
export function useBetween(use: UseRate, from: Day, to: Day): UseBetween {
  const hours = Math.max(0, use.hoursPerDay * seasonDays(use.season, from, to));
  return { hours, sdHours: Math.sqrt((use.jobHours ?? USUAL_JOB_HOURS) * hours + (use.sdLnRate * hours) ** 2) };
}
