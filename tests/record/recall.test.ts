import { copyFileSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import ICAL from 'ical.js';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { customerErase, customerExport, customerMerge, machineSellOn } from '#core/contract/customer.ts';
import { entriesList, entriesUndoLast } from '#core/contract/entries.ts';
import { hoursAdd } from '#core/contract/hours.ts';
import { type JobState, jobsCancel, jobsStart, jobsState } from '#core/contract/jobs.ts';
import { machineTakeIn } from '#core/contract/machine.ts';
import {
  contactAdd,
  contactStrike,
  contactTermsSave,
  phoneFind,
  phoneRead,
  quietAdd,
  quietStrike,
  recallCalendar,
  recallLetters,
  recallNews,
  recallPaper,
  recallRead,
  recallSaveLead,
  recallSeen,
} from '#core/contract/recall.ts';
import { slipRead, slipsList } from '#core/contract/slip.ts';
import { findingAdd, stripDownSave } from '#core/contract/stripDown.ts';
import { filesOfZip } from '#core/exchange/zipFiles.ts';
import { writeEntry } from '#core/record/entry.ts';
import { insertVisit, strikeVisit } from '#core/record/planStore.ts';
import { day } from '#core/units/day.ts';
import { recordOf } from '#core/use-cases/context.ts';
import { makeWinterSlips } from '#core/use-cases/recall/winterSlips.ts';
import { aShopWithAHitch, aSize, aTakeIn } from '#tests/support/aHitch.ts';
import { aProgramAt, type Program } from '#tests/support/aProgram.ts';
import { pdfPages } from '#tests/support/pdfText.ts';

const TODAY = '2026-11-09';
type DueFarm = { machineId: number; customerId: number; assemblyId: number; hookPin: number };

let folder = '';
let dueFarm: DueFarm;
let program: Program;
/** A shop with one farm, whose hitch is worn near its limit and was read this year: laid down and learned once, copied for each test. */
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'recall-'));
  program = aProgramAt(join(folder, 'first.hoursandwear'), TODAY);
  const { machineId, customerId, pin, strip, draft } = await aShopWithAHitch(program);
  await program.ask(stripDownSave, {
    ...draft('2026-10-01', 3200),
    sizes: [aSize(pin.pointId, 29.2), aSize(strip.pointId, 10.4, 'front'), aSize(strip.pointId, 10.5, 'rear')],
    dialSure: true,
  });
  await program.ask(recallRead, {});
  program.end();
  dueFarm = { machineId, customerId, assemblyId: pin.assemblyId, hookPin: pin.positionId };
});
let copies = 0;
beforeEach(() => {
  const own = join(folder, String(copies++));
  mkdirSync(own);
  copyFileSync(join(folder, 'first.hoursandwear'), join(own, 'shop.hoursandwear'));
  program = aProgramAt(join(own, 'shop.hoursandwear'), TODAY);
});
afterEach(() => program.end());
afterAll(() => rmSync(folder, { recursive: true }));

const anotherFarm = async (name: string, machine: string) =>
  program.ask(machineTakeIn, {
    ...aTakeIn({ name: machine, serial: `${machine}-77` }, null),
    customer: { name, place: 'Netherby', address: '', phone: '05550 881', email: '' },
    assemblies: [],
  });

const said = (customerId: number, machineId: number, its: Record<string, unknown> = {}) => ({
  ...{ customerId, machineIds: [machineId], madeOn: TODAY, way: 'phone' as const, slipId: null, saidBy: 'Mrs Holm' },
  ...{ note: '', answer: null, answerOn: null, callBackOn: null, by: 'Ann' },
  ...its,
});

const list = () => program.ask(recallRead, {});
const names = (farms: { farm: { name: string } }[]) => farms.map(({ farm }) => farm.name);

