import { readFileSync } from 'node:fs';
import Papa from 'papaparse';

/** Rows of a CSV file under tests/reference, by column name. */
export function referenceRows(path: string): Record<string, string>[] {
  const text = readFileSync(new URL(`../reference/${path}`, import.meta.url), 'utf8');
  return Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;
}
