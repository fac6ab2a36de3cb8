import { zNewAssembly } from '../contract/machine.ts';
import { HAND_OVER_CHECKS, type RebuildWork, zRebuildWork } from '../contract/rebuild.ts';
import { type RepairFacts, zRepairOption } from '../contract/repair.ts';
import { assertInvariant, orRefuse } from '../outcome.ts';
import { writeEntry } from '../record/entry.ts';
import { machineNames } from '../record/machineStore.ts';
import {
  insertRebuild,
  insertRebuildLine,
  insertRebuildStep,
  type RebuildStepKind,
  saveRates,
} from '../record/rebuildStore.ts';
import type { WritableRecord } from '../record/recordFile.ts';
import { saveRepairChoice, saveRepairFacts } from '../record/repairStore.ts';
import { insertSize } from '../record/sizeStore.ts';
import { insertStripDown } from '../record/stripDownStore.ts';
import { repairOptions } from '../repair/options/repairOptions.ts';
import { frontLoader } from '../shop/assembly-kinds/frontLoader.ts';
import { type Day, day } from '../units/day.ts';
import { type Context, entryNow, lifeOf, recordOf } from './context.ts';
import { layOutAssembly } from './layOutAssembly.ts';
import { ownerNow } from './rebuild/rebuildSheet.ts';
import { workOfRepair } from './rebuild/workOfRepair.ts';
import { jointPoints } from './repair/jointPoints.ts';
import { treeOf, wornJoint } from './repair/repairSheet.ts';
import { shopGoesBy } from './repair/shopFigures.ts';
import { usualFacts } from './repair/usualFacts.ts';
import { writeRenewal } from './writeRenewal.ts';

/** The invented jobs of the demo, and everything in them: another version of them is another demo. */
export const DEMO_JOBS_VERSION = '1';

/** The last day anything of them is dated. */
const LAST_DAY = day('2026-10-28');
const BY = 'Demo fitter';

/**
 * Two jobs of the demo workshop, all of it invented: one handed over, on a joint that was measured, bored and given a stamped
 * oversize pin; one open, with a repair chosen and a bent rod. Written past the desk: a person's entries are judged against the whole shop, which
 * takes long in a record nobody has opened yet.
 * @returns false: the day is before they happen, and none is laid
 */
export function layDemoJobs(context: Context): boolean {
  if (context.today() < LAST_DAY) return false;
  const machines = new Map([...machineNames(recordOf(context))].map(([id, name]) => [name, id]));
  const machine = (name: string): number => {
    const id = machines.get(name);
    assertInvariant(id !== undefined, `the demo has a machine ${name}`);
    return id;
  };
  const write = <T>(write: (w: WritableRecord, entryId: number) => T): T =>
    writeEntry(recordOf(context), entryNow(context, 'record/openDemo', BY), write);
  write((w, entryId) => saveRates(w, entryId, RATES));
  layClosedJob(context, write, machine('Tillmere 96-4'));
  layOpenJob(context, write, machine('Durvane 412 no. 2'));
  return true;
}

const RATES = { currency: 'EUR', hourPrice: 62, stripAndReportPrice: 190 };
type Write = <T>(write: (w: WritableRecord, entryId: number) => T) => T;

const NOTHING: Omit<RebuildWork, 'positionId' | 'what'> = {
  ...{ option: '', takeOffs: [], ownHours: 0, partsPrice: 0, cuts: [], makes: [], renews: [], safety: false },
  ...{ pressing: null, cautions: [] },
};

