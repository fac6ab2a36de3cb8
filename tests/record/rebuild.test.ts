import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { machineRead } from '#core/contract/machine.ts';
import { photoDrop, photoKeep } from '#core/contract/photo.ts';
import {
  HAND_OVER_CHECKS,
  type RebuildWork,
  ratesSave,
  rebuildAddPhotos,
  rebuildApprove,
  rebuildBored,
  rebuildChange,
  rebuildCheck,
  rebuildHandOver,
  rebuildLineSave,
  rebuildLineStrike,
  rebuildLookAtBent,
  rebuildPaper,
  rebuildQuote,
  rebuildRead,
  rebuildStrikePhoto,
  rebuildsList,
  rebuildTakeChosen,
  rebuildTakeIn,
  rebuildTakeSlide,
  rebuildTakeStraighten,
} from '#core/contract/rebuild.ts';
import { repairChoose, repairCutList, repairCutListPaper, repairRead, repairSaveFacts } from '#core/contract/repair.ts';
import { slideRead } from '#core/contract/slide.ts';
import { stripDownSave } from '#core/contract/stripDown.ts';
import { aShopWithAHitch, aSize, aSlide } from '#tests/support/aHitch.ts';
import { aJpeg, base64Of } from '#tests/support/aJpeg.ts';
import { aProgram, type Program } from '#tests/support/aProgram.ts';
import { aWornHole } from '#tests/support/aWornHole.ts';
import { anEmptyShop } from '#tests/support/laidOnce.ts';
import { pdfPages } from '#tests/support/pdfText.ts';

let program: Program;
beforeEach(() => {
  program = aProgram();
});
afterEach(() => program.end());

const takeIn = {
  takenInOn: '2026-11-02',
  wantedBy: '2026-12-18',
  complaint: 'Hook rattles.',
  dialHours: 3400,
  comeback: true,
  by: 'Bo',
};
const work = (positionId: number | null, change: Partial<RebuildWork> = {}): RebuildWork => ({
  ...{ positionId, option: '', what: 'New strip', ownHours: 0.3, partsPrice: 40, cuts: [], makes: [], renews: [] },
  ...{ safety: false, pressing: null, cautions: [], takeOffs: [{ name: 'carrier out', hours: 1 }] },
  ...change,
});

/** A job with a strip to renew, a pin to make, and safety work. */
async function aJob() {
  const { machineId, strip, pin } = await aShopWithAHitch(program);
  const { rebuildId, number } = await program.ask(rebuildTakeIn, { ...takeIn, machineId });
  const save = async (one: RebuildWork) =>
    (await program.ask(rebuildLineSave, { rebuildId, lineId: null, work: one, by: 'Bo' })).lineId;
  const stripLine = await save(
    work(strip.positionId, { renews: [{ pointId: strip.pointId, kind: 'new-part', lowerMm: 11.9, upperMm: 12.1 }] }),
  );
  const pinLine = await save(
    work(pin.positionId, {
      what: 'Bore boss and make pin',
      ownHours: 2,
      takeOffs: [
        { name: 'carrier out', hours: 1 },
        { name: 'ram out', hours: 0.5 },
      ],
      cuts: [
        { what: 'Boss L, hook frame: bore', centre: '0.60 mm to REAR, in line with R', lowerMm: 31.0, upperMm: 31.025 },
      ],
      makes: [
        {
          ...{ kind: 'pin', what: 'hook pin', material: '42CrMo4', count: 1, outsideMm: 30.98, insideMm: null },
          ...{ lengthMm: 120, widthMm: null, limits: '-0.007/-0.020', stock: 'bar 35', bought: false, leadDays: 6 },
        },
      ],
      safety: true,
    }),
  );
  return { machineId, strip, pin, rebuildId, number, stripLine, pinLine };
}

