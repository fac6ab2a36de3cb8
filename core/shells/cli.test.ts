import { expect, test } from 'vitest';
import { allOperations } from '../contract/allOperations.ts';
import { operationsText, readCommandLine } from './cli.ts';

const STOOD = '/shop/winter';

test('paths are taken from where the person stood', () => {
  expect(readCommandLine(['hours/add', '{"dialHours":812}', '--record', '../records/a.hoursandwear'], STOOD)).toEqual({
    kind: 'call',
    name: 'hours/add',
    json: '{"dialHours":812}',
    recordPath: '/shop/records/a.hoursandwear',
  });
});

test('an operation alone is asked with nothing, as of today, of the usual record', () => {
  const line = readCommandLine(['machines/list'], STOOD);
  expect(line).toMatchObject({ kind: 'call', json: '{}' });
  expect(line).not.toHaveProperty('asOf');
  expect(readCommandLine(['machines/list', '--as-of', '2026-11-02'], STOOD)).toMatchObject({ asOf: '2026-11-02' });
});

test('a command line that cannot be understood says which word is the matter', () => {
  expect(readCommandLine(['machines/list', '--recrod', 'a'], STOOD)).toMatchObject({
    text: expect.stringContaining('--recrod'),
  });
  expect(readCommandLine(['machines/list', '{}', 'again'], STOOD)).toMatchObject({
    text: expect.stringContaining('again'),
  });
});

test('without an operation every one is listed, with its shapes', () => {
  expect(readCommandLine([], STOOD)).toEqual({ kind: 'list' });
  const text = operationsText();
  for (const { name, title } of allOperations) expect(text).toContain(`${name}  ${title}\n  -> {`);
});
