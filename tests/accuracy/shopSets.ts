import type { ClassPrior } from '#core/fit/classPrior.ts';
import { classPrior } from '#core/fit/classPrior.ts';
import { defaultModelSettings } from '#core/fit/modelSettings.ts';
import type { WearReading, WearSeries } from '#core/series/wearSeries.ts';
import { day } from '#core/units/day.ts';
import { aReading, aSeries } from './aSeries.ts';
import { referenceRows } from './csv.ts';

/** A shop's parts with what came of them: never looked at while a setting is chosen. */
export type ShopSet = {
  series: WearSeries[];
  priors: Map<string, ClassPrior>;
  /** present parts to be scored */
  scored: { series: WearSeries; limitWearMm: number; trueHoursAtLimit: number }[];
};

const number = (text: string | undefined): number => Number(text);

/** 45 machines x 8 parts, 1 to 3 visits, no renewals. */
export function workshopH(): ShopSet {
  const rows = referenceRows('simulated-shops/sim_workshop_h.csv');
  const truth = new Map(
    referenceRows('simulated-shops/sim_workshop_h_truth.csv').map((row) => [`${row.machine}/${row.part}`, row]),
  );
  const priors = new Map<string, ClassPrior>();
  const series: WearSeries[] = [];
  const scored: ShopSet['scored'] = [];
  for (const [key, own] of Map.groupBy(rows, (row) => `${row.machine}/${row.part}`)) {
    const first = own[0]!;
    const partClass = first.class!;
    if (!priors.has(partClass))
      priors.set(partClass, {
        partClass,
        hRefHours: number(first.typical_life_h),
        m0: Math.log(number(first.limit_mm)),
        s0: 0.5,
        from: 'trade',
      });
    const one = aSeries({
      pointId: series.length + 1,
      machineId: Number(first.machine!.slice(1)) + 1,
      partClass,
      newSizeSdMm: number(first.new_size_sd_mm),
      readings: own
        .filter((row) => row.hours_since_renewal_h !== '')
        .map((row) =>
          aReading({
            workedHours: number(row.hours_since_renewal_h),
            wearMm: number(row.wear_from_nominal_mm),
            errorSdMm: Math.sqrt(number(row.gauge_sd_mm) ** 2 + number(row.gauge_step_mm) ** 2 / 12),
            visit: `${row.machine}@${row.visit_machine_hours_h}`,
          }),
        ),
    });
    series.push(one);
    const came = truth.get(key)!;
    if (came.within_limit_at_last_visit === '1')
      scored.push({
        series: one,
        limitWearMm: number(first.limit_mm),
        trueHoursAtLimit: number(came.true_hours_at_limit_h),
      });
  }
  return { series, priors, scored };
}

/** 3 classes x 24 parts, 1 to 5 readings, some renewed once. Machines are not told; a part is its own. */
export function workshopA(): ShopSet {
  const rows = referenceRows('simulated-shops/sim_workshop_a.csv');
  const truth = new Map(
    referenceRows('simulated-shops/sim_workshop_a_truth.csv').map((row) => [`${row.part}/${row.series}`, row]),
  );
  const priors = new Map<string, ClassPrior>();
  const series: WearSeries[] = [];
  const scored: ShopSet['scored'] = [];
  for (const [key, own] of Map.groupBy(rows, (row) => `${row.part}/${row.series}`)) {
    const first = own[0]!;
    const partClass = first.class!;
    const came = truth.get(key)!;
    priors.set(partClass, {
      partClass,
      hRefHours: number(first.typical_life_h),
      m0: Math.log(number(first.limit_mm)),
      s0: 0.5,
      from: 'trade',
    });
    const one = aSeries({
      pointId: number(first.part),
      ordinal: number(first.series) - 1,
      machineId: number(first.part),
      partClass,
      newSizeSdMm: number(first.new_size_sd_mm),
      present: came.current === '1',
      readings: own.map((row) =>
        aReading({
          workedHours: number(row.hours_since_renewal_h),
          wearMm: number(row.wear_from_nominal_mm),
          errorSdMm: Math.sqrt(number(row.gauge_sd_mm) ** 2 + number(row.gauge_step_mm) ** 2 / 12),
          visit: `${row.part}/${row.series}@${row.hours_since_renewal_h}`,
        }),
      ),
    });
    series.push(one);
    if (one.present && one.readings.at(-1)!.wearMm < number(first.limit_mm))
      scored.push({
        series: one,
        limitWearMm: number(first.limit_mm),
        trueHoursAtLimit: number(came.true_hours_at_limit_h),
      });
  }
  return { series, priors, scored };
}

