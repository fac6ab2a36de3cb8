import { defaultModelSettings } from '#core/fit/modelSettings.ts';
import * as L from './lastReadingOut.ts';
import { scoreReadings } from './scores.ts';

const s = { ...defaultModelSettings, ...JSON.parse(process.argv[2] ?? '{}') };
for (const set of [
  L.liners(0.02),
  L.liners(0.05),
  L.lasers([500, 1250, 2000], 3500),
  L.lasers([500], 2000),
  L.belt('belt_A'),
  L.belt('belt_B'),
  L.belt('belt_C'),
  L.slidingMetal(),
]) {
  const t = performance.now();
  const r = scoreReadings(L.foretell(set, s));
  console.log(
    set.title.padEnd(34),
    'n',
    r.parts,
    'mae',
    r.mae.toFixed(3),
    'cover',
    r.cover.toFixed(2),
    'crps',
    r.crps.toFixed(3),
    'is',
    r.intervalScore.toFixed(2),
    'bias',
    r.bias.toFixed(2),
    'w',
    r.width.toFixed(2),
    (performance.now() - t).toFixed(0) + ' ms',
  );
}