/** The carrier pivot of a loader: pin and bush measured, bored out, an oversize pin stamped. */
function layClosedJob(context: Context, write: Write, machineId: number): void {
  const item = 10;
  const assembly = {
    ...{ kind: frontLoader.name, name: 'Front loader', serial: '', fittedMachineHours: null },
    positions: frontLoader.positions.filter((position) => position.item === item),
    joints: (frontLoader.joints ?? []).filter(({ slack }) => slack.item === item),
  };
  const on = { machineId, from: day('2021-02-15'), enteredBy: '' };
  const assemblyId = write((w, entryId) => layOutAssembly(w, entryId, on, zNewAssembly.parse(assembly)));
  const points = lifeOf(context).points.filter((point) => point.assemblyId === assemblyId);
  const pointOf = (name: string) => {
    const found = points.find(({ point }) => point === name);
    assertInvariant(found !== undefined, `the pivot has a ${name}`);
    return found;
  };
  const [bore, pin] = [pointOf('bush bore'), pointOf('pin diameter')];
  const [found, left] = [day('2026-09-22'), day('2026-09-30')];
  const work = zRebuildWork.parse({
    ...NOTHING,
    ...{ positionId: bore.positionId, option: 'oversize-pin', what: 'Bore, and fit an oversize pin', ownHours: 3.2 },
    takeOffs: [{ name: 'Carrier off', hours: 0.8 }],
    cuts: [{ what: `${bore.position}: bore to 37`, centre: 'on the old centre', lowerMm: 37.05, upperMm: 37.15 }],
    makes: [
      {
        ...{ kind: 'pin', what: bore.position, material: 'steel', count: 1, outsideMm: 37, insideMm: null },
        ...{ lengthMm: 140, widthMm: null, limits: 'outside 37 f7 (36.950 to 36.975)', stock: 'round Ø40 × 142' },
        ...{ bought: false, leadDays: null },
      },
    ],
    renews: [
      { pointId: bore.pointId, kind: 'oversize', lowerMm: 37.05, upperMm: 37.15 },
      { pointId: pin.pointId, kind: 'oversize', lowerMm: 36.95, upperMm: 36.975 },
    ],
    cautions: ['props', 'oversize'],
  });
  write((w, entryId) => {
    const visit = (takenOn: Day, note: string) =>
      insertStripDown(w, entryId, { machineId, takenOn, dialHours: null, dialReadingId: null, fitter: BY, note });
    const size = (
      stripDownId: number,
      pointId: number,
      station: string,
      event: 'as-found' | 'as-left',
      sizeMm: number,
    ) =>
      insertSize(w, entryId, {
        ...{ stripDownId, pointId, station, event, sizeMm, gaugeId: null, gaugeErrorMm: 0.025, gaugeStepMm: 0.01 },
        ...{ parked: false, question: null },
      });
    const opened = visit(found, 'Pivot dry, grease hole blocked.');
    size(opened, bore.pointId, 'A', 'as-found', 36.42);
    size(opened, bore.pointId, 'B', 'as-found', 36.05);
    size(opened, pin.pointId, '', 'as-found', 34.36);
    const shut = visit(left, 'Size stamped on pin and boss.');
    for (const [point, sizeMm] of [
      [bore, 37.09],
      [pin, 36.96],
    ] as const) {
      size(shut, point.pointId, '', 'as-left', sizeMm);
      const renewal = { stripDownId: shut, pointId: point.pointId, hoursKnown: true, sizeMm, stamped: true };
      writeRenewal(w, entryId, point, { ...renewal, kind: 'oversize' }, { takenOn: left, fitter: BY });
    }
    const rebuildId = insertRebuild(w, entryId, {
      ...{ number: 'J26-001', machineId, customerId: ownerNow(context, machineId), takenInOn: day('2026-09-21') },
      ...{ wantedBy: day('2026-10-05'), dialHours: null, comebackOfId: null },
      complaint: 'The bale spike hangs to the right and knocks over every rut.',
      ...{ whereabouts: 'in-the-yard', whereaboutsNote: 'by the press' },
    });
    const lineId = insertRebuildLine(w, entryId, { rebuildId, positionId: bore.positionId, work, stands: 'agreed' });
    const step = (kind: RebuildStepKind, saidOn: Day, saidBy: string, facts: object, ofLine: number | null = null) =>
      insertRebuildStep(w, entryId, { rebuildId, lineId: ofLine, kind, saidOn, saidBy, facts });
    const agreedOn = day('2026-09-23');
    step('quote', agreedOn, BY, quoteOf([work], agreedOn));
    const said = { saidOn: agreedOn, saidBy: 'The farmer', how: 'by-telephone', by: BY, agreed: 1, declined: 0 };
    step('approval', agreedOn, 'The farmer', said);
    step('bored', left, BY, { cut: 0, sizeMm: 37.09 }, lineId);
    for (const check of HAND_OVER_CHECKS) {
      const answer = check === 'driver-indicator' || check === 'latch-under-load' ? 'does-not-apply' : 'done';
      step('check', left, BY, { check, answer });
    }
    step('handed-over', left, BY, {
      note: 'Size stamped on pin and boss.',
      left: [
        { pointId: bore.pointId, sizeMm: 37.09 },
        { pointId: pin.pointId, sizeMm: 36.96 },
      ],
    });
  });
}

