import { RENEWAL_KINDS } from '../shop/measuringPoint.ts';
import { isoDay, mayBeEmpty, number, oneOf, required, text } from './columns.ts';

/** The files of a CSV folder and their columns: our own format. Lengths are mm, times hours. */

const hours = number({ unit: 'h', least: 0, most: 10_000_000 });
const sizeMm = number({ unit: 'mm', least: 0, most: 10_000 });
const errorMm = number({ unit: 'mm', least: 0, most: 10, aboveLeast: true });
const shimMm = number({ unit: 'mm', least: -1000, most: 1000 });
const aboveZeroMm = number({ unit: 'mm', least: 0, most: 10_000, aboveLeast: true });
const aboveZeroHours = number({ unit: 'h', least: 0, most: 10_000_000, aboveLeast: true });

export const folderColumns = {
  'machines.csv': {
    machine: required(text()),
    customer: mayBeEmpty(text(), ''),
    make: mayBeEmpty(text(), ''),
    model: mayBeEmpty(text(), ''),
    serial: mayBeEmpty(text(), ''),
    built_year: mayBeEmpty(number({ unit: null, least: 1900, most: 2100, whole: true }), null),
    meter_digits: mayBeEmpty(number({ unit: null, least: 3, most: 8, whole: true }), null),
    hours_before: mayBeEmpty(hours, null),
    work_share: mayBeEmpty(number({ unit: null, least: 0, most: 1, aboveLeast: true }), 1),
  },
  'hours.csv': {
    machine: required(text()),
    date: required(isoDay),
    dial_hours: mayBeEmpty(hours, null),
    event: mayBeEmpty(oneOf('reading', 'estimate', 'new-meter', 'rollover'), 'reading' as const),
    new_dial_hours: mayBeEmpty(hours, null),
    hours_error: mayBeEmpty(hours, null),
  },
  'points.csv': {
    machine: required(text()),
    assembly: required(text()),
    position: required(text()),
    point: required(text()),
    part_class: required(text()),
    safety: mayBeEmpty(oneOf('yes', 'no'), 'no' as const),
    wears: required(oneOf('down', 'up')),
    new_size_mm: required(sizeMm),
    new_size_tol_mm: mayBeEmpty(aboveZeroMm, null),
    renew_at_mm: mayBeEmpty(sizeMm, null),
    reject_at_mm: mayBeEmpty(sizeMm, null),
    limit_source: mayBeEmpty(text(2000), null),
    gauge_error_mm: required(errorMm),
    fitted_machine_hours: mayBeEmpty(hours, null),
  },
  'sizes.csv': {
    machine: required(text()),
    assembly: required(text()),
    position: required(text()),
    point: required(text()),
    station: mayBeEmpty(text(40), ''),
    date: required(isoDay),
    dial_hours: mayBeEmpty(hours, null),
    size_mm: mayBeEmpty(sizeMm, null),
    event: required(oneOf('as-found', 'as-left', 'renewed', 'shimmed')),
    gauge_error_mm: mayBeEmpty(errorMm, null),
    /** of what is renewed: what was done; with a station, to that piece alone */
    renewal: mayBeEmpty(oneOf(...RENEWAL_KINDS), 'new-part' as const),
    /** of what is shimmed: packing put in; below 0: taken out */
    shim_mm: mayBeEmpty(shimMm, null),
  },
  'moves.csv': {
    machine: required(text()),
    assembly: required(text()),
    date: required(isoDay),
    dial_hours: mayBeEmpty(hours, null),
    to_machine: mayBeEmpty(text(), null),
    to_dial_hours: mayBeEmpty(hours, null),
  },
  'classes.csv': {
    part_class: required(text()),
    wear_from_mm: required(aboveZeroMm),
    wear_to_mm: required(aboveZeroMm),
    hours_from: required(aboveZeroHours),
    hours_to: required(aboveZeroHours),
  },
  'findings.csv': {
    machine: required(text()),
    assembly: required(text()),
    position: mayBeEmpty(text(), null),
    date: required(isoDay),
    finding: required(oneOf('crack', 'bent', 'broken', 'seized', 'missing', 'other')),
    severity: required(oneOf('watch', 'repair', 'do-not-use')),
    note: mayBeEmpty(text(2000), ''),
    closed_date: mayBeEmpty(isoDay, null),
    outcome: mayBeEmpty(text(2000), null),
  },
};

export type FolderFile = keyof typeof folderColumns;
export const folderFiles = Object.keys(folderColumns) as FolderFile[];
