import { dirname, join } from 'node:path';
import { zConfirmedPlaces } from '../contract/keptBeside.ts';
import type { Caution, Refusal } from '../outcome.ts';
import { readKeptFile, writeKeptFile } from '../record/keptFile.ts';
import { mendingFiles } from '../record/recordFault.ts';
import type { OpenRecord } from '../record/recordFile.ts';
import { type RecordPlace, recordPlace } from '../record/recordPlace.ts';
import type { Context } from './context.ts';

type Warning = Required<Caution>;

const fileOf = (context: Context): string => join(context.dataFolder, 'places.json');
const confirmed = (context: Context) => zConfirmedPlaces.safeParse(readKeptFile(fileOf(context))).data ?? {};

export function confirmPlace(context: Context, recordPath: string, synced: boolean): void {
  const file = fileOf(context);
  mendingFiles(file, () => writeKeptFile(file, { ...confirmed(context), [dirname(recordPath)]: synced }));
}

/** What endangers the open record. */
export function warningsOf(context: Context): Warning[] {
  const { record, backups } = context;
  if (!record) return [];
  return [
    ...placeWarnings(context, record),
    ...(record.readOnly ? [{ code: 'record-read-only', facts: { file: record.path } }] : []),
    ...of('backup-failed', backups.failed),
    ...of('backup-folder-failed', backups.notAlso),
  ];
}

const of = (code: string, refusal: Refusal | null): Warning[] =>
  refusal ? [{ code, facts: { reason: refusal.code, ...refusal.facts } }] : [];

function placeWarnings(context: Context, record: OpenRecord): Warning[] {
  const { network, sync } = placeOf(record);
  const folder = dirname(record.path);
  const said = confirmed(context)[folder];
  const warnings: Warning[] = [];
  if (network) warnings.push({ code: 'record-on-network', facts: { file: record.path, fileSystem: network } });
  if (said === true) warnings.push({ code: 'record-synced', facts: { folder } });
  if (said === undefined && sync) warnings.push({ code: 'record-may-be-synced', facts: { ...sync } });
  return warnings;
}

/** Looked at once for each opening. */
const places = new WeakMap<OpenRecord, RecordPlace>();
function placeOf(record: OpenRecord): RecordPlace {
  const place = places.get(record) ?? recordPlace(record.path);
  places.set(record, place);
  return place;
}
