import { expect, it } from 'vitest';
import { base64Of, csvFilesOf } from './csvFiles.ts';

it('bytes come through whole, whatever their encoding', () => {
  const bytes = Uint8Array.from({ length: 70_000 }, (_, i) => i % 256);
  expect(Buffer.from(base64Of(bytes), 'base64').equals(Buffer.from(bytes))).toBe(true);
});

it('only CSV files of a heap are taken', async () => {
  const heap = [new File(['machine\nA\n'], 'Machines.CSV'), new File(['x'], 'notes.txt')];
  expect(await csvFilesOf(heap)).toEqual([
    { name: 'Machines.CSV', base64: Buffer.from('machine\nA\n').toString('base64'), bytes: 10 },
  ]);
});
