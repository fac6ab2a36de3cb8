import { learnShop } from '#core/fit/learnShop.ts';
import { defaultModelSettings } from '#core/fit/modelSettings.ts';
import * as L from './lastReadingOut.ts';

for (const set of [L.belt('belt_A'), L.belt('belt_B'), L.belt('belt_C'), L.slidingMetal(), L.lasers([500], 2000)]) {
  const l = learnShop(set.series, new Map([[set.prior.partClass, set.prior]]), defaultModelSettings);
  console.log(set.title, set.prior);
  for (const n of l.classes[0]!.nodes)
    console.log(
      ' w',
      n.weight.toFixed(3),
      'op',
      n.partScatter.toFixed(3),
      'c',
      n.pathScatter.toFixed(3),
      'g',
      n.power.toFixed(3),
      'om',
      n.machineScatter.toFixed(3),
      'sv',
      n.visitErrorMm.toFixed(3),
      'mu',
      (n.muEta / n.muLambda).toFixed(3),
      (1 / Math.sqrt(n.muLambda)).toFixed(3),
    );
}
