import type { ShopLearning } from '../fit/learnShop.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { datesNotReliable } from '../forecast/dateAtLimit.ts';
import type { PartForecast } from '../forecast/forecastPart.ts';
import {
  classOffCoverage,
  fromTradePrior,
  longExtrapolation,
  measuredWhenWorn,
  tooSmallToSee,
} from '../forecast/guards.ts';
import { shapeDoubt } from '../forecast/shapeDoubt.ts';
import type { Caution } from '../outcome.ts';
import type { PartSeries } from '../series/partSeries.ts';
import type { ClassCoverage } from './classCoverage.ts';
import type { ClassLooks } from './classLooks.ts';
import { widens } from './lawsAsSaid.ts';
import type { MachineHoursAndUse } from './shopHours.ts';

export type CautionsFrom = {
  series: PartSeries;
  law: PartLaw;
  /** null: the machine has no hours on record */
  part: PartForecast | null;
  machine: MachineHoursAndUse | undefined;
  settings: ModelSettings;
  pool: ShopLearning;
  coverage: readonly ClassCoverage[];
  looks: readonly ClassLooks[];
};

/** What to say beside one point's forecast, as codes with facts: of its hours, its sizes, its class and its reach. */
export const pointCautions = (from: CautionsFrom): Caution[] => [
  ...(from.machine?.line.cautions ?? []),
  ...datesCautions(from),
  ...from.series.cautions,
  ...(from.series.workedHoursNow === null ? [{ code: 'no-hours' }] : []),
  ...sizeCautions(from),
  ...limitCautions(from),
  ...classCautions(from),
];

function sizeCautions({ series: { ownReadings, present } }: CautionsFrom): Caution[] {
  const last = present.readings.at(-1);
  const small = last && tooSmallToSee({ ownReadings, ...last, newSizeSdMm: present.newSizeSdMm });
  return small ? [small] : [];
}

/** Only where there are dates to doubt. */
function datesCautions({ machine, part }: CautionsFrom): Caution[] {
  const doubt = machine && part?.hoursAtLimit ? datesNotReliable(machine.line) : null;
  return doubt ? [doubt] : [];
}

function limitCautions({ series, part, law, settings }: CautionsFrom): Caution[] {
  if (series.limits.renewAtMm === null) return [{ code: 'no-limit' }];
  const limit = part?.hoursAtLimit;
  if (!limit || series.renewAtWearMm === null) return [];
  const beyond = limit.low === null || limit.middle === null || limit.high === null;
  const far = longExtrapolation(
    {
      ownReadings: series.ownReadings,
      doubtShare: shapeDoubt(law, series.renewAtWearMm, settings),
      lastWorkedHours: series.lastSize?.workedHours ?? 0,
      hoursAtLimit: limit.middle,
    },
    settings,
  );
  const reach = far && !limit.pastAtLastSize ? [far] : [];
  return beyond
    ? [...reach, { code: 'hours-beyond', facts: { workedHours: settings.beyondHRefs * law.hRefHours } }]
    : reach;
}

function classCautions({ series, pool, coverage, looks, settings }: CautionsFrom): Caution[] {
  const learned = pool.classes.find((one) => one.partClass === series.present.partClass);
  const thin = fromTradePrior(learned?.partsRead ?? 0, learned?.machinesRead ?? 0, learned?.prior.from ?? 'wide');
  const off = classOffCoverage(
    coverage.find((one) => one.partClass === series.present.partClass),
    widens(settings),
    settings,
  );
  const worn = measuredWhenWorn(
    looks.find((one) => one.partClass === series.present.partClass),
    settings,
  );
  return [thin, off, worn].filter((caution) => caution !== null);
}