describe('the recall list', () => {
  test('says who to contact, why, by which hours on the dial and about when; an answer takes it off, undone it is back', async () => {
    const { customerId, machineId } = dueFarm;
    const before = await list();
    expect(before).toMatchObject({ leadDays: 28, winter: '26/27', lastsTo: '2027-10-31', noContact: 0, nobodys: [] });
    const [machine] = before.toContact[0]!.machines;
    expect(machine).toMatchObject({ machineId, name: 'Tractor 1', lastContact: null });
    expect(machine!.reasons.map(({ code }) => code)).toEqual(['hours']);
    const { dialHours, decidingHoursLeft, hoursAre } = machine!.comeInBy!;
    expect(hoursAre).toBe('dial');
    expect(dialHours - decidingHoursLeft).toBeGreaterThan(3200);
    expect(dialHours - decidingHoursLeft).toBeLessThan(3300);

    await program.ask(contactAdd, said(customerId, machineId, { answer: 'booked', answerOn: '2026-12-07' }));
    const after = await list();
    expect(names(after.toContact)).toEqual([]);
    expect(after.held[0]!.machines[0]).toMatchObject({
      standing: { code: 'held', why: 'booked', until: '2026-12-07' },
      lastContact: { way: 'phone', saidBy: 'Mrs Holm', madeBy: 'Ann', answer: 'booked' },
    });
    const [entry] = (await program.ask(entriesList, { beforeEntryId: null, limit: 1 })).entries;
    expect(entry).toMatchObject({ what: 'contact/add' });
    await program.ask(entriesUndoLast, { entryId: entry!.entryId, by: 'Ann' });
    expect(names((await list()).toContact)).toEqual(['Hill Farm']);
  });

  test('puts a crack where it lifts first, whatever was answered before it was found', async () => {
    const { customerId, machineId, assemblyId, hookPin } = dueFarm;
    await program.ask(contactAdd, said(customerId, machineId, { madeOn: '2026-11-01', answer: 'declined' }));
    expect((await list()).toContact).toEqual([]);
    const crack = { assemblyId, positionId: hookPin, kind: 'crack' as const };
    await program.ask(findingAdd, {
      ...crack,
      severity: 'watch',
      note: '',
      photoIds: [],
      takenOn: '2026-11-05',
      by: '',
    });
    const [farm] = (await list()).toContact;
    expect(farm!.machines[0]!.reasons[0]).toMatchObject({ code: 'safety', count: 1, doNotUse: false });
    expect(farm!.machines[0]!.safetyFindings[0]).toMatchObject({ kind: 'crack', position: 'Hook pin' });
  });

  test('keeps to wishes: not at all, not in those days; what was sold belongs to another', async () => {
    const { customerId, machineId } = dueFarm;
    const wish = { customerId, words: 'No more letters.', distanceKm: 12, driveMinutes: 18, seasonTo: null, by: '' };
    await program.ask(contactTermsSave, { ...wish, noContact: true });
    expect(await list()).toMatchObject({ toContact: [], waiting: [], held: [], noContact: 1 });
    await program.ask(contactTermsSave, { ...wish, noContact: false });
    expect((await list()).toContact[0]!.farm).toMatchObject({ terms: { distanceKm: 12, driveMinutes: 18 } });
    const { quietId } = await program.ask(quietAdd, {
      ...{ customerId, fromOn: '2026-11-01', toOn: '2026-11-20', why: 'lambing', by: '' },
    });
    expect((await list()).held[0]!.machines[0]!.standing).toMatchObject({ why: 'quiet', until: '2026-11-20' });
    await program.ask(quietStrike, { quietId, reason: 'over', by: '' });
    await program.ask(contactAdd, said(customerId, machineId, { answer: 'sold' }));
    expect((await list()).toContact).toEqual([]);
    const customer = { name: 'Low Farm', place: '', address: '', phone: '', email: '' };
    await program.ask(machineSellOn, { machineId, fromOn: TODAY, customerId: null, customer, by: '' });
    expect(names((await list()).toContact)).toEqual(['Low Farm']);
  });

  test('a customer merged into another takes wishes and contacts along', async () => {
    const { customerId } = dueFarm;
    const other = await anotherFarm('Hill', 'Loader 9');
    const wish = { words: '', distanceKm: null, driveMinutes: null, seasonTo: null, by: '' };
    await program.ask(contactTermsSave, { customerId: other.customerId, noContact: true, ...wish });
    const details = { name: 'Hill Farm', place: '', address: '', phone: '', email: '' };
    await program.ask(customerMerge, { customerId: other.customerId, intoCustomerId: customerId, details, by: '' });
    expect(await list()).toMatchObject({ toContact: [], noContact: 1 });
  });

  test('asks for the hours of a meter nobody read for a year, and the lead moves what is due', async () => {
    await anotherFarm('Far Farm', 'Loader 9');
    const { toContact } = await list();
    expect(names(toContact)).toEqual(['Hill Farm', 'Far Farm']);
    expect(toContact[1]!.machines[0]!.reasons).toEqual([{ code: 'no-hours', since: null }]);
    await program.ask(recallSaveLead, { leadDays: 60, by: '' });
    expect((await list()).leadDays).toBe(60);
  });
});

