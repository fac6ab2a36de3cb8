import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { entriesList, entriesUndoLast } from '#core/contract/entries.ts';
import { forecastWhy } from '#core/contract/forecast.ts';
import { assemblyJoints, assemblySaveJoints, machineRead, machineTakeIn, pointLimits } from '#core/contract/machine.ts';
import { sizesQuestioned } from '#core/contract/oldSheets.ts';
import { shopRead } from '#core/contract/shop.ts';
import {
  renewalAnswer,
  renewalPutRight,
  stripDownJudge,
  stripDownSave,
  stripDownSheet,
} from '#core/contract/stripDown.ts';
import { builtInAssemblyKinds } from '#core/shop/assemblyKinds.ts';
import { seriesNow } from '#core/use-cases/seriesNow.ts';
import { widthLines } from '#core/words/whyText.ts';
import { aShopWithAHitch, aSize, aTakeIn } from '#tests/support/aHitch.ts';
import { aProgram, type Program } from '#tests/support/aProgram.ts';

/** What awkward things happen to parts, each through the real record and door, with what a shop expects of it. */
let program: Program;
let shop: Awaited<ReturnType<typeof aShopWithAHitch>>;
beforeEach(async () => {
  program = aProgram('2026-11-09');
  shop = await aShopWithAHitch(program);
});
afterEach(() => {
  expect(program.defects).toEqual([]);
  program.end();
});

const fault = async (...asked: Parameters<Program['answer']>) => {
  const answer = await program.answer(...asked);
  return answer.ok ? null : answer.fault;
};
type Draft = ReturnType<typeof shop.draft>;
type Visit = {
  sizes?: Draft['sizes'];
  renewals?: { pointId: number; sizeMm: number | null; hoursKnown: boolean; [more: string]: unknown }[];
  shims?: { pointId: number; shimMm: number }[];
};
const visit = (on: string, dial: number | null, what: Visit, machineId = shop.machineId) =>
  program.ask(stripDownSave, { ...shop.draft(on, dial), machineId, ...what, dialSure: false });
const found = (pointId: number, sizeMm: number, station = '') => aSize(pointId, sizeMm, station);
const left = (pointId: number, sizeMm: number, station = '') => aSize(pointId, sizeMm, station, 'as-left');
const renewal = (pointId: number, more: object = {}) => ({ pointId, sizeMm: null, hoursKnown: true, ...more });
const pointOf = async (pointId: number, machineId = shop.machineId) =>
  (await program.ask(machineRead, { machineId })).points.find((point) => point.pointId === pointId)!;
const series = (pointId: number) => {
  const now = seriesNow(program.context);
  return now.ofPoint(now.life.points.find((point) => point.pointId === pointId)!);
};
const readings = (pointId: number) =>
  series(pointId).present.readings.map(({ workedHours, wearMm }) => [
    Math.round(workedHours),
    Number(wearMm.toFixed(3)),
  ]);

/** A loader with a pin joint: bush, pin and their slack, and a strip with a slack behind it. */
async function aJoint() {
  const { machineId } = await program.ask(machineTakeIn, {
    ...aTakeIn({ name: 'Loader' }),
    assemblies: [
      {
        kind: null,
        name: 'Boom',
        serial: '',
        fittedMachineHours: 0,
        positions: [
          {
            item: 1,
            name: 'Carrier pivot',
            safety: true,
            points: [
              aPoint('bush bore', 'bore', 'up', 40.1, 41.1),
              aPoint('pin diameter', 'diameter', 'down', 40, 39),
              { ...aPoint('slack', 'slack', 'up', 0.1, 1.5), gaugeErrorMm: 0.05 },
            ],
          },
          {
            item: 2,
            name: 'Side pad',
            safety: false,
            points: [aPoint('thickness', 'thickness', 'down', 12, 9.5), aPoint('side play', 'slack', 'up', 0.5, 3)],
          },
        ],
        joints: [
          {
            slack: { item: 1, point: 'slack' },
            pin: { item: 1, point: 'pin diameter' },
            bores: [{ item: 1, point: 'bush bore' }],
          },
        ],
      },
    ],
  });
  const { rows } = await program.ask(stripDownSheet, { machineId });
  const idOf = (name: string) => rows.find(({ point }) => point === name)!.pointId;
  return {
    machineId,
    bore: idOf('bush bore'),
    pin: idOf('pin diameter'),
    slack: idOf('slack'),
    pad: idOf('thickness'),
    play: idOf('side play'),
  };
}

