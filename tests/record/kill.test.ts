import { setTimeout as wait } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { machinesList, machineTakeIn } from '#core/contract/machine.ts';
import { stripDownSheet } from '#core/contract/stripDown.ts';
import { openRecord } from '#core/record/openRecord.ts';
import { aShopWithAHitch, aTakeIn } from '#tests/support/aHitch.ts';
import { aProgram } from '#tests/support/aProgram.ts';
import { builtScript } from '#tests/support/builtScript.ts';
import { caseCount } from '#tests/support/counts.ts';
import { runScript } from '#tests/support/runScript.ts';
import { type Bench, ROWS_EACH } from '#tests/support/saveUntilKilled.ts';
import { seededDice } from '#tests/support/seededDice.ts';

/**
 * A program that saves strip-downs is killed again and again: by SIGKILL after a random time, or in the middle of a save.
 * A kill ends the program, not the computer: what a power cut does to a disk is SQLite's own promise (synchronous = FULL)
 * and is not tried here.
 */
const KILLS = caseCount(200);
const SEED = 20261109;
const script = await builtScript('tests/support/saveUntilKilled.ts');
const MACHINES = 20;

/** A shop with some tractors of the same hitch, closed. */
async function aShopToSaveInto(): Promise<{ recordPath: string; benches: Bench[]; remove: () => void }> {
  const program = aProgram();
  await aShopWithAHitch(program);
  for (let n = 2; n <= MACHINES; n++)
    await program.ask(machineTakeIn, aTakeIn({ name: `Tractor ${n}`, serial: `${n}` }));
  const benches: Bench[] = [];
  for (let machineId = 1; machineId <= MACHINES; machineId++) {
    const { rows } = await program.ask(stripDownSheet, { machineId });
    const [strip, pin] = rows;
    if (!strip || !pin) throw new Error('the hitch has two points');
    const { assemblyId, positionId } = pin;
    benches.push({ machineId, assemblyId, positionId, stripId: strip.pointId, pinId: pin.pointId });
  }
  await program.ask(machinesList, {}); // the classes are learned once, so that a program just started can save at once
  const recordPath = program.context.record!.path;
  program.context.close();
  return { recordPath, benches, remove: () => program.end() };
}