test('the list goes to paper: who, why and by which hours, with the farm’s telephone', async () => {
  const { customerId, assemblyId, hookPin } = dueFarm;
  await anotherFarm('Low Farm', 'Loader 9');
  await program.ask(contactTermsSave, {
    ...{ customerId, noContact: false, words: '', distanceKm: 12.4, driveMinutes: null, seasonTo: null, by: '' },
  });
  await program.ask(findingAdd, {
    ...{ assemblyId, positionId: hookPin, kind: 'crack', severity: 'do-not-use', note: '', photoIds: [] },
    ...{ takenOn: TODAY, by: '' },
  });
  const { pdfBase64, fileName } = await program.ask(recallPaper, {});
  expect(fileName).toBe('recall-list-2026-11-09.pdf');
  const [page, ...more] = await pdfPages(Buffer.from(pdfBase64, 'base64'));
  expect(more).toEqual([]);
  const text = page!.text.replace(/\s+/g, ' ');
  expect(text).toMatch(/Hill Farm.*12 km.*Tractor 1.*DO NOT USE: Hook pin, cracked.*Low Farm.*05550 881.*Loader 9/);
  expect(text).toMatch(/\d h on the dial/);
  expect(text).not.toMatch(/undefined|null|NaN/);
});

describe('contacts', () => {
  test('refuse what cannot be, and nothing is kept of it', async () => {
    const { customerId, machineId } = dueFarm;
    const before = program.rows();
    for (const [odd, code] of [
      [{ madeOn: '2026-11-10' }, 'not-as-expected'],
      [{ answer: 'declined', answerOn: '2026-12-01' }, 'not-as-expected'],
      [{ callBackOn: '2026-11-08' }, 'not-as-expected'],
      [{ machineIds: [999] }, 'unknown-machine'],
      [{ customerId: 999 }, 'unknown-customer'],
      [{ slipId: 999 }, 'unknown-slip'],
    ] as const) {
      const answer = await program.answer(contactAdd, said(customerId, machineId, odd));
      expect(answer).toMatchObject({ ok: false, fault: { code } });
    }
    const strike = { contactId: 5, reason: 'x', by: '' };
    expect(await program.answer(contactStrike, strike)).toMatchObject({ fault: { code: 'unknown-contact' } });
    expect(program.rows()).toBe(before);
  });

  test('struck, a contact counts no more; a call-back is on the list on its day', async () => {
    const { customerId, machineId } = dueFarm;
    const add = async (its: Record<string, unknown>) =>
      (await program.ask(contactAdd, said(customerId, machineId, its))).contactIds[0]!;
    const contactId = await add({ answer: 'later', answerOn: '2027-01-10' });
    expect((await list()).toContact).toEqual([]);
    await program.ask(contactStrike, { contactId, reason: 'another farm', by: '' });
    expect(names((await list()).toContact)).toEqual(['Hill Farm']);
    await add({ callBackOn: TODAY });
    expect((await list()).toContact[0]!.machines[0]!.reasons[0]).toEqual({ code: 'call-back', on: TODAY });
  });

  test('are given out to their customer, and blanked whole when the customer is erased', async () => {
    const { customerId, machineId } = dueFarm;
    await program.ask(contactAdd, said(customerId, machineId, { note: 'His knee is bad.', saidBy: 'the son' }));
    await program.ask(contactTermsSave, {
      ...{ customerId, noContact: false, words: 'Ring after milking.', distanceKm: 12.25, driveMinutes: 18 },
      ...{ seasonTo: '10-15', by: '' },
    });
    await program.ask(quietAdd, { customerId, fromOn: TODAY, toOn: TODAY, why: 'a wedding', by: '' });
    const { zipBase64 } = await program.ask(customerExport, { customerId });
    const zip = filesOfZip(Buffer.from(zipBase64, 'base64'));
    const files = zip.ok ? new Map(zip.value.map(({ name, bytes }) => [name, Buffer.from(bytes).toString()])) : null;
    expect(files?.get('contacts.csv')).toContain('His knee is bad.');
    expect(files?.get('wishes.csv')).toMatch(/Ring after milking\.,12\.25/);
    expect(files?.get('wishes.csv')).toContain('a wedding');
    expect(files?.get('texts.csv')).not.toContain('knee');
    await program.ask(customerErase, { customerId, words: [], typedName: 'Hill Farm', by: 'Ann' });
    expect(program.rows()).not.toMatch(/knee|the son|milking|12\.25|wedding/);
    expect(await list()).toMatchObject({ toContact: [], nobodys: [{ machineId }] });
  });
});

