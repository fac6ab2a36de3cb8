import type { AskOf } from '#core/contract/operation.ts';
import type { recordBringIn } from '#core/contract/record.ts';

export type CsvFile = AskOf<typeof recordBringIn>['files'][number] & { bytes: number };

/** Bytes as base64: the importer finds the encoding, so no text is made of them here. */
export function base64Of(bytes: Uint8Array): string {
  // in pieces, since a call takes only so many arguments
  const PIECE = 0x8000;
  let binary = '';
  for (let at = 0; at < bytes.length; at += PIECE) binary += String.fromCharCode(...bytes.subarray(at, at + PIECE));
  return btoa(binary);
}

/** Picked or dropped files as they are sent; only CSV files count, by their names. */
export async function csvFilesOf(files: Iterable<File>): Promise<CsvFile[]> {
  const csv = [...files].filter(({ name }) => name.toLowerCase().endsWith('.csv'));
  return Promise.all(
    csv.map(async (file) => {
      const bytes = new Uint8Array(await file.arrayBuffer());
      return { name: file.name, base64: base64Of(bytes), bytes: bytes.length };
    }),
  );
}
