import { LOADER_HOURS } from '#tests/support/aLoaderShop.ts';
import { aFolder } from '#tests/support/aRecord.ts';

/** What stands in every record of this folder: two loaders with a change of meter, a renewal and a finding. Invented. */
export const aShop = () => aFolder(FILES);
export const AS_OF = '2026-11-09';

const FILES = {
  'machines.csv': `machine,customer,make,model,serial,built_year,meter_digits,hours_before,work_share
Vessel 118,Hollin Top,Harrod,V118,V118-2207,2020,5,,1
Vessel 96,Low Scarth,Harrod,V96,V96-0031,2018,5,,0.8
`,
  'hours.csv': LOADER_HOURS,
  'points.csv': `machine,assembly,position,point,part_class,safety,wears,new_size_mm,new_size_tol_mm,renew_at_mm,reject_at_mm,limit_source,gauge_error_mm,fitted_machine_hours
Vessel 118,Front loader,"Boom foot pin, left",diameter,Greased pin,no,down,40.0,0.1,39.0,38.5,shop's rule,0.03,0
Vessel 118,Front loader,"Hook, left",seat,Loader hook,yes,down,30.0,0.2,27.0,26.0,shop's rule,0.1,0
Vessel 96,Front loader,"Boom foot pin, left",diameter,Greased pin,no,down,40.0,0.1,39.0,38.5,shop's rule,0.03,0
`,
  'sizes.csv': `machine,assembly,position,point,station,date,dial_hours,size_mm,event,gauge_error_mm
Vessel 118,Front loader,"Boom foot pin, left",diameter,,2023-11-01,2400,39.70,as-found,
Vessel 118,Front loader,"Boom foot pin, left",diameter,,2026-11-01,1100,38.80,as-found,
Vessel 118,Front loader,"Boom foot pin, left",diameter,,2026-11-01,1100,40.00,renewed,
Vessel 118,Front loader,"Hook, left",seat,,2026-11-01,1100,29.20,as-found,
Vessel 96,Front loader,"Boom foot pin, left",diameter,,2026-10-20,5200,39.10,as-found,
`,
  'findings.csv': `machine,assembly,position,date,finding,severity,note,closed_date,outcome
Vessel 118,Front loader,"Hook, left",2026-11-01,crack,watch,At weld toe 34 mm,,
`,
};