/** A shop cut into small ones of a few machines each. */
export function inSmallShops(set: ShopSet, machines: number): ShopSet[] {
  const ids = [...new Set(set.series.map((one) => one.machineId))];
  return Array.from({ length: Math.ceil(ids.length / machines) }, (_, k) => {
    const own = new Set(ids.slice(k * machines, (k + 1) * machines));
    return {
      series: set.series.filter((one) => own.has(one.machineId)),
      priors: set.priors,
      scored: set.scored.filter((one) => own.has(one.series.machineId)),
    };
  });
}

/** 60 machines, 480 positions, renewals, parts never read; as of 2026-06-30. */
export function shopH(): ShopSet {
  const file = (name: string) => referenceRows(`simulated-shops/shop-h/${name}.csv`);
  const sizes = Map.groupBy(file('sizes'), (row) => `${row.machine}/${row.position}`);
  const truth = new Map(file('truth').map((row) => [`${row.machine}/${row.position}`, row]));
  const priors = new Map(
    file('classes').map((row) => {
      const tradeWear = {
        wearFromMm: number(row.wear_from_mm),
        wearToMm: number(row.wear_to_mm),
        hoursFrom: number(row.hours_from),
        hoursTo: number(row.hours_to),
        source: 'made up',
      };
      const prior = classPrior({ name: row.part_class!, tradeWear, newSizeTolMm: null }, null, defaultModelSettings);
      return [row.part_class!, prior] as const;
    }),
  );
  const series: WearSeries[] = [];
  const scored: ShopSet['scored'] = [];
  for (const [k, point] of file('points').entries()) {
    const key = `${point.machine}/${point.position}`;
    const newSizeMm = number(point.new_size_mm);
    const sign = point.wears === 'down' ? 1 : -1;
    const lives: { fittedHours: number; readings: WearReading[] }[] = [
      { fittedHours: number(point.fitted_machine_hours), readings: [] },
    ];
    for (const row of sizes.get(key) ?? []) {
      const life = lives[lives.length - 1]!;
      if (row.event === 'renewed') lives.push({ fittedHours: number(row.dial_hours), readings: [] });
      else
        life.readings.push(
          aReading({
            workedHours: number(row.dial_hours) - life.fittedHours,
            wearMm: sign * (newSizeMm - number(row.size_mm)),
            errorSdMm: number(point.gauge_error_mm),
            visit: `${row.machine}@${row.date}`,
            takenOn: day(row.date!),
          }),
        );
    }
    const all = lives.map((life, ordinal) =>
      aSeries({
        pointId: k + 1,
        ordinal,
        machineId: Number(point.machine!.slice(1)) + 1,
        partClass: point.part_class!,
        newSizeSdMm: number(point.new_size_tol_mm) / 4,
        present: ordinal === lives.length - 1,
        readings: life.readings,
      }),
    );
    series.push(...all);
    const came = truth.get(key)!;
    scored.push({
      series: all[all.length - 1]!,
      limitWearMm: sign * (newSizeMm - number(point.renew_at_mm)),
      trueHoursAtLimit: number(came.true_machine_hours_at_limit) - lives[lives.length - 1]!.fittedHours,
    });
  }
  return { series, priors, scored };
}
