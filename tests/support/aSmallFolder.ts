/** One machine with a hitch, read four times and measured twice, as files of a CSV folder. */
export const SMALL_FOLDER = {
  'machines.csv': 'machine,customer\nM1,Hill Farm\n',
  'hours.csv':
    'machine,date,dial_hours\nM1,2023-01-10,2000\nM1,2024-01-10,2600\nM1,2025-01-10,3200\nM1,2026-10-10,4250\n',
  'points.csv':
    'machine,assembly,position,point,part_class,safety,wears,new_size_mm,new_size_tol_mm,renew_at_mm,gauge_error_mm,fitted_machine_hours\n' +
    'M1,Hitch,Strip top,thickness,Nylon slide strip,no,down,12,0.2,9.5,0.05,0\n' +
    'M1,Hitch,Hook,throat,Towing hook and keeper,yes,down,40,0.4,,0.15,0\n',
  'sizes.csv':
    'machine,assembly,position,point,station,date,dial_hours,size_mm,event\n' +
    'M1,Hitch,Strip top,thickness,front,2024-01-10,2600,10.9,as-found\nM1,Hitch,Strip top,thickness,front,2026-10-10,4250,10.2,as-found\n',
};
