/**
 * Text that a spreadsheet would take for a formula is kept inert in a file by an apostrophe in front of it, the mark
 * spreadsheets themselves use for text; text that begins with an apostrophe gets one more. Reading takes one off again, so
 * that every text comes back unchanged. An apostrophe before anything else stays: 'tis typed by hand is 'tis.
 *
 * @source OWASP, "CSV Injection": cells beginning with = + - @, tab or carriage return (from memory); own reversible mark
 * @example keptInert('=2+5') // "'=2+5"
 * @example asWritten("'=2+5") // "=2+5"
 */
export const keptInert = (text: string): string => (/^[=+\-@\t\r']/.test(text) ? `'${text}` : text);

export const asWritten = (cell: string): string => (/^'[=+\-@\t\r']/.test(cell) ? cell.slice(1) : cell);
