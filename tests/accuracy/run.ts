import { defaultModelSettings } from '#core/fit/modelSettings.ts';
import { agreementTable, sharingTable } from './tables/agreementTable.ts';
import { calibrationTable } from './tables/calibrationTable.ts';
import { datesTable } from './tables/datesTable.ts';
import { halvingTable } from './tables/halvingTable.ts';
import { readingTable } from './tables/readingTable.ts';
import { renewedTable } from './tables/renewedTable.ts';
import { shopTable } from './tables/shopTable.ts';
import { simulationTable } from './tables/simulationTable.ts';
import { speedTable } from './tables/speedTable.ts';
import { weeksTable } from './tables/weeksTable.ts';
import { wintersTable } from './tables/wintersTable.ts';

/**
 * `npm run accuracy`: how far the forecast can be trusted, in tables. With `-- --full` the counts of the published
 * figures; without it a part of them, in a few minutes. With names (`-- shops speed`) only those tables.
 */
const tables: Record<string, (full: boolean) => void | Promise<void>> = {
  readings: (full) => readingTable(defaultModelSettings, full),
  simulation: (full) => simulationTable(defaultModelSettings, full),
  shops: () => shopTable(defaultModelSettings),
  renewed: (full) => renewedTable(defaultModelSettings, full),
  dates: (full) => datesTable(defaultModelSettings, full),
  calibration: (full) => calibrationTable(defaultModelSettings, full),
  agreement: (full) => agreementTable(full),
  sharing: (full) => sharingTable(full),
  halving: halvingTable,
  weeks: weeksTable,
  winters: wintersTable,
  speed: () => speedTable(defaultModelSettings),
};

const full = process.argv.includes('--full');
const names = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const unknown = names.filter((name) => !(name in tables));
if (unknown.length > 0) {
  console.error(`No table called ${unknown.join(', ')}. There are: ${Object.keys(tables).join(', ')}.`);
  process.exitCode = 1;
} else {
  console.log('Low, middle and high are the 10, 50 and 90 % points: cover should be near 0.80.');
  console.log('Too early costs money (truth above high), too late breaks machines (truth below low).');
  for (const name of names.length > 0 ? names : Object.keys(tables)) await tables[name]!(full);
}
