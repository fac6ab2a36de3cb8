import fc from 'fast-check';
import { expect, test } from 'vitest';
import { entriesList, entriesUndoLast } from '#core/contract/entries.ts';
import { hoursAdd } from '#core/contract/hours.ts';
import { assemblyMove, assemblyMoveHalf } from '#core/contract/machine.ts';
import { loadShopLife } from '#core/record/loadShopLife.ts';
import { addDays, day, daysBetween } from '#core/units/day.ts';
import { seriesOfShop } from '#core/way.ts';
import { aHitchInHalves, aShopWithAHitch } from '#tests/support/aHitch.ts';
import { aProgram } from '#tests/support/aProgram.ts';
import { caseCount } from '#tests/support/counts.ts';

const START = day('2022-01-10');
const AS_OF = day('2026-11-09');
const DIAL_AT_START = 1000;
/** Hours a day of the three machines: each runs evenly, so that every dial is known. */
const PACE = [1, 2, 3] as const;

const anEvent = fc.record({
  days: fc.integer({ min: 1, max: 60 }),
  what: fc.constantFrom('whole', 'half', 'half', 'half'),
  which: fc.nat(2),
  /** 3: the shelf */
  to: fc.nat(3),
  theirs: fc.constantFrom('in-exchange' as const, 'shelf' as const),
});

test('of any life of moves, whole and half, part hours are those of the machines a part sat on; undone they are gone', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(anEvent, { minLength: 1, maxLength: 8 }), async (events) => {
      const program = aProgram(AS_OF);
      try {
        await aShopWithAHitch(program);
        const hitches = [];
        for (const name of ['One', 'Two', 'Three']) {
          const dial = { takenOn: START, dialHours: DIAL_AT_START, estimate: false, saidBy: '' };
          hitches.push(await aHitchInHalves(program, name, dial));
        }
        const record = program.context.record!;
        const life = () => JSON.stringify(loadShopLife(record));

        // what should be, told apart from the program: where each hitch and each carrier is, and what it has run
        const seatOf: (number | null)[] = [0, 1, 2];
        const homeOf: (number | null)[] = [0, 1, 2];
        const run = [DIAL_AT_START, DIAL_AT_START, DIAL_AT_START];
        let on = 0;
        const goOnTo = (days: number) => {
          for (const [carrier, home] of homeOf.entries()) {
            const seat = home === null ? null : seatOf[home]!;
            if (seat !== null) run[carrier]! += PACE[seat]! * (days - on);
          }
          on = days;
        };
        const dialAt = (seat: number | null) => (seat === null ? null : DIAL_AT_START + PACE[seat]! * on);

        const before = [life()];
        for (const { days, what, which, to, theirs } of events) {
          goOnTo(on + days);
          const takenOn = addDays(START, on);
          const target = to === 3 ? null : to;
          const whole = what === 'whole';
          const from = whole ? seatOf[which]! : homeOf[which] === null ? null : seatOf[homeOf[which]!]!;
          const toSeat = whole ? target : target === null ? null : seatOf[target]!;
          const there = whole || target === null ? [] : homeOf.flatMap((home, i) => (home === target ? [i] : []));
          const dials = { takenOn, dialHours: dialAt(from), toDialHours: dialAt(toSeat) };
          const answer = whole
            ? await program.answer(assemblyMove, {
                ...dials,
                assemblyId: hitches[which]!.assemblyId,
                toMachineId: target === null ? null : hitches[target]!.machineId,
              })
            : await program.answer(assemblyMoveHalf, {
                ...dials,
                positionIds: hitches[which]!.carrier,
                toAssemblyId: target === null ? null : hitches[target]!.assemblyId,
                theirs: there.length > 0 ? theirs : null,
              });
          const stays = whole ? seatOf[which] === target : homeOf[which] === target;
          expect(answer.ok, JSON.stringify(answer)).toBe(!stays);
          if (!answer.ok) continue;
          if (whole) seatOf[which] = target;
          else {
            for (const other of there) homeOf[other] = theirs === 'in-exchange' ? homeOf[which]! : null;
            homeOf[which] = target;
          }
          before.push(life());
        }
        goOnTo(daysBetween(START, AS_OF));
        for (const [seat, { machineId }] of hitches.entries())
          await program.ask(hoursAdd, {
            ...{ machineId, takenOn: AS_OF, kind: 'reading', dialHours: dialAt(seat), newDialHours: null },
            ...{ errorHours: null, saidBy: '', sure: true },
          });
        const shop = seriesOfShop(loadShopLife(record, { asOf: AS_OF }), AS_OF);
        for (const [carrier, hitch] of hitches.entries()) {
          const point = shop.life.points.find(({ pointId }) => pointId === hitch.strip.pointId)!;
          expect(shop.ofPoint(point).partHoursNow).toBeCloseTo(run[carrier]!, 3);
        }
        // taken back one after another, each leaves the record as it was before it
        for (let i = 0; i < hitches.length; i++) await undo();
        while (before.length > 1) {
          expect(life()).toBe(before.pop());
          await undo();
        }
        expect(life()).toBe(before[0]);
        expect(program.defects).toEqual([]);

        async function undo(): Promise<void> {
          const { undoableEntryId } = await program.ask(entriesList, { beforeEntryId: null, limit: 1 });
          await program.ask(entriesUndoLast, { entryId: undoableEntryId!, by: '' });
        }
      } finally {
        program.end();
      }
    }),
    { numRuns: caseCount(400), seed: 20_220_110 },
  );
}, 600_000);
