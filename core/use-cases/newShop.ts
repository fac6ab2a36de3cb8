import type { z } from 'zod';
import type { zGauge, zShopSettings } from '../contract/shop.ts';
import { GRASS_AND_TILLAGE } from '../reading/season.ts';
import { insertAbout } from '../record/aboutStore.ts';
import { addKnowledge, ensureClass } from '../record/classStore.ts';
import { writeEntry } from '../record/entry.ts';
import { saveGauge } from '../record/gaugeStore.ts';
import { saveKind } from '../record/kindStore.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import { saveSettings } from '../record/settingsStore.ts';
import { builtInAssemblyKinds } from '../shop/assemblyKinds.ts';
import type { PartClass } from '../shop/partClass.ts';

/** What a new shop starts with; common practice, no source. Everything here can be changed by the shop. */
const SETTINGS: z.infer<typeof zShopSettings> = {
  name: '',
  headLines: [],
  phone: '',
  email: '',
  winterFrom: '11-01',
  winterTo: '02-28',
  winterHoursPerWeek: 60,
  decimalMark: '.',
  season: [...GRASS_AND_TILLAGE],
  hoursPerYearDefault: 600,
  greaseAndWatch: [
    'Grease every pin and slide each working day, until clean grease shows.',
    'Read the hour meter on the first of each month and note it.',
    'Stop and ring us if anything knocks, sticks or will not lock.',
  ],
  theme: 'system',
  lengths: 'mm',
};

type NewGauge = Omit<z.infer<typeof zGauge>, 'gaugeId' | 'active'>;

/** U is the expanded uncertainty (about 95 %) on a worn, cleaned part in a shop; common practice, no source. */
const gauge = (name: string, uMm: number, stepMm: number, measures: NewGauge['measures']): NewGauge => ({
  name,
  errorMm: uMm / 2,
  stepMm,
  measures,
});

const GAUGES: readonly NewGauge[] = [
  gauge('Outside micrometer', 0.02, 0.01, ['thickness', 'diameter']),
  gauge('Vernier calliper', 0.1, 0.05, ['thickness', 'section']),
  gauge('Vernier on a pin', 0.05, 0.02, ['diameter']),
  gauge('Vernier calliper, inside jaws', 0.15, 0.05, ['bore']),
  gauge('Three-jaw micrometer, round bores', 0.01, 0.005, ['bore']),
  gauge('Two-point bore gauge', 0.02, 0.01, ['bore']),
  gauge('Telescopic gauge and micrometer', 0.06, 0.01, ['bore']),
  gauge('Feeler gauge', 0.1, 0.05, ['slack']),
  gauge('Dial gauge and bar', 0.05, 0.01, ['slack']),
  gauge('Template and depth gauge', 0.3, 0.1, ['depth', 'section']),
];

/** What the trade says of the classes the built-in kinds name; common practice, no source. The rest start from the wide prior. */
const CLASSES: readonly PartClass[] = [
  {
    name: 'Nylon slide strip',
    tradeWear: { wearFromMm: 2, wearToMm: 3, hoursFrom: 5000, hoursTo: 6000, source: 'common practice' },
    newSizeTolMm: 0.2,
  },
];

/** Lays down a new shop in an empty record: its settings, gauges, assembly kinds and the classes they name. */
export function layDownShop(record: ReadableRecord, madeAt: string, about: { isDemo: boolean }): void {
  writeEntry(record, { madeAt, madeBy: 'program', what: 'record/startEmpty' }, (w, entryId) => {
    insertAbout(w, { isDemo: about.isDemo, startedAt: madeAt });
    saveSettings(w, entryId, SETTINGS);
    for (const one of GAUGES) saveGauge(w, null, { ...one, active: true });
    for (const kind of builtInAssemblyKinds) saveKind(w, null, { name: kind.name, template: kind });
    const named = builtInAssemblyKinds.flatMap(({ positions }) => positions.flatMap(({ points }) => points));
    for (const { partClass } of named) ensureClass(w, entryId, partClass);
    for (const known of CLASSES) addKnowledge(w, entryId, ensureClass(w, entryId, known.name), known);
  });
}