describe('a job', () => {
  test('is numbered, counts a shared take-off once, and is quoted at the shop’s own rates', async () => {
    const { rebuildId, number } = await aJob();
    expect(number).toBe('J26-001');
    const sheet = await program.ask(rebuildRead, { rebuildId });
    expect(sheet).toMatchObject({ hours: { stripDown: 1.5, own: 2.3 }, customer: 'Hill Farm', partsOn: '2026-11-15' });
    expect(await program.answer(rebuildQuote, { rebuildId, kind: 'work', fixedPrice: null, by: 'Bo' })).toMatchObject({
      ok: false,
      fault: { code: 'no-rates' },
    });
    await program.ask(ratesSave, { currency: 'EUR', hourPrice: 60, stripAndReportPrice: 180, by: 'Bo' });
    expect(
      await program.ask(rebuildQuote, { rebuildId, kind: 'strip-and-report', fixedPrice: null, by: 'Bo' }),
    ).toMatchObject({ price: 180 });
    const quote = await program.ask(rebuildQuote, { rebuildId, kind: 'work', fixedPrice: null, by: 'Bo' });
    expect(quote).toMatchObject({ hours: 3.8 });
    expect(quote.price).toBeCloseTo(3.8 * 60 + 80, 9);
    expect((await program.ask(rebuildRead, { rebuildId })).quotes).toHaveLength(2);
  });

  test('safety work is declined only in the customer’s own words, which stay', async () => {
    const { rebuildId, stripLine, pinLine } = await aJob();
    const said = {
      rebuildId,
      saidOn: '2026-11-05',
      saidBy: 'The farmer',
      how: 'by-telephone' as const,
      agreed: [stripLine],
      by: 'Bo',
    };
    const silent = { ...said, declined: [{ lineId: pinLine, words: ' ' }] };
    expect(await program.answer(rebuildApprove, silent)).toMatchObject({ fault: { code: 'declined-without-words' } });
    await program.ask(rebuildApprove, { ...said, declined: [{ lineId: pinLine, words: 'After the maize.' }] });
    const sheet = await program.ask(rebuildRead, { rebuildId });
    expect(sheet.lines.map(({ stands, declinedWords }) => [stands, declinedWords])).toEqual([
      ['agreed', ''],
      ['declined', 'After the maize.'],
    ]);
    expect(sheet.hours).toEqual({ stripDown: 1, own: 0.3 });
    // changed work is no longer what was agreed to
    await program.ask(rebuildLineSave, { rebuildId, lineId: stripLine, work: work(null), by: 'Bo' });
    expect((await program.ask(rebuildRead, { rebuildId })).lines[0]?.stands).toBe('proposed');
  });

  test('a size bored out of its limits is asked about, and kept when it is so', async () => {
    const { rebuildId, pinLine } = await aJob();
    const bored = { lineId: pinLine, cut: 0, sizeMm: 31.04, by: 'Bo' };
    expect(await program.answer(rebuildBored, { ...bored, sure: false })).toMatchObject({
      fault: { code: 'out-of-limits', facts: { lowerMm: 31, upperMm: 31.025 } },
    });
    await program.ask(rebuildBored, { ...bored, sure: true });
    expect((await program.ask(rebuildRead, { rebuildId })).lines[1]?.boredMm).toEqual([31.04]);
    expect(await program.answer(rebuildBored, { ...bored, cut: 1, sure: true })).toMatchObject({
      fault: { code: 'not-as-expected' },
    });
  });

  test('its hand-over starts the wear of renewed points again; a job within three months is tied to it', async () => {
    const { machineId, rebuildId, strip, stripLine, pinLine } = await aJob();
    const over = {
      ...{ rebuildId, handedOverOn: '2026-11-08', dialHours: 3410, note: '', by: 'Bo' },
      sizes: [
        {
          pointId: strip.pointId,
          station: 'front',
          event: 'as-left' as const,
          sizeMm: 11.5,
          gaugeId: null,
          answer: null,
        },
      ],
      renewals: [{ pointId: strip.pointId, sizeMm: null, hoursKnown: true }],
    };
    expect(await program.answer(rebuildHandOver, { ...over, sure: false })).toMatchObject({
      fault: { code: 'rebuild-undecided' },
    });
    await program.ask(rebuildApprove, {
      ...{
        rebuildId,
        saidOn: '2026-11-05',
        saidBy: 'The farmer',
        how: 'in-writing',
        agreed: [stripLine, pinLine],
        declined: [],
        by: 'Bo',
      },
    });
    expect(await program.answer(rebuildHandOver, { ...over, sure: false })).toMatchObject({
      fault: { code: 'checks-open', facts: { open: 8 } },
    });
    for (const check of HAND_OVER_CHECKS)
      await program.ask(rebuildCheck, { rebuildId, check, answer: 'done', by: 'Bo' });
    expect(await program.answer(rebuildHandOver, { ...over, sure: false })).toMatchObject({
      fault: { code: 'out-of-intended-fit', facts: { sizeMm: 11.5, upperMm: 12.1 } },
    });
    const sound = { ...over, sizes: over.sizes.map((one) => ({ ...one, sizeMm: 12.02 })) };
    await program.ask(rebuildHandOver, { ...sound, sure: false });
    const { points } = await program.ask(machineRead, { machineId });
    expect(points.find(({ pointId }) => pointId === strip.pointId)?.renewals).toHaveLength(1);
    expect(await program.answer(rebuildLineStrike, { lineId: stripLine, reason: '', by: 'Bo' })).toMatchObject({
      fault: { code: 'rebuild-handed-over' },
    });
    const again = await program.ask(rebuildTakeIn, { ...takeIn, machineId, takenInOn: '2026-11-09', wantedBy: null });
    expect(again).toMatchObject({ number: 'J26-002', comebackOf: 'J26-001' });
    expect((await program.ask(rebuildsList, {})).rebuilds.map(({ number }) => number)).toEqual(['J26-002', 'J26-001']);
    expect(program.defects).toEqual([]);
  });

  test('takes over the repairs chosen: take-offs, cuts with their limits, parts to make, and what they renew, once', async () => {
    const { rebuildId, pin } = await aJob();
    const { positionId } = pin;
    const nothing = await program.answer(rebuildTakeChosen, { rebuildId, by: 'Bo' });
    expect(nothing).toMatchObject({ fault: { code: 'nothing-chosen' } });
    const { facts } = await program.ask(repairRead, { positionId });
    await program.ask(repairSaveFacts, { positionId, facts: aWornHole(facts), by: 'Bo' });
    const { options } = await program.ask(repairRead, { positionId });
    const bush = options.find(({ choice }) => choice === 'bush')!;
    await program.ask(repairChoose, { positionId, choice: 'bush', by: 'Bo' });
    expect(await program.ask(rebuildTakeChosen, { rebuildId, by: 'Bo' })).toEqual({ lines: 1 });
    const line = (await program.ask(rebuildRead, { rebuildId })).lines.at(-1)!;
    expect(line).toMatchObject({ option: 'bush', stands: 'proposed', item: 2, ownHours: bush.hoursHere?.typical });
    expect(line.cuts[0]).toMatchObject({ lowerMm: bush.bore?.smallestMm, upperMm: bush.bore?.largestMm });
    expect(line.makes.map(({ kind }) => kind)).toEqual(bush.toMake.map(({ kind }) => kind));
    expect(line.cautions).toEqual(bush.safety.map(({ id }) => id));
    expect(await program.answer(rebuildTakeChosen, { rebuildId, by: 'Bo' })).toMatchObject({
      fault: { code: 'nothing-chosen' },
    });
  });

  test('says where the machine stands and shows it as it came in; a photo struck stays in sight', async () => {
    const { machineId } = await aShopWithAHitch(program);
    const photo = async () => (await program.ask(photoKeep, { jpegBase64: base64Of(aJpeg()) })).photoId;
    const [first, second] = [await photo(), await photo()];
    const said = { ...takeIn, machineId, whereabouts: 'at-the-farm', whereaboutsNote: 'by the silo' } as const;
    expect(await program.answer(rebuildTakeIn, { ...said, photoIds: [first, first] })).toMatchObject({
      fault: { code: 'not-as-expected', path: 'photoIds' },
    });
    const { rebuildId } = await program.ask(rebuildTakeIn, { ...said, photoIds: [first] });
    await program.ask(rebuildAddPhotos, { rebuildId, photoIds: [second], by: 'Bo' });
    await program.ask(rebuildStrikePhoto, { rebuildId, photoId: second, reason: 'another machine', by: 'Bo' });
    expect(await program.answer(photoDrop, { photoId: first })).toMatchObject({ fault: { code: 'photo-at-finding' } });
    const job = await program.ask(rebuildRead, { rebuildId });
    expect(job).toMatchObject({ whereabouts: 'at-the-farm', whereaboutsNote: 'by the silo' });
    expect(job.photos.map(({ photoId, struck }) => [photoId, struck])).toEqual([
      [first, false],
      [second, true],
    ]);
    const { wantedBy, complaint } = takeIn;
    const changed = {
      rebuildId,
      wantedBy,
      complaint,
      whereabouts: 'in-the-yard',
      reason: 'fetched',
      by: 'Bo',
    } as const;
    await program.ask(rebuildChange, changed);
    const { pdfBase64 } = await program.ask(rebuildPaper, { rebuildId, paper: 'job-card' });
    const card = (await pdfPages(Buffer.from(pdfBase64, 'base64')))
      .map(({ text }) => text)
      .join(' ')
      .replaceAll(/\s+/g, ' ');
    expect(card).toContain('stands in the yard, by the silo');
  });

  test('a bent part is pressed straight where nothing closes it: force, spring-back and cautions go on the job card', async () => {
    const { rebuildId, pin } = await aJob();
    const bar = { section: { shape: 'round', diameterMm: 60 }, yieldMpa: 355, spanMm: 500, bowMm: 4 } as const;
    const part = {
      ...({ kind: 'other', towingOrLifting: false, crack: false, forgedOrHeatTreated: null } as const),
      ...{ straightenedBefore: false, procedure: null },
    } as const;
    // the record says that the hook pin tows or lifts: of unknown steel it is not straightened, whatever is said of it
    const hook = { rebuildId, positionId: pin.positionId, bar, part };
    expect(await program.ask(rebuildLookAtBent, hook)).toMatchObject({
      ...{ closedBecause: ['steel-not-known'], press: null, onRecord: { towingOrLifting: true } },
    });
    expect(await program.answer(rebuildTakeStraighten, { ...hook, what: 'Hook pin', by: 'Bo' })).toMatchObject({
      fault: { code: 'straightening-closed', facts: { because: 'steel-not-known' } },
    });
    const arm = { ...hook, positionId: null, part: { ...part, forgedOrHeatTreated: false } };
    const unmeasured = { ...arm, bar: null, what: 'Lift arm', by: 'Bo' };
    expect(await program.answer(rebuildTakeStraighten, unmeasured)).toMatchObject({
      fault: { code: 'straightening-not-measured' },
    });
    const { press } = await program.ask(rebuildLookAtBent, arm);
    const { lineId } = await program.ask(rebuildTakeStraighten, { ...arm, what: 'Lift arm', by: 'Bo' });
    const line = (await program.ask(rebuildRead, { rebuildId })).lines.find((one) => one.lineId === lineId)!;
    expect(line).toMatchObject({ option: 'straighten', stands: 'proposed', pressing: { pressForN: press?.pressForN } });
    expect(line.cautions).toContain('press');
    const agreed = { rebuildId, saidOn: '2026-11-05', saidBy: 'The farmer', how: 'in-person', by: 'Bo' } as const;
    await program.ask(rebuildApprove, { ...agreed, agreed: [lineId], declined: [] });
    const { pdfBase64 } = await program.ask(rebuildPaper, { rebuildId, paper: 'job-card' });
    const card = (await pdfPages(Buffer.from(pdfBase64, 'base64'))).map(({ text }) => text).join(' ');
    for (const words of ['Press straight: Lift arm', 'Go slowly', 'springs back', 'Guard the press'])
      expect(card).toContain(words);
  });

  test('a part straightened on an earlier job is not straightened again, but by the maker’s written procedure', async () => {
    const { machineId, strip } = await aShopWithAHitch(program);
    const { rebuildId } = await program.ask(rebuildTakeIn, { ...takeIn, machineId, takenInOn: '2026-11-01' });
    const bent = (of: number, procedure: { by: string; reference: string } | null = null) => ({
      ...{ rebuildId: of, positionId: strip.positionId },
      bar: {
        section: { shape: 'rectangle', widthMm: 60, depthMm: 20 },
        yieldMpa: 355,
        spanMm: 400,
        bowMm: null,
      } as const,
      part: {
        ...({ kind: 'other', towingOrLifting: false, crack: false, forgedOrHeatTreated: false } as const),
        ...{ straightenedBefore: false, procedure },
      },
    });
    const { lineId } = await program.ask(rebuildTakeStraighten, { ...bent(rebuildId), what: 'Bar', by: 'Bo' });
    const agreed = { rebuildId, saidOn: '2026-11-02', saidBy: 'The farmer', how: 'in-person', by: 'Bo' } as const;
    await program.ask(rebuildApprove, { ...agreed, agreed: [lineId], declined: [] });
    for (const check of HAND_OVER_CHECKS)
      await program.ask(rebuildCheck, { rebuildId, check, answer: 'does-not-apply', by: 'Bo' });
    await program.ask(rebuildHandOver, {
      ...{
        rebuildId,
        handedOverOn: '2026-11-03',
        dialHours: null,
        sizes: [],
        renewals: [],
        note: '',
        sure: true,
        by: 'Bo',
      },
    });
    const again = await program.ask(rebuildTakeIn, { ...takeIn, machineId, takenInOn: '2026-11-05' });
    const closed = await program.ask(rebuildLookAtBent, bent(again.rebuildId));
    expect(closed).toMatchObject({ closedBecause: ['straightened-before'], onRecord: { straightenedBefore: true } });
    const opened = await program.ask(rebuildLookAtBent, bent(again.rebuildId, { by: 'The maker', reference: 'SB 12' }));
    expect(opened.closedBecause).toEqual([]);
  });

  test('takes what is done with the strips of a slide, a line each; a shim renews nothing', async () => {
    await anEmptyShop(program);
    const assemblyId = await aSlide(program);
    const choice = {
      'top-front': 'renew',
      'top-rear': 'shim',
      'bottom-front': 'turn',
      'bottom-rear': 'leave',
    } as const;
    const asked = { spanMm: null, overhangMm: null, channelFrontMm: 0, channelRearMm: 0, newPlayMm: 0.4 };
    const { machineId } = await program.ask(slideRead, {
      ...asked,
      assemblyId,
      headsBareAtMm: null,
      endsAlike: true,
      choice,
    });
    const { rebuildId } = await program.ask(rebuildTakeIn, { ...takeIn, machineId });
    expect(await program.ask(rebuildTakeSlide, { rebuildId, assemblyId, choice, by: 'Bo' })).toEqual({ lines: 3 });
    const { lines, takeOffs } = await program.ask(rebuildRead, { rebuildId });
    expect(lines.map(({ option, renews, makes }) => [option, renews.map(({ kind }) => kind), makes.length])).toEqual([
      ['renew', ['new-part'], 1],
      ['shim', [], 0],
      ['turn', ['turned'], 0],
    ]);
    expect(new Set(takeOffs.map(({ name }) => name)).size).toBe(takeOffs.length);
    expect(takeOffs.length).toBeGreaterThan(2);
  });

  test('the cut list of the repairs chosen says bar by bar how it is cut, and draws each part', async () => {
    const { pin, machineId } = await aJob();
    const { facts } = await program.ask(repairRead, { positionId: pin.positionId });
    await program.ask(repairSaveFacts, { positionId: pin.positionId, facts: aWornHole(facts), by: 'Bo' });
    await program.ask(repairChoose, { positionId: pin.positionId, choice: 'bush', by: 'Bo' });
    const { groups } = await program.ask(repairCutList, { machineId });
    const { pdfBase64 } = await program.ask(repairCutListPaper, { machineId: null });
    const text = (await pdfPages(Buffer.from(pdfBase64, 'base64'))).map((page) => page.text).join('\n');
    for (const { bar, parts } of groups) {
      expect(text).toContain(bar);
      for (const { name } of parts) expect(text).toContain(name);
    }
    expect(groups.length).toBeGreaterThan(0);
    expect(text).toContain('every machine with repairs chosen');
  });

  test('its papers say what was agreed, each cut with its limits, each part with its sizes, and what was declined', async () => {
    const { rebuildId, stripLine, pinLine } = await aJob();
    const read = async (paper: 'job-card' | 'machining-list' | 'cut-list' | 'close-out') => {
      const { pdfBase64 } = await program.ask(rebuildPaper, { rebuildId, paper });
      return (await pdfPages(Buffer.from(pdfBase64, 'base64'))).map(({ text }) => text).join('\n');
    };
    expect(await read('job-card')).toContain('No work is agreed yet.');
    await program.ask(rebuildApprove, {
      ...{ rebuildId, saidOn: '2026-11-05', saidBy: 'The farmer', how: 'in-person', agreed: [pinLine], by: 'Bo' },
      declined: [{ lineId: stripLine, words: 'They look fine to me.' }],
    });
    const card = await read('job-card');
    for (const words of [
      'J26-001',
      'Hook rattles.',
      'carrier out',
      'Bore boss and make pin',
      'They look fine to me.',
      'Local codes',
    ])
      expect(card).toContain(words);
    const machining = await read('machining-list');
    for (const words of ['Boss L, hook frame: bore', 'REAR', '31.000 to 31.025', 'driver’s seat'])
      expect(machining).toContain(words);
    const cut = await read('cut-list');
    for (const words of ['hook pin', '42CrMo4', 'bar 35', 'Ø30.98', '120.00']) expect(cut).toContain(words);
    expect(await read('close-out')).toContain('Latch tried under load');
  });

  test('its close-out sheet says what the strip-downs of the job found, what was bored and what was left, and no more', async () => {
    const { machineId, rebuildId, strip, pin, pinLine, stripLine } = await aJob();
    const sizes = (front: number) => [aSize(strip.pointId, front, 'front'), aSize(strip.pointId, 9.87, 'rear')];
    const sheet = { machineId, dialHours: null, fitter: 'Bo', note: '', renewals: [], dialSure: false };
    const before = { ...sheet, takenOn: '2026-11-01', sizes: [aSize(pin.pointId, 29.61)], findings: [] };
    await program.ask(stripDownSave, before);
    const closeOut = async () => {
      const { pdfBase64 } = await program.ask(rebuildPaper, { rebuildId, paper: 'close-out' });
      const pages = await pdfPages(Buffer.from(pdfBase64, 'base64'));
      return pages
        .map(({ text }) => text)
        .join(' ')
        .replaceAll(/\s+/g, ' ');
    };
    expect(await closeOut()).toContain('No strip-down is on record between intake and hand-over.');
    const crack = {
      ...({ assemblyId: pin.assemblyId, positionId: pin.positionId, kind: 'crack' } as const),
      ...({ severity: 'do-not-use', note: 'hairline at the groove' } as const),
    };
    await program.ask(stripDownSave, { ...sheet, takenOn: '2026-11-04', sizes: sizes(10.43), findings: [crack] });
    const said = { rebuildId, saidOn: '2026-11-05', saidBy: 'The farmer', how: 'in-person', by: 'Bo' } as const;
    await program.ask(rebuildApprove, {
      ...said,
      agreed: [pinLine],
      declined: [{ lineId: stripLine, words: 'Later.' }],
    });
    await program.ask(rebuildBored, { lineId: pinLine, cut: 0, sizeMm: 31.012, sure: false, by: 'Bo' });
    for (const check of HAND_OVER_CHECKS)
      await program.ask(rebuildCheck, { rebuildId, check, answer: 'done', by: 'Bo' });
    const over = {
      rebuildId,
      handedOverOn: '2026-11-06',
      dialHours: null,
      renewals: [],
      note: '',
      sure: true,
      by: 'Bo',
    };
    await program.ask(rebuildHandOver, { ...over, sizes: [aSize(pin.pointId, 29.98, '', 'as-left')] });
    const after = { ...sheet, takenOn: '2026-11-08', sizes: sizes(10.11), findings: [] };
    await program.ask(stripDownSave, after);
    const paper = await closeOut();
    for (const words of [
      ...['thickness: front 10.43, rear 9.87', 'no work agreed here', 'cracked, hairline at the groove'],
      ...['bored 31.012', 'diameter: 29.98', 'Hook rattles.', 'Later.'],
    ])
      expect(paper).toContain(words);
    // neither what was measured before the machine came in, nor what was measured since it left
    for (const figure of ['29.61', '10.11', 'No strip-down is on record']) expect(paper).not.toContain(figure);
  });
});