const aPoint = (
  name: string,
  measures: 'bore' | 'diameter' | 'slack' | 'thickness',
  wears: 'up' | 'down',
  newSizeMm: number,
  renewAtMm: number,
) => ({
  name,
  measures,
  wears,
  partClass: `class of ${name}`,
  newSizeMm,
  newSizeTolMm: 0.06,
  renewAtMm,
  rejectAtMm: null,
  limitSource: 'own rule',
  gaugeErrorMm: 0.02,
  stations: [],
});

describe('the shop’s edge cases of parts', () => {
  test('6 part renewed elsewhere: its zero lies between two visits, not at a point', async () => {
    await visit('2024-05-01', 2000, { sizes: [found(shop.pin.pointId, 29.7)] });
    await visit('2026-05-01', 3000, {
      sizes: [found(shop.pin.pointId, 29.9)],
      renewals: [renewal(shop.pin.pointId, { hoursKnown: false })],
    });
    const point = await pointOf(shop.pin.pointId);
    expect(point.renewals.at(-1)).toMatchObject({ known: false, fromMachineHours: 2000, toMachineHours: 3000 });
    expect(readings(shop.pin.pointId)).toEqual([[500, 0.1]]);
    // evenly anywhere between: the width over the root of twelve
    expect(series(shop.pin.pointId).present.startHoursSd).toBeCloseTo(1000 / Math.sqrt(12), 0);
    expect(point.forecast.cautions).toContain('renewed-at-unknown-hours');
  });

  test('7 different gauge or person: each size keeps its own gauge’s error, and a small change makes no rate', async () => {
    const { gauges } = await program.ask(shopRead, {});
    const gaugeId = (name: string) => gauges.find((gauge) => gauge.name.startsWith(name))!.gaugeId;
    const byGauge = (sizeMm: number, name: string) => ({
      ...found(shop.strip.pointId, sizeMm, 'front'),
      gaugeId: gaugeId(name),
    });
    await visit('2025-05-01', 2600, { sizes: [byGauge(11.5, 'Outside micrometer')] });
    const before = (await pointOf(shop.strip.pointId)).forecast;
    await visit('2026-05-01', 2800, { sizes: [byGauge(11.46, 'Vernier calliper')] });
    const [micrometer, calliper] = series(shop.strip.pointId).present.readings;
    expect(micrometer?.errorSdMm).toBeCloseTo(Math.sqrt(0.01 ** 2 + 0.01 ** 2 / 12), 6);
    expect(calliper?.errorSdMm).toBeCloseTo(Math.sqrt(0.05 ** 2 + 0.05 ** 2 / 12), 6);
    const after = (await pointOf(shop.strip.pointId)).forecast;
    // 0.04 mm in 200 h would be half the rate so far: too small to see, so the rate stays within a tenth
    expect(after.ratePer1000hMm.middle! / before.ratePer1000hMm.middle!).toBeGreaterThan(0.9);
    expect(after.ratePer1000hMm.middle! / before.ratePer1000hMm.middle!).toBeLessThan(1.1);
  });

  test('8 inches and mm mixed: 1.18 for a 30 mm pin is asked about, kept as typed and out of the forecast', async () => {
    const typed = { ...shop.draft('2026-05-01', 3000), sizes: [found(shop.pin.pointId, 1.18)] };
    const { questions } = await program.ask(stripDownJudge, typed);
    expect(questions).toMatchObject([
      { question: { code: 'wrong-unit', facts: { unit: 'inch', likelyMm: expect.closeTo(29.972, 3) } } },
    ]);
    expect(await visit('2026-05-01', 3000, { sizes: [found(shop.pin.pointId, 1.18)] })).toMatchObject({ parked: 1 });
    expect(readings(shop.pin.pointId)).toEqual([]);
    // so is the size of a part put in, in inches or ten times off
    const putIn = [renewal(shop.pin.pointId, { sizeMm: 300 }), renewal(shop.strip.pointId, { sizeMm: 0.472 })];
    const judged = await program.ask(stripDownJudge, { ...shop.draft('2026-06-01', 3100), renewals: putIn });
    expect(judged.renewalQuestions).toMatchObject([
      { pointId: shop.pin.pointId, question: { code: 'ten-times-off', facts: { likelyMm: 30 } } },
      { pointId: shop.strip.pointId, question: { code: 'wrong-unit', facts: { likelyMm: expect.closeTo(11.989, 3) } } },
    ]);
  });

  test('10 second-hand machine, unknown history: the first size is the anchor, the start stays open', async () => {
    const bought = aTakeIn(
      { name: 'Bought' },
      { takenOn: '2026-01-10', dialHours: 4000, estimate: false, saidBy: 'Bo' },
    );
    const { machineId } = await program.ask(machineTakeIn, {
      ...bought,
      assemblies: bought.assemblies.map((assembly) => ({ ...assembly, fittedMachineHours: null })),
    });
    const { rows } = await program.ask(stripDownSheet, { machineId });
    const strip = rows[0]!;
    const family = (await pointOf(strip.pointId, machineId)).forecast;
    expect(family.basis.own).toBe(0);
    await visit(
      '2026-05-01',
      4200,
      { sizes: [found(strip.pointId, 11, 'front'), found(strip.pointId, 11.2, 'rear')] },
      machineId,
    );
    const anchored = (await pointOf(strip.pointId, machineId)).forecast;
    expect(anchored.cautions).toContain('fitted-at-unknown-hours');
    expect(anchored.wearMm.middle).toBeCloseTo(1, 0);
    expect(series(strip.pointId).present.startHoursSd).toBeCloseTo(4200 / Math.sqrt(12), -1);
    // the same size on a part known to be as old as the machine says more of its rate
    const known = (await pointOf(shop.strip.pointId)).forecast;
    expect(known.basis.own).toBe(0);
    await visit('2026-05-01', 4200, {
      sizes: [found(shop.strip.pointId, 11, 'front'), found(shop.strip.pointId, 11.2, 'rear')],
    });
    expect((await pointOf(shop.strip.pointId)).forecast.basis.own).toBeGreaterThan(anchored.basis.own);
  });

  test('11 measured thicker than last time: asked, and once sure it goes in unclipped; the rate stays positive', async () => {
    const sizes = (mm: number) => [found(shop.strip.pointId, mm, 'front'), found(shop.strip.pointId, mm + 0.5, 'rear')];
    await visit('2025-05-01', 2600, { sizes: sizes(10.5) });
    const { questions } = await program.ask(stripDownJudge, { ...shop.draft('2026-05-01', 3000), sizes: sizes(10.8) });
    expect(questions.map(({ question }) => question.code)).toEqual(['better-than-last', 'better-than-last']);
    expect(questions[0]?.question.choices).toEqual(['measure-again', 'right-as-read', 'was-renewed', 'wrong-place']);
    await visit('2026-05-01', 3000, {
      sizes: sizes(10.8).map((size) => ({ ...size, answer: 'right-as-read' as const })),
    });
    expect(readings(shop.strip.pointId)).toEqual([
      [2600, 1.5],
      [3000, 1.2],
    ]);
    const { forecast } = await pointOf(shop.strip.pointId);
    expect(forecast.ratePer1000hMm.low).toBeGreaterThan(0);
    expect(forecast.hoursLeft.low! <= forecast.hoursLeft.middle!).toBe(true);
  });

  test('13 oversize pin already fitted: its size is the standard here from that day, and the limits move with it', async () => {
    const { pin } = shop;
    await visit('2026-05-01', 3000, {
      sizes: [found(pin.pointId, 30.85)],
      renewals: [renewal(pin.pointId, { hoursKnown: false, kind: 'oversize', sizeMm: 31, stamped: true })],
    });
    const point = await pointOf(pin.pointId);
    expect(point.limits).toMatchObject({ newSizeMm: 31, renewAtMm: 30, from: '2026-05-01' });
    expect(point.oversize).toEqual({ standardMm: 31, drawnMm: 30, since: '2026-05-01', stamped: true });
    expect(point.forecast.limitWearMm).toBeCloseTo(1, 9);
    expect(point.forecast.wearMm.middle).toBeCloseTo(0.15, 1);
    expect(readings(pin.pointId).at(-1)?.[1]).toBeCloseTo(0.15, 9);
    expect(point.forecast.cautions).not.toContain('odd-new-size');
    // the next man knows, at the bench
    const { rows } = await program.ask(stripDownSheet, { machineId: shop.machineId });
    expect(rows.find(({ pointId }) => pointId === pin.pointId)).toMatchObject({
      oversize: { standardMm: 31, stamped: true },
      limits: { newSizeMm: 31 },
    });
    // taken back, all of it goes
    const [last] = (await program.ask(entriesList, { beforeEntryId: null, limit: 1 })).entries;
    await program.ask(entriesUndoLast, { entryId: last!.entryId, by: 'Bo' });
    expect(await pointOf(pin.pointId)).toMatchObject({ oversize: null, limits: { newSizeMm: 30, renewAtMm: 29 } });
  });

  test('16 standard-side part past its limit: no oversize; the record holds that it must stay standard, and gives it', async () => {
    const request = aTakeIn({ name: 'Tractor with a hook' });
    const { machineId } = await program.ask(machineTakeIn, {
      ...request,
      assemblies: request.assemblies.map((assembly) => ({
        ...assembly,
        positions: assembly.positions.map((position) => ({ ...position, mustStayStandard: position.item === 2 })),
      })),
    });
    const sheet = await program.ask(machineRead, { machineId });
    expect(sheet.assemblies[0]?.positions.map(({ mustStayStandard }) => mustStayStandard)).toEqual([false, true]);
    const { rows } = await program.ask(stripDownSheet, { machineId });
    const pin = rows.find(({ item }) => item === 2)!;
    expect(pin.mustStayStandard).toBe(true);
    await visit('2026-05-01', 3000, { sizes: [found(pin.pointId, 28.8)] }, machineId);
    const oversize = { ...shop.draft('2026-06-01', 3100), machineId, dialSure: false };
    expect(
      await fault(stripDownSave, {
        ...oversize,
        renewals: [renewal(pin.pointId, { kind: 'oversize', sizeMm: 31, stamped: true })],
      }),
    ).toMatchObject({ code: 'must-stay-standard', path: 'renewals.0.kind', facts: { position: 'Hook pin' } });
    // back to standard by other ways stays open
    await visit('2026-06-01', 3100, { renewals: [renewal(pin.pointId, { kind: 'weld-and-bore' })] }, machineId);
    expect((await pointOf(pin.pointId, machineId)).renewals.at(-1)?.kind).toBe('weld-and-bore');
  });
});

