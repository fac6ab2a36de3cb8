import { readFileSync } from 'node:fs';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import {
  customerChange,
  customerErase,
  customerErasePreview,
  customerExport,
  customerMerge,
  customerPart,
  customersSheet,
  machineSellOn,
} from '#core/contract/customer.ts';
import { entriesList, entriesUndoLast } from '#core/contract/entries.ts';
import { forecastAll } from '#core/contract/forecast.ts';
import { hoursAdd } from '#core/contract/hours.ts';
import { customersList, machineRead, machinesList, machineTakeIn } from '#core/contract/machine.ts';
import { recordBackUp, recordBringIn } from '#core/contract/record.ts';
import { slipMake, slipRead } from '#core/contract/slip.ts';
import { findingAdd, findingDecline, stripDownKeep, stripDownSave } from '#core/contract/stripDown.ts';
import { filesOfZip } from '#core/exchange/zipFiles.ts';
import { orRefuse } from '#core/outcome.ts';
import { rowsOfTable, tablesOnRecord } from '#core/record/allRows.ts';
import { writePlain } from '#core/record/entry.ts';
import { whileTextsMayChange } from '#core/record/eraseCustomer.ts';
import { ERASED } from '#core/record/namedPerson.ts';
import { CUSTOMER_TABLES, NOT_PERSONAL, PERSONAL_TEXTS } from '#core/record/personalTexts.ts';
import { demoRecord, fillEveryTable } from '#tests/support/aFullRecord.ts';
import { aShopWithAHitch, aSize, aTakeIn } from '#tests/support/aHitch.ts';
import { aProgram, type Program } from '#tests/support/aProgram.ts';
import { pdfPages } from '#tests/support/pdfText.ts';

let program: Program;
let shop: Awaited<ReturnType<typeof aShopWithAHitch>>;
beforeEach(async () => {
  program = aProgram();
  shop = await aShopWithAHitch(program);
});
afterEach(() => program.end());

const person = (name: string, its: object = {}) => ({
  ...{ name, place: '', address: '', phone: '', email: '' },
  ...its,
});
const takenIn = async (machine: string, customer: ReturnType<typeof person>) =>
  program.ask(machineTakeIn, { ...aTakeIn({ name: machine }), customer, dial: null, assemblies: [] });
const ofCustomer = async (customerId: number) =>
  (await program.ask(customersSheet, {})).customers.find((one) => one.customerId === customerId);

describe('customers', () => {
  test('changed: the list, the machine and new slips have the new name, the old slip keeps the old one', async () => {
    const { slipId } = await program.ask(slipMake, { machineId: shop.machineId, by: 'Bo' });
    const details = person('Hill Farm Ltd', { place: 'Overby', phone: '01632 960123' });
    await program.ask(customerChange, { customerId: shop.customerId, ...details, by: 'Ann' });
    expect((await program.ask(customersList, {})).customers).toMatchObject([details]);
    expect((await program.ask(machinesList, {})).machines).toMatchObject([{ customer: 'Hill Farm Ltd' }]);
    expect((await program.ask(slipRead, { slipId })).slip.customer.name).toBe('Hill Farm');
    const { entries } = await program.ask(entriesList, { beforeEntryId: null, limit: 1 });
    expect(entries).toMatchObject([
      { what: 'customer/change', madeBy: 'Ann', rows: { customers: 1 }, customers: [{ name: 'Hill Farm Ltd' }] },
    ]);
    await program.ask(entriesUndoLast, { entryId: entries[0]!.entryId, by: 'Ann' });
    expect((await program.ask(customersList, {})).customers).toMatchObject([{ name: 'Hill Farm' }]);
  });

  test('doubles are found, merged with what is right of both, and parted again as they were', async () => {
    const other = await takenIn('Loader', person('Hil Farm', { place: 'Overby', phone: '01632 960123' }));
    await program.ask(slipMake, { machineId: other.machineId, by: '' });
    const { doubles } = await program.ask(customersSheet, {});
    expect(doubles.map(({ oneId, otherId }) => [oneId, otherId].sort())).toEqual([
      [shop.customerId, other.customerId].sort(),
    ]);
    expect(doubles[0]?.alike).toEqual(['name', 'place']);
    const details = person('Hill Farm', { place: 'Overby', phone: '01632 960123' });
    const merge = { customerId: other.customerId, intoCustomerId: shop.customerId, details, by: 'Ann' };
    const { mergeId } = await program.ask(customerMerge, merge);

    // one customer, with both machines and the slip; the merged id still stands for them
    expect((await program.ask(customersList, {})).customers).toHaveLength(1);
    const whole = await ofCustomer(shop.customerId);
    expect(whole).toMatchObject({ phone: '01632 960123', slips: 1, merged: [{ name: 'Hil Farm' }] });
    expect(whole?.owned.map(({ machine }) => machine).sort()).toEqual(['Loader', 'Tractor 1']);
    const loader = await program.ask(machineRead, { machineId: other.machineId });
    expect(loader.customer).toMatchObject({ customerId: shop.customerId, name: 'Hill Farm' });
    expect((await program.ask(customersSheet, {})).doubles).toEqual([]);

    // the merged one is nobody to be merged again, and no ring can be made
    for (const [one, into] of [
      [other.customerId, shop.customerId],
      [shop.customerId, other.customerId],
    ] as const)
      expect(await program.answer(customerMerge, { ...merge, customerId: one, intoCustomerId: into })).toMatchObject({
        fault: { code: 'customer-merged' },
      });
    const itself = { ...merge, customerId: shop.customerId };
    expect(await program.answer(customerMerge, itself)).toMatchObject({ fault: { code: 'not-as-expected' } });

    // a file that still has the other spelling makes no third row
    const base64 = Buffer.from('machine,customer\nBaler,Hil Farm\n').toString('base64');
    await program.ask(recordBringIn, { files: [{ name: 'machines.csv', base64 }], dryRun: false });
    expect((await program.ask(customersList, {})).customers).toHaveLength(1);

    await program.ask(customerPart, { mergeId, reason: 'father and son', by: 'Ann' });
    expect((await program.ask(customersList, {})).customers.map(({ name, phone }) => [name, phone])).toEqual([
      ['Hil Farm', '01632 960123'],
      ['Hill Farm', ''],
    ]);
    expect((await ofCustomer(other.customerId))?.owned.map(({ machine }) => machine).sort()).toEqual([
      'Baler',
      'Loader',
    ]);
    const again = { mergeId, reason: 'again', by: '' };
    expect(await program.answer(customerPart, again)).toMatchObject({ fault: { code: 'unknown-merge' } });
  });
});

