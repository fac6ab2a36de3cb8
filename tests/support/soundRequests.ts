import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { customerMerge } from '#core/contract/customer.ts';
import { jobsStart, jobsState } from '#core/contract/jobs.ts';
import { machineRead, machineTakeIn } from '#core/contract/machine.ts';
import { oldSheetsSave, sizesQuestioned } from '#core/contract/oldSheets.ts';
import { photoKeep } from '#core/contract/photo.ts';
import { planAdd, planAwaySave } from '#core/contract/plan.ts';
import { ratesSave, rebuildLineSave, rebuildTakeIn } from '#core/contract/rebuild.ts';
import { contactAdd, quietAdd } from '#core/contract/recall.ts';
import { recordBackUp, recordBackups } from '#core/contract/record.ts';
import { repairRead, repairSaveFacts } from '#core/contract/repair.ts';
import { shopRead } from '#core/contract/shop.ts';
import { slideRead } from '#core/contract/slide.ts';
import { slipMake } from '#core/contract/slip.ts';
import { findingAdd, findingDecline, stripDownSave } from '#core/contract/stripDown.ts';
import { aHitchInHalves, aShopWithAHitch, aSize, aSlide, aTakeIn } from './aHitch.ts';
import { aJpeg, base64Of } from './aJpeg.ts';
import type { Program } from './aProgram.ts';
import { aWornHole } from './aWornHole.ts';
import { COARSE } from './coarseForecasts.ts';

const MACHINES_SHEET = 'machine,customer\nM8,Hill Farm\n';

/** A job with one line of work on it, and a sound request for each operation on jobs. */
async function aJob(program: Program, machineId: number, positionId: number, photos: { first: number; spare: number }) {
  const taken = {
    takenInOn: '2026-10-02',
    wantedBy: null,
    complaint: 'It rattles.',
    dialHours: null,
    comeback: true,
    by: 'Bo',
  };
  const { rebuildId } = await program.ask(rebuildTakeIn, { ...taken, machineId });
  const work = {
    ...{ positionId, option: '', what: 'New strip', takeOffs: [{ name: 'carrier out', hours: 1 }], ownHours: 0.3 },
    ...{ partsPrice: 40, makes: [], renews: [], safety: false, cautions: [] },
    cuts: [{ what: 'Bore', centre: '', lowerMm: 30, upperMm: 31 }],
  };
  const { lineId } = await program.ask(rebuildLineSave, { rebuildId, lineId: null, work, by: 'Bo' });
  const { rebuildId: other } = await program.ask(rebuildTakeIn, { ...taken, machineId });
  const rates = { currency: 'EUR', hourPrice: 60, stripAndReportPrice: 150, by: 'Bo' };
  await program.ask(ratesSave, rates);
  const { lineId: spare } = await program.ask(rebuildLineSave, { rebuildId, lineId: null, work, by: 'Bo' });
  const { rebuildId: pictured } = await program.ask(rebuildTakeIn, { ...taken, machineId, photoIds: [photos.first] });
  const bent = {
    ...{ rebuildId, positionId: null },
    bar: { section: { shape: 'round', diameterMm: 60 }, yieldMpa: 355, spanMm: 500, bowMm: 4 },
    part: {
      ...{ kind: 'other', towingOrLifting: false, crack: false, forgedOrHeatTreated: false },
      ...{ straightenedBefore: false, procedure: null },
    },
  };
  const said = { saidOn: '2026-11-01', saidBy: 'The farmer', how: 'in-person', agreed: [lineId], declined: [] };
  const over = { handedOverOn: '2026-11-01', dialHours: null, sizes: [], renewals: [], note: '', sure: false };
  return {
    requests: {
      'rebuilds/list': {},
      'rebuild/read': { rebuildId },
      'rebuild/takeIn': { ...taken, machineId },
      'rebuild/change': { rebuildId, wantedBy: '2026-12-01', complaint: 'It knocks.', reason: 'misheard', by: 'Bo' },
      'rebuild/lineSave': { rebuildId, lineId: null, work: { ...work, positionId: null }, by: 'Bo' },
      'rebuild/lineStrike': { lineId: spare, reason: 'not wanted', by: 'Bo' },
      'rebuild/addPhotos': { rebuildId, photoIds: [photos.spare], by: 'Bo' },
      'rebuild/strikePhoto': { rebuildId: pictured, photoId: photos.first, reason: 'of another machine', by: 'Bo' },
      'rebuild/lookAtBent': bent,
      'rebuild/takeStraighten': { ...bent, what: 'Lift arm', by: 'Bo' },
      'rebuild/takeChosen': { rebuildId, by: 'Bo' },
      'rebuild/quote': { rebuildId, kind: 'work', fixedPrice: null, by: 'Bo' },
      'rebuild/approve': { rebuildId, ...said, by: 'Bo' },
      'rebuild/bored': { lineId, cut: 0, sizeMm: 30.5, sure: false, by: 'Bo' },
      'rebuild/check': { rebuildId, check: 'greased', answer: 'done', by: 'Bo' },
      'rebuild/handOver': { rebuildId: other, ...over, by: 'Bo' },
      'rebuild/paper': { rebuildId, paper: 'job-card' },
      'rates/read': {},
      'rates/save': rates,
    },
  };
}