describe('a renewal', () => {
  test('oversize judges what was found that day by the limits of before, and a bush brings the drawn size back', async () => {
    const { pin } = shop;
    await visit('2025-05-01', 2600, {
      sizes: [found(pin.pointId, 28.9), left(pin.pointId, 31)],
      renewals: [renewal(pin.pointId, { kind: 'oversize', sizeMm: 31, stamped: false })],
    });
    const history = series(pin.pointId).history.map(({ event, limits, governing }) => [
      event,
      limits.renewAtMm,
      governing?.wearMm.toFixed(2),
    ]);
    expect(history).toEqual([
      ['as-found', 29, '1.10'],
      ['as-left', 30, '0.00'],
    ]);
    await visit('2026-05-01', 3000, { renewals: [renewal(pin.pointId, { kind: 'weld-and-bore' })] });
    expect(await pointOf(pin.pointId)).toMatchObject({ oversize: null, limits: { newSizeMm: 30, renewAtMm: 29 } });
  });

  test('a changed limit leaves old jobs judged by the limit of their day', async () => {
    const { pin } = shop;
    await visit('2025-05-01', 2600, { sizes: [found(pin.pointId, 29.4)] });
    await program.ask(pointLimits, {
      pointId: pin.pointId,
      from: '2026-01-01',
      newSizeMm: 30,
      newSizeTolMm: 0.1,
      renewAtMm: 29.5,
      rejectAtMm: null,
      source: 'maker, 2026',
      enteredBy: 'Bo',
    });
    await visit('2026-05-01', 3000, { sizes: [found(pin.pointId, 29.35)] });
    const limits = series(pin.pointId).history.map((one) => [one.takenOn, one.limits.renewAtMm, one.limits.source]);
    expect(limits).toEqual([
      ['2025-05-01', 29, null],
      ['2026-05-01', 29.5, 'maker, 2026'],
    ]);
  });

  test('of a strip turned over goes on from the thickness that was left, to the same limit', async () => {
    const { strip } = shop;
    await visit('2025-05-01', 2600, {
      sizes: [found(strip.pointId, 10.6, 'front'), found(strip.pointId, 11, 'rear')],
      renewals: [renewal(strip.pointId, { kind: 'turned' })],
    });
    const turned = await pointOf(strip.pointId);
    expect(turned.limits.renewAtMm).toBe(9.5);
    expect(turned.forecast.limitWearMm).toBeCloseTo(1.1, 9);
    expect(turned.forecast.cautions).toContain('turned-over');
    await visit('2026-05-01', 3600, {
      sizes: [found(strip.pointId, 10.3, 'front'), found(strip.pointId, 10.8, 'rear')],
    });
    expect(readings(strip.pointId)).toEqual([[1000, 0.3]]);
    expect(
      await fault(stripDownSave, {
        ...shop.draft('2026-06-01', 3700),
        renewals: [renewal(strip.pointId, { kind: 'turned' })],
        dialSure: false,
      }),
    ).toMatchObject({ code: 'turned-needs-size' });
  });

  test('of one of several stations: its old readings speak no more, the worst of the others governs', async () => {
    const { strip } = shop;
    await visit('2025-05-01', 2600, {
      sizes: [found(strip.pointId, 10, 'front'), found(strip.pointId, 11, 'rear'), left(strip.pointId, 12, 'front')],
      renewals: [renewal(strip.pointId, { station: 'front' })],
    });
    expect(readings(strip.pointId)).toEqual([[2600, 1]]);
    await visit('2026-05-01', 3600, {
      sizes: [found(strip.pointId, 11.7, 'front'), found(strip.pointId, 10.6, 'rear')],
    });
    expect(readings(strip.pointId)).toEqual([
      [2600, 1],
      [3600, 1.4],
    ]);
    const point = await pointOf(strip.pointId);
    expect(point.stationRenewals).toEqual([{ station: 'front', takenOn: '2025-05-01', kind: 'new-part' }]);
    expect(point.renewals).toHaveLength(1); // the first fitting: no part as a whole was renewed since
    // with the last old station renewed too, nothing of the old part is left: the new one is as old as its oldest piece
    await visit('2026-06-01', 3700, { renewals: [renewal(strip.pointId, { station: 'rear' })] });
    expect(readings(strip.pointId)).toEqual([[1000, 0.3]]);
  });

  test('with an odd size is kept, its size left out until somebody answers, puts it right or strikes it out', async () => {
    const { pin } = shop;
    const saved = await visit('2025-05-01', 2600, { renewals: [renewal(pin.pointId, { sizeMm: 31 })] });
    expect(saved.parked).toBe(1);
    expect(series(pin.pointId).presentNewSizeMm).toBe(30);
    const asked = async () => (await program.ask(sizesQuestioned, { machineId: shop.machineId })).sizes;
    const [waiting] = await asked();
    expect(waiting).toMatchObject({ sizeId: null, sizeMm: 31, question: { code: 'put-in-larger' } });
    const answered = await program.ask(renewalAnswer, {
      renewalId: waiting!.renewalId!,
      answer: 'right-as-read',
      by: 'Bo',
    });
    expect(await asked()).toEqual([]);
    expect(series(pin.pointId).presentNewSizeMm).toBe(31);
    const right = await program.ask(renewalPutRight, {
      ...answered,
      right: { sizeMm: 30.02 },
      reason: 'a slip',
      by: 'Bo',
    });
    expect(series(pin.pointId).presentNewSizeMm).toBe(30);
    await program.ask(renewalPutRight, { ...right, right: null, reason: 'never done', by: 'Bo' });
    expect(series(pin.pointId).present.ordinal).toBe(0);
    expect(await fault(renewalPutRight, { ...right, right: null, reason: '', by: 'Bo' })).toMatchObject({
      code: 'unknown-renewal',
    });
  });

  test('an oversize put right moves the limits to the right size; struck out, they go back', async () => {
    const { pin } = shop;
    await visit('2025-05-01', 2600, {
      renewals: [renewal(pin.pointId, { kind: 'oversize', sizeMm: 29, stamped: true })],
    });
    expect((await pointOf(pin.pointId)).limits.newSizeMm).toBe(30); // no larger than standard: asked first
    const [waiting] = (await program.ask(sizesQuestioned, { machineId: null })).sizes;
    expect(waiting?.question.code).toBe('not-oversize');
    const right = await program.ask(renewalPutRight, {
      renewalId: waiting!.renewalId!,
      right: { sizeMm: 31 },
      reason: 'misread',
      by: 'Bo',
    });
    expect(await pointOf(pin.pointId)).toMatchObject({
      limits: { newSizeMm: 31, renewAtMm: 30 },
      oversize: { stamped: true },
    });
    await program.ask(renewalPutRight, { ...right, right: null, reason: 'not here', by: 'Bo' });
    expect(await pointOf(pin.pointId)).toMatchObject({ limits: { newSizeMm: 30, renewAtMm: 29 }, oversize: null });
  });
});