describe('the telephone', () => {
  test('finds who rings by a part of farm, place, machine, serial, telephone or slip number', async () => {
    await anotherFarm('Low Farm', 'Loader 9');
    const found = async (text: string) => (await program.ask(phoneFind, { text })).farms.map(({ name }) => name);
    expect(await found('farm')).toEqual(['Hill Farm', 'Low Farm']);
    for (const text of ['low', 'NETHER', 'loader', '9-77', '555088']) expect(await found(text)).toEqual(['Low Farm']);
    expect(await found('tractor 1')).toEqual(['Hill Farm']);
    expect(await found('  ')).toEqual([]);
    expect(await found('no such')).toEqual([]);
  });

  test('shows machines, findings, visits and what was said last; a dial said on it moves the answer', async () => {
    const { customerId, machineId } = dueFarm;
    await program.ask(contactAdd, said(customerId, machineId, { answer: 'booked', answerOn: '2026-12-07' }));
    const before = await program.ask(phoneRead, { customerId });
    expect(before.contacts).toHaveLength(1);
    expect(before.machines[0]!.visits.map(({ on, kind }) => [on, kind])).toEqual([
      ['2026-12-07', 'booked'],
      ['2026-10-01', 'strip-down'],
    ]);
    await program.ask(hoursAdd, {
      ...{ machineId, takenOn: TODAY, kind: 'reading', dialHours: 3600, newDialHours: null, errorHours: null },
      ...{ saidBy: 'Mrs Holm', sure: true },
    });
    const after = await program.ask(phoneRead, { customerId });
    expect(after.machines[0]!.comeInBy!.decidingHoursLeft).toBeLessThan(
      before.machines[0]!.comeInBy!.decidingHoursLeft,
    );
    expect(after.machines[0]!.spoken).toMatch(/Tractor 1/);
    const letters = await program.ask(recallLetters, { machineId });
    expect(letters).toMatchObject({ customerId, name: 'Hill Farm', spoken: after.machines[0]!.spoken });
    expect(letters.message.length).toBeLessThan(160);
  });
});

describe('the calendar file', () => {
  const events = async () => {
    const { ics, visits, dueDates } = await program.ask(recallCalendar, {});
    const read = new ICAL.Component(ICAL.parse(ics)).getAllSubcomponents('vevent');
    const of = (event: (typeof read)[number]) => ({
      uid: String(event.getFirstPropertyValue('uid')),
      on: String(event.getFirstPropertyValue('dtstart')),
      status: event.getFirstPropertyValue('status'),
      sequence: Number(event.getFirstPropertyValue('sequence')),
    });
    return { events: read.map(of), visits, dueDates };
  };

  test('brought in again changes the same events, and takes back a visit that was struck', async () => {
    const { customerId, machineId } = dueFarm;
    const { contactIds } = await program.ask(
      contactAdd,
      said(customerId, machineId, { answer: 'booked', answerOn: '2026-12-07' }),
    );
    const before = await events();
    expect(before).toMatchObject({ visits: 1, dueDates: 1 });
    expect(before.events[0]).toMatchObject({ on: '2026-12-07', status: 'CONFIRMED' });
    await program.ask(contactStrike, { contactId: contactIds[0]!, reason: 'rang off', by: '' });
    const after = await events();
    expect(after).toMatchObject({ visits: 0, dueDates: 1 });
    expect(after.events.map(({ uid }) => uid)).toEqual(before.events.map(({ uid }) => uid));
    expect(after.events[0]).toMatchObject({ status: 'CANCELLED' });
    expect(after.events[0]!.sequence).toBeGreaterThan(before.events[0]!.sequence);
  });
});

