import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { cautionSaid, closedBecause, reasonText } from './repairReasons.ts';

const repair = join(import.meta.dirname, '../../core/repair');
const codesIn = (folder: string): string[] =>
  readdirSync(join(repair, folder))
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'))
    .flatMap((name) => [...readFileSync(join(repair, folder, name), 'utf8').matchAll(/code: '([a-z][a-z0-9-]+)'/g)])
    .map(([, code = '']) => code);

describe('why a choice is closed, and what is said beside it', () => {
  // a hole that cannot be worked out at all is a fault, said in repairFaults
  const faults = [
    'clean-up-no-readings',
    'clean-up-size-not-positive',
    'slide-length-not-positive',
    'slide-choice-closed',
  ];
  const codes = [...codesIn('options'), ...codesIn('clean-up'), ...codesIn('slides')].filter(
    (code) => !faults.includes(code),
  );

  it('has a sentence for every code of the options and of how a hole was measured', () => {
    expect(codes.length).toBeGreaterThan(25);
    expect(codes.filter((code) => !(code in closedBecause) && !(code in cautionSaid))).toEqual([]);
  });

  it('is a sentence, never scolds and never calls anything safe', () => {
    for (const words of [closedBecause, cautionSaid])
      for (const code of Object.keys(words)) {
        const said = reasonText(words, { code });
        expect(said).toMatch(/^[A-Z].*\.$/);
        expect(said).not.toMatch(/\b(error|invalid|oops|please|sorry|safe)\b/i);
      }
  });
});
