import { setTimeout } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { customerMerge } from '#core/contract/customer.ts';
import { entriesList, entriesUndoLast } from '#core/contract/entries.ts';
import { forecastSettingsSave } from '#core/contract/forecastSettings.ts';
import { hoursAdd } from '#core/contract/hours.ts';
import { jobsCancel, jobsStart, jobsState } from '#core/contract/jobs.ts';
import { machineTakeIn } from '#core/contract/machine.ts';
import {
  planAdd,
  planAgree,
  planAtFarm,
  planAwaySave,
  planBook,
  planDone,
  planMove,
  planPin,
  planPostpone,
  planRead,
  planSettingsSave,
  planSplit,
  planWeekSave,
  type WhatIf,
  zPlanFacts,
} from '#core/contract/plan.ts';
import { contactTermsSave } from '#core/contract/recall.ts';
import { shopRead, shopSave } from '#core/contract/shop.ts';
import { findingAdd, findingDecline, stripDownSave, stripDownSheet } from '#core/contract/stripDown.ts';
import { GRASS_AND_TILLAGE } from '#core/reading/season.ts';
import { keptForecastsOf } from '#core/record/keptForecastStore.ts';
import { lastPlan } from '#core/record/planStore.ts';
import { addDays, day } from '#core/units/day.ts';
import { recordOf } from '#core/use-cases/context.ts';
import { learningSettled } from '#core/use-cases/learning/shopLearning.ts';
import { makePlan, type PlanAsk } from '#core/use-cases/plan/makePlan.ts';
import { aSize, aTakeIn } from '#tests/support/aHitch.ts';
import { aProgram, type Program } from '#tests/support/aProgram.ts';
import { anEmptyShop } from '#tests/support/laidOnce.ts';

let program: Program;
beforeEach(async () => {
  program = aProgram();
  await anEmptyShop(program);
});
afterEach(() => program.end());

/** A tractor whose strip is down to a size, its hook pin to another. */
async function aTractor(name: string, stripMm: number, pinMm = 29.9, dial?: { takenOn: string; dialHours: number }) {
  const takeIn = aTakeIn({ name }, dial && { ...dial, estimate: false, saidBy: 'Bo' });
  const customer = { ...takeIn.customer!, name: `Farm of ${name}` };
  const { machineId, customerId } = await program.ask(machineTakeIn, { ...takeIn, customer });
  const { rows } = await program.ask(stripDownSheet, { machineId });
  const [strip, pin] = rows;
  await program.ask(stripDownSave, {
    ...{ machineId, takenOn: '2026-03-01', dialHours: 3000, fitter: 'Bo', note: '', renewals: [], findings: [] },
    ...{ dialSure: true, sizes: [aSize(strip!.pointId, stripMm, 'front'), aSize(pin!.pointId, pinMm)] },
  });
  return { machineId, customerId, strip: strip!, pin: pin!, assemblyId: strip!.assemblyId };
}

/** Plans as the job does, in this thread, from what the shop has taught so far. */
async function plan(whatIf: Partial<WhatIf> | null = null) {
  const { context } = program;
  await learningSettled(context);
  const tried = whatIf && { hoursPerWeek: null, fitterOff: null, parts: null, use: null, ...whatIf };
  const ask = { by: 'Bo', whatIf: tried } as PlanAsk;
  return makePlan(
    recordOf(context),
    { asOf: context.today(), madeAt: context.now(), ask },
    { told: () => {}, searched: () => true },
  );
}

/** The same in the thread of its own that the window asks for. */
async function planInThread() {
  const { jobId } = await program.ask(jobsStart, { job: { kind: 'plan', ask: { by: 'Bo', whatIf: null } } });
  for (;;) {
    const state = await program.ask(jobsState, { jobId });
    if (state.state === 'done') return state.plan!;
    if (state.state !== 'running') throw new Error(JSON.stringify(state));
    await setTimeout(20);
  }
}

async function undo() {
  const { entries } = await program.ask(entriesList, { beforeEntryId: null, limit: 1 });
  await program.ask(entriesUndoLast, { entryId: entries[0]!.entryId, by: 'Bo' });
}

const read = () => program.ask(planRead, {});
const visitOf = async (machineId: number) =>
  (await read()).visits.find((visit) => visit.machineId === machineId && visit.winter === '26/27');