describe('a shim', () => {
  test('changes slack and not thickness: wear goes on, the limit is as much further off', async () => {
    const { machineId, pad, play } = await aJoint();
    const sizes = (thickness: number, slack: number) => [found(pad, thickness), found(play, slack)];
    await visit('2024-05-01', 2000, { sizes: sizes(11.2, 1.3) }, machineId);
    await visit('2025-05-01', 2500, { sizes: sizes(11, 1.5), shims: [{ pointId: pad, shimMm: 1 }] }, machineId);
    // 0.7 measured then is 1.7 less the shim: no question, no renewal
    const { questions } = await program.ask(stripDownJudge, {
      ...shop.draft('2026-05-01', 3000),
      machineId,
      sizes: sizes(10.8, 0.7),
    });
    expect(questions).toEqual([]);
    await visit('2026-05-01', 3000, { sizes: sizes(10.8, 0.7) }, machineId);
    expect(readings(pad)).toEqual([
      [2000, 0.8],
      [2500, 1],
      [3000, 1.2],
    ]);
    expect(readings(play)).toEqual([
      [2000, 0.8],
      [2500, 1],
      [3000, 1.2],
    ]);
    expect((await pointOf(play, machineId)).forecast.limitWearMm).toBeCloseTo(3.5, 9);
    expect((await pointOf(pad, machineId)).shims).toEqual([{ takenOn: '2025-05-01', shimMm: 1 }]);
    expect((await pointOf(pad, machineId)).renewals).toHaveLength(1);
  });
});

