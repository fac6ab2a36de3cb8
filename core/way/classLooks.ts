import type { ModelSettings } from '../fit/modelSettings.ts';
import { wornWhenMeasured } from '../forecast/guards.ts';
import type { WearSeries } from '../series/wearSeries.ts';
import { settingsOf } from './settingsOf.ts';
import type { ShopSeries } from './shopSeries.ts';

/** How parts of a class came to be measured. Plain data. */
export type ClassLooks = {
  partClass: string;
  /** renewed parts whose only size was taken then, when they were worn */
  whenWorn: number;
  /** parts measured on the way: two sizes and more, which show how wear goes on */
  onTheWay: number;
};

/** @param limitWearMm wear at its limit [mm]; null: none is set */
export function howLookedAt(
  part: WearSeries,
  limitWearMm: number | null,
  settings: Pick<ModelSettings, 'wornShare'>,
): 'whenWorn' | 'onTheWay' | null {
  const sizes = part.readings.filter(({ workedHours }) => workedHours > 0);
  if (sizes.length > 1) return 'onTheWay';
  const only = sizes[0];
  return only && !part.present && wornWhenMeasured(only.wearMm, limitWearMm, settings) ? 'whenWorn' : null;
}

/** Lives of each class by how they were looked at; those measured once in mid-life, or never, show nothing of it either way. */
export function classLooks({ life, ofPoint }: Pick<ShopSeries, 'life' | 'ofPoint'>): ClassLooks[] {
  const found = new Map<string, ClassLooks>();
  const settings = settingsOf(life);
  for (const point of life.points) {
    const { finished, present, renewAtWearMm } = ofPoint(point);
    const looks = found.get(point.partClass) ?? { partClass: point.partClass, whenWorn: 0, onTheWay: 0 };
    for (const part of [...finished, present]) {
      const how = howLookedAt(part, renewAtWearMm, settings);
      if (how) looks[how]++;
    }
    found.set(point.partClass, looks);
  }
  return [...found.values()].sort((a, b) => (a.partClass < b.partClass ? -1 : 1));
}