/** Hours at the demo's rates, each take-off once. */
function quoteOf(works: readonly RebuildWork[], madeOn: Day) {
  const priced = (what: string, hours: number) => ({ what, hours, parts: 0, price: hours * RATES.hourPrice });
  const lines = works.flatMap(({ takeOffs, what, ownHours }) => [
    ...takeOffs.map(({ name, hours }) => priced(name, hours)),
    priced(what, ownHours),
  ]);
  const hours = lines.reduce((sum, line) => sum + line.hours, 0);
  const { currency, hourPrice } = RATES;
  return { kind: 'work', madeOn, by: BY, currency, hourPrice, lines, hours, price: hours * hourPrice };
}

/** What the bench says of a boom foot whose slack alone was on record. */
const WORN_BOOM_FOOT: Partial<RepairFacts> = {
  ...{ standardMm: 45, newBoreMm: 45, gauge: 'two-point', axesMm: [46.1, 45.78, 45, 45.78], wornTowards: 'rear' },
  ...{ datum: 'unworn-lip', mayMoveMm: 0.8, bossOutsideMm: 92, bossLengthMm: 60, material: 'structural-steel' },
  ...{ plate: 'sound', pinMm: 44.2, pinLengthMm: 180, nylonNear: false, forgedOrHeatTreated: false },
};

/** A boom foot to be bored and bushed, chosen on its repair sheet. */
function layOpenJob(context: Context, write: Write, machineId: number): void {
  const record = recordOf(context);
  const now = { shop: { life: lifeOf(context) }, asOf: context.today() };
  const foot = now.shop.life.points.find(
    (point) => point.machineId === machineId && point.position === 'Boom foot pin, left',
  );
  assertInvariant(foot !== undefined, 'the demo loader has a boom foot');
  const { positionId, item, position, safety, assemblyId } = foot;
  const points = jointPoints(record, now, positionId);
  const facts = { ...usualFacts(now, points, shopGoesBy(record).figures), ...WORN_BOOM_FOOT };
  // without a forecast: the classes are not learned yet
  const worked = orRefuse(repairOptions(wornJoint(record, now, points, facts, []), () => null));
  const bush = worked.options.find(({ choice }) => choice === 'bush');
  assertInvariant(bush !== undefined && bush.closed.length === 0, 'the demo boom foot may be bushed');
  const option = zRepairOption.parse({ ...bush, off: [...bush.off] });
  const work = workOfRepair(option, { positionId, item, position, safety, points, tree: treeOf(record, assemblyId) });
  write((w, entryId) => {
    saveRepairFacts(w, entryId, positionId, facts);
    saveRepairChoice(w, entryId, { positionId, chosenOn: LAST_DAY, choice: 'bush', option });
    const rebuildId = insertRebuild(w, entryId, {
      ...{ number: 'J26-002', machineId, customerId: ownerNow(context, machineId), takenInOn: day('2026-10-26') },
      ...{ wantedBy: day('2027-01-20'), dialHours: null, comebackOfId: null },
      complaint: 'The loader rocks at the left foot, worst with a full bucket.',
      ...{ whereabouts: 'at-the-farm', whereaboutsNote: 'fetched once the bales are in' },
    });
    insertRebuildLine(w, entryId, { rebuildId, positionId, work, stands: 'agreed' });
    const step = (kind: RebuildStepKind, saidBy: string, facts: object) =>
      insertRebuildStep(w, entryId, { rebuildId, lineId: null, kind, saidOn: LAST_DAY, saidBy, facts });
    step('quote', BY, quoteOf([work], LAST_DAY));
    const said = { saidOn: LAST_DAY, saidBy: 'The farmer', how: 'in-person', by: BY, agreed: 1, declined: 0 };
    step('approval', 'The farmer', said);
  });
}