describe('a joint', () => {
  test('has its slack worked out where pin and bore were measured, measured where they were not, and heard once', async () => {
    const { machineId, bore, pin, slack } = await aJoint();
    await visit('2024-05-01', 2000, { sizes: [found(bore, 40.4), found(pin, 39.8), found(slack, 0.62)] }, machineId);
    // worked out: 40.4 less 39.8; the one felt the same day is shown and left out
    const history = () =>
      series(slack).history.map((one) => [
        one.takenOn,
        one.workedOut ?? false,
        one.governing?.sizeMm.toFixed(2) ?? one.excluded,
      ]);
    expect(history()).toEqual([
      ['2024-05-01', false, 'worked-out'],
      ['2024-05-01', true, '0.60'],
    ]);
    expect(readings(slack)).toEqual([]);
    const worked = await pointOf(slack, machineId);
    expect(worked.forecast.cautions).toContain('slack-from-sizes');
    expect(worked.forecast.wearMm.middle).toBeGreaterThan(0.45);
    const ends = [(await pointOf(bore, machineId)).forecast, (await pointOf(pin, machineId)).forecast];
    const together = ends.reduce((sum, { ratePer1000hMm }) => sum + ratePer1000hMm.middle!, 0);
    expect(worked.forecast.ratePer1000hMm.middle! / together).toBeGreaterThan(0.9);
    expect(worked.forecast.ratePer1000hMm.middle! / together).toBeLessThan(1.1);
    expect(worked.forecast.hoursLeft.middle).toBeGreaterThan(0);
    expect(worked.fan.length).toBeGreaterThan(2);

    // what makes the range wide, of both ends together and of each
    const { width } = await program.ask(forecastWhy, { pointId: slack });
    const { low, high } = worked.forecast.hoursLeft;
    expect(width!.hours / (high! - low!)).toBeCloseTo(1, 6);
    for (const { source, hours } of width!.without) expect(hours / width!.hours, source).toBeLessThan(1.01);
    const lines = widthLines(width!);
    const narrower = (of: string) => lines.find(({ source }) => source === of)?.narrowerShare ?? 0;
    expect(narrower('bore-rate')).toBeGreaterThan(0.1);
    expect(narrower('pin-rate')).toBeGreaterThan(0.02);
    expect(narrower('bore-rate')).toBeGreaterThan(narrower('pin-rate'));
    expect(lines.map(({ name }) => name)).toContain('how fast the bore wears');

    // felt alone: its own size speaks
    await visit('2026-05-01', 3000, { sizes: [found(slack, 0.9)] }, machineId);
    expect(readings(slack)).toEqual([[3000, 0.8]]);
    expect((await pointOf(slack, machineId)).forecast.cautions).not.toContain('slack-from-sizes');
  });

  test('with a new pin goes on from the slack the bore leaves', async () => {
    const { machineId, bore, pin, slack } = await aJoint();
    await visit(
      '2024-05-01',
      2000,
      { sizes: [found(bore, 40.4), found(pin, 39.7)], renewals: [renewal(pin)] },
      machineId,
    );
    const { presentNewSizeMm, present } = series(slack);
    expect([present.ordinal, Number(presentNewSizeMm.toFixed(3))]).toEqual([1, 0.4]);
    const { forecast } = await pointOf(slack, machineId);
    expect(forecast.cautions).toContain('slack-carries-on');
    expect(forecast.limitWearMm).toBeCloseTo(1.1, 9);
  });

  test('of an assembly that stands is taken back and said again; undo gives it back', async () => {
    const { machineId, bore, pin, slack, play } = await aJoint();
    const assemblyId = (await pointOf(slack, machineId)).assemblyId;
    const sizes = [found(bore, 40.4), found(pin, 39.7)];
    await visit('2024-05-01', 2000, { sizes }, machineId);
    const workedOut = async () => (await pointOf(slack, machineId)).visits.length;
    expect(await workedOut()).toBe(1);
    const { points, joints } = await program.ask(assemblyJoints, { assemblyId });
    expect(points.map(({ pointId, part }) => [pointId, part])).toEqual([
      [bore, 'bore'],
      [pin, 'pin'],
      [slack, 'slack'],
      [play, 'slack'],
    ]);
    expect(joints).toMatchObject([{ slackPointId: slack, pinPointId: pin, borePointIds: [bore] }]);
    const save = (asked: typeof joints) => program.ask(assemblySaveJoints, { assemblyId, joints: asked, by: 'Bo' });
    expect(await save(joints)).toEqual({ struck: 0, laidOut: 0 });

    // slack of the pin no longer follows from what is measured at it
    expect(await save([])).toEqual({ struck: 1, laidOut: 0 });
    expect(await workedOut()).toBe(0);
    expect(await save(joints)).toEqual({ struck: 0, laidOut: 1 });
    expect(await workedOut()).toBe(1);
    const { undoableEntryId } = await program.ask(entriesList, { beforeEntryId: null, limit: 1 });
    await program.ask(entriesUndoLast, { entryId: undoableEntryId!, by: 'Bo' });
    expect(await workedOut()).toBe(0);

    const odd = { slackPointId: slack, pinPointId: bore, borePointIds: [bore] };
    expect(await fault(assemblySaveJoints, { assemblyId, joints: [odd], by: 'Bo' })).toMatchObject({
      code: 'joint-point-other',
      path: 'joints.0.pinPointId',
    });
    const twice = { slackPointId: slack, pinPointId: pin, borePointIds: [bore, bore] };
    expect(await fault(assemblySaveJoints, { assemblyId, joints: [twice], by: 'Bo' })).toMatchObject({
      code: 'joint-twice',
    });
  });

  test('of points that are none is refused', async () => {
    const request = aTakeIn({ name: 'Third' });
    const end = { item: 2, point: 'diameter' };
    const joints = [{ slack: end, pin: end, bores: [end] }];
    expect(
      await fault(machineTakeIn, { ...request, assemblies: request.assemblies.map((one) => ({ ...one, joints })) }),
    ).toMatchObject({ code: 'joint-point-other', path: 'assemblies.0.joints.0.slack' });
  });
});

