import { describe, expect, it } from 'vitest';
import type { PointSheet } from '#core/contract/machine.ts';
import { day } from '#core/units/day.ts';
import { basisSentence, ownerLine } from '#renderer/words/machineWords.ts';
import { aMachineSheet, aPointSheet, aVisit } from './aPointSheet.ts';
import { firstChosen, pictureOf, pointsInOrder, questionedPoints, restsOn } from './pictureOf.ts';
import { sketchStates } from './sketchStates.ts';
import { pointOfItem } from './useItemNumber.ts';

const withForecast = (point: PointSheet, its: Partial<PointSheet['forecast']>): PointSheet => ({
  ...point,
  forecast: { ...point.forecast, ...its },
});

const twoAssemblies = () =>
  aMachineSheet(
    [aPointSheet(1, { assemblyId: 2, item: 1 }), aPointSheet(2, { item: 2 }), aPointSheet(3, { item: 1 })],
    {
      assemblies: [
        { assemblyId: 1, name: 'Front loader', kind: null, serial: 'L-77', sketch: null, positions: [] },
        { assemblyId: 2, name: 'Rear linkage', kind: null, serial: '', sketch: null, positions: [] },
      ],
    },
  );

describe('the rows of a machine', () => {
  it('stand assembly by assembly, within one by item number', () => {
    expect(pointsInOrder(twoAssemblies()).map((point) => point.pointId)).toEqual([3, 2, 1]);
  });

  it('name each assembly over its first row, where there are several', () => {
    const { rows } = pictureOf(twoAssemblies(), 3, '.');
    expect(rows.map((row) => row.assemblyHead)).toEqual(['Front loader', undefined, 'Rear linkage']);
    expect(rows.map((row) => row.elsewhere)).toEqual([false, false, true]);
    expect(pictureOf(aMachineSheet([aPointSheet(1)]), 1, '.').rows[0]?.assemblyHead).toBeUndefined();
  });

  it('name a point only where its position has several', () => {
    const sheet = aMachineSheet([
      aPointSheet(1, { positionId: 7, point: 'bush bore' }),
      aPointSheet(2, { positionId: 7 }),
      aPointSheet(3),
    ]);
    expect(pictureOf(sheet, null, '.').rows.map((row) => row.point)).toEqual(['bush bore', 'pin diameter', '']);
  });

  it('let a finding stand in the forecast’s place', () => {
    const stopped = withForecast(aPointSheet(1, { role: 'stop' }), {
      openFindings: [{ finding: 'crack', severity: 'do-not-use', date: day('2026-10-12'), note: 'At weld toe' }],
    });
    const picture = pictureOf(aMachineSheet([stopped]), 1, '.');
    expect(picture.rows[0]?.doNotUse).toBe('crack, at weld toe');
    expect(picture.rows[0]?.state).toBe('stop');
    expect(picture.chosen?.doNotUse).toBe(true);
  });

  it('hang a part past at its last size at that reading', () => {
    const past = withForecast(
      aPointSheet(1, { visits: [aVisit('2024-01-02', 2000, { '': 39.5 }), aVisit('2026-01-02', 3800, { '': 38.9 })] }),
      { pastLimitMm: 0.1 },
    );
    expect(pictureOf(aMachineSheet([past]), 1, '.').rows[0]?.pastLimit).toEqual({ mm: 0.1, readAtHours: 3800 });
  });

  it('keep where a bar stood before it moved, and say nothing of one that did not', () => {
    const sheet = aMachineSheet([aPointSheet(1), aPointSheet(2)]);
    const earlier = new Map([
      [1, { low: 5000.4, middle: 6000, high: 8000 }],
      [2, { low: 4500, middle: 5200, high: null }],
    ]);
    const { rows } = pictureOf(sheet, 1, '.', earlier);
    expect(rows[0]?.before).toBeNull();
    expect(rows[1]?.before).toEqual({ low: 4500, middle: 5200, high: null });
  });

  it('mark where the meter was changed, corrected rows left out', () => {
    const dial = {
      dialReadingId: 1,
      takenOn: day('2022-03-01'),
      kind: 'new-meter' as const,
      dialHours: 2100,
      newDialHours: 0,
      errorHours: null,
      machineHours: 2100,
      sdHours: 0,
      saidBy: '',
      hoursPerDialHour: null,
      madeAt: '',
      madeBy: '',
      reason: '',
      superseded: false,
      struck: false,
      cautions: [],
    };
    const sheet = aMachineSheet([aPointSheet(1)], {
      dialRows: [dial, { ...dial, dialReadingId: 2, machineHours: 900, superseded: true }],
    });
    expect(pictureOf(sheet, 1, '.').meterChanges).toEqual([2100]);
  });
});

