import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { entriesList } from '#core/contract/entries.ts';
import { findingAddPhotos, findingStrikePhoto, PHOTO, photoDrop, photoKeep, photoRead } from '#core/contract/photo.ts';
import { findingAdd, stripDownDiscard, stripDownKeep, stripDownSave } from '#core/contract/stripDown.ts';
import { openRecord } from '#core/record/openRecord.ts';
import { exportedFiles } from '#core/use-cases/exportedFiles.ts';
import { restoreInto } from '#core/use-cases/restoreFolder.ts';
import { contentsOf } from '#tests/support/aFullRecord.ts';
import { aShopWithAHitch } from '#tests/support/aHitch.ts';
import { aJpeg, anExifSegment, base64Of } from '#tests/support/aJpeg.ts';
import { aProgram, type Program } from '#tests/support/aProgram.ts';

let program: Program;
let shop: Awaited<ReturnType<typeof aShopWithAHitch>>;
beforeEach(async () => {
  program = aProgram();
  shop = await aShopWithAHitch(program);
});
afterEach(() => program.end());

const keep = (jpeg: Uint8Array) => program.ask(photoKeep, { jpegBase64: base64Of(jpeg) });
const crackAt = (photoIds: number[] = []) => ({
  assemblyId: shop.strip.assemblyId,
  positionId: shop.strip.positionId,
  kind: 'crack' as const,
  severity: 'watch' as const,
  note: 'at the weld toe',
  photoIds,
});

describe('a photo at the door', () => {
  test('is kept byte for byte when it is a bare JPEG of at most 1600 px and 300 kB', async () => {
    const jpeg = aJpeg({ widthPx: 1600, heightPx: 1200 });
    const { photoId, widthPx, heightPx } = await keep(jpeg);
    expect([widthPx, heightPx]).toEqual([1600, 1200]);
    expect((await program.ask(photoRead, { photoId })).jpegBase64).toBe(base64Of(jpeg));
  });

  test('is refused by its markers, weight and sides, and with a place in it; nothing is kept', async () => {
    const before = program.rows();
    // tables say nothing of place or time, and make a picture as heavy as one likes
    const heavy = aJpeg({
      before: Array.from({ length: 5 }, () => [0xff, 0xe2, 0xff, 0xff, ...Array<number>(0xfffd).fill(7)]).flat(),
    });
    expect(heavy.length).toBeGreaterThan(PHOTO.mostBytes);
    const refusals = [
      [Uint8Array.from([0x89, 0x50, 0x4e, 0x47]), 'photo-not-a-jpeg'],
      [aJpeg().slice(0, 60), 'photo-not-a-jpeg'],
      [heavy, 'photo-too-heavy'],
      [aJpeg({ widthPx: 1601 }), 'photo-too-large'],
      [aJpeg({ heightPx: 0 }), 'photo-too-large'],
      [aJpeg({ before: anExifSegment('54 12 N') }), 'photo-carries-data'],
    ] as const;
    for (const [jpeg, code] of refusals)
      expect(await program.answer(photoKeep, { jpegBase64: base64Of(jpeg) })).toMatchObject({ fault: { code } });
    expect(program.rows()).toBe(before);
  });
});

describe('photos at a finding', () => {
  test('are several, are struck with a reason and never thrown away, and stand in the history', async () => {
    const [one, two, three] = await Promise.all([1, 2, 3].map((n) => keep(aJpeg({ widthPx: 10 + n }))));
    const { findingId } = await program.ask(findingAdd, {
      ...crackAt([one!.photoId]),
      takenOn: '2026-05-02',
      by: 'Bo',
    });
    await program.ask(findingAddPhotos, { findingId, photoIds: [two!.photoId, three!.photoId], by: 'Bo' });
    await program.ask(findingStrikePhoto, { findingId, photoId: two!.photoId, reason: 'another hitch', by: 'Ann' });
    const { findings } = await shop.sheet();
    expect(findings[0]?.photos.map(({ photoId, struck, reason }) => [photoId, struck, reason])).toEqual([
      [one!.photoId, false, ''],
      [two!.photoId, true, 'another hitch'],
      [three!.photoId, false, ''],
    ]);
    expect(await program.answer(photoDrop, { photoId: two!.photoId })).toMatchObject({
      fault: { code: 'photo-at-finding' },
    });
    const again = { findingId, photoId: two!.photoId, reason: 'again', by: '' };
    expect(await program.answer(findingStrikePhoto, again)).toMatchObject({ fault: { code: 'unknown-photo' } });
    expect(await program.answer(findingAddPhotos, { findingId, photoIds: [one!.photoId], by: '' })).toMatchObject({
      fault: { code: 'not-as-expected' },
    });
    const { entries } = await program.ask(entriesList, { beforeEntryId: null, limit: 3 });
    expect(entries.map(({ what, madeBy, rows }) => [what, madeBy, rows.photos])).toEqual([
      ['finding/strikePhoto', 'Ann', 1],
      ['finding/addPhotos', 'Bo', 2],
      ['finding/add', 'Bo', 1],
    ]);
    expect(entries.every(({ machines }) => machines[0]?.machineId === shop.machineId)).toBe(true);
  });

  test('are taken while a sheet is typed: saved with it, or thrown away with it', async () => {
    const { photoId } = await keep(aJpeg());
    const draft = { ...shop.draft('2026-11-01', 3000), findings: [crackAt([photoId])] };
    await program.ask(stripDownKeep, draft);
    await program.ask(stripDownDiscard, { machineId: shop.machineId });
    expect(await program.answer(photoRead, { photoId })).toMatchObject({ fault: { code: 'unknown-photo' } });
    const second = await keep(aJpeg());
    const sheet = { ...draft, findings: [crackAt([second.photoId])] };
    await program.ask(stripDownKeep, sheet);
    await program.ask(stripDownSave, { ...sheet, dialSure: false });
    expect((await shop.sheet()).findings[0]?.photos).toHaveLength(1);
    await program.ask(stripDownKeep, sheet);
    await program.ask(stripDownDiscard, { machineId: shop.machineId });
    expect(await program.ask(photoRead, second)).toMatchObject({ widthPx: 8 });
  });

  test('are files in an exported folder, and come back byte for byte', async () => {
    const jpeg = aJpeg({ widthPx: 40 });
    const { photoId } = await keep(jpeg);
    await program.ask(findingAdd, { ...crackAt([photoId]), takenOn: '2026-05-02', by: 'Bo' });
    const record = program.context.record!;
    const files = exportedFiles(record);
    const photo = files.find(({ name }) => name === `photos/photos-${photoId}-jpeg.jpg`);
    expect(Buffer.compare(Buffer.from(photo?.bytes ?? []), Buffer.from(jpeg))).toBe(0);
    const again = openRecord(':memory:');
    try {
      restoreInto(again, files);
      expect(contentsOf(again)).toEqual(contentsOf(record));
      const lost = files.filter(({ name }) => !name.startsWith('photos/'));
      const other = openRecord(':memory:');
      expect(() => restoreInto(other, lost)).toThrow('the folder has faults');
      other.close();
    } finally {
      again.close();
    }
  });
});
