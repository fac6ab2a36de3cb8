import { USUAL_JOB_HOURS } from '../reading/useRate.ts';
import {
  ratesAbout,
  SD_LN_RATE_OF_MACHINES,
  type SeasonBranch,
  type ShopUse,
  sdLnRateOf,
  seasonsOfShop,
  type UseOfYear,
  useOfBranches,
} from './useOfYear.ts';

/**
 * The use of a machine that another pulls: the puller's, a share of it.
 *   ln rate = ln share + the puller's,  var = the puller's + e^2;   jobs are as much shorter
 * In each season the puller may keep its rates are taken as normal in their logarithm.
 *
 * @param puller use of the machine that pulls it
 * @param share of the puller's hours, > 0
 * @param errorShare e: 1 sd of one year's share, as a part of it
 * @param sdLnRateOfShop what the shop's machines differ by: how much of the use is its own is told by it
 * @source own derivation: product of two lognormal quantities
 * @checked core/forecast/useWithoutMeter.test.ts
 */
export function useOfPulled(
  puller: UseOfYear,
  share: number,
  errorShare: number,
  sdLnRateOfShop: number = SD_LN_RATE_OF_MACHINES,
): UseOfYear {
  const branches = puller.branches.map(({ season, weight, rates }): SeasonBranch => {
    const mean = rates.reduce((sum, node) => sum + node.weight * node.lnHoursPerDay, 0);
    const variance = rates.reduce((sum, node) => sum + node.weight * (node.lnHoursPerDay - mean) ** 2, 0);
    return { season, weight, rates: ratesAbout(mean + Math.log(share), Math.sqrt(variance + errorShare ** 2)) };
  });
  return useOfBranches(branches, share * (puller.rate.jobHours ?? USUAL_JOB_HOURS), sdLnRateOfShop, puller.stretches);
}

/**
 * The use of a machine of which somebody reckons so many hours a year; the season is the shop's.
 *
 * @param hoursPerYear as reckoned [h a year], > 0
 * @param errorShare 1 sd of a year's hours, as a part of them
 * @source own derivation: a lognormal rate about what is reckoned
 * @checked core/forecast/useWithoutMeter.test.ts
 */
export function useReckoned(hoursPerYear: number, errorShare: number, shop: ShopUse): UseOfYear {
  const rates = ratesAbout(Math.log(hoursPerYear / DAYS_A_YEAR), errorShare);
  const branches = seasonsOfShop(shop).map(({ season, chance }): SeasonBranch => ({ season, weight: chance, rates }));
  return useOfBranches(branches, shop.jobHours ?? USUAL_JOB_HOURS, sdLnRateOf(shop), 0);
}

const DAYS_A_YEAR = 365;