describe('the point a page opens on', () => {
  it('is the one whose deciding hours end first', () => {
    const sheet = aMachineSheet([
      aPointSheet(1),
      withForecast(aPointSheet(2), { decidingHoursLeft: -30 }),
      withForecast(aPointSheet(3), { decidingHoursLeft: 400 }),
    ]);
    expect(firstChosen(sheet)).toBe(2);
  });
  it('is the one that must not be used where nothing is foretold, else the first; none without points', () => {
    const blank = { decidingHoursLeft: null };
    const points = [withForecast(aPointSheet(1), blank), withForecast(aPointSheet(2, { role: 'stop' }), blank)];
    expect(firstChosen(aMachineSheet(points))).toBe(2);
    expect(firstChosen(aMachineSheet(points.slice(0, 1)))).toBe(1);
    expect(firstChosen(aMachineSheet([]))).toBeNull();
  });
});

it('like parts of one class are counted once', () => {
  const points = [aPointSheet(1), aPointSheet(2), withForecast(aPointSheet(3), { partClass: 'bush', likeParts: 5 })];
  expect(restsOn(points.map((point) => withForecast(point, { ownReadings: 2 })))).toEqual({ own: 6, like: 36 });
});

it('questioned sizes are found in the order of the page', () => {
  const visit = aVisit('2026-01-02', 3800, { A: 39.5, B: 39.4 });
  const parked = { ...visit, stations: visit.stations.map((station) => ({ ...station, parked: true })) };
  const sheet = aMachineSheet([aPointSheet(1), aPointSheet(2, { visits: [parked], renewalsQuestioned: [7] })]);
  expect(questionedPoints(sheet)).toEqual([{ pointId: 2, count: 3 }]);
});

describe('item numbers', () => {
  const rows = [
    { item: 9, pointId: 1, state: 'leave' as const },
    { item: 9, pointId: 2, state: 'now' as const },
    { item: 10, pointId: 3, state: 'none' as const },
  ];
  it('lead to the first point of that number, and typed again to the next', () => {
    expect(pointOfItem(rows, 9, 3)?.pointId).toBe(1);
    expect(pointOfItem(rows, 9, 1)?.pointId).toBe(2);
    expect(pointOfItem(rows, 9, 2)?.pointId).toBe(1);
    expect(pointOfItem(rows, 4, 1)).toBeUndefined();
  });
  it('show on the drawing what asks for most at that position', () => {
    expect([...sketchStates(rows)]).toEqual([
      [9, 'now'],
      [10, 'none'],
    ]);
  });
});

describe('a machine in words', () => {
  it('says what a forecast rests on as a person would', () => {
    const basis = {
      ownReadings: 2,
      likeParts: 31,
      likeMachines: 14,
      partClass: 'nylon slide strip',
      cautionFacts: [],
      settingsChanged: 0,
    };
    expect(basisSentence({ ...basis, settingsChanged: 2 })).toMatch(
      /The shop has set two figures of the forecast otherwise\.$/,
    );
    expect(basisSentence(basis)).toBe(
      'Two readings of its own; the rest from 31 like parts on 14 machines (nylon slide strip).',
    );
    expect(basisSentence({ ...basis, ownReadings: 0, likeParts: 1, likeMachines: 1 })).toBe(
      'No reading of its own; all from 1 like part on 1 machine (nylon slide strip).',
    );
    expect(basisSentence({ ...basis, ownReadings: 1, likeParts: 0 })).toBe(
      'One reading of its own; the rest from what the trade says of such parts (nylon slide strip).',
    );
    // a class the trade has no figure for is not passed off as one it has
    const cautionFacts = [{ code: 'from-trade-prior', facts: { partsRead: 0, machinesRead: 0, from: 'wide' } }];
    expect(basisSentence({ ...basis, ownReadings: 0, likeParts: 0, cautionFacts })).toBe(
      'No reading of its own; all a wide guess, for the trade has no figure (nylon slide strip).',
    );
  });
  it('says whose it is and what it carries, its make only where its name does not', () => {
    const customer = { customerId: 1, name: 'Hollin Top', place: 'Osmere', address: '', phone: '', email: '' };
    expect(ownerLine({ ...twoAssemblies(), customer })).toBe(
      'Hollin Top, Osmere. Harrod V118, Front loader L-77 and Rear linkage, serial V118-2207',
    );
    expect(ownerLine({ ...twoAssemblies(), name: 'Harrod V118 red', assemblies: [] })).toBe('serial V118-2207');
  });
});
