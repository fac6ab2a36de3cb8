import { bulk } from './bulk.ts';
import { counting, NOW_KNOWN } from './counting.ts';
import { insertInto } from './insertInto.ts';
import { lastOfChain } from './lastOfChain.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { slideFacts } from './schema.ts';
import { supersede } from './supersede.ts';

/** Lengths and wear of a slide's channel, as kept; null: nothing yet. Who reads it checks it against the contract. */
export const slideFactsOf = (db: ReadableRecord, assemblyId: number): unknown => {
  const [kept] = bulk<[string]>(
    db,
    `SELECT f.facts FROM slide_facts f WHERE f.assembly_id = @assemblyId AND ${counting('slide_facts', 'f')}
     ORDER BY f.id DESC LIMIT 1`,
    { assemblyId, knownAt: NOW_KNOWN },
  );
  return kept ? JSON.parse(kept[0]) : null;
};

/** Keeps facts in the place of those before. */
export const saveSlideFacts = (w: WritableRecord, entryId: number, assemblyId: number, facts: unknown): void => {
  const last = lastOfChain(w, 'slide_facts', { column: 'assembly_id', id: assemblyId });
  if (last === null) insertInto(w, slideFacts, { assemblyId, facts, entryId });
  else supersede(w, slideFacts, last, entryId, { facts, struck: false, reason: '' });
};
