import type { PictureProps, PictureRow } from '#renderer/screens/machine/pictureProps.ts';

/** Invented machines for the living page: an ordinary one, and those that strain the picture. */
export type SampleMachine = Omit<PictureProps, 'chosenId' | 'onChoose' | 'chosen'> & {
  chosen: NonNullable<PictureProps['chosen']>;
};

const NOW = 6840;
const FITTED = 1940;
type Given = [
  item: number,
  position: string,
  state: PictureRow['state'],
  low: number,
  middle: number,
  high: number,
  own: number,
  like: number,
  more?: Partial<PictureRow>,
];

const hitch: Given[] = [
  [1, 'Slide strip, top front', 'with-it', 420, 880, 1490, 2, 14, { opensGroup: true }],
  [2, 'Slide strip, top rear', 'leave', 1510, 2280, 3310, 2, 14],
  [3, 'Slide strip, bottom front', 'leave', 1210, 1860, 2720, 3, 14],
  [4, 'Slide strip, bottom rear', 'now', 150, 470, 880, 3, 14, { before: at(400, 900, 1500) }],
  [5, 'Side pad, left', 'leave', 1060, 2210, 3860, 1, 6, { opensGroup: true }],
  [6, 'Side pad, right', 'leave', 860, 1960, 3460, 1, 6],
  [7, 'Ram pin, rod end', 'with-it', -240, 1310, 4760, 0, 9, { opensGroup: true, point: 'slack' }],
  [8, 'Latch pin, left', 'now', -420, -220, -30, 3, 11, { opensGroup: true }],
  [9, 'Latch pin, right', 'now', -80, 240, 680, 2, 11],
  [10, 'Hook, throat seat', 'leave', 1760, 2860, 4460, 2, 5, { opensGroup: true, decides: 'low' }],
  [
    11,
    'Hook-frame pivot boss, left',
    'stop',
    0,
    0,
    0,
    2,
    8,
    { doNotUse: 'crack at weld toe, 34 mm. No forecast while this is open' },
  ],
  [12, 'Hook-frame pivot boss, right', 'now', 40, 350, 850, 2, 8, { decides: 'low' }],
];

function at(low: number, middle: number, high: number, nowHours = NOW) {
  return { low: nowHours + low, middle: nowHours + middle, high: nowHours + high };
}

function row(
  [item, position, state, low, middle, high, own, like, more]: Given,
  nowHours: number,
  fittedHours: number,
): PictureRow {
  const used = nowHours - fittedHours;
  return {
    pointId: item,
    item,
    position,
    point: '',
    state,
    opensGroup: false,
    atLimit: at(low, middle, high, nowHours),
    before: null,
    hoursLeft: { low, middle, high },
    decides: 'middle',
    ownReadings: own,
    likeParts: like,
    pastLimit: null,
    doNotUse: null,
    renewals: [{ hours: fittedHours, known: true, fromHours: fittedHours, toHours: fittedHours }],
    readings: [fittedHours + 0.48 * used, fittedHours + 0.67 * used, nowHours].slice(3 - Math.max(1, own)),
    ...more,
  };
}

const winters = (firstHours: number, hoursPerYear: number, count = 7) =>
  Array.from({ length: count }, (_, i) => ({
    name: `${26 + i}/${27 + i}`,
    fromHours: firstHours + i * hoursPerYear,
    toHours: firstHours + (i + 0.23) * hoursPerYear,
  }));

const visit = (
  takenOn: string,
  machineHours: number,
  sizes: [string, number][],
  event: 'as-found' | 'as-left' = 'as-found',
) => {
  const worst = Math.min(...sizes.map(([, sizeMm]) => sizeMm));
  return {
    takenOn: takenOn as never,
    machineHours,
    partHours: machineHours - FITTED,
    event,
    governingSizeMm: worst,
    errorSdMm: 0.05,
    stations: sizes.map(([station, sizeMm], i) => ({
      sizeId: machineHours + i,
      station,
      sizeMm,
      parked: false,
      governs: sizeMm === worst,
    })),
    by: 'J. Tarn',
    gauge: 'calliper',
  };
};

/** Straight wear from the size when new, as the model would give it after four readings. */
const curve = (fromHours: number, toHours: number, spreadMmPerHour: number) =>
  Array.from({ length: 25 }, (_, i) => {
    const machineHours = fromHours + (i / 24) * (toHours - fromHours);
    const middle = 12.02 - (machineHours - FITTED) * 0.0003735;
    const spread = 0.05 + Math.max(0, machineHours - NOW) * spreadMmPerHour;
    return { machineHours, low: middle - spread * 1.25, middle, high: middle + spread };
  });