/** Visits on the plan, one for each thing done with one, and a sound request for each operation on it. */
async function aPlan(program: Program, customerId: number, machineId: number, positionIds: number[]) {
  const add = async (name: string) => {
    const machine = { ...aTakeIn({ name }), customerId, customer: null };
    const { machineId: other } = await program.ask(machineTakeIn, machine);
    const { points } = await program.ask(machineRead, { machineId: other });
    const ids = points.map(({ positionId }) => positionId);
    const visit = { machineId: other, positionIds: ids, weekFrom: '2026-11-23', by: 'Bo' };
    return { ...(await program.ask(planAdd, visit)), machineId: other, positionIds: ids };
  };
  const moved = await add('Tractor to move');
  const split = await add('Tractor to split');
  const done = await add('Tractor done');
  const away = { customerId, fromOn: '2026-12-01', toOn: '2026-12-08', note: 'in Spain', by: 'Bo' };
  const { awayId } = await program.ask(planAwaySave, away);
  const { visitId } = moved;
  return {
    'plan/read': {},
    'plan/move': { visitId, weekFrom: '2026-11-30', by: 'Bo' },
    'plan/pin': { visitId, pinned: true, by: 'Bo' },
    'plan/agree': { visitId, saidBy: 'The farmer', promisedOn: '2026-12-18', note: '', by: 'Bo' },
    'plan/postpone': { visitId, reason: 'next year', sure: true, by: 'Bo' },
    'plan/atFarm': { visitId, atFarm: true, by: 'Bo' },
    'plan/book': { machineId: moved.machineId, on: '2026-12-10', saidBy: 'The farmer', note: '', by: 'Bo' },
    'plan/done': { visitId: done.visitId, by: 'Bo' },
    'plan/split': { visitId: split.visitId, positionIds: split.positionIds.slice(0, 1), by: 'Bo' },
    'plan/add': { machineId, positionIds, weekFrom: null, by: 'Bo' },
    'plan/settingsSave': {
      ...{ changed: { breakdownHours: 40 }, reason: 'dearer now', by: 'Bo' },
      renewals: [{ partClass: 'Nylon slide strip', ownHours: 0.4, partsHours: 0.8 }],
    },
    'plan/weekSave': { weekFrom: '2026-12-21', benchHours: 16, note: 'Christmas', by: 'Bo' },
    'plan/awaySave': away,
    'plan/awayStrike': { awayId, reason: 'stays at home', by: 'Bo' },
  };
}

const base64 = (text: string): string => Buffer.from(text).toString('base64');

const lug = (boreMm: number, thicknessMm: number) => ({ boreMm, thicknessMm, widthMm: 100, endMm: 50 });

