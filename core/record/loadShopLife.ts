import type { ShopLife } from '../shop/shopLife.ts';
import { type BoundMachines, withinOf } from './boundMachines.ts';
import { listClasses } from './classStore.ts';
import { NOW_KNOWN } from './counting.ts';
import { readForecastSettings } from './forecastSettingsStore.ts';
import { listJoints } from './jointStore.ts';
import { loadFindings } from './loadFindings.ts';
import { loadMachines } from './loadMachines.ts';
import { loadPoints, loadSittings } from './loadPoints.ts';
import { loadDials } from './loadVisits.ts';
import type { ReadableRecord } from './recordFile.ts';
import { readSettings } from './settingsStore.ts';

const ALL_DAYS = '9999-12-31';

/** What of a shop's life is asked for. */
export type LifeAsked = {
  /** rows dated up to this day; absent: all */
  asOf?: string;
  /** entries made by this ISO instant, and what superseded them by then; absent: as known now */
  knownAt?: string;
  /** these machines, all they are bound to (boundMachines) and the points that ever sat on them; absent: the whole shop */
  within?: BoundMachines;
};

/** Everything that forecasts rest on, as plain values: one query for each sort of row, never one for each point. */
export function loadShopLife(db: ReadableRecord, asked: LifeAsked = {}): ShopLife {
  const horizon = {
    asOf: asked.asOf ?? ALL_DAYS,
    knownAt: asked.knownAt ?? NOW_KNOWN,
    within: asked.within ? withinOf(asked.within) : null,
  };
  // one transaction: all of it is seen at one moment, even while another program writes
  return db.sqlite.transaction(() => {
    const dials = loadDials(db, horizon);
    const sittings = loadSittings(db, horizon, dials);
    const { season, hoursPerYearDefault, winterFrom, winterTo } = readSettings(db, horizon.knownAt);
    return {
      machines: loadMachines(db, horizon),
      points: loadPoints(db, horizon, sittings, dials),
      findings: loadFindings(db, horizon, sittings),
      joints: listJoints(db, horizon.knownAt, horizon.within),
      partClasses: listClasses(db, horizon.knownAt).map(({ name, tradeWear, newSizeTolMm }) => ({
        name,
        tradeWear,
        newSizeTolMm,
      })),
      season,
      hoursPerYearDefault,
      winterFrom,
      winterTo,
      forecastSettings: readForecastSettings(db, horizon.knownAt),
    };
  })();
}
