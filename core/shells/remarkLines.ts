import type { ImportRemark } from '../contract/record.ts';

/** One line a remark: where it is, what stands there, what was expected. */
export const remarkLines = (remarks: readonly ImportRemark[]): string[] => remarks.map(remarkLine);

function remarkLine({ file, row, column, value, code, expected }: ImportRemark): string {
  const place = [file, row === null ? '' : `row ${row}`, column ?? ''].filter(Boolean).join(', ');
  const stands = value === '' ? '' : ` "${value}"`;
  return `${place}${stands}: ${code.replaceAll('-', ' ')}; expected ${expected}`;
}
