import type { AboutTable } from './customerExport.ts';

/** The first page of what a customer is given: what each file holds, and their own particulars in plain words. */
export function aboutCustomer(name: string, today: string, tables: readonly AboutTable[], slips: number): string {
  const rows = tables.find(({ file }) => file === 'customer.csv')?.rows ?? [];
  const [nameNow, place, address, phone, email] = (rows.at(-1) ?? []).map((cell) => String(cell ?? ''));
  return [
    `What is on record about ${name}, on ${today}`,
    '',
    ...particulars({ name: nameNow, place, address, phone, email }),
    '',
    'In this folder:',
    ...tables.map(({ file, what, rows: held }) => `  ${file}: ${what} (${held.length})`),
    `  slips/: the forecast slips made for this customer, as printed (${slips})`,
    '',
    'Sizes measured on a machine and its hours are kept with the machine, whoever owns it, and name nobody.',
    'Copies of the record made earlier hold what they held.',
    '',
  ].join('\r\n');
}

const particulars = (texts: Record<string, string | undefined>): string[] =>
  Object.entries(texts)
    .filter(([, text]) => text)
    .map(([head, text]) => `  ${head}: ${text?.replace(/\s*\n\s*/g, ', ')}`);
