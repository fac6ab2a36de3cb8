import { copyFileSync, existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { phoneFind } from '#core/contract/recall.ts';
import { recordOpen, recordOpenDemo } from '#core/contract/record.ts';
import { findingAdd } from '#core/contract/stripDown.ts';
import { listTerms } from '#core/record/contactStore.ts';
import { listCustomers } from '#core/record/customerStore.ts';
import { recordOf } from '#core/use-cases/context.ts';
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

test('every farm of the demo has a telephone number that rings nobody, and a way', async () => {
  await program.ask(recordOpenDemo, {});
  const farms = listCustomers(recordOf(program.context));
  // 01632 960000 to 960999 are set aside for drama (Ofcom)
  expect(farms.filter(({ phone }) => !/^01632 960 \d{3}$/.test(phone))).toEqual([]);
  expect(new Set(farms.map(({ phone }) => phone)).size).toBe(farms.length);
  const terms = listTerms(recordOf(program.context));
  expect(terms).toHaveLength(farms.length);
  // out in the lanes nobody drives faster than 60 km/h, nor dawdles at 20
  const speeds = terms.map(({ distanceKm, driveMinutes }) => (60 * distanceKm!) / driveMinutes!);
  expect(Math.max(...speeds)).toBeLessThan(60);
  expect(Math.min(...speeds)).toBeGreaterThan(15);
  const { farms: found } = await program.ask(phoneFind, { text: farms[2]!.phone.slice(-7) });
  expect(found.map(({ name }) => name)).toContain(farms[2]!.name);
});
