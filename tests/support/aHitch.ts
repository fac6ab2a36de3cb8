import { machineRead, machineTakeIn } from '#core/contract/machine.ts';
import type { AskOf } from '#core/contract/operation.ts';
import { recordStartEmpty } from '#core/contract/record.ts';
import { shopRead } from '#core/contract/shop.ts';
import { stripDownSave, stripDownSheet } from '#core/contract/stripDown.ts';
import type { Program } from './aProgram.ts';
import { forecastCoarsely } from './coarseForecasts.ts';
import { beginningOf, laidOnce } from './laidOnce.ts';

type TakeIn = AskOf<typeof machineTakeIn>;

/** What a shop types for a tractor with a small hitch: a strip with two stations, and a hook that lifts. */
export const aTakeIn = (
  change: Partial<TakeIn['machine']> = {},
  dial: TakeIn['dial'] = { takenOn: '2022-01-10', dialHours: 1000, estimate: false, saidBy: 'Bo' },
): TakeIn => ({
  customerId: null,
  customer: { name: 'Hill Farm', place: 'Overby', address: '', phone: '', email: '' },
  machine: {
    name: 'Tractor 1',
    make: 'Make',
    model: 'M',
    serial: '1',
    builtYear: 2015,
    note: '',
    meterDigits: 5,
    hoursBefore: null,
    workShare: 1,
    ...change,
  },
  dial,
  assemblies: [
    {
      kind: null,
      name: 'Small hitch',
      serial: '',
      fittedMachineHours: 0,
      positions: [
        {
          item: 1,
          name: 'Strip top',
          safety: false,
          points: [
            {
              name: 'thickness',
              measures: 'thickness',
              wears: 'down',
              partClass: 'Nylon slide strip',
              newSizeMm: 12,
              newSizeTolMm: 0.2,
              renewAtMm: 9.5,
              rejectAtMm: 8.5,
              limitSource: 'own rule',
              gaugeErrorMm: 0.05,
              stations: ['front', 'rear'],
            },
          ],
        },
        {
          item: 2,
          name: 'Hook pin',
          safety: true,
          points: [
            {
              name: 'diameter',
              measures: 'diameter',
              wears: 'down',
              partClass: 'Latch and lock pin',
              newSizeMm: 30,
              newSizeTolMm: 0.1,
              renewAtMm: 29,
              rejectAtMm: null,
              limitSource: null,
              gaugeErrorMm: 0.02,
              stations: [],
            },
          ],
        },
      ],
    },
  ],
});

/** A new shop with that tractor in it, and what its bench sheet names. */
export async function aShopWithAHitch(program: Program) {
  const shop = await laidOnce(beginningOf(program), 'a shop with a hitch', async () => {
    await program.ask(recordStartEmpty, {});
    forecastCoarsely(program.context.record!);
    const { machineId, customerId } = await program.ask(machineTakeIn, aTakeIn());
    const { rows } = await program.ask(stripDownSheet, { machineId });
    const [strip, pin] = rows;
    if (!strip || !pin) throw new Error('the hitch has two points');
    return { machineId, customerId, strip, pin };
  });
  const { machineId } = shop;
  return {
    ...shop,
    sheet: () => program.ask(machineRead, { machineId }),
    draft: (takenOn: string, dialHours: number | null) => ({
      machineId,
      takenOn,
      dialHours,
      fitter: 'Bo',
      note: '',
      sizes: [] as {
        pointId: number;
        station: string;
        event: 'as-found' | 'as-left';
        sizeMm: number;
        gaugeId: number | null;
        answer: 'right-as-read' | null;
      }[],
      renewals: [] as { pointId: number; sizeMm: number | null; hoursKnown: boolean }[],
      findings: [] as {
        assemblyId: number;
        positionId: number | null;
        kind: 'crack';
        severity: 'do-not-use' | 'watch';
        note: string;
      }[],
    }),
  };
}

export const aSize = (pointId: number, sizeMm: number, station = '', event: 'as-found' | 'as-left' = 'as-found') => ({
  pointId,
  station,
  event,
  sizeMm,
  gaugeId: null,
  answer: null as 'right-as-read' | null,
});

/** The same, measured twice, with nothing odd about its sizes. */
export async function aHitchMeasuredTwice(program: Program) {
  const shop = await aShopWithAHitch(program);
  for (const [takenOn, dialHours, stripMm, pinMm] of [
    ['2024-01-10', 2000, 11.4, 29.9],
    ['2026-05-01', 3000, 10.9, 29.8],
  ] as const) {
    const strip = (station: string) => aSize(shop.strip.pointId, stripMm, station);
    const sizes = [strip('front'), strip('rear'), aSize(shop.pin.pointId, pinMm)];
    await program.ask(stripDownSave, { ...shop.draft(takenOn, dialHours), sizes, dialSure: true });
  }
  return shop;
}

/** Another tractor, with a pick-up hitch of the shop's kind, which comes apart in frame and carrier: a strip, a latch pin. */
export async function aHitchInHalves(program: Program, name: string, dial = aTakeIn().dial) {
  const { kinds } = await program.ask(shopRead, {});
  const kind = kinds.find((one) => one.name === 'Telescopic pick-up hitch')!;
  const takeIn = aTakeIn({ name }, dial);
  const positions = kind.positions.filter(({ item }) => [1, 2, 9].includes(item));
  const { machineId } = await program.ask(machineTakeIn, {
    ...takeIn,
    assemblies: [{ ...takeIn.assemblies[0]!, kind: kind.name, name: 'Pick-up hitch', positions }],
  });
  const { rows } = await program.ask(stripDownSheet, { machineId });
  const of = (item: number) => rows.find((row) => row.item === item)!;
  return {
    machineId,
    assemblyId: rows[0]!.assemblyId,
    strip: of(1),
    latch: of(9),
    carrier: [of(1).positionId, of(2).positionId],
    sheet: () => program.ask(machineRead, { machineId }),
  };
}

/** Another tractor with the four strips of a pick-up hitch, never measured. @returns its assembly */
export async function aSlide(program: Program): Promise<number> {
  const { kinds } = await program.ask(shopRead, {});
  const kind = kinds.find((one) => one.name === 'Telescopic pick-up hitch')!;
  const takeIn = aTakeIn({ name: 'Tractor with a slide' });
  const positions = kind.positions.filter(({ item }) => item <= 4);
  const { machineId } = await program.ask(machineTakeIn, {
    ...takeIn,
    assemblies: [{ ...takeIn.assemblies[0]!, kind: kind.name, name: 'Pick-up hitch', positions }],
  });
  const { rows } = await program.ask(stripDownSheet, { machineId });
  return rows[0]!.assemblyId;
}