/** A person who is named wherever the record has room for a name. */
async function aNamedPerson() {
  const details = {
    name: 'Jorun Tveit',
    place: 'Ellerdale',
    address: '4 Mill Lane\nEllerdale',
    phone: '01632 960 777',
    email: 'jorun@tveit.example',
  };
  const { customerId, machineId } = shop;
  await program.ask(customerChange, { customerId, ...details, by: 'Bo' });
  const draft = { ...shop.draft('2026-05-01', 3000), note: 'Jorun Tveit rang, 01632-960777' };
  const sizes = [aSize(shop.strip.pointId, 10.8, 'front'), aSize(shop.pin.pointId, 29.6)];
  await program.ask(stripDownSave, { ...draft, sizes, dialSure: false });
  const crack = { ...shop.pin, kind: 'crack' as const, severity: 'do-not-use' as const, takenOn: '2026-05-01' };
  const { assemblyId, positionId, kind, severity, takenOn } = crack;
  const seen = { assemblyId, positionId, kind, severity, takenOn, note: 'as Tveit said, across the pin', by: 'Bo' };
  const { findingId } = await program.ask(findingAdd, seen);
  const said = { saidOn: '2026-05-03', saidBy: 'Jorun Tveit', words: 'Ask my brother, jorun@tveit.example' };
  await program.ask(findingDecline, { findingId, ...said, by: 'Bo' });
  const read = { machineId, takenOn: '2026-06-01', kind: 'reading' as const, dialHours: 3050 };
  await program.ask(hoursAdd, { ...read, newDialHours: null, errorHours: null, saidBy: 'JORUN TVEIT', sure: false });
  const { slipId } = await program.ask(slipMake, { machineId, by: 'Bo' });
  await program.ask(stripDownKeep, { ...shop.draft('2026-11-01', null), note: 'for Jorun Tveit' });
  return { customerId, machineId, slipId, findingId, details };
}

const zipOf = (base64: string) => orRefuse(filesOfZip(new Uint8Array(Buffer.from(base64, 'base64'))));