/** The sheets on record, by their number, each with how many rows of each sort belong to it. */
function sheetsOnRecord(recordPath: string) {
  const record = openRecord(recordPath);
  try {
    expect(record.sqlite.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(record.sqlite.pragma('foreign_key_check')).toEqual([]);
    const rows = record.sqlite
      .prepare(
        `SELECT v.note, v.entry_id AS entry,
           (SELECT count(*) FROM sizes s WHERE s.strip_down_id = v.id AND s.entry_id = v.entry_id) AS sizes,
           (SELECT count(*) FROM renewals r WHERE r.strip_down_id = v.id) AS renewals,
           (SELECT count(*) FROM findings f WHERE f.strip_down_id = v.id) AS findings,
           (SELECT count(*) FROM dial_readings d WHERE d.id = v.dial_reading_id) AS dialReadings
         FROM strip_downs v`,
      )
      .all() as ({ note: string; entry: number } & typeof ROWS_EACH)[];
    const stray = record.sqlite
      .prepare(
        `SELECT count(*) FROM entries e WHERE e.what = 'stripDown/save'
           AND NOT EXISTS (SELECT 1 FROM strip_downs v WHERE v.entry_id = e.id)`,
      )
      .pluck()
      .get();
    expect(stray).toBe(0);
    return new Map(rows.map(({ note, entry: _entry, ...counts }) => [Number(note.split(' ')[1]), counts]));
  } finally {
    record.close();
  }
}

test(`a program killed ${KILLS} times while it saves: what was acknowledged is there, and nothing is half there`, {
  timeout: 60_000 + KILLS * 10_000,
}, async () => {
  const { recordPath, benches, remove } = await aShopToSaveInto();
  const dice = seededDice(SEED);
  const acknowledged = new Set<number>();
  const told = { kills: 0, inTheMiddle: 0, unacknowledged: 0 };
  try {
    let next = 0;
    for (let kill = 0; kill < KILLS; kill++) {
      const inTheMiddle = dice.uniform() < 0.4;
      const strike = inTheMiddle ? 1 + Math.floor(dice.uniform() * 4 * ROWS_EACH.sizes) : 0;
      const arguments_ = ['--record', recordPath, '--first', String(next), '--benches', JSON.stringify(benches)];
      const life = runScript(script, [...arguments_, '--strike', String(strike)]);
      if (!inTheMiddle) {
        // one in ten is killed while it starts
        if (dice.uniform() < 0.1) await wait(dice.uniform() * 600);
        else await life.until(/saved/).then(() => wait(dice.uniform() * 600));
        life.child.kill('SIGKILL');
      }
      const { out, err } = await life.ended;
      expect(err).toBe('');
      expect(life.child.signalCode).toBe('SIGKILL');
      const saved = [...out.matchAll(/saved (\d+)\n/g)].map((match) => Number(match[1]));
      for (const n of saved) acknowledged.add(n);

      const onRecord = sheetsOnRecord(recordPath);
      for (const n of acknowledged) expect(onRecord.has(n), `sheet ${n} was acknowledged`).toBe(true);
      for (const [n, counts] of onRecord) expect({ n, ...counts }).toEqual({ n, ...ROWS_EACH });
      // at most the one sheet that was in hand may be there without its acknowledgement having got out
      const last = Math.max(-1, ...onRecord.keys());
      expect(last - next - saved.length).toBeLessThanOrEqual(0);
      told.kills++;
      if (inTheMiddle) told.inTheMiddle++;
      if (last >= next + saved.length) told.unacknowledged++;
      next = last + 1;
    }
    expect(acknowledged.size).toBeGreaterThan(KILLS / 2);
    console.log(
      `${told.kills} kills, ${told.inTheMiddle} of them inside a save; ${acknowledged.size} sheets acknowledged, all there; ` +
        `${told.unacknowledged} there whole whose acknowledgement was cut off`,
    );
  } finally {
    remove();
  }
});

test('the check can fail: a sheet without its rows is seen', async () => {
  const { recordPath, benches, remove } = await aShopToSaveInto();
  try {
    const life = runScript(script, [
      ...['--record', recordPath, '--first', '0', '--benches', JSON.stringify(benches), '--strike', '0'],
    ]);
    await life.until(/saved 1\n/);
    life.child.kill('SIGKILL');
    await life.ended;
    const record = openRecord(recordPath);
    record.sqlite.exec('DROP TRIGGER sizes_stay; DELETE FROM sizes WHERE id = (SELECT min(id) FROM sizes)');
    record.close();
    expect(sheetsOnRecord(recordPath).get(0)).not.toEqual(ROWS_EACH);
  } finally {
    remove();
  }
});

test('two programs that save at once, then are both killed: every sheet either acknowledged is there', async () => {
  const { recordPath, benches, remove } = await aShopToSaveInto();
  try {
    const half = benches.length / 2;
    const lives = [benches.slice(0, half), benches.slice(half)].map((own, place) => ({
      first: place * 200,
      life: runScript(script, [
        ...['--record', recordPath, '--first', String(place * 200), '--benches', JSON.stringify(own), '--strike', '0'],
      ]),
    }));
    const enough = caseCount(100);
    for (const { life, first } of lives) await life.until(new RegExp(`saved ${first + enough}\\n`));
    for (const { life } of lives) life.child.kill('SIGKILL');
    const onRecord = new Set<number>();
    for (const { life } of lives) {
      const { out, err } = await life.ended;
      expect(err).toBe('');
      for (const match of out.matchAll(/saved (\d+)\n/g)) onRecord.add(Number(match[1]));
    }
    const found = sheetsOnRecord(recordPath);
    for (const n of onRecord) expect(found.get(n), `sheet ${n} was acknowledged`).toEqual(ROWS_EACH);
    expect(onRecord.size).toBeGreaterThan(2 * enough);
  } finally {
    remove();
  }
});
