/**
 * Who may import whom: the house's order as data. A layer is the folder or file a path begins with, the first that fits.
 * Among the imports "x" is another layer, "type x" its types only, "x/y.ts" one file of it; a layer may always import
 * itself. Packages are named apart, "type zod" for its types only; "node:" stands for all of Node's own modules.
 */
export type Layer = { at: string; imports: readonly string[]; packages: readonly string[] };

/** From what a reading is to what the farmer is told: each step knows the ones before it. */
const GROUND = ['core/outcome.ts', 'core/units'] as const;
const TO_SERIES = [...GROUND, 'core/maths', 'core/shop', 'core/reading', 'core/series'] as const;
const TO_FORECAST = [...TO_SERIES, 'core/fit', 'core/forecast'] as const;

export const LAYERS: readonly Layer[] = [
  { at: 'core/outcome.ts', imports: [], packages: [] },
  { at: 'core/units', imports: ['core/outcome.ts'], packages: [] },
  { at: 'core/words', imports: GROUND, packages: [] },
  { at: 'core/maths', imports: GROUND, packages: [] },
  { at: 'core/shop', imports: [...GROUND, 'core/maths'], packages: [] },
  { at: 'core/reading', imports: [...GROUND, 'core/shop'], packages: [] },
  { at: 'core/series', imports: [...GROUND, 'core/shop', 'core/reading'], packages: [] },
  { at: 'core/fit', imports: TO_SERIES, packages: [] },
  { at: 'core/iso286', imports: [...GROUND, 'core/maths'], packages: [] },
  { at: 'core/forecast', imports: [...TO_SERIES, 'core/fit'], packages: [] },
  { at: 'core/check', imports: TO_FORECAST, packages: [] },
  { at: 'core/plan', imports: TO_FORECAST, packages: ['highs'] },
  { at: 'core/repair', imports: [...TO_FORECAST, 'core/iso286', 'core/plan'], packages: [] },
  {
    at: 'core/slip',
    imports: [
      ...TO_FORECAST.filter((layer) => layer !== 'core/maths'),
      'core/plan',
      'core/repair',
      'type core/contract',
    ],
    packages: [],
  },
  {
    at: 'core/way',
    imports: [...TO_FORECAST, 'core/check', 'core/plan', 'core/repair', 'core/slip', 'type core/contract'],
    packages: ['type zod'],
  },
  {
    at: 'core/way.ts',
    imports: [...TO_FORECAST, 'core/check', 'core/way', 'core/plan', 'core/repair', 'core/slip', 'type core/contract'],
    packages: [],
  },
  { at: 'core/recall', imports: [...GROUND, 'core/shop'], packages: [] },
  // a drawing: shapes from figures, no screen and no paper
  { at: 'core/axis', imports: [...GROUND, 'core/words', 'type core/shop', 'type core/forecast'], packages: [] },
  {
    at: 'core/record',
    imports: [...GROUND, 'core/shop', 'core/reading', 'type core/plan'],
    packages: ['better-sqlite3', 'drizzle-orm', 'drizzle-kit', 'node:'],
  },
  {
    at: 'core/papers',
    imports: [...GROUND, 'core/words', 'core/axis', 'core/slip', 'type core/shop', 'type core/contract'],
    packages: ['@react-pdf/renderer', 'react', 'node:'], // node: to find the fonts beside the program
  },
  {
    at: 'core/exchange',
    imports: [...GROUND, 'core/shop', 'core/reading'],
    packages: ['papaparse', 'fflate', 'read-excel-file', 'write-excel-file', 'ical-generator'],
  },
  {
    at: 'core/use-cases',
    imports: [
      ...TO_FORECAST,
      ...[
        'core/words',
        'core/check',
        'core/iso286',
        'core/plan',
        'core/repair',
        'core/slip',
        'core/recall',
        'core/way',
        'core/way.ts',
        'core/axis',
      ],
      ...['core/record', 'core/papers', 'core/exchange', 'core/contract'],
    ],
    packages: ['type zod', 'node:'], // which of them may touch files is said in pure.test.ts
  },
  { at: 'core/jobs', imports: [...GROUND, 'core/use-cases', 'type core/contract'], packages: ['node:'] },
  {
    at: 'core/contract',
    imports: [
      ...GROUND,
      'type core/shop',
      'type core/forecast',
      'type core/check',
      'type core/plan',
      'type core/repair',
    ],
    packages: ['zod'],
  },
  {
    at: 'core/shells',
    imports: [
      ...GROUND,
      ...['core/words', 'core/contract', 'core/use-cases', 'core/jobs', 'core/exchange'],
      ...['core/record/openRecord.ts', 'core/record/clock.ts'],
    ],
    packages: ['zod', 'node:'],
  },
  // how the program is put together, not a part of it
  { at: 'renderer/vite.config.ts', imports: ['core/shells/page.ts'], packages: ['vite', '@vitejs/plugin-react'] },
  { at: 'electron/vite.main.config.ts', imports: [], packages: ['vite'] },
  { at: 'electron/vite.preload.config.ts', imports: [], packages: ['vite'] },
  { at: 'electron/build.ts', imports: [], packages: ['vite', 'node:'] },
  // runs in the sandbox: types and Electron, or its one file would draw the core into the window
  { at: 'electron/preload.ts', imports: ['type core/contract'], packages: ['electron'] },
  {
    at: 'electron',
    imports: [
      ...['electron/build.ts', 'core/shells', 'core/outcome.ts', 'type core/contract', 'core/record/openRecord.ts'],
      'core/words', // a notice on the desktop says what the window says
      'renderer/words/faultText.ts', // a refusal reads the same in a dialog as on the page
    ],
    packages: ['electron', 'zod', 'node:'],
  },
  {
    at: 'renderer/charts',
    imports: ['renderer', ...GROUND, 'core/words', 'core/axis', 'type core/contract'],
    packages: ['react', 'recharts'],
  },
  {
    at: 'renderer',
    imports: ['renderer/charts', ...GROUND, 'core/words', 'core/axis', 'core/contract'],
    packages: [
      ...[
        'react',
        'react-dom',
        'react-aria-components',
        'wouter',
        'zod',
        '@tanstack/react-query',
        '@tanstack/react-virtual',
        'pdfjs-dist', // draws the slip as it will be printed
      ],
      ...['@fontsource-variable/sofia-sans', '@fontsource-variable/sofia-sans-semi-condensed'],
    ],
  },
  { at: 'demo-data', imports: [...GROUND, 'core/shop'], packages: ['papaparse', 'node:'] },
];
