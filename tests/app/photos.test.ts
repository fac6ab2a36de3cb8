import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { machineRead } from '#core/contract/machine.ts';
import { PHOTO, photoRead } from '#core/contract/photo.ts';
import { anExifSegment } from '#tests/support/aJpeg.ts';
import { expectAxeClean, goTo, smallShop, told } from './screens.ts';
import { windowTest } from './windowTest.ts';

const AS_OF = '2025-11-09';
const PLACE = 'GPSLatitude 54 12 31 N';

/** A picture as a camera gives it: large, grained so that it weighs much, with a place in its Exif segment. */
async function aCameraPhoto(page: Page, widthPx: number, heightPx: number): Promise<Buffer> {
  const base64 = await page.evaluate(
    async ([width, height]) => {
      const canvas = new OffscreenCanvas(width, height);
      const brush = canvas.getContext('2d')!;
      const grain = brush.createImageData(width, height);
      let state = 7;
      for (let at = 0; at < grain.data.length; at++) {
        state = (state * 1103515245 + 12345) % 2147483648;
        grain.data[at] = at % 4 === 3 ? 255 : state >> 23;
      }
      brush.putImageData(grain, 0, 0);
      const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.95 });
      const bytes = new Uint8Array(await blob.arrayBuffer());
      let binary = '';
      for (let at = 0; at < bytes.length; at += 0x8000)
        binary += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
      return btoa(binary);
    },
    [widthPx, heightPx] as const,
  );
  const jpeg = Buffer.from(base64, 'base64');
  return Buffer.concat([jpeg.subarray(0, 2), Buffer.from(anExifSegment(PLACE)), jpeg.subarray(2)]);
}

/** Gives files to an element as a drop on it, or as a paste into the window. */
const give = (page: Page, how: 'drop' | 'paste', file: { name: string; mimeType: string; buffer: Buffer }) =>
  page.evaluate(
    ([as, name, type, base64]) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const data = new DataTransfer();
      data.items.add(new File([bytes], name, { type }));
      if (as === 'paste') window.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, cancelable: true }));
      else
        document
          .querySelector('.take-photos')
          ?.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
    },
    [how, file.name, file.mimeType, file.buffer.toString('base64')] as const,
  );

windowTest(
  'photos of a finding: taken three ways, made small, without their place, shown, struck',
  async ({ prepare }) => {
    const { page, ask, show } = await prepare({ asOf: AS_OF, width: 1280, height: 800 });
    const { machineId } = await smallShop(ask);
    await show();
    await goTo(page, `/strip-down/${machineId}`);
    const camera = await aCameraPhoto(page, 2400, 1800);
    expect(camera.length).toBeGreaterThan(2_000_000);
    expect(camera.includes(PLACE)).toBe(true);
    const file = { name: 'crack.jpg', mimeType: 'image/jpeg', buffer: camera };

    await page.locator('.grid-row input').first().focus();
    await page.keyboard.press('+');
    const strip = page.getByRole('region', { name: /Something seen at/ });
    await strip.getByLabel('Add photos').last().setInputFiles([file]);
    await strip.getByRole('button', { name: /^Photo 1 of 1/ }).waitFor();
    await give(page, 'drop', { ...file, buffer: await aCameraPhoto(page, 1000, 1700) });
    await strip.getByRole('button', { name: /^Photo 2 of 2/ }).waitFor();
    const png = Buffer.from(
      'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
      'base64',
    );
    await give(page, 'paste', { name: 'dot.png', mimeType: 'image/png', buffer: png });
    await strip.getByRole('button', { name: /^Photo 3 of 3/ }).waitFor();
    const notes = { name: 'photo.heic', mimeType: 'image/heic', buffer: Buffer.from('no picture of ours') };
    await strip.getByLabel('Add photos').last().setInputFiles([notes]);
    await page.getByText('This window cannot read photo.heic as a picture.').waitFor();
    await expectAxeClean(page);

    await strip.locator('.key.first').click();
    await page.getByText(/three photos/).waitFor();
    await page.getByText(/^kept \d\d:\d\d/).waitFor();
    await page.keyboard.press('Control+Enter');
    await page.getByText('No forecast moved.').or(page.getByText('What moved in the forecast')).first().waitFor();

    const { findings } = await told(ask, machineRead, { machineId });
    const sides = [];
    for (const { photoId } of findings[0]?.photos ?? []) {
      const { jpegBase64, widthPx, heightPx } = await told(ask, photoRead, { photoId });
      const jpeg = Buffer.from(jpegBase64, 'base64');
      expect(jpeg.length).toBeLessThanOrEqual(PHOTO.mostBytes);
      expect(jpeg.includes('Exif')).toBe(false);
      expect(jpeg.includes('GPS')).toBe(false);
      sides.push([widthPx / heightPx, Math.max(widthPx, heightPx) <= PHOTO.mostPx]);
    }
    expect(sides).toEqual([
      [expect.closeTo(4 / 3, 2), true],
      [expect.closeTo(10 / 17, 2), true],
      [1, true],
    ]);

    await goTo(page, `/machine/${machineId}`);
    await page.getByRole('tab', { name: /Findings/ }).click();
    await page.getByRole('button', { name: /^Photo 1 of 3/ }).click();
    const large = page.locator('.large-photo');
    await large.locator('img').waitFor();
    await page.keyboard.press('>');
    await large.getByText(/Photo 2 of 3/).waitFor();
    await large.getByRole('button', { name: 'Strike' }).click();
    await page.getByLabel('Why it does not belong here').fill('another hitch');
    await page.getByRole('button', { name: 'Strike photo' }).click();
    await page.getByRole('button', { name: /^Struck photo 2 of 3/ }).waitFor();
    await large.getByText('Struck: another hitch.').waitFor();
    await expectAxeClean(page);

    // one more to the finding on record, and the customer who does not want it made good
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: /^Add photos:/ }).click();
    await page.locator('.take-photos input').setInputFiles([{ name: 'dot.png', mimeType: 'image/png', buffer: png }]);
    await page.getByRole('button', { name: /^Photo 4 of 4/ }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: /^Customer refuses the repair/ }).click();
    await page.getByLabel('Who said so').fill('The farmer');
    await page.getByLabel('In their own words').fill('Not before the maize.');
    await page.getByRole('button', { name: 'Note the refusal' }).click();
    await page.getByText('Repair refused by The farmer, 9 Nov 2025: “Not before the maize.”').waitFor();
    await page.emulateMedia({ colorScheme: 'dark' });
    await expectAxeClean(page);
  },
);
