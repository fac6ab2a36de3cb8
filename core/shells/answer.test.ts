import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { operation } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import { answerWith, type Log } from './answer.ts';

const read = operation(
  'pin/read',
  z.object({
    pins: z.array(z.object({ diameterMm: z.number().min(0) })).min(1),
    wears: z.enum(['down', 'up']).default('down'),
  }),
  z.object({ thinnestMm: z.number(), wears: z.string() }),
  { title: 'Thinnest pin' },
);
const fails = operation('pin/fails', z.object({ how: z.string() }), z.object({ hours: z.number() }), {
  title: 'Fails',
});

function aDoor() {
  const logged: Parameters<Log>[0][] = [];
  const ask = answerWith({
    operations: [read, fails],
    context: { shop: 'Aldermoor Smithy' },
    log: (entry) => logged.push(entry),
    handlers: {
      'pin/read': (_context, { pins, wears }) => ({
        thinnestMm: Math.min(...pins.map((pin) => pin.diameterMm)),
        wears,
        scribble: 'not in the contract',
      }),
      'pin/fails': async (_context, { how }) => {
        if (how === 'refuses')
          throw new RefusedError({ code: 'dial-went-back', facts: { dialHours: 812, path: 'dialHours' } });
        if (how === 'breaks') throw new TypeError('no such column: size_mm\n  and more');
        if (how === 'throws text') throw 'text';
        return { hours: Number.NaN };
      },
    },
  });
  return { ask, logged };
}

describe('the door', () => {
  test('reads the request, runs the handler, and keeps only what the contract promises', async () => {
    const { ask, logged } = aDoor();
    expect(await ask('pin/read', { pins: [{ diameterMm: 30 }, { diameterMm: 29.4 }] })).toEqual({
      ok: true,
      value: { thinnestMm: 29.4, wears: 'down' },
    });
    expect(logged).toEqual([]);
  });

  test('names the field and what was expected of it', async () => {
    const { ask, logged } = aDoor();
    expect(await ask('pin/read', { pins: [{ diameterMm: 30 }, { diameterMm: '29,4' }], wears: 'sideways' })).toEqual({
      ok: false,
      fault: {
        code: 'not-as-expected',
        path: 'pins.1.diameterMm',
        facts: { expected: 'a number' },
        issues: [
          { path: 'pins.1.diameterMm', expected: 'a number' },
          { path: 'wears', expected: 'one of down | up' },
        ],
      },
    });
    expect(await ask('pin/read', { pins: [] })).toMatchObject({
      fault: { issues: [{ path: 'pins', expected: 'at least 1 entries' }] },
    });
    expect(await ask('pin/read', null)).toMatchObject({ fault: { path: '', issues: [{ expected: 'an object' }] } });
    expect(logged).toEqual([]);
  });

  test.each(['toString', '__proto__', 'constructor', 'hasOwnProperty', '', 'pin/none'])(
    'knows no operation called "%s"',
    async (name) => {
      const { ask } = aDoor();
      expect(await ask(name, {})).toEqual({ ok: false, fault: { code: 'unknown-operation', facts: {} } });
    },
  );

  test('hands on a refusal with its code, its field and its facts', async () => {
    const { ask, logged } = aDoor();
    expect(await ask('pin/fails', { how: 'refuses' })).toEqual({
      ok: false,
      fault: { code: 'dial-went-back', path: 'dialHours', facts: { dialHours: 812 } },
    });
    expect(logged).toEqual([]);
  });

  test('turns anything else that is thrown into "failed", and logs where it broke', async () => {
    const { ask, logged } = aDoor();
    expect(await ask('pin/fails', { how: 'breaks' })).toEqual({
      ok: false,
      fault: { code: 'failed', facts: { operation: 'pin/fails', detail: 'TypeError: no such column: size_mm' } },
    });
    expect(await ask('pin/fails', { how: 'throws text' })).toMatchObject({ fault: { code: 'failed' } });
    expect(logged.map((entry) => entry.operation)).toEqual(['pin/fails', 'pin/fails']);
    expect(logged[0]?.error).toBeInstanceOf(TypeError);
  });

  test('does not let a reply through that breaks the contract, such as hours that are no number', async () => {
    const { ask, logged } = aDoor();
    expect(await ask('pin/fails', { how: 'nan' })).toMatchObject({ ok: false, fault: { code: 'failed' } });
    expect(logged[0]?.error.message).toContain('hours: a number');
  });

  test('answers alike over JSON and over structured clone', async () => {
    const { ask } = aDoor();
    for (const request of [{ pins: [{ diameterMm: 0.1 }] }, { pins: 3 }]) {
      const answer = await ask('pin/read', request);
      expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
      expect(structuredClone(answer)).toEqual(answer);
    }
  });
});
