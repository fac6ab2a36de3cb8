import type { CellKind, Column } from './columns.ts';
import { folderColumns } from './folderColumns.ts';

/** What the rows of a single sheet can be; each goes in as the CSV file of that name does. */
export const sheetNouns = ['machines', 'hours', 'points', 'sizes', 'findings'] as const;
export type SheetNoun = (typeof sheetNouns)[number];

export const fileOfNoun = (noun: SheetNoun): `${SheetNoun}.csv` => `${noun}.csv`;

/** A column rows of a noun can have. */
export type NounColumn = {
  name: string;
  needed: boolean;
  kind: CellKind<unknown>;
  empty: Column<unknown>['empty'];
  unit: 'mm' | 'h' | null;
  holds: 'text' | 'number' | 'day';
};

const DAYS: readonly string[] = ['date', 'closed_date'];

export const columnsOfNoun = (noun: SheetNoun): NounColumn[] =>
  Object.entries(folderColumns[fileOfNoun(noun)] as Record<string, Column<unknown>>).map(([name, { kind, empty }]) => ({
    name,
    needed: empty === null,
    kind,
    empty,
    unit: kind.number?.unit ?? null,
    holds: kind.number ? 'number' : DAYS.includes(name) ? 'day' : 'text',
  }));

/**
 * Heads that shops write over such columns, in small plain letters (sheetHeads.ts folds them), the same for every noun that
 * has the column. Common practice, no source; German, French and Dutch ones from memory.
 */
export const headAliases: Readonly<Record<string, readonly string[]>> = {
  machine: [
    ...['tractor', 'vehicle', 'unit', 'machine name', 'machine no', 'fleet no', 'fleet number', 'equipment', 'loader'],
    ...['maschine', 'fahrzeug', 'traktor', 'schlepper', 'tracteur', 'engin'],
  ],
  customer: ['farm', 'farmer', 'owner', 'client', 'customer name', 'kunde', 'betrieb', 'besitzer', 'klant'],
  make: ['maker', 'brand', 'manufacturer', 'marke', 'hersteller', 'fabrikat', 'marque', 'merk'],
  model: ['type', 'model no', 'modell', 'typ', 'modele'],
  serial: [
    ...['serial no', 'serial number', 'chassis', 'chassis no', 'vin', 'frame no'],
    ...['seriennummer', 'fahrgestellnummer', 'numero de serie', 'serienummer'],
  ],
  built_year: ['year', 'built', 'year built', 'year of make', 'model year', 'baujahr', 'annee', 'bouwjaar'],
  meter_digits: ['digits', 'meter places', 'stellen'],
  hours_before: ['earlier hours', 'hours before meter', 'old meter hours', 'vorstunden'],
  work_share: ['share', 'share of work', 'working share', 'anteil'],
  date: ['day', 'taken on', 'read on', 'measured on', 'when', 'visit', 'datum', 'tag', 'dato'],
  dial_hours: [
    ...[
      'hours',
      'hrs',
      'dial',
      'meter',
      'hour meter',
      'meter reading',
      'reading',
      'clock',
      'clock hours',
      'engine hours',
    ],
    ...['machine hours', 'hours read', 'betriebsstunden', 'stunden', 'bstd', 'zahlerstand', 'heures', 'compteur'],
    ...['urenstand', 'uren', 'draaiuren'],
  ],
  new_dial_hours: ['new meter', 'new meter hours', 'new dial', 'neuer zahler', 'nouveau compteur'],
  hours_error: ['error', 'plus minus', 'uncertainty', 'fehler'],
  event: ['what', 'kind', 'reading type', 'as', 'state', 'ereignis', 'art'],
  assembly: ['implement', 'hitch', 'group', 'assembly name', 'baugruppe', 'gruppe', 'ensemble'],
  position: [
    'place',
    'location',
    'part',
    'component',
    'where',
    'stelle',
    'teil',
    'ort',
    'piece',
    'plaats',
    'onderdeel',
  ],
  point: ['measuring point', 'measure', 'measurement', 'dimension', 'what measured', 'messpunkt', 'mass', 'cote'],
  part_class: ['class', 'part type', 'sort of part', 'teileklasse', 'klasse'],
  safety: ['safety part', 'towing or lifting', 'critical', 'sicherheit'],
  wears: ['wears way', 'wear direction', 'direction', 'richtung'],
  new_size_mm: ['new', 'nominal', 'size new', 'standard size', 'neumass', 'nennmass', 'cote neuve'],
  new_size_tol_mm: ['tolerance', 'tol', 'new tolerance', 'toleranz'],
  renew_at_mm: ['renew', 'replace at', 'wear limit', 'limit', 'service limit', 'verschleissmass', 'grenzmass'],
  reject_at_mm: ['reject', 'scrap at', 'discard at', 'ausschussmass'],
  limit_source: ['source', 'limit from', 'after', 'quelle', 'limits after'],
  gauge_error_mm: ['measuring error', 'accuracy', 'messfehler'],
  fitted_machine_hours: ['fitted at', 'fitted hours', 'hours when fitted', 'einbaustunden'],
  station: ['end', 'side', 'axis', 'station no', 'messstelle', 'seite'],
  size_mm: ['measured', 'actual', 'value', 'found', 'thickness', 'diameter', 'bore', 'istmass', 'messwert', 'mesure'],
  finding: ['defect', 'fault', 'damage', 'seen', 'befund', 'schaden', 'defaut'],
  severity: ['how bad', 'grade', 'priority', 'schwere', 'gravite'],
  note: [
    'notes',
    'remark',
    'remarks',
    'comment',
    'comments',
    'description',
    'bemerkung',
    'notiz',
    'remarque',
    'opmerking',
  ],
  closed_date: ['closed', 'closed on', 'done on', 'repaired on', 'erledigt', 'erledigt am'],
  outcome: ['result', 'action', 'what was done', 'done', 'ergebnis', 'massnahme'],
};

/** Words that shops write for the ones a column takes; read in small letters, spaces as hyphens. */
export const wordAliases: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  event: {
    found: 'as-found',
    left: 'as-left',
    new: 'renewed',
    renewal: 'renewed',
    replaced: 'renewed',
    read: 'reading',
    estimated: 'estimate',
    'meter-changed': 'new-meter',
    'new-clock': 'new-meter',
    'rolled-over': 'rollover',
  },
  safety: { y: 'yes', true: 'yes', x: 'yes', '1': 'yes', n: 'no', false: 'no', '0': 'no' },
  wears: { smaller: 'down', thinner: 'down', larger: 'up', wider: 'up' },
  finding: { cracked: 'crack', bend: 'bent', break: 'broken', seizure: 'seized', stuck: 'seized', lost: 'missing' },
  severity: { 'do-not-use!': 'do-not-use', stop: 'do-not-use', danger: 'do-not-use' },
};
