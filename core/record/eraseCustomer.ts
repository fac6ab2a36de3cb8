import { eq } from 'drizzle-orm';
import { assertInvariant } from '../outcome.ts';
import { DERIVED_TABLES, tablesOnRecord } from './allRows.ts';
import { bulk } from './bulk.ts';
import { NOW_KNOWN, standing } from './counting.ts';
import { customersKnown, detailsEverOf } from './customerStore.ts';
import { insertInto } from './insertInto.ts';
import { blankedOf, blankedWithin, type NamedBy } from './namedPerson.ts';
import { CUSTOMER_TABLES, PERSONAL_TEXTS } from './personalTexts.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { customerErasures } from './schema.ts';

/** A text that names a person, as it stands and as it would read. */
export type NamingText = {
  table: string;
  column: string;
  key: readonly (string | number)[];
  before: string;
  after: string;
};

/** All rows of one person: the survivor first, then those merged into it. */
export function rowsOfPerson(db: ReadableRecord, customerId: number): number[] {
  const known = customersKnown(db);
  const survivor = known.survivorOf(customerId);
  return [survivor, ...[...known.own.keys()].filter((id) => id !== survivor && known.survivorOf(id) === survivor)];
}

/** How a person is told of: by everything ever entered of them, and further words. */
export function namedBy(db: ReadableRecord, customerIds: readonly number[], words: readonly string[]): NamedBy {
  const ever = detailsEverOf(db, customerIds);
  const texts = ever.flatMap(({ name, address, email }) => [name, email, address, ...address.split(/\r?\n/)]);
  return { names: texts.filter((text) => text.trim().length > 1), phones: ever.map(({ phone }) => phone), words };
}

/** Every text of the record in which a person may be named. */
function* textsOnRecord(db: ReadableRecord): Generator<Omit<NamingText, 'after'> & { isJson: boolean }> {
  for (const { name: table, key } of tablesOnRecord(db)) {
    for (const text of PERSONAL_TEXTS[table] ?? []) {
      const column = typeof text === 'string' ? text : text.json;
      const keys = key.map((one) => `"${one}"`).join(', ');
      const rows = bulk<[string, ...(string | number)[]]>(
        db,
        `SELECT "${column}", ${keys} FROM "${table}" WHERE "${column}" <> '' ORDER BY ${keys}`,
        {},
      );
      for (const [before, ...rowKey] of rows)
        yield { table, column, key: rowKey, before, isJson: typeof text !== 'string' };
    }
  }
}

/** Their rows are about one customer and nothing else: what was said with them, and what they asked for. */
export const SAID_TABLES = ['contacts', 'contact_terms', 'quiet_periods'] as readonly string[];

/**
 * Every text of the record that names the person. Slips made for them lose name and place besides, and what was said with
 * them goes whole.
 */
export function namingTexts(db: ReadableRecord, customerIds: readonly number[], by: NamedBy): NamingText[] {
  const blanked = blankedOf(by);
  const own = new Map(['slips', ...SAID_TABLES].map((table) => [table, rowsOf(db, table, customerIds)]));
  return [...textsOnRecord(db)].flatMap(({ isJson, ...text }) => {
    const { table, key, before } = text;
    const isOwn = own.get(table)?.has(Number(key[0])) ?? false;
    const said = isOwn && SAID_TABLES.includes(table);
    const after = said ? '' : isJson ? jsonBlanked(before, blanked, isOwn) : blanked(before);
    return after === before ? [] : [{ ...text, after }];
  });
}

const rowsOf = (db: ReadableRecord, table: string, customerIds: readonly number[]): Set<number> =>
  new Set(
    bulk<[number]>(db, `SELECT id FROM ${table} WHERE customer_id IN (SELECT value FROM json_each(@ids))`, {
      ids: JSON.stringify(customerIds),
    }).map(([id]) => id),
  );

function jsonBlanked(text: string, blanked: (text: string) => string, ownSlip: boolean): string {
  const value: unknown = JSON.parse(text);
  const within = blankedWithin(value, blanked);
  const now = ownSlip && typeof within === 'object' ? { ...within, customer: { name: '', place: '' } } : within;
  const same = JSON.stringify(now) === JSON.stringify(value);
  return same ? text : JSON.stringify(now);
}

/**
 * Blanks a person's rows and every text that names them, part of one entry. Machines, sizes, hours and days stay as they
 * are, and whatever refers to the person goes on referring to a row without a name.
 *
 * @returns how many texts were blanked
 */
