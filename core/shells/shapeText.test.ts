import { expect, test } from 'vitest';
import { z } from 'zod';
import { shapeText } from './shapeText.ts';

test('a shape is told on one line, with what may be left out marked', () => {
  const shape = z.object({
    machineId: z.int().positive(),
    takenOn: z.string().refine(() => true),
    sizesMm: z.array(z.number()),
    wears: z.enum(['down', 'up']).default('down'),
    note: z.string().nullable().optional(),
    marks: z.array(z.enum(['crack', 'bent'])),
    facts: z.record(z.string(), z.union([z.string(), z.boolean()])),
  });
  expect(shapeText(shape, 'request')).toBe(
    '{ machineId: whole number, takenOn: text, sizesMm: number[], wears?: "down" | "up", note?: text | null, marks: ("crack" | "bent")[], facts: { [name]: text | true | false } }',
  );
  expect(shapeText(shape, 'reply')).toContain('wears: "down" | "up"');
  expect(shapeText(z.object({}), 'request')).toBe('{}');
});

test('a shape that JSON cannot carry is not told but thrown', () => {
  expect(() => shapeText(z.object({ takenOn: z.date() }), 'reply')).toThrow(/[Dd]ate/);
});
