import { exchangeDropFile, exchangeTakePiece, type GivenFile } from '#core/contract/exchange.ts';
import { ask, pathOfFile } from '#renderer/ask.ts';
import { base64Of } from '../start/csvFiles.ts';

/** Bytes of a piece: as base64 well within what one request may hold. */
const PIECE_BYTES = 4_000_000;

/**
 * Gives the program a file: by where it lies, when this window is told; else piece by piece.
 * @throws FaultError
 */
export async function handOver(file: File, onShare: (share: number) => void): Promise<GivenFile> {
  const path = pathOfFile(file);
  if (path !== null) return { path, fileId: null };
  let fileId: string | null = null;
  for (let at = 0; at === 0 || at < file.size; at += PIECE_BYTES) {
    const bytes = new Uint8Array(await file.slice(at, at + PIECE_BYTES).arrayBuffer());
    const taken: { fileId: string } = await ask(exchangeTakePiece, {
      fileId,
      name: file.name.slice(-200),
      base64: base64Of(bytes),
    });
    fileId = taken.fileId;
    onShare(Math.min(1, (at + PIECE_BYTES) / file.size));
  }
  return { path: null, fileId };
}

export async function letGo({ fileId }: GivenFile): Promise<void> {
  if (fileId !== null) await ask(exchangeDropFile, { fileId });
}
