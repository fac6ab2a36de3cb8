import type { ShopLearning } from '../fit/learnShop.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import type { PartForecast } from '../forecast/forecastPart.ts';
import type { Caution } from '../outcome.ts';
import type { PartSeries } from '../series/partSeries.ts';
import type { MachineHoursAndUse } from './shopHours.ts';

export type CautionsFrom = {
  series: PartSeries;
  law: PartLaw;
  /** null: the machine has no hours on record */
  part: PartForecast | null;
  machine: MachineHoursAndUse | undefined;
  settings: ModelSettings;
  pool: ShopLearning;
};

/** What to say beside one point's forecast, as codes with facts: of its hours, its sizes, its class and its reach. */
export const pointCautions = (from: CautionsFrom): Caution[] => [
  ...(from.machine?.line.cautions ?? []),
  ...from.series.cautions,
  ...(from.series.workedHoursNow === null ? [{ code: 'no-hours' }] : []),
  ...limitCautions(from),
];

function limitCautions({ series, part, law, settings }: CautionsFrom): Caution[] {
  if (series.limits.renewAtMm === null) return [{ code: 'no-limit' }];
  const limit = part?.hoursAtLimit;
  if (!limit || (limit.low !== null && limit.middle !== null && limit.high !== null)) return [];
  return [{ code: 'hours-beyond', facts: { workedHours: settings.beyondHRefs * law.hRefHours } }];
}
