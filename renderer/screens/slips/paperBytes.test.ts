import { expect, it } from 'vitest';
import { slipFileName } from '#renderer/words/slipsWords.ts';
import { bytesOfBase64 } from './paperBytes.ts';

it('base64 text becomes the bytes it stands for', () => {
  const bytes = Uint8Array.from([37, 80, 68, 70, 0, 255, 128]);
  expect(bytesOfBase64(Buffer.from(bytes).toString('base64'))).toEqual(bytes);
  expect(bytesOfBase64('')).toHaveLength(0);
});

it('a slip saved again takes a name every system takes', () => {
  expect(slipFileName('2026-118', 'Saxholt 13/4 no. 2')).toBe('forecast-slip-2026-118-saxholt-13-4-no-2.pdf');
});