describe('the winter plan of a record', () => {
  test('a worn strip brings its machine in, a sound one does not; undone, nothing is planned', async () => {
    const worn = await aTractor('worn', 9.6);
    const sound = await aTractor('sound', 11.9);
    const account = await planInThread();
    expect(account).toMatchObject({ saved: true, status: 'searched', gap: 0 });
    const visit = await visitOf(worn.machineId);
    expect(visit).toMatchObject({ stands: 'proposed', customer: 'Farm of worn' });
    expect(visit!.weeks[0]!.weekFrom >= '2026-11-23').toBe(true);
    expect(visit!.positions.find(({ positionId }) => positionId === worn.strip.positionId)).toMatchObject({
      reason: 'limit',
    });
    expect(await visitOf(sound.machineId)).toBeUndefined();
    const sheet = await read();
    expect(sheet.proposed).toMatchObject({ status: 'searched', machines: 2 });
    await undo();
    expect(await read()).toMatchObject({ visits: [], proposed: null });
  });

  test('the same record gives the same plan', async () => {
    for (const name of ['a', 'b', 'c']) await aTractor(name, 9.6);
    await plan();
    const once = (await read()).visits.map(({ machineId, weeks, positions }) => ({ machineId, weeks, positions }));
    await undo();
    await plan();
    expect((await read()).visits.map(({ machineId, weeks, positions }) => ({ machineId, weeks, positions }))).toEqual(
      once,
    );
  });

  test('an agreed visit stays through every plan, also where its week has no hours any more', async () => {
    const { machineId } = await aTractor('agreed', 9.6);
    const other = await aTractor('other', 9.6);
    await plan();
    const { visitId, weeks } = (await visitOf(machineId))!;
    await program.ask(planAgree, { visitId, saidBy: 'Jo', promisedOn: null, note: '', by: 'Bo' });
    const kept = keptForecastsOf(recordOf(program.context)).filter(({ why }) => why === 'plan');
    expect(kept).toHaveLength(2); // of the strip and of the pin, as they stood when it was agreed
    const { weekFrom } = weeks[0]!;
    await program.ask(planWeekSave, { weekFrom, benchHours: 0, note: 'shut', by: 'Bo' });
    await plan();
    expect(await visitOf(machineId)).toMatchObject({ visitId, weeks, stands: 'agreed', saidBy: 'Jo' });
    expect((await visitOf(other.machineId))!.weeks[0]!.weekFrom).not.toBe(weekFrom);
    const { overHours, hours } = (await read()).weeks.find((week) => week.weekFrom === weekFrom)!;
    expect(overHours).toBeCloseTo(hours, 6);
    const moved = { visitId, weekFrom: '2027-01-04', by: 'Bo' };
    expect(await program.answer(planMove, moved)).toMatchObject({
      fault: { code: 'visit-agreed', facts: { saidBy: 'Jo' } },
    });
    expect((await program.ask(planMove, { ...moved, sure: true })).overHours).toBeCloseTo(-hours, 6);
  });

  test('at the farm the way and setting up come on top, once a week for all that is done there', async () => {
    const one = await aTractor('one', 9.6);
    const other = await aTractor('other', 9.6);
    const details = { name: 'One farm', place: '', address: '', phone: '', email: '' };
    const merge = { customerId: other.customerId, intoCustomerId: one.customerId, details, by: 'Bo' };
    await program.ask(customerMerge, merge);
    const terms = { noContact: false, words: '', distanceKm: 40, seasonTo: null };
    await program.ask(contactTermsSave, { ...terms, customerId: one.customerId, driveMinutes: 45, by: 'Bo' });
    await plan();
    const visits = [(await visitOf(one.machineId))!, (await visitOf(other.machineId))!];
    const { weekFrom } = visits[0]!.weeks[0]!;
    const work = visits.reduce((sum, { hours }) => sum + hours, 0);
    for (const { visitId } of visits) {
      await program.ask(planMove, { visitId, weekFrom, by: 'Bo' });
      const { benchHours } = await program.ask(planAtFarm, { visitId, atFarm: true, by: 'Bo' });
      // twice three quarters of an hour, and an hour to set up; nothing more for the second machine
      expect(benchHours).toBeCloseTo(visitId === visits[0]!.visitId ? 2.5 : 0, 6);
    }
    const weekNow = async () => (await read()).weeks.find((week) => week.weekFrom === weekFrom)!;
    const week = await weekNow();
    expect([week.farmHours, week.hours]).toEqual([2.5, expect.closeTo(work + 2.5, 6)]);
    expect((await visitOf(one.machineId))!.farm).toMatchObject({ callHours: 2.5, isWayKnown: true });
    // let go, the next plan keeps them together for the sake of the way
    for (const { visitId } of visits) await program.ask(planPin, { visitId, pinned: false, by: 'Bo' });
    await plan();
    const weeks = [one, other].map(async ({ machineId }) => (await visitOf(machineId))!.weeks[0]!.weekFrom);
    expect(new Set(await Promise.all(weeks)).size).toBe(1);
    for (const { visitId } of visits) await program.ask(planAtFarm, { visitId, atFarm: false, by: 'Bo' });
    expect(await weekNow()).toMatchObject({ farmHours: 0 });
  });

  test('a day agreed on the telephone goes onto the plan: its visit moves there, or is put on with what is due', async () => {
    const { machineId } = await aTractor('booked', 9.6);
    const book = { machineId, on: '2026-12-16', saidBy: 'Jo', note: 'after milking', by: 'Bo' };
    const { visitId } = await program.ask(planBook, book);
    const visit = (await visitOf(machineId))!;
    expect(visit).toMatchObject({ visitId, stands: 'agreed', saidBy: 'Jo', note: 'after milking' });
    expect(visit.weeks).toEqual([{ weekFrom: '2026-12-14', benchHours: expect.closeTo(visit.hours, 6) }]);
    expect(visit.positions.map(({ reason }) => reason)).toContain('limit');
    expect((await program.ask(planBook, { ...book, on: '2026-12-22' })).visitId).toBe(visitId);
    await plan();
    expect((await visitOf(machineId))!.weeks[0]!.weekFrom).toBe('2026-12-21');
    const answer = await program.answer(planBook, { ...book, on: '2027-07-01' });
    expect(answer).toMatchObject({
      fault: { code: 'not-as-expected', facts: { expected: expect.stringContaining('2026-11-02') } },
    });
    // nothing due: it comes in to be looked at
    const sound = await aTractor('sound', 11.9);
    await program.ask(planBook, { ...book, machineId: sound.machineId });
    expect(await visitOf(sound.machineId)).toMatchObject({ stands: 'agreed', positions: [] });
    await undo();
    expect(await visitOf(sound.machineId)).toBeUndefined();
  });

  test('a visit agreed for a week that the winter has no more keeps its day, and takes none of its hours', async () => {
    const { machineId } = await aTractor('agreed', 9.6);
    await plan();
    const { visitId } = (await visitOf(machineId))!;
    await program.ask(planMove, { visitId, weekFrom: '2027-02-15', pieces: 2, by: 'Bo' });
    await program.ask(planAgree, { visitId, saidBy: 'Jo', promisedOn: null, note: '', by: 'Bo' });
    const { settings } = await program.ask(shopRead, {});
    for (const winterTo of ['02-20', '01-31']) {
      await program.ask(shopSave, { ...settings, winterTo });
      const account = await plan();
      expect(await visitOf(machineId)).toMatchObject({
        ...{ visitId, stands: 'agreed', saidBy: 'Jo' },
        weeks: [{ weekFrom: '2027-02-15' }, { weekFrom: '2027-02-22' }],
      });
      const { weeks, visits } = await read();
      const planned = weeks.reduce((sum, { hours }) => sum + hours, 0);
      expect(planned).toBeCloseTo(winterTo === '02-20' ? visits[0]!.hours / 2 : 0, 2);
      expect(account.now).toMatchObject({ visits: 1, unplaced: 0 });
      expect(account.now.hours).toBeCloseTo(planned, 1);
    }
  });

  test('no week is filled beyond its hours; what finds no room is left over with what it risks', async () => {
    for (const name of ['a', 'b', 'c']) await aTractor(name, 9.5);
    const mondays = (await read()).weeks.map(({ weekFrom }) => weekFrom);
    const hours = async (weekFrom: string, benchHours: number) =>
      program.ask(planWeekSave, { weekFrom, benchHours, note: '', by: 'Bo' });
    for (const monday of mondays) await hours(monday, monday === '2027-01-11' ? 8 : 0);
    const account = await plan();
    const sheet = await read();
    expect(sheet.weeks.every(({ overHours }) => overHours === 0)).toBe(true);
    const left = sheet.visits.filter(({ weeks, winter }) => winter === '26/27' && weeks.length === 0);
    expect(left.length).toBeGreaterThan(0);
    expect(left.length).toBe(account.now.unplaced);
    expect(left.every(({ risk }) => risk > 0)).toBe(true);
  });

  test('a moved visit is held there, told what it costs, and taken back whole', async () => {
    const { machineId, customerId } = await aTractor('moved', 9.6);
    await plan();
    const { visitId } = (await visitOf(machineId))!;
    await program.ask(planWeekSave, { weekFrom: '2027-01-18', benchHours: 1, note: '', by: 'Bo' });
    const change = await program.ask(planMove, { visitId, weekFrom: '2027-01-18', by: 'Bo' });
    const visit = (await visitOf(machineId))!;
    expect(change.overHours).toBeCloseTo(visit.hours - 1, 6);
    expect(visit).toMatchObject({ stands: 'pinned', weeks: [{ weekFrom: '2027-01-18' }] });
    const away = { customerId: customerId!, fromOn: '2027-01-20', toOn: '2027-01-21', note: '', by: 'Bo' };
    await program.ask(planAwaySave, away);
    expect(await visitOf(machineId)).toMatchObject({ customerAway: true });
    await plan();
    expect((await visitOf(machineId))!.weeks[0]).toMatchObject({ weekFrom: '2027-01-18' });
    await program.ask(planPin, { visitId, pinned: false, by: 'Bo' });
    await plan();
    expect((await visitOf(machineId))!.weeks[0]!.weekFrom).not.toBe('2027-01-18');
    await undo();
    expect((await visitOf(machineId))!.weeks[0]).toMatchObject({ weekFrom: '2027-01-18' });
  });

  test('a visit put off costs its risk, is planned for the winter after, and stays put off', async () => {
    await program.ask(forecastSettingsSave, { changed: {}, workTypes: [], reason: '' }); // a sum of hours is judged
    const { machineId } = await aTractor('late', 9.6);
    await plan();
    const before = (await visitOf(machineId))!;
    const change = await program.ask(planPostpone, { visitId: before.visitId, reason: 'no money', by: 'Bo' });
    // to half an hour: classes are learned on from where they stood, the plan in its thread from the record alone
    expect(change.total).toBeCloseTo(before.risk, 0);
    expect(change.breakdownCost).toBeGreaterThan(0);
    expect(change.benchHours).toBeCloseTo(-before.hours, 2);
    const visits = (await read()).visits.filter((visit) => visit.machineId === machineId);
    expect(visits.map(({ winter, stands }) => [winter, stands])).toContainEqual(['27/28', 'proposed']);
    await plan();
    expect(await visitOf(machineId)).toMatchObject({ stands: 'postponed', weeks: [], note: 'no money' });
  });

  test('a visit split in two pays what both open twice', async () => {
    const { machineId, strip } = await aTractor('split', 9.6, 29.05);
    await plan();
    const before = (await visitOf(machineId))!;
    expect(before.positions).toHaveLength(2);
    const asked = { visitId: before.visitId, positionIds: [strip.positionId], by: 'Bo' };
    const change = await program.ask(planSplit, asked);
    const shared = before.takeOffs.reduce((sum, { hours }) => sum + hours, before.visitHours);
    expect(change.total).toBeCloseTo(shared, 6);
    const both = (await read()).visits.filter((visit) => visit.machineId === machineId && visit.winter === '26/27');
    expect(both.map(({ positions }) => positions.length)).toEqual([1, 1]);
    expect(both.reduce((sum, { hours }) => sum + hours, 0)).toBeCloseTo(before.hours + shared, 2);
    expect(await program.answer(planSplit, { ...asked, visitId: change.visitId })).toMatchObject({
      fault: { code: 'not-as-expected', path: 'positionIds' },
    });
    await plan();
    const placed = (await read()).visits.filter(({ winter }) => winter === '26/27');
    expect(placed.map(({ weeks, stands }) => [weeks.length > 0, stands])).toEqual([
      [true, 'pinned'],
      [true, 'pinned'],
    ]);
    await plan();
    const again = (await read()).visits.filter(({ winter }) => winter === '26/27');
    expect(again.map(({ weeks }) => weeks)).toEqual(placed.map(({ weeks }) => weeks));
  });

  test('broken off before it looks for weeks nothing of it is kept; from then on it is, marked, with its bound', async () => {
    for (const name of ['a', 'b', 'c']) await aTractor(name, 9.6);
    const before = program.rows();
    const { jobId } = await program.ask(jobsStart, { job: { kind: 'plan', ask: { by: 'Bo', whatIf: null } } });
    const ended = await program.ask(jobsCancel, { jobId });
    expect(ended).toMatchObject({ state: 'cancelled', plan: null });
    expect(program.rows()).toBe(before);
    // as the thread does it: cancelled at each step, whatever the speed of the computer
    const record = recordOf(program.context);
    const asked = { asOf: program.context.today(), madeAt: program.context.now(), ask: { by: 'Bo', whatIf: null } };
    const stopAt = async (step: string) => {
      const told = (now: string) => {
        if (now === step) throw new Error(`stopped at ${step}`);
      };
      await expect(makePlan(record, asked, { told, searched: () => true })).rejects.toThrow(`stopped at ${step}`);
    };
    for (const step of ['machines', 'weeks', 'writing']) await stopAt(step);
    expect(program.rows()).toBe(before);
    // and where the second visit cannot be kept the first is not either
    record.sqlite.exec(
      `CREATE TEMP TRIGGER second_visit BEFORE INSERT ON main.plan_visits WHEN (SELECT count(*) FROM plan_visits) > 0
       BEGIN SELECT RAISE(ABORT, 'no second visit'); END`,
    );
    await expect(makePlan(record, asked, { told: () => {}, searched: () => true })).rejects.toThrow('no second visit');
    record.sqlite.exec('DROP TRIGGER second_visit');
    expect(program.rows()).toBe(before);
    expect(await read()).toMatchObject({ visits: [], proposed: null });
    const early = await makePlan(record, asked, { told: () => {}, searched: () => false });
    expect(early).toMatchObject({ saved: true, status: 'stopped-early' });
    const { proposed, visits } = await read();
    expect(proposed!.status).toBe('stopped-early');
    expect(proposed!.harm.bound).toBeLessThanOrEqual(proposed!.harm.cost);
    expect(early.gap).toBe(proposed!.harm.gap);
    expect(visits.filter(({ winter }) => winter === '26/27')).toHaveLength(3);
  });

  test('what must not be used comes in first; what the customer refused is left', async () => {
    const { machineId, assemblyId, pin } = await aTractor('stopped', 11.9);
    const finding = { assemblyId, positionId: pin.positionId, kind: 'crack' as const, severity: 'do-not-use' as const };
    const seen = { ...finding, note: '', photoIds: [], takenOn: '2026-11-02', by: 'Bo' };
    const { findingId } = await program.ask(findingAdd, seen);
    await plan();
    const visit = (await visitOf(machineId))!;
    expect(visit.doNotUse).toBe(true);
    expect(visit.positions).toMatchObject([{ positionId: pin.positionId, reason: 'finding' }]);
    expect(visit.risk).toBeGreaterThanOrEqual(30);
    const said = { saidOn: '2026-11-03', saidBy: 'Jo', words: 'It holds till spring.' };
    await program.ask(findingDecline, { findingId, ...said, by: 'Bo' });
    await plan();
    expect(await visitOf(machineId)).toBeUndefined();
  });

  test('a machine put on by hand stays on with its work, and may be done', async () => {
    const { machineId, strip } = await aTractor('by hand', 11.9);
    const asked = { machineId, positionIds: [strip.positionId], weekFrom: '2026-12-07', by: 'Bo' };
    const { visitId, total } = await program.ask(planAdd, asked);
    expect(total).toBeGreaterThan(0);
    await plan();
    expect(await visitOf(machineId)).toMatchObject({
      ...{ visitId, stands: 'pinned', weeks: [{ weekFrom: '2026-12-07' }] },
      positions: [{ positionId: strip.positionId, reason: 'by-hand' }],
    });
    expect(await program.answer(planAdd, asked)).toMatchObject({ fault: { code: 'visit-there-already' } });
    await program.ask(planDone, { visitId, by: 'Bo' });
    expect(await program.answer(planMove, { visitId, weekFrom: null, by: 'Bo' })).toMatchObject({
      fault: { code: 'visit-done' },
    });
  });

  test('what is tried is not saved, and is set beside the plan without it', async () => {
    const { machineId } = await aTractor('tried', 9.6);
    await aTractor('other', 10.4);
    await plan();
    const rows = program.rows();
    const dearer = await plan({ parts: { partClass: 'Nylon slide strip', times: 10 } });
    expect(dearer.saved).toBe(false);
    expect(dearer.now.total).toBeGreaterThan(dearer.before!.total);
    const doubled = await plan({ use: { machineId, times: 2 } });
    expect(doubled.now.total).toBeGreaterThan(doubled.before!.total);
    const few = await plan({ hoursPerWeek: 0.5 });
    expect(few.now.unplaced).toBeGreaterThan(few.before!.unplaced);
    expect(few.changed).toContainEqual(expect.objectContaining({ machineId, to: null, what: 'no-room' }));
    const { weekFrom } = (await visitOf(machineId))!.weeks[0]!;
    const off = await plan({ fitterOff: { weekFrom, weeks: 2, benchHours: 1000 } });
    expect(off.changed.find((one) => one.machineId === machineId)).toMatchObject({ from: weekFrom, what: 'moved' });
    expect(program.rows()).toBe(rows);
  });

  test('a breakdown costs a machine with busy months more, the more of its hours fall in them', async () => {
    const dial = { takenOn: '2025-03-01', dialHours: 1800 };
    const [even, busy] = [await aTractor('even', 10.4, 29.9, dial), await aTractor('busy', 10.4, 29.9, dial)];
    // both run 1 200 h a year: the one 100 h in every month, the other more of it on grass and at harvest
    let dialOfBusy = 1800;
    for (let month = 1; month <= 20; month++) {
      dialOfBusy += 100 * GRASS_AND_TILLAGE[(month + 1) % 12]!;
      const takenOn = addDays(day('2025-03-01'), Math.round((month * 365) / 12));
      for (const [machineId, dialHours] of [
        [even.machineId, 1800 + 100 * month],
        [busy.machineId, Math.round(dialOfBusy)],
      ] as const) {
        const reading = { kind: 'reading' as const, newDialHours: null, errorHours: null, saidBy: '', sure: true };
        expect(await program.ask(hoursAdd, { machineId, takenOn, dialHours, ...reading })).toMatchObject({
          kept: true,
        });
      }
    }
    const costOf = async (machineId: number, busyMonths: number) => {
      await program.ask(planSettingsSave, {
        changed: { busyMonths, leastGain: 200 },
        renewals: [],
        reason: '',
        by: '',
      });
      await plan();
      const { machines } = zPlanFacts.parse(lastPlan(recordOf(program.context))!.facts);
      const { winters } = machines.find((one) => one.machineId === machineId)!;
      return winters[0]!.breakdownCost / winters[0]!.breakdowns;
    };
    expect(await costOf(busy.machineId, 1)).toBeCloseTo(30, 1);
    expect(await costOf(even.machineId, 1)).toBeCloseTo(30, 1);
    const [ofBusy, ofEven] = [await costOf(busy.machineId, 3), await costOf(even.machineId, 3)];
    expect(ofEven).toBeLessThan(45);
    expect(ofBusy).toBeGreaterThan(65);
    expect(ofBusy).toBeLessThan(90);
  });

  test('a dearer breakdown brings more machines in; a setting beyond its bounds is refused', async () => {
    await aTractor('worn', 10.2);
    const set = (breakdownHours: number) =>
      program.answer(planSettingsSave, { changed: { breakdownHours }, renewals: [], reason: '', by: 'Bo' });
    await set(1);
    const cheap = await plan();
    await set(500);
    expect((await plan()).now.visits).toBeGreaterThan(cheap.now.visits);
    expect(await set(1e6)).toMatchObject({ fault: { code: 'not-as-expected', path: 'changed.breakdownHours' } });
    expect((await read()).settings.find(({ name }) => name === 'breakdownHours')).toMatchObject({
      value: 500,
      usual: 30,
    });
  });
});