const strip: SampleMachine['chosen'] = {
  item: 3,
  position: 'Slide strip, bottom front',
  point: '',
  wears: 'down',
  gaugeErrorMm: 0.05,
  limits: { from: null, newSizeMm: 12, newSizeTolMm: 0.2, renewAtMm: 9.5, rejectAtMm: 8.5, source: 'shop figure' },
  visits: [
    visit('2020-02-11', FITTED, [['', 12.02]], 'as-left'),
    visit('2023-03-02', 4310, [
      ['front', 11.72],
      ['middle', 11.8],
      ['rear', 11.18],
    ]),
    visit('2024-05-03', 5220, [
      ['front', 11.42],
      ['middle', 11.54],
      ['rear', 10.84],
    ]),
    visit('2026-10-12', NOW, [
      ['front', 10.83],
      ['middle', 10.96],
      ['rear', 10.19],
    ]),
  ],
  renewals: [
    {
      takenOn: '2020-02-11' as never,
      machineHours: FITTED,
      fromMachineHours: FITTED,
      toMachineHours: FITTED,
      known: true,
      sizeMm: 12.02,
      kind: null,
    },
  ],
  putRight: [
    {
      takenOn: '2024-05-03' as never,
      machineHours: 5220,
      sizeMm: 8.84,
      putRightOn: '2024-05-03' as never,
      newSizeMm: 10.84,
    },
  ],
  fitted: curve(FITTED, NOW, 0),
  fan: curve(NOW, 12_000, 0.000105),
  forecast: { machineHoursAtLimit: at(1210, 1860, 2720), decides: 'middle', ownReadings: 3, pastLimitMm: null },
  doNotUse: false,
  note: [
    'thickness, worst of front, middle, rear',
    '0.37 mm in 1\u2009000\u00A0h (0.29 to 0.46)',
    'calliper ±0.10; J. Tarn, 12 Oct',
    'limits: shop figure',
  ],
};

const sketch: SampleMachine['sketch'] = {
  width: 220,
  height: 170,
  shapes: [
    { d: 'M14 52H168V60H24V112H168V120H14z', style: 'section' },
    { d: 'M34 68H200V104H34z', style: 'outline' },
    { d: 'M30 86H226', style: 'centre' },
    { d: 'M28 78H94V94H28z', style: 'hidden' },
    { d: 'M36 60H70V68H36zM132 60H166V68H132zM36 104H70V112H36zM132 104H166V112H132z', style: 'nylon' },
    { d: 'M206 74a12 12 0 1 0 .1 0z', style: 'outline' },
  ],
  items: [
    { item: 1, at: { x: 50, y: 63 }, ring: { x: 40, y: 22 } },
    { item: 2, at: { x: 148, y: 63 }, ring: { x: 140, y: 22 } },
    { item: 3, at: { x: 50, y: 109 }, ring: { x: 40, y: 152 } },
    { item: 4, at: { x: 148, y: 109 }, ring: { x: 140, y: 152 } },
    { item: 11, at: { x: 206, y: 80 }, ring: { x: 206, y: 44 } },
  ],
};

const ordinary: SampleMachine = {
  nowHours: NOW,
  estimated: false,
  hoursPerYear: 780,
  winters: winters(6860, 780),
  planLineHours: 7640,
  meterChanges: [3100],
  rows: hitch.map((given) => row(given, NOW, given[7] === 6 ? 4310 : FITTED)),
  chosen: strip,
  sketch,
  writing: '.',
};

const many = Array.from({ length: 40 }, (_, i): Given => {
  const [, position, , low, middle, high, own, like, more] = hitch[i % 11] ?? hitch[0]!;
  return [
    i + 1,
    `${position}, ${['first', 'second', 'third', 'fourth'][Math.floor(i / 11)]} section`,
    (['leave', 'now', 'with-it', 'none'] as const)[i % 4] ?? 'leave',
    low + i * 20,
    middle + i * 25,
    high + i * 40,
    own,
    like,
    { ...more, opensGroup: i % 10 === 0 },
  ];
});

/** What each is for stands in its name. */
export const samplePictures: Record<string, SampleMachine> = {
  ordinary,
  'forty-positions': { ...ordinary, estimated: true, rows: many.map((given) => row(given, NOW, FITTED)) },
  'long-names': {
    ...ordinary,
    writing: ',',
    rows: ordinary.rows.map((r) => ({ ...r, position: `${r.position} of the telescopic carrier beam, outer section` })),
    chosen: { ...strip, position: `${strip.position} of the telescopic carrier beam, outer section` },
  },
  'no-hours': { ...ordinary, nowHours: null, winters: [], planLineHours: null, hoursPerYear: null, meterChanges: [] },
  'little-used': {
    ...ordinary,
    nowHours: 610,
    hoursPerYear: 60,
    winters: winters(612, 60),
    planLineHours: 672,
    meterChanges: [],
    rows: hitch
      .slice(0, 7)
      .map(([item, position, state, low, middle, high, own, like, more]) =>
        row([item, position, state, low / 10, middle / 10, high / 10, own, like, { ...more, before: null }], 610, 120),
      ),
    chosen: {
      ...strip,
      visits: strip.visits.map((v) => ({ ...v, machineHours: 120 + (v.machineHours - FITTED) / 10 })),
      renewals: strip.renewals.map((r) => ({ ...r, machineHours: 120, fromMachineHours: 120, toMachineHours: 120 })),
      putRight: [],
      fitted: strip.fitted.map((p) => ({ ...p, machineHours: 120 + (p.machineHours - FITTED) / 10 })),
      fan: strip.fan.map((p) => ({ ...p, machineHours: 120 + (p.machineHours - FITTED) / 10 })),
      forecast: { ...strip.forecast, machineHoursAtLimit: at(121, 186, 272, 610) },
    },
  },
  'sixty-thousand-hours': {
    ...ordinary,
    nowHours: 58_200,
    hoursPerYear: 4200,
    winters: winters(58_400, 4200),
    planLineHours: 62_600,
    meterChanges: [55_000],
    rows: hitch.map(([item, position, state, low, middle, high, own, like, more]) =>
      row([item, position, state, low * 5, middle * 5, high * 5, own, like, { ...more, before: null }], 58_200, 500),
    ),
    chosen: {
      ...strip,
      visits: [],
      renewals: [],
      putRight: [],
      fitted: [],
      fan: [],
      forecast: { ...strip.forecast, machineHoursAtLimit: { low: null, middle: null, high: null } },
    },
  },
};