/** One sound request for each operation, on a shop with a small hitch in it; asked as they are, all would be answered. */
export async function aHitchesRequests(program: Program): Promise<Record<string, Record<string, unknown>>> {
  const { machineId, customerId, strip, pin, draft, sheet } = await aShopWithAHitch(program);
  const { assemblyId, positionId } = strip;
  const photo = () => program.ask(photoKeep, { jpegBase64: base64Of(aJpeg()) });
  const [shown, kept, spare] = [await photo(), await photo(), await photo()];
  const photoIds = [shown.photoId];
  const seen = { kind: 'crack' as const, severity: 'watch' as const, note: 'seen with dye', photoIds };
  const crack = { assemblyId, positionId, ...seen };
  const halved = await aHitchInHalves(program, 'Tractor in halves');
  const { findingId } = await program.ask(findingAdd, { ...crack, takenOn: '2026-05-02', by: 'Bo' });
  const said = { findingId, saidOn: '2026-05-03', saidBy: 'The farmer', words: 'Leave it.', by: 'Bo' };
  const { declineId } = await program.ask(findingDecline, said);
  const questioned = {
    ...draft('2026-05-01', 3100),
    sizes: [aSize(pin.pointId, 295), aSize(strip.pointId, 11, 'front')],
    renewals: [
      { pointId: pin.pointId, sizeMm: 305, hoursKnown: true },
      { pointId: strip.pointId, sizeMm: 121, hoursKnown: true, station: 'front' },
    ],
  };
  const { stripDownId } = await program.ask(stripDownSave, { ...questioned, dialSure: false });
  const [atJob, forJob] = [await photo(), await photo()];
  const job = await aJob(program, machineId, positionId, { first: atJob.photoId, spare: forJob.photoId });
  const plan = await aPlan(program, customerId, machineId, [positionId]);
  // customers: a double to be merged, one merged already, and one to be erased
  const bought = async (name: string) => {
    const customer = { name, place: '', address: '', phone: '', email: '' };
    const machine = aTakeIn({ name: `Tractor of ${name}` });
    return (await program.ask(machineTakeIn, { ...machine, customer, dial: null, assemblies: [] })).customerId;
  };
  const [doubleId, mergedId, strangerId] = [await bought('Hill Frm'), await bought('Hill'), await bought('A Stranger')];
  const { customer: details } = aTakeIn();
  const merge = { customerId: mergedId, intoCustomerId: customerId, details: details!, by: 'Bo' };
  const { mergeId } = await program.ask(customerMerge, merge);
  const ownershipId = (await sheet()).owners[0]?.ownershipId;
  const repairFacts = aWornHole((await program.ask(repairRead, { positionId: pin.positionId })).facts);
  await program.ask(repairSaveFacts, { positionId: pin.positionId, facts: repairFacts, by: 'Bo' });
  const slideId = await aSlide(program);
  const slide = {
    ...{ assemblyId: slideId, spanMm: 500, overhangMm: 400, newPlayMm: 0.4, headsBareAtMm: 6 },
    ...{ channelFrontMm: 0, channelRearMm: 0, endsAlike: true },
    choice: { 'top-front': 'renew', 'top-rear': 'leave', 'bottom-front': 'renew', 'bottom-rear': 'leave' },
  } as const;
  const { assemblyId: _, choice: __, ...slideFacts } = slide;
  const slideJob = await program.ask(rebuildTakeIn, {
    ...{ machineId: (await program.ask(slideRead, slide)).machineId, takenInOn: '2026-10-02', wantedBy: null },
    ...{ complaint: 'The carrier is loose.', dialHours: null, comeback: false, by: 'Bo' },
  });
  const contact = {
    ...{ customerId, machineIds: [machineId], madeOn: '2026-11-02', way: 'phone' as const, slipId: null },
    ...{ saidBy: 'The farmer', note: 'Ring again.', answer: 'later' as const, answerOn: '2026-12-01' },
    ...{ callBackOn: null, by: 'Bo' },
  };
  const [contactId] = (await program.ask(contactAdd, contact)).contactIds;
  const quiet = { customerId, fromOn: '2027-01-01', toOn: '2027-01-07', why: 'away', by: 'Bo' };
  const { quietId } = await program.ask(quietAdd, quiet);
  // the two last entries: what takes one back asks for the last
  const oldSheet = (day: string, dialHours: number) => ({
    ...draft(day, dialHours),
    sizes: [aSize(pin.pointId, 29.9)],
    dialSure: false,
  });
  const before = await program.ask(oldSheetsSave, oldSheet('2023-01-10', 1500));
  const last = await program.ask(oldSheetsSave, oldSheet('2024-01-10', 2000));
  const { points, dialRows } = await sheet();
  const sizes = points.flatMap(({ visits }) => visits.flatMap(({ stations }) => stations));
  const sizeId = sizes.find(({ parked }) => !parked)?.sizeId;
  const parkedId = sizes.find(({ parked }) => parked)?.sizeId;
  const waiting = (await program.ask(sizesQuestioned, { machineId })).sizes;
  const [renewalId, otherRenewalId] = waiting.flatMap((one) => one.renewalId ?? []);
  const dialReadingId = dialRows[0]?.dialReadingId;
  const { settings, gauges, kinds } = await program.ask(shopRead, {});
  const { slipId } = await program.ask(slipMake, { machineId, by: 'Bo' });
  await program.ask(recordBackUp, {});
  const backup = (await program.ask(recordBackups, {})).backups[0]?.file;
  const kind = kinds[0];
  const gaugeId = gauges[0]?.gaugeId;
  const takeIn = aTakeIn({ name: 'Tractor 2' });
  const typed = {
    ...draft('2026-11-01', 3400),
    sizes: [{ ...aSize(strip.pointId, 10.9, 'front'), gaugeId }],
    renewals: [{ pointId: pin.pointId, sizeMm: 31, hoursKnown: true, kind: 'oversize', stamped: true }],
    shims: [{ pointId: strip.pointId, shimMm: 0.5 }],
    findings: [crack],
  };
  const sheetPath = join(program.folder, 'machines.csv');
  writeFileSync(sheetPath, MACHINES_SHEET);
  const oneSheet = {
    file: { path: sheetPath, fileId: null },
    sheet: null,
    noun: 'machines' as const,
    mapping: {
      columns: [
        { column: 'machine', place: 0, fixed: '', unit: null },
        { column: 'customer', place: 1, fixed: '', unit: null },
      ],
      dateOrder: 'ymd' as const,
      decimalMark: '.' as const,
      headRow: 1,
    },
    dryRun: true,
  };
  const { jobId } = await program.ask(jobsStart, { job: { kind: 'bring-in-sheet', ask: oneSheet } });
  while ((await program.ask(jobsState, { jobId })).state === 'running') await setTimeout(20);
  const limits = { newSizeMm: 12, newSizeTolMm: 0.2, renewAtMm: 9, rejectAtMm: 8, source: 'own rule' };
  return {
    'record/state': {},
    'record/startEmpty': { path: `${program.folder}/other.hoursandwear` },
    'record/openDemo': {},
    'record/open': { path: backup },
    'record/bringIn': { files: [{ name: 'machines.csv', base64: base64('machine\nM9\n') }], dryRun: false },
    'record/backUp': {},
    'record/backups': {},
    'record/backupFolder': { folder: null },
    'record/restorePreview': { file: backup },
    'record/restore': { file: backup },
    'record/confirmPlace': { synced: false },
    'machines/list': { atOnce: true },
    'machines/order': { find: '', atOnce: true },
    'machines/lines': { machineIds: [machineId] },
    'machines/names': {},
    'machines/stopped': {},
    'machine/read': { machineId },
    'machine/takeIn': { ...takeIn, customerId, customer: null },
    'machine/change': { machineId, name: 'Tractor 1', make: '', model: '', serial: '', builtYear: 2015, note: '' },
    'assembly/add': { machineId, from: '2026-01-01', assembly: { ...takeIn.assemblies[0], name: 'Second hitch' } },
    'assembly/move': { assemblyId, takenOn: '2026-11-01', dialHours: 3400, toMachineId: null, toDialHours: null },
    'assembly/halves': { assemblyId: halved.assemblyId },
    'assembly/joints': { assemblyId },
    'assembly/saveJoints': { assemblyId, joints: [], by: 'Bo' },
    'assembly/moveHalf': {
      positionIds: halved.carrier,
      takenOn: '2026-11-01',
      dialHours: null,
      toAssemblyId: null,
      toDialHours: null,
      theirs: null,
    },
    'point/limits': { pointId: strip.pointId, from: '2026-11-01', ...limits, enteredBy: 'Bo' },
    'customers/list': {},
    'customers/sheet': {},
    'customer/change': { customerId, ...takeIn.customer, phone: '12', by: 'Bo' },
    'customer/merge': { customerId: doubleId, intoCustomerId: customerId, details: takeIn.customer, by: 'Bo' },
    'customer/part': { mergeId, reason: 'two farms', by: 'Bo' },
    'customer/export': { customerId },
    'customer/erasePreview': { customerId: strangerId, words: ['Stranger'] },
    'customer/erase': { customerId: strangerId, words: ['Stranger'], typedName: 'A Stranger', by: 'Bo' },
    'machine/sellOn': {
      machineId,
      fromOn: '2026-11-01',
      customerId: null,
      customer: { ...takeIn.customer, name: 'Low Farm' },
      by: 'Bo',
    },
    'owner/putRight': { ownershipId, fromOn: null, customerId, reason: 'a slip', by: 'Bo' },
    'hours/add': {
      machineId,
      takenOn: '2026-11-01',
      kind: 'new-meter',
      dialHours: 3400,
      newDialHours: 0,
      errorHours: 5,
      saidBy: 'Bo',
      sure: false,
    },
    'hours/putRight': { dialReadingId, takenOn: '2022-01-11', dialHours: 1001, reason: 'a slip', by: 'Bo' },
    'hours/meter': { machineId, meterDigits: 5, hoursBefore: null, hoursPerDialHour: 0.9, reason: 'clock', by: 'Bo' },
    'hours/share': {
      machineId,
      workShareId: null,
      is: { from: '2025-01-01', share: 0.8, workType: 'silage' },
      reason: '',
      by: 'Bo',
    },
    'hours/source': {
      machineId,
      hoursSourceId: null,
      is: { kind: 'yearly', from: '2026-06-01', hoursPerYear: 300, errorShare: null },
      reason: '',
      by: 'Bo',
    },
    'stripDown/sheet': { machineId },
    'stripDown/keep': typed,
    'stripDown/discard': { machineId },
    'stripDown/judge': typed,
    'stripDown/save': { ...typed, dialSure: false },
    'renewal/answer': { renewalId, answer: 'right-as-read', by: 'Bo' },
    'renewal/putRight': { renewalId: otherRenewalId, right: { sizeMm: 30.5 }, reason: 'a slip', by: 'Bo' },
    'size/putRight': { sizeId, sizeMm: 11.1, reason: 'a slip', by: 'Bo' },
    'size/answer': { sizeId: parkedId, answer: 'right-as-read', by: 'Bo' },
    'finding/add': { ...crack, takenOn: '2026-11-01', by: 'Bo' },
    'finding/close': { findingId, closedOn: '2026-11-01', outcome: 'renewed', by: 'Bo' },
    'finding/decline': { findingId, saidOn: '2026-11-01', saidBy: 'The farmer', words: 'Not this year.', by: 'Bo' },
    'finding/strikeDecline': { declineId, reason: 'said of another hitch', by: 'Bo' },
    'finding/addPhotos': { findingId, photoIds: [kept.photoId], by: 'Bo' },
    'finding/strikePhoto': { findingId, photoId: shown.photoId, reason: 'out of focus', by: 'Bo' },
    'photo/keep': { jpegBase64: base64Of(aJpeg()) },
    'photo/read': { photoId: shown.photoId },
    'photo/drop': { photoId: spare.photoId },
    ...job.requests,
    ...plan,
    'forecast/all': { asOf: '2026-11-01' },
    'forecast/why': { pointId: strip.pointId, asOf: '2026-11-01' },
    'check/read': {},
    'check/explain': { pointId: strip.pointId, takenOn: '2026-05-01' },
    'check/worth': { machineId },
    'fit/read': { fit: '50 H7/g6' },
    'fit/press': {
      ...{ fit: '50 H7/s6', bossOutsideMm: 80, bushBoreMm: 40, lengthMm: 45, roomC: 20, lubrication: 'dry' },
      roughnessUm: { bossRzUm: 10, bushRzUm: 6.3 },
      ...{ bushBoreClass: 'E6', wantedBoreClass: 'H9', bossMaterial: 'structural-steel', bushMaterial: 'tin-bronze' },
      ...{ bossYieldMpa: 420, bushYieldMpa: null },
    },
    'joint/compare': {
      asDrawn: { pinMm: 50, eye: lug(50, 60), fork: lug(50, 25), gapEachSideMm: 0.5 },
      repaired: { pinMm: 52, eye: lug(52, 60), fork: lug(52, 25), gapEachSideMm: 1 },
      ...{ forceN: 60_000, comesOut: true },
      steel: { pinYieldMpa: 650, pinUltimateMpa: 900, lugYieldMpa: 355 },
    },
    'fit/straighten': {
      bar: { section: { shape: 'rectangle', widthMm: 60, depthMm: 80 }, yieldMpa: 355, spanMm: 500, bowMm: 12 },
      part: {
        ...{ kind: 'other', towingOrLifting: false, crack: false, forgedOrHeatTreated: false },
        ...{ straightenedBefore: false, procedure: null },
      },
    },
    'repair/read': { positionId: pin.positionId },
    'repair/saveFacts': { positionId: pin.positionId, facts: repairFacts, by: 'Bo' },
    'repair/cutList': { machineId },
    'repair/cutListPaper': { machineId },
    'slide/read': slide,
    'slide/facts': { assemblyId: slideId },
    'slide/saveFacts': { assemblyId: slideId, facts: slideFacts, by: 'Bo' },
    'shopFigures/read': {},
    'shopFigures/save': {
      ...{ changed: { sawKerfMm: 2 }, roundBarsMm: [40, 45, 50] },
      ...{ rack: [{ bar: 'steel round 45', lengthMm: 800, count: 2 }], by: 'Bo' },
    },
    'rebuild/takeSlide': { rebuildId: slideJob.rebuildId, assemblyId: slideId, choice: slide.choice, by: 'Bo' },
    'repair/choose': { positionId: pin.positionId, choice: 'bush', by: 'Bo' },
    'classes/list': {},
    'class/save': {
      partClassId: null,
      name: 'Slide shoe',
      tradeWear: { wearFromMm: 1, wearToMm: 2, hoursFrom: 3000, hoursTo: 4000, source: 'shop' },
      newSizeTolMm: 0.2,
    },
    'forecastSettings/read': {},
    'forecastSettings/try': { changed: { ...COARSE, driftDelta: 0.2 }, workTypes: [] },
    'forecastSettings/save': {
      changed: { ...COARSE, driftDelta: 0.2 },
      workTypes: [{ name: 'contract work', timesAsFast: 1.3 }],
      reason: 'our clay',
    },
    'shop/read': {},
    'shop/save': { ...settings, name: 'A shop', headLines: ['At the bridge'] },
    'fitter/save': { fitterId: null, name: 'Bo', active: true },
    'gauge/save': { ...gauges[0], gaugeId },
    'kind/save': {
      kindId: kind?.kindId,
      kind: { name: kind?.name, positions: kind?.positions.slice(0, 1), sketch: null },
    },
    'slip/preview': { machineId },
    'slip/make': { machineId, by: 'Bo' },
    'slip/read': { slipId },
    'slips/list': {},
    'recall/list': {},
    'recall/letters': { machineId },
    'recall/paper': {},
    'recall/saveLead': { leadDays: 35, by: 'Bo' },
    'recall/news': {},
    'recall/seen': {},
    'recall/calendar': {},
    'contact/add': contact,
    'contact/strike': { contactId, reason: 'another farm', by: 'Bo' },
    'contact/saveTerms': {
      ...{ customerId, noContact: false, words: 'Ring after six.', distanceKm: 12.5, driveMinutes: 20 },
      ...{ seasonTo: '10-15', by: 'Bo' },
    },
    'contact/addQuiet': quiet,
    'contact/strikeQuiet': { quietId, reason: '', by: 'Bo' },
    'phone/find': { text: 'hill' },
    'phone/read': { customerId },
    'sheet/blank': { machineId },
    'stripDown/read': { stripDownId },
    'stripDown/swap': {
      stripDownId,
      pairs: [
        { one: { pointId: strip.pointId, station: 'front' }, other: { pointId: strip.pointId, station: 'rear' } },
      ],
      reason: 'mixed up on the paper',
      by: 'Bo',
    },
    'oldSheets/read': {},
    'oldSheets/grid': { machineId, takenOn: '2025-01-10' },
    'oldSheets/save': oldSheet('2025-01-10', 2500),
    'oldSheets/takeBack': { entryId: last.entryId, by: 'Bo' },
    'oldSheets/end': { by: 'Bo' },
    'oldSheets/progress': {},
    'point/add': {
      machineId,
      assemblyId: null,
      assemblyName: 'Drawbar',
      positionId: null,
      position: { item: 1, name: 'Eye', safety: true },
      point: takeIn.assemblies[0]?.positions[0]?.points[0],
      by: 'Bo',
    },
    'sizes/questioned': { machineId },
    'entries/list': { beforeEntryId: null, limit: 20 },
    'entries/redoLast': { entryId: before.entryId, by: 'Bo' },
    'entries/undoLast': { entryId: before.entryId, by: 'Bo' },
    'exchange/takePiece': { fileId: null, name: 'hours.csv', base64: base64('machine\n') },
    'exchange/dropFile': { fileId: 'file-1' },
    'exchange/lookAtSheet': { file: oneSheet.file, sheet: null, noun: 'machines', headRow: 1 },
    'exchange/bringInSheet': oneSheet,
    'jobs/start': { job: { kind: 'bring-in-sheet', ask: oneSheet } },
    'jobs/state': { jobId },
    'jobs/cancel': { jobId },
    'exchange/exportFolder': { toFolder: `${program.folder}/exported` },
    'exchange/exportWorkbook': { toFile: `${program.folder}/exported.xlsx` },
    'exchange/restoreFolder': { from: { path: `${program.folder}/exported`, fileId: null } },
  };
}
