import { tmpdir } from 'node:os';
import { day } from '#core/units/day.ts';
import { type Context, openContext, openInto, recordOf } from '#core/use-cases/context.ts';
import { shopLearning } from '#core/use-cases/learning/shopLearning.ts';
import { layDownShop } from '#core/use-cases/newShop.ts';
import { aFolder, brought, MADE_AT } from '#tests/support/aRecord.ts';
import { forecastCoarsely } from '#tests/support/coarseForecasts.ts';

export const LOADER_DAY = day('2026-11-09');

/** Two loaders brought in from files, open in a context: enough for views and slips, quick to learn from. Invented. */
export function aLoaderShop(more: Record<string, string> = {}): Context {
  const context = openContext({ recordPath: ':memory:', asOf: LOADER_DAY, dataFolder: tmpdir() });
  const record = context.record ?? openInto(context, ':memory:', true);
  layDownShop(record, MADE_AT, { isDemo: false });
  forecastCoarsely(record);
  const account = brought(record, aFolder({ ...LOADER_FILES, ...more }), { asOf: LOADER_DAY });
  if (account.faults.length > 0)
    throw new Error(`Broken invariant: the files are sound: ${JSON.stringify(account.faults)}`);
  return context;
}

/** What the records of such shops keep of what was learned, by what was brought in besides. */
const keptOf = new Map<string, unknown[]>();

/** The same, its classes learned: for the first of a process, and taken from there by all later ones. */
export function aLearnedLoaderShop(more: Record<string, string> = {}): Context {
  const context = aLoaderShop(more);
  const { sqlite } = recordOf(context);
  const kept = keptOf.get(JSON.stringify(more));
  if (kept) for (const row of kept) sqlite.prepare('INSERT INTO learnings VALUES (?, ?, ?)').run(row);
  shopLearning(context, LOADER_DAY);
  keptOf.set(JSON.stringify(more), sqlite.prepare('SELECT key, fingerprint, learning FROM learnings').raw().all());
  return context;
}

/** What the meters of the two loaders showed; one was renewed. Also of the records kept of every version. */
export const LOADER_HOURS = `machine,date,dial_hours,event,new_dial_hours,hours_error
Vessel 118,2020-11-01,0,reading,,
Vessel 118,2023-11-01,2400,reading,,
Vessel 118,2025-06-01,3700,new-meter,0,
Vessel 118,2026-11-01,1100,reading,,
Vessel 96,2019-11-01,200,reading,,
Vessel 96,2026-10-20,5200,reading,,
`;

export const LOADER_FILES = {
  'machines.csv': `machine,customer,make,model,serial,built_year,meter_digits,hours_before,work_share
Vessel 118,Hollin Top,Harrod,V118,V118-2207,2020,5,,1
Vessel 96,Low Scarth,Harrod,V96,V96-0031,2018,5,,1
`,
  'hours.csv': LOADER_HOURS,
  'points.csv': `machine,assembly,position,point,part_class,safety,wears,new_size_mm,new_size_tol_mm,renew_at_mm,reject_at_mm,limit_source,gauge_error_mm,fitted_machine_hours
Vessel 118,Front loader,"Boom foot pin, left",diameter,Greased pin,no,down,40.0,0.1,39.0,38.5,shop's rule,0.03,0
Vessel 118,Front loader,"Boom foot pin, right",diameter,Greased pin,no,down,40.0,0.1,39.0,38.5,shop's rule,0.03,0
Vessel 118,Front loader,"Hook, left",seat,Loader hook,yes,down,30.0,0.2,27.0,26.0,shop's rule,0.1,0
Vessel 96,Front loader,"Boom foot pin, left",diameter,Greased pin,no,down,40.0,0.1,39.0,38.5,shop's rule,0.03,0
`,
  'sizes.csv': `machine,assembly,position,point,station,date,dial_hours,size_mm,event,gauge_error_mm
Vessel 118,Front loader,"Boom foot pin, left",diameter,,2023-11-01,2400,39.70,as-found,
Vessel 118,Front loader,"Boom foot pin, left",diameter,,2026-11-01,1100,39.35,as-found,
Vessel 118,Front loader,"Boom foot pin, right",diameter,,2026-11-01,1100,38.80,as-found,
Vessel 118,Front loader,"Boom foot pin, right",diameter,,2026-11-01,1100,40.00,renewed,
Vessel 118,Front loader,"Hook, left",seat,,2026-11-01,1100,29.20,as-found,
Vessel 96,Front loader,"Boom foot pin, left",diameter,,2026-10-20,5200,39.10,as-found,
`,
  'classes.csv': `part_class,wear_from_mm,wear_to_mm,hours_from,hours_to
Greased pin,0.5,1.5,4000,6000
Loader hook,1,3,5000,8000
`,
};

/** A crack in the hook of the first loader. */
export const HOOK_CRACKED = {
  'findings.csv': `machine,assembly,position,date,finding,severity,note,closed_date,outcome
Vessel 118,Front loader,"Hook, left",2026-11-01,crack,do-not-use,At weld toe 34 mm,,
`,
};