export function eraseCustomer(
  w: WritableRecord,
  entryId: number,
  customerIds: readonly number[],
  words: readonly string[],
): number {
  w.sqlite.pragma('secure_delete = ON'); // what is blanked is not left in the file's free room
  const naming = namingTexts(w, customerIds, namedBy(w, customerIds, words));
  const rows = customerIds.map((customerId) =>
    insertInto(w, customerErasures, { entryId, customerId, texts: 0, done: false }),
  );
  const ids = JSON.stringify(customerIds);
  for (const table of CUSTOMER_TABLES) {
    const own = table === 'customers' ? 'id' : 'customer_id';
    w.sqlite
      .prepare(
        `UPDATE ${table} SET name = '', place = '', address = '', phone = '', email = ''
         WHERE ${own} IN (SELECT value FROM json_each(?))`,
      )
      .run(ids);
  }
  whileTextsMayChange(w, () => {
    for (const text of naming) blank(w, text);
    // how far a farm lies says where it is
    w.sqlite
      .prepare(
        `UPDATE contact_terms SET distance_km = NULL, drive_minutes = NULL
         WHERE customer_id IN (SELECT value FROM json_each(?))`,
      )
      .run(ids);
  });
  // they repeat names and findings, and are worked out again
  for (const table of DERIVED_TABLES) w.sqlite.prepare(`DELETE FROM "${table}"`).run();
  for (const id of rows) {
    const done = w.write
      .update(customerErasures)
      .set({ done: true, texts: naming.length })
      .where(eq(customerErasures.id, id))
      .run();
    assertInvariant(done.changes === 1, 'an erasure begun is ended');
  }
  return naming.length;
}

/**
 * Rows of later tables, and entries, stay as written whoever asks. While a customer is erased their triggers are lifted, in the
 * same transaction, and put back letter for letter: nothing else of a record ever changes them.
 */
export function whileTextsMayChange(w: WritableRecord, change: () => void): void {
  const lifted = bulk<[name: string, sql: string]>(
    w,
    `SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' AND sql LIKE '%BEFORE UPDATE%'
       AND sql NOT LIKE '%customer_erasures%' AND tbl_name IN (SELECT value FROM json_each(@tables)) ORDER BY name`,
    { tables: JSON.stringify(Object.keys(PERSONAL_TEXTS)) },
  );
  for (const [name] of lifted) w.sqlite.exec(`DROP TRIGGER "${name}"`);
  change();
  for (const [, sql] of lifted) w.sqlite.exec(sql);
}

function blank(w: WritableRecord, { table, column, key, after }: NamingText): void {
  const shape = tablesOnRecord(w).find(({ name }) => name === table);
  assertInvariant(shape, `${table} is a table of the record`);
  const where = shape.key.map((name) => `"${name}" = ?`).join(' AND ');
  const text = table === 'machines' && column === 'name' ? freeMachineName(w, after, Number(key[0])) : after;
  const done = w.sqlite.prepare(`UPDATE "${table}" SET "${column}" = ? WHERE ${where}`).run(text, ...key);
  assertInvariant(done.changes === 1, `one text of ${table} was blanked`);
}

/** Machines are told apart by their names: one that another has by now gets its number behind it. */
function freeMachineName(db: ReadableRecord, name: string, machineId: number): string {
  const taken = bulk(
    db,
    `SELECT 1 FROM machines m WHERE m.id <> @machineId AND m.name = @name COLLATE NOCASE AND ${standing('m')}`,
    { machineId, name, knownAt: NOW_KNOWN },
  );
  return taken.length > 0 ? `${name} ${machineId}` : name;
}

/** Words of the names that stand alone in texts, written as in the name: whether they mean the person, a person must say. */
export function namesStandingAlone(db: ReadableRecord, customerIds: readonly number[], by: NamedBy): string[] {
  const parts = new Set(
    detailsEverOf(db, customerIds)
      .flatMap(({ name }) => name.split(/[^\p{L}\p{N}]+/u))
      .filter((word) => word.length > 2),
  );
  const blanked = blankedOf(by);
  const left = [...textsOnRecord(db)].map(({ before, isJson }) =>
    isJson ? jsonBlanked(before, blanked, false) : blanked(before),
  );
  return [...parts].filter((word) => {
    const without = blankedOf({ names: [], phones: [], words: [word] });
    return left.some((text) => without(text) !== text);
  });
}

/** When a customer's data were erased, by whom. */
export const erasuresOf = (db: ReadableRecord): Map<number, { madeAt: string; madeBy: string; texts: number }> =>
  new Map(
    bulk<[number, string, string, number]>(
      db,
      `SELECT x.customer_id, e.made_at, e.made_by, x.texts FROM customer_erasures x JOIN entries e ON e.id = x.entry_id
       ORDER BY x.id`,
      {},
    ).map(([customerId, madeAt, madeBy, texts]) => [customerId, { madeAt, madeBy, texts }]),
  );

/**
 * Writes the record file anew, without the room where blanked texts stood, and folds the log in.
 * @returns false: there was no room on the disk for it, or another program reads
 */
export function writeAnew({ sqlite }: ReadableRecord): boolean {
  try {
    sqlite.exec('VACUUM');
    const [folded] = sqlite.pragma('wal_checkpoint(TRUNCATE)') as { busy: number }[];
    return folded?.busy === 0;
  } catch {
    return false;
  }
}
