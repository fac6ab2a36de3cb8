import { learnShop } from '#core/fit/learnShop.ts';
import { defaultModelSettings } from '#core/fit/modelSettings.ts';
import * as L from './lastReadingOut.ts';

const set = L.lasers([500], 2000);
learnShop(set.series, new Map([[set.prior.partClass, set.prior]]), defaultModelSettings);
