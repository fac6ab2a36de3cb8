import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { asWritten, keptInert } from './inertText.ts';

describe('text kept inert in a file', () => {
  test('never begins as a formula, and reads back as it was, whatever it is', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[=+\-@\t\r']{0,4}.*$/)), (text) => {
        expect(keptInert(text)).not.toMatch(/^[=+\-@\t\r]/);
        expect(asWritten(keptInert(text))).toBe(text);
      }),
    );
  });
  test('an apostrophe before anything else stays as it was typed', () => {
    expect(asWritten("'tis")).toBe("'tis");
    expect(asWritten("'=2+5")).toBe('=2+5');
  });
});
