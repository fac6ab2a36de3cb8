import { describe, expect, test } from 'vitest';
import { allOperations } from '#core/contract/allOperations.ts';
import { shapeText } from '#core/shells/shapeText.ts';

describe('the contract', () => {
  test('names each operation once, noun before verb', () => {
    const names = allOperations.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).toMatch(/^[a-z][A-Za-z]*\/[a-z][A-Za-z]*$/);
    expect(names.length).toBeGreaterThan(30);
  });

  test.each(allOperations.map((operation) => [operation.name, operation] as const))(
    '%s is told in shapes that JSON carries',
    (_name, operation) => {
      expect(shapeText(operation.zRequest, 'request')).toMatch(/^\{/);
      expect(shapeText(operation.zReply, 'reply')).not.toContain('anything');
      expect(operation.title).toMatch(/^[A-Z].*[^.]$/);
    },
  );
});
