import { basename, resolve } from 'node:path';
import type { exchangeDropFile, exchangeTakePiece, GivenFile } from '../contract/exchange.ts';
import type { Handler } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import { readWholeFile } from '../record/folderOnDisk.ts';
import type { Context } from './context.ts';

/** A file handed over piece by piece, or read where it lies. */
export type FileInHand = { name: string; bytes: Uint8Array };

type Pieces = { name: string; pieces: Uint8Array[]; bytes: number };
type Handed = { last: number; files: Map<string, Pieces> };

/** All files in hand together; a CSV of a million rows is about 80 MB. */
const MOST_BYTES = 400_000_000;

const handedTo = new WeakMap<Context, Handed>();

function handed(context: Context): Handed {
  const known = handedTo.get(context) ?? { last: 0, files: new Map() };
  handedTo.set(context, known);
  return known;
}

export const exchangeTakePieceHandler: Handler<typeof exchangeTakePiece, Context> = (context, request) => {
  const hand = handed(context);
  const fileId = request.fileId ?? `file-${++hand.last}`;
  const file = request.fileId === null ? { name: request.name, pieces: [], bytes: 0 } : fileOf(hand, request.fileId);
  const piece = Buffer.from(request.base64, 'base64');
  const inHand = [...hand.files.values()].reduce((sum, { bytes }) => sum + bytes, 0);
  if (inHand + piece.length > MOST_BYTES) {
    hand.files.delete(fileId);
    throw new RefusedError({ code: 'file-too-large', facts: { path: 'base64', mostMB: MOST_BYTES / 1e6 } });
  }
  file.pieces.push(piece);
  file.bytes += piece.length;
  hand.files.set(fileId, file);
  return { fileId, bytes: file.bytes };
};

export const exchangeDropFileHandler: Handler<typeof exchangeDropFile, Context> = (context, { fileId }) => ({
  dropped: handed(context).files.delete(fileId),
});

function fileOf({ files }: Handed, fileId: string): Pieces {
  const file = files.get(fileId);
  if (!file) throw new RefusedError({ code: 'unknown-file', facts: { path: 'fileId' } });
  return file;
}

/** The bytes of a file that was named or handed over. @throws RefusedError unknown-file, cannot-read */
export function fileInHand(context: Context, given: GivenFile): FileInHand {
  if (given.path !== null) {
    const path = resolve(given.path);
    return { name: basename(path), bytes: readWholeFile(path) };
  }
  const { name, pieces } = fileOf(handed(context), given.fileId ?? '');
  return { name, bytes: Buffer.concat(pieces) };
}
