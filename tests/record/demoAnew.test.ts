import { copyFileSync, existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { recordOpen, recordOpenDemo } from '#core/contract/record.ts';
import { findingAdd } from '#core/contract/stripDown.ts';
import { aProgram, type Program } from '#tests/support/aProgram.ts';

let program: Program;
beforeEach(() => {
  program = aProgram('2026-11-02');
});
afterEach(() => {
  expect(program.defects).toEqual([]);
  program.end();
});

const demos = () => readdirSync(program.folder).filter((name) => /^demo workshop.*\.hoursandwear$/.test(name));

test('a demo of other data makes way for the present one; with anything entered into it, it stays and that is said', async () => {
  const { path, warnings } = await program.ask(recordOpenDemo, {});
  expect(warnings).toEqual([]);
  const present = demos();
  expect(present).toHaveLength(1);

  // untouched, as an earlier program laid it down: it is taken away
  const other = join(program.folder, 'demo workshop.hoursandwear');
  program.context.close();
  copyFileSync(path!, other);
  const again = await program.ask(recordOpenDemo, {});
  expect(again.warnings).toEqual([]);
  expect(demos()).toEqual(present);

  // one that somebody worked in stays beside the new one
  program.context.close();
  copyFileSync(path!, other);
  await program.ask(recordOpen, { path: other });
  const crack = { assemblyId: 1, positionId: null, kind: 'crack' as const, severity: 'watch' as const, note: '' };
  await program.ask(findingAdd, { ...crack, photoIds: [], takenOn: '2026-10-12', by: 'Bo' });
  rmSync(path!);
  const anew = await program.ask(recordOpenDemo, {});
  expect(anew.path).toBe(path);
  expect(anew.warnings).toMatchObject([{ code: 'demo-laid-down-anew', facts: { kept: other } }]);
  expect(existsSync(other)).toBe(true);
});