describe('personal data', () => {
  test('are given out as readable files: all of it, slips as printed, and nothing of the owner after', async () => {
    const { customerId, machineId } = await aNamedPerson();
    const buyer = person('Nils Oaken', { phone: '01632 960 555' });
    await program.ask(machineSellOn, { machineId, fromOn: '2026-10-01', customerId: null, customer: buyer, by: 'Bo' });
    const after = { machineId, takenOn: '2026-11-01', kind: 'reading' as const, dialHours: 3400 };
    await program.ask(hoursAdd, { ...after, newDialHours: null, errorHours: null, saidBy: 'Nils Oaken', sure: false });
    await program.ask(slipMake, { machineId, by: 'Bo' });
    const given = await program.ask(customerExport, { customerId });
    const files = new Map(zipOf(given.zipBase64).map(({ name, bytes }) => [name, bytes]));
    const text = (name: string) => new TextDecoder().decode(files.get(name));
    expect([...files.keys()].filter((name) => name.startsWith('slips/'))).toHaveLength(1);
    const [slip] = await pdfPages(files.get([...files.keys()].find((name) => name.startsWith('slips/'))!)!);
    expect(slip?.text).toContain('Jorun Tveit');
    expect(text('about.txt')).toContain('What is on record about Jorun Tveit');
    expect(text('customer.csv')).toContain('jorun@tveit.example');
    expect(text('customer.csv')).toContain('Hill Farm'); // as first entered
    expect(text('machines.csv')).toContain('Tractor 1,,2026-10-01');
    expect(text('hours.csv')).toContain('JORUN TVEIT');
    expect(text('findings.csv')).toContain('as Tveit said');
    expect(text('refusals.csv')).toContain('Ask my brother');
    expect(text('texts.csv')).toContain('Jorun Tveit rang');
    const all = [...files].filter(([name]) => !name.endsWith('.pdf')).map(([name]) => text(name));
    expect(all.join('\n')).not.toMatch(/Oaken|960 ?555|3400/);
  });

  test('are erased on request: no text names the person, machines, sizes, hours and forecasts stay', async () => {
    const { customerId, machineId, slipId, details } = await aNamedPerson();
    await program.ask(recordBackUp, {});
    const before = {
      forecasts: await program.ask(forecastAll, {}),
      machine: await program.ask(machineRead, { machineId }),
    };
    const words = ['Tveit'];
    const preview = await program.ask(customerErasePreview, { customerId, words: [] });
    expect(preview.alone).toEqual(['Tveit']);
    expect(preview).toMatchObject({ slips: 1, owned: [{ machine: 'Tractor 1' }] });
    expect(preview.backups.length).toBeGreaterThan(0);
    expect(preview.texts).toContainEqual({
      table: 'strip_downs',
      column: 'note',
      before: 'Jorun Tveit rang, 01632-960777',
      after: `${ERASED} rang, ${ERASED}`,
    });

    // only with the name typed
    const rows = program.rows();
    const erase = { customerId, words, typedName: 'Jorun', by: 'Ann' };
    expect(await program.answer(customerErase, erase)).toMatchObject({ fault: { code: 'name-not-typed' } });
    expect(program.rows()).toBe(rows);
    const done = await program.ask(customerErase, { ...erase, typedName: details.name });
    expect(done).toMatchObject({ writtenAnew: true, backups: preview.backups });

    // nowhere in the rows, and nowhere in the bytes of the file
    const held = tablesOnRecord(program.context.record!).flatMap((table) => [
      ...rowsOfTable(program.context.record!, table),
    ]);
    const spoken = /jorun|tveit|mill lane|960 ?777|Hill Farm/i;
    expect(spoken.exec(JSON.stringify(held))).toBeNull();
    const bytes = [program.context.record!.path, `${program.context.record!.path}-wal`]
      .map((file) => readFileSync(file).toString('latin1'))
      .join('');
    expect(/jorun|tveit|mill lane|Hill Farm/i.exec(bytes)).toBeNull();

    // the machine's history is whole
    const blanked = <T>(of: T): T => JSON.parse(JSON.stringify(of).replaceAll('Tveit', ERASED)) as T;
    expect(await program.ask(forecastAll, {})).toEqual(blanked(before.forecasts));
    const now = await program.ask(machineRead, { machineId });
    expect(now.points).toEqual(blanked(before.machine.points));
    expect(now.dialRows.map(({ dialHours }) => dialHours)).toEqual(before.machine.dialRows.map((row) => row.dialHours));
    expect(now.findings).toMatchObject([
      { severity: 'do-not-use', closedOn: null, note: `as ${ERASED} said, across the pin` },
    ]);
    expect(now.findings[0]?.declined).toMatchObject({ saidBy: ERASED, saidOn: '2026-05-03' });
    expect((await program.ask(slipRead, { slipId })).slip.customer).toEqual({ name: '', place: '' });

    // who erased and when; it is not taken back, and what was entered before it still can be
    const sheet = await ofCustomer(customerId);
    expect(sheet).toMatchObject({ name: '', phone: '', owned: [{ machine: 'Tractor 1' }], erased: { madeBy: 'Ann' } });
    expect(sheet?.erased?.texts).toBe(done.texts);
    const { entries, undoableEntryId } = await program.ask(entriesList, { beforeEntryId: null, limit: 2 });
    expect(entries.map(({ what }) => what)).toEqual(['customer/erase', 'hours/add']);
    expect(undoableEntryId).toBe(entries[1]?.entryId);
    const undo = { entryId: entries[0]!.entryId, by: 'Ann' };
    expect(await program.answer(entriesUndoLast, undo)).toMatchObject({ ok: false });
    await program.ask(entriesUndoLast, { entryId: entries[1]!.entryId, by: 'Ann' });
    expect((await ofCustomer(customerId))?.name).toBe('');

    // nobody can be entered under the empty row again
    expect((await program.ask(customersList, {})).customers).toEqual([]);
    const change = { customerId, ...details, by: '' };
    expect(await program.answer(customerChange, change)).toMatchObject({ fault: { code: 'customer-erased' } });
    const buy = { machineId, fromOn: '2026-11-01', customerId, customer: null, by: '' };
    expect(await program.answer(machineSellOn, buy)).toMatchObject({ fault: { code: 'customer-erased' } });
  });

  test('of rows merged into one are erased together', async () => {
    const { customerId, details } = await aNamedPerson();
    const other = await takenIn('Loader', person('J. Tveit', { phone: '01632 960 778' }));
    await program.ask(customerMerge, { customerId: other.customerId, intoCustomerId: customerId, details, by: '' });
    await program.ask(customerErase, { customerId, words: ['Tveit'], typedName: details.name, by: 'Ann' });
    expect(/tveit|960 ?778/i.exec(program.rows())).toBeNull();
  });
});