test('a visit agreed on the winter plan keeps a machine off the list, and stands in the calendar till it is struck', async () => {
  const { customerId, machineId } = dueFarm;
  const record = program.context.record!;
  const entry = { madeAt: `${TODAY}T10:00:00.000Z`, madeBy: 'Ann', what: 'plan/agree' };
  const weeks = [
    { weekFrom: day('2026-12-28'), benchHours: 6 },
    { weekFrom: day('2027-01-04'), benchHours: 3 },
  ];
  const visit = { machineId, winterYear: 2026, stands: 'agreed' as const, weeks, promisedOn: null, work: {} };
  const rowId = writeEntry(record, entry, (w, entryId) =>
    insertVisit(w, entryId, { ...visit, saidBy: '', note: '', atFarm: false }),
  );
  const [farm] = (await list()).held;
  expect(farm!.machines[0]!.standing).toEqual({ code: 'held', why: 'booked', until: '2027-01-10' });
  // said on the telephone for a day of it: once in the calendar
  await program.ask(contactAdd, said(customerId, machineId, { answer: 'booked', answerOn: '2027-01-05' }));
  const shown = async () => {
    const { ics } = await program.ask(recallCalendar, {});
    return new ICAL.Component(ICAL.parse(ics)).getAllSubcomponents('vevent').map((event) => {
      const [uid, status] = ['uid', 'status'].map((name) => String(event.getFirstPropertyValue(name)));
      const { startDate, endDate } = new ICAL.Event(event);
      return [uid!.split('-')[0], status, startDate.toString(), endDate.toString()];
    });
  };
  const before = await shown();
  expect(before.slice(0, 2)).toEqual([
    ['visit', 'CANCELLED', '2027-01-05', '2027-01-06'],
    ['plan', 'CONFIRMED', '2026-12-28', '2027-01-09'],
  ]);
  writeEntry(record, { ...entry, what: 'plan/strike' }, (w, entryId) => strikeVisit(w, entryId, rowId, 'broke down'));
  expect((await shown()).slice(0, 2).map(([what, status]) => [what, status])).toEqual([
    ['visit', 'CONFIRMED'],
    ['plan', 'CANCELLED'],
  ]);
});

describe('what became due', () => {
  test('is nothing the first time, and then what was not on the list when it was last looked at', async () => {
    const { assemblyId, hookPin } = dueFarm;
    expect(await program.ask(recallNews, {})).toMatchObject({ since: null, became: [], toContact: 1 });
    const crack = { assemblyId, positionId: hookPin, kind: 'crack' as const };
    await program.ask(findingAdd, { ...crack, severity: 'watch', note: '', photoIds: [], takenOn: TODAY, by: '' });
    const news = await program.ask(recallNews, {});
    expect(news).toMatchObject({ since: TODAY, became: [{ machine: 'Tractor 1', farm: 'Hill Farm' }] });
    expect(news.became[0]!.reason.code).toBe('safety');
    expect(await program.ask(recallSeen, {})).toEqual({ seen: true });
    expect((await program.ask(recallNews, {})).became).toEqual([]);
  });
});

