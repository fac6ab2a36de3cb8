import { describe, expect, it } from 'vitest';
import { machineTakeIn } from '#core/contract/machine.ts';
import type { AssemblyKind } from '#core/contract/shop.ts';
import {
  assemblyByHand,
  assemblyOfKind,
  emptyTakeIn,
  errorFigure,
  nextItem,
  stationsOf,
  type TakeInForm,
} from './form.ts';
import { formPath, kindPositions, takeInRequest } from './request.ts';

const hitch: AssemblyKind = {
  name: 'Pick-up hitch',
  sketch: null,
  joints: [],
  positions: [
    {
      item: 1,
      name: 'Slide strip, top front',
      safety: false,
      group: 'carrier',
      mustStayStandard: false,
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
          limitSource: 'shop',
          gaugeErrorMm: 0.05,
          stations: ['front', 'middle', 'rear'],
        },
      ],
    },
    { item: 10, name: 'Hook', safety: true, mustStayStandard: false, group: null, points: [] },
  ],
};

function filled(): TakeInForm {
  const form = emptyTakeIn('2026-11-02', 'Ines');
  form.customer.name = 'Under Crag';
  form.machine.name = 'Tarrow 90';
  form.machine.workShareText = '80 %';
  form.dial.dialText = '6 838';
  form.assemblies = [assemblyOfKind(hitch, ',')];
  return form;
}
const whys = (form: TakeInForm) => takeInRequest(form, '.').remarks.map(({ path, why }) => `${path} ${why}`);

describe('taking a machine in', () => {
  it('lays a kind out as it stands, in the shop’s own writing and back', () => {
    expect(filled().assemblies[0]?.positions[0]?.points[0]).toMatchObject({
      newSizeText: '12,0',
      renewAtText: '9,5',
      gaugeErrorText: '0,10',
      stationsText: 'front, middle, rear',
    });
    const { request } = takeInRequest(filled(), '.');
    // what goes together stands in the kind alone, and is kept when the kind is saved
    expect(request?.assemblies[0]?.positions).toEqual(hitch.positions.map(({ group: _, ...position }) => position));
    expect(kindPositions(assemblyOfKind(hitch, ',').positions, ',').laidOut?.positions).toEqual(hitch.positions);
    expect(request?.assemblies[0]?.fittedMachineHours).toBe(0);
    expect(request?.machine.workShare).toBe(0.8);
    expect(request?.dial).toEqual({ takenOn: '2026-11-02', dialHours: 6838, estimate: false, saidBy: 'Ines' });
    expect(machineTakeIn.zRequest.safeParse(request).success).toBe(true);
  });
  it('needs a customer and a machine by name, and nothing more', () => {
    expect(whys(emptyTakeIn('2026-11-02', ''))).toEqual(['customer.name missing', 'machine.name missing']);
    const form = emptyTakeIn('2026-11-02', '');
    form.customerId = 3;
    form.machine.name = 'Trailer';
    form.machine.meter = 'none';
    form.dial.dialText = '400';
    expect(takeInRequest(form, '.').request).toMatchObject({ customerId: 3, customer: null, dial: { estimate: true } });
  });
  it('names every figure it cannot read, and where', () => {
    const form = filled();
    form.machine.builtYearText = '19';
    form.dial.dialText = '6.838';
    const point = form.assemblies[0]!.positions[0]!.points[0]!;
    point.newSizeText = 'twelve';
    point.partClass = ' ';
    expect(whys(form)).toEqual([
      'machine.builtYear out-of-bounds',
      'dial.dialHours thousands-mark',
      'assemblies.0.positions.0.points.0.partClass missing',
      'assemblies.0.positions.0.points.0.newSize not-a-number',
    ]);
  });
  it('questions limits on the side a part cannot wear to, and a reject-at before renew-at', () => {
    const form = filled();
    const point = form.assemblies[0]!.positions[0]!.points[0]!;
    point.renewAtText = '12,5';
    expect(whys(form)).toEqual(['assemblies.0.positions.0.points.0.renewAt wrong-side']);
    point.renewAtText = '9,5';
    point.rejectAtText = '10';
    expect(whys(form)).toEqual(['assemblies.0.positions.0.points.0.rejectAt limits-crossed']);
    point.renewAtText = '';
    point.rejectAtText = '';
    expect(whys(form)).toEqual([]);
  });
  it('leaves out what is left out, and finds a refused field again', () => {
    const form = filled();
    form.assemblies[0]!.positions[0]!.leftOut = true;
    form.assemblies[0]!.positions[0]!.points[0]!.newSizeText = '';
    expect(takeInRequest(form, '.').request?.assemblies[0]?.positions.map(({ item }) => item)).toEqual([10]);
    expect(formPath('assemblies.0.positions.0.points.0.renewAtMm', form)).toBe(
      'assemblies.0.positions.1.points.0.renewAt',
    );
    form.assemblies[0]!.positions[1]!.leftOut = true;
    expect(whys(form)).toEqual(['assemblies.0.positions no-position']);
  });
  it('wants each item number once', () => {
    const form = filled();
    form.assemblies[0]!.positions[1]!.itemText = '1';
    expect(whys(form)).toEqual(['assemblies.0.positions.1.item twice']);
    expect(nextItem(form.assemblies[0]!.positions)).toBe(2);
  });
  it('asks for parts by hand what a kind would have known', () => {
    const form = filled();
    form.assemblies = [assemblyByHand('.')];
    expect(whys(form).map((why) => why.replace('assemblies.0.', ''))).toEqual([
      'name missing',
      'positions.0.name missing',
      'positions.0.points.0.partClass missing',
      'positions.0.points.0.newSize missing',
    ]);
  });
});

it('stations are told apart by commas', () => {
  expect(stationsOf(' front, middle;rear ,')).toEqual(['front', 'middle', 'rear']);
  expect(stationsOf('')).toEqual([]);
});

it('a gauge error is written twice its sd, exactly', () => {
  expect(errorFigure(0.05, '.')).toBe('0.10');
  expect(errorFigure(0.025, ',')).toBe('0,05');
  expect(errorFigure(0.002, '.')).toBe('0.004');
});
