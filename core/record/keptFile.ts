import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';

/** What a small JSON file beside the program's own holds; null: there is none, or it cannot be read. */
export function readKeptFile(file: string): unknown {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return null;
  }
}

/** Writes it whole or not at all. */
export function writeKeptFile(file: string, value: unknown): void {
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(`${file}.new`, `${JSON.stringify(value, null, 2)}\n`, { flush: true });
  renameSync(`${file}.new`, file);
}