describe('slips of the winter', () => {
  const ended = async (jobId: string): Promise<JobState> => {
    for (;;) {
      const state = await program.ask(jobsState, { jobId });
      if (state.state !== 'running') return state;
      await pause(20);
    }
  };
  const start = async (machineIds: number[]) =>
    (
      await program.ask(jobsStart, {
        job: { kind: 'winter-slips', ask: { machineIds, noteAsSent: true, by: 'Ann' } },
      })
    ).jobId;

  test('come as one PDF and as files, numbered and noted as sent; who asked for none gets none', async () => {
    const { customerId, machineId } = dueFarm;
    const two = await anotherFarm('Low Farm', 'Loader 9');
    const three = await anotherFarm('Mute Farm', 'Loader 8');
    await program.ask(contactTermsSave, {
      ...{ customerId: three.customerId, noContact: true, words: '', distanceKm: null, driveMinutes: null },
      ...{ seasonTo: null, by: '' },
    });
    const state = await ended(await start([machineId, two.machineId, three.machineId]));
    expect(state).toMatchObject({ state: 'done', slips: { count: 2, leftOut: 1 } });
    const pages = await pdfPages(Buffer.from(state.slips!.pdfBase64, 'base64'));
    expect(pages).toHaveLength(2);
    expect(pages[0]!.text).toContain('Hill Farm');
    expect(pages[1]!.text).toContain('Low Farm');
    const zip = filesOfZip(Buffer.from(state.slips!.zipBase64, 'base64'));
    expect(zip.ok && zip.value.map(({ name }) => name)).toEqual([
      'forecast-slip-2026-001-tractor-1.pdf',
      'forecast-slip-2026-002-loader-9.pdf',
    ]);
    const { slips } = await program.ask(slipsList, {});
    expect(slips.map(({ number }) => number)).toEqual(['2026-002', '2026-001']);
    const kept = await program.ask(slipRead, { slipId: slips[1]!.slipId });
    const alone = await pdfPages(Buffer.from(kept.pdfBase64, 'base64'));
    expect(alone[0]!.text).toBe(pages[0]!.text);
    const { waiting } = await list();
    expect(waiting.find(({ farm }) => farm.customerId === customerId)!.machines[0]).toMatchObject({
      standing: { code: 'waiting', sentOn: TODAY },
      lastContact: { way: 'slip', slipNumber: '2026-001' },
    });
  });

  test('broken off leave no slip, no number and no contact; with nobody to write to they are refused', async () => {
    const { customerId, machineId } = dueFarm;
    const before = program.rows();
    const jobId = await start([machineId]);
    expect(await program.ask(jobsCancel, { jobId })).toMatchObject({ state: 'cancelled', slips: null });
    expect(program.rows()).toBe(before);
    // as the thread does it: cancelled at each step, whatever the speed of the computer
    const two = await anotherFarm('Low Farm', 'Loader 9');
    const asBefore = program.rows();
    const make = (noteAsSent: boolean, told: (step: string) => void) =>
      makeWinterSlips(
        program.context,
        { machineIds: [machineId, two.machineId], noteAsSent, by: 'Ann' },
        program.context.now(),
        told,
      );
    for (const step of ['forecasting', 'printing', 'writing']) {
      const stopped = new Error(`stopped at ${step}`);
      const told = (now: string) => {
        if (now === step) throw stopped;
      };
      await expect(make(true, told)).rejects.toThrow(stopped);
    }
    // and where the second cannot be kept the first is not either
    recordOf(program.context).sqlite.exec(
      `CREATE TEMP TRIGGER second_slip BEFORE INSERT ON main.slips WHEN (SELECT count(*) FROM slips) > 0
       BEGIN SELECT RAISE(ABORT, 'no second slip'); END`,
    );
    for (const noteAsSent of [true, false]) await expect(make(noteAsSent, () => {})).rejects.toThrow('no second slip');
    expect(program.rows()).toBe(asBefore);
    await program.ask(contactTermsSave, {
      ...{ customerId, noContact: true, words: '', distanceKm: null, driveMinutes: null, seasonTo: null, by: '' },
    });
    const ask = { machineIds: [machineId], noteAsSent: false, by: 'Ann' };
    expect(await program.answer(jobsStart, { job: { kind: 'winter-slips', ask } })).toMatchObject({
      fault: { code: 'no-slips-to-make' },
    });
  });
});