test('hook, eye and ball have no limit of ours: the shop enters its maker’s', () => {
  const towing = builtInAssemblyKinds.flatMap(({ positions }) =>
    positions.filter(({ name }) => /^(hook|ring|lower link hook, (left|right))$/i.test(name)),
  );
  expect(towing.length).toBeGreaterThanOrEqual(4);
  for (const { points, mustStayStandard } of towing) {
    expect(mustStayStandard).toBe(true);
    for (const point of points)
      expect([point.renewAtMm, point.rejectAtMm, point.limitSource]).toEqual([null, null, null]);
  }
});

/** U of a worn, cleaned part in a shop [mm], from and to. Common practice, no source: what a new record starts with. */
const SHOP_U: [name: string, measures: string, from: number, to: number][] = [
  ['Outside micrometer', 'diameter', 0.01, 0.02],
  ['Outside micrometer', 'thickness', 0.02, 0.02],
  ['Vernier on a pin', 'diameter', 0.05, 0.05],
  ['Vernier calliper', 'thickness', 0.05, 0.1],
  ['Vernier calliper', 'section', 0.1, 0.1],
  ['Two-point bore gauge', 'bore', 0.02, 0.02],
  ['Telescopic gauge and micrometer', 'bore', 0.03, 0.06],
  ['Vernier calliper, inside jaws', 'bore', 0.08, 0.15],
  ['Three-jaw micrometer, round bores', 'bore', 0.01, 0.01],
  ['Dial gauge and bar', 'slack', 0.05, 0.05],
  ['Feeler gauge', 'slack', 0.05, 0.1],
  ['Template and depth gauge', 'depth', 0.2, 0.3],
];

test('a new record’s gauges have the errors of a shop, kept as one sd', async () => {
  const { gauges } = await program.ask(shopRead, {});
  for (const [name, measures, from, to] of SHOP_U) {
    const gauge = gauges.find((one) => one.name === name)!;
    expect(gauge.measures).toContain(measures);
    expect(2 * gauge.errorMm).toBeGreaterThanOrEqual(from);
    expect(2 * gauge.errorMm).toBeLessThanOrEqual(to);
  }
});
