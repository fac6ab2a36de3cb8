import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { allOperations } from '#core/contract/allOperations.ts';
import type { Operation } from '#core/contract/operation.ts';
import { aProgram, type Program } from '#tests/support/aProgram.ts';
import { aHitchesRequests } from '#tests/support/soundRequests.ts';

/** Each operation, asked soundly, then with one field after another made wrong: refused by name, the record unchanged. */
let program: Program;
let sound: Record<string, Record<string, unknown>>;
let before = '';
let looking: Database.Database;
let seen: unknown;

beforeAll(async () => {
  program = aProgram();
  sound = await aHitchesRequests(program);
  looking = new Database(program.context.record!.path, { readonly: true });
  seen = looking.pragma('data_version');
  before = program.rows();
});
afterAll(() => {
  looking.close();
  program.end();
});

type Path = (string | number)[];

/** Every field of a request, down to the leaves; of a list only its first entry. */
function fieldsOf(value: unknown, path: Path = []): Path[] {
  if (value === null || typeof value !== 'object') return [path];
  const entries: [string | number, unknown][] = Array.isArray(value)
    ? value.slice(0, 1).map((entry, place) => [place, entry])
    : Object.entries(value);
  return [...(path.length > 0 ? [path] : []), ...entries.flatMap(([key, entry]) => fieldsOf(entry, [...path, key]))];
}

function withField(request: unknown, path: Path, value: unknown): unknown {
  const copy = structuredClone(request);
  let at = copy as Record<string | number, unknown>;
  for (const key of path.slice(0, -1)) at = at[key] as Record<string | number, unknown>;
  at[path.at(-1)!] = value;
  return copy;
}

const valueAt = (request: unknown, path: Path): unknown =>
  path.reduce<unknown>((at, key) => (at as Record<string | number, unknown>)[key], request);

/** Values no field takes: of another type, or past any length or size. */
function wrongFor(value: unknown): unknown[] {
  const ofAnotherType = typeof value === 'object' && value !== null ? 'text' : { not: 'this' };
  const odd: unknown[] = [ofAnotherType];
  if (typeof value === 'string') odd.push(7, true);
  if (typeof value === 'number') odd.push('12', 1e300, -1e12);
  if (typeof value === 'boolean') odd.push('yes', 1);
  return odd;
}

const expectUnchanged = () => {
  // differs for a second connection as soon as anything was committed, be it of the same rows (SQLite, PRAGMA data_version)
  const now = looking.pragma('data_version');
  if (JSON.stringify(now) !== JSON.stringify(seen)) expect(program.rows()).toBe(before);
  seen = now;
  expect(program.defects).toEqual([]);
};

describe.each(allOperations.map((operation) => [operation.name, operation as Operation] as const))(
  '%s',
  (name, operation) => {
    test('refuses what is no request at all', async () => {
      for (const request of [null, 7, 'text', [], [{}]])
        expect(await program.answer(operation, request)).toMatchObject({
          ok: false,
          fault: { code: 'not-as-expected' },
        });
      expectUnchanged();
    });

    test('refuses every field that is of another type or out of all bounds, by its name', async () => {
      const request = sound[name];
      expect(request, `${name} has a sound request to start from`).toBeDefined();
      for (const path of fieldsOf(request)) {
        for (const wrong of wrongFor(valueAt(request, path))) {
          const answer = await program.answer(operation, withField(request, path, wrong));
          expect({ path, wrong, answer }).toMatchObject({ answer: { ok: false, fault: { code: 'not-as-expected' } } });
          if (!answer.ok) expect(answer.fault.path?.startsWith(path.slice(0, 1).join('.'))).toBe(true);
        }
      }
      expectUnchanged();
    });

    test('refuses text without end', async () => {
      const request = sound[name];
      const texts = fieldsOf(request).filter((path) => typeof valueAt(request, path) === 'string');
      for (const path of texts) {
        const answer = await program.answer(
          operation,
          withField(request, path, 'x'.repeat(path.at(-1) === 'base64' ? 33_000_000 : 70_000)),
        );
        expect({ path, ok: answer.ok }).toEqual({ path, ok: false });
      }
      expectUnchanged();
    });

    test('refuses what is not in the record, by a code that says so', async () => {
      const request = sound[name];
      const ids = fieldsOf(request).filter(
        (path) => /Id$/.test(String(path.at(-1))) && typeof valueAt(request, path) === 'number',
      );
      for (const path of ids) {
        const answer = await program.answer(operation, withField(request, path, 999_999));
        expect({ path, answer }).toMatchObject({
          answer: { ok: false, fault: { code: expect.stringMatching(/^unknown-/) } },
        });
      }
      expectUnchanged();
    });
  },
);