describe('every text of the record', () => {
  test('is known to be able to name a person, or not to', () => {
    const record = demoRecord();
    const unknown = tablesOnRecord(record)
      .filter(({ name }) => !(CUSTOMER_TABLES as readonly string[]).includes(name))
      .flatMap(({ name: table, columns }) => {
        const personal = (PERSONAL_TEXTS[table] ?? []).map((text) => (typeof text === 'string' ? text : text.json));
        const told = [...personal, ...(NOT_PERSONAL[table] ?? [])];
        const texts = columns.filter(({ type }) => type === 'TEXT').map(({ name }) => name);
        expect(told.filter((name) => !texts.includes(name)).map((name) => `${table}.${name} is no text`)).toEqual([]);
        return texts.filter((name) => !told.includes(name)).map((name) => `${table}.${name}`);
      });
    record.close();
    expect(unknown, 'name these in core/record/personalTexts.ts').toEqual([]);
  });

  test('that can name a person may be blanked while one is erased, in every table', () => {
    const record = demoRecord();
    fillEveryTable(record);
    const triggers = () =>
      record.sqlite.prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' ORDER BY name").all();
    const before = triggers();
    const stood: string[] = [];
    writePlain(record, (w) => {
      w.sqlite.exec('INSERT INTO customer_erasures (entry_id, customer_id, texts, done) VALUES (1, 1, 0, 0)');
      whileTextsMayChange(w, () => {
        for (const [table, texts] of Object.entries(PERSONAL_TEXTS)) {
          for (const text of texts) {
            const column = typeof text === 'string' ? text : text.json;
            try {
              w.sqlite.exec(`UPDATE "${table}" SET "${column}" = "${column}"`);
            } catch {
              stood.push(`${table}.${column}`);
            }
          }
        }
      });
      w.sqlite.exec('UPDATE customer_erasures SET done = 1 WHERE done = 0');
    });
    expect(triggers()).toEqual(before);
    expect(() => record.sqlite.exec("UPDATE entries SET made_by = 'somebody'")).toThrow(/stays as made/);
    record.close();
    expect(stood).toEqual([]);
  });
});

test('a record file that another program reads while somebody is erased is said not to be written anew', async () => {
  const { machineId } = await aShopWithAHitch(program);
  const { customers } = await program.ask(customersList, {});
  const { customerId, name } = customers[0]!;
  expect(machineId).toBeGreaterThan(0);
  const other = new Database(program.context.record!.path, { readonly: true });
  other.exec('BEGIN');
  other.prepare('SELECT count(*) FROM machines').get();
  const erase = { customerId, words: [], typedName: name, by: 'Ann' };
  expect((await program.ask(customerErase, erase)).writtenAnew).toBe(false);
  other.close();
});
