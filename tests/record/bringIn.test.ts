import { beforeEach, describe, expect, test } from 'vitest';
import { hoursLine } from '#core/reading/hoursLine.ts';
import { loadShopLife } from '#core/record/loadShopLife.ts';
import type { OpenRecord } from '#core/record/recordFile.ts';
import { day } from '#core/units/day.ts';
import { exportedFiles } from '#core/use-cases/exportedFiles.ts';
import { aFolder, aRecord, brought, dump } from '#tests/support/aRecord.ts';

const MACHINES = 'machine,customer,meter_digits,hours_before,work_share\nM1,Hill Farm,5,,0.5\nM2,,,,\n';
const HOURS =
  'machine,date,dial_hours,event,new_dial_hours\nM1,2024-01-10,1000,reading,\nM1,2025-01-10,1500,reading,\nM2,2024-01-10,200,,\n';
const POINTS = `machine,assembly,position,point,part_class,safety,wears,new_size_mm,new_size_tol_mm,renew_at_mm,reject_at_mm,limit_source,gauge_error_mm,fitted_machine_hours
M1,Hitch,Strip top,thickness,Nylon slide strip,no,down,12,0.2,9.5,8.5,own rule,0.05,0
M1,Hitch,Hook pin,diameter,Pin,yes,down,30,,29,28.5,,0.02,
`;
const SIZES = `machine,assembly,position,point,station,date,dial_hours,size_mm,event,gauge_error_mm
M1,Hitch,Strip top,thickness,front,2024-06-10,1200,11.4,as-found,
M1,Hitch,Strip top,thickness,rear,2024-06-10,1200,11.2,as-found,
M1,Hitch,Strip top,thickness,,2025-01-10,1500,,renewed,
M1,Hitch,Hook pin,diameter,,2024-06-10,1200,29.9,as-found,0.01
`;
const SHOP = { 'machines.csv': MACHINES, 'hours.csv': HOURS, 'points.csv': POINTS, 'sizes.csv': SIZES };

let record: OpenRecord;
beforeEach(() => {
  record = aRecord();
});

const into = (texts: Record<string, string | Uint8Array>, options = {}) => brought(record, aFolder(texts), options);
const codes = (remarks: { file: string; row: number | null; code: string }[]) =>
  remarks.map(({ file, row, code }) => `${file} ${row} ${code}`);
const lifeOf = (name: string) => loadShopLife(record).machines.find((machine) => machine.name === name);
const pointCalled = (position: string) => loadShopLife(record).points.find((point) => point.position === position);

describe('a folder brought in', () => {
  test('is all there: machines, hours, points, sizes and renewals', () => {
    const account = into(SHOP);
    expect(account.faults).toEqual([]);
    expect(account.brought).toEqual({
      customers: 1,
      machines: 2,
      dialReadings: 4,
      points: 2,
      sizes: 3,
      renewals: 1,
      moves: 0,
      findings: 0,
      classes: 0,
    });
    // the dial beside the sizes of June is a reading too; that of January stands in hours.csv already
    expect(lifeOf('M1')).toMatchObject({
      customer: 'Hill Farm',
      meterDigits: 5,
      hoursBefore: null,
      workShares: [{ from: null, share: 0.5 }],
    });
    expect(lifeOf('M1')?.dialEvents.map(({ takenOn, dialHours }) => [takenOn, dialHours])).toEqual([
      ['2024-01-10', 1000],
      ['2024-06-10', 1200],
      ['2025-01-10', 1500],
    ]);
    expect(pointCalled('Strip top')).toMatchObject({
      safety: false,
      fittedMachineHours: 0,
      limits: [{ newSizeMm: 12, newSizeTolMm: 0.2, renewAtMm: 9.5, rejectAtMm: 8.5, source: 'own rule' }],
      sizes: [
        { station: 'front', sizeMm: 11.4, dialHours: 1200, event: 'as-found', parked: false },
        { station: 'rear', sizeMm: 11.2 },
      ],
      renewals: [{ takenOn: '2025-01-10', dialHours: 1500, hoursKnown: true, sizeMm: null }],
    });
    expect(pointCalled('Hook pin')).toMatchObject({
      safety: true,
      fittedMachineHours: null,
      sizes: [{ gaugeErrorMm: 0.01 }],
    });
  });

  test('what a renewal was, of which station, and packing come in, go out again and make no doubles', () => {
    const head = `${SIZES.split('\n')[0]},renewal,shim_mm`;
    const rows = [
      'M1,Hitch,Strip top,thickness,front,2025-01-10,1500,,renewed,,turned,',
      'M1,Hitch,Hook pin,slack,,2025-01-10,1500,,shimmed,,,0.5',
      'M1,Hitch,Hook pin,diameter,,2025-01-10,1500,31,renewed,,oversize,',
      'M1,Hitch,Hook pin,diameter,,2025-01-10,1500,,renewed,,,',
    ];
    const sizes = [head, ...rows, ''].join('\n');
    const points = `${POINTS}M1,Hitch,Hook pin,slack,Pivot slack,no,up,0.2,0.2,1.5,2.5,,0.03,0\n`;
    const shop = { ...SHOP, 'points.csv': points, 'sizes.csv': sizes };
    expect(into(shop).faults).toEqual([]);
    expect(pointCalled('Strip top')?.renewals).toMatchObject([{ kind: 'turned', station: 'front' }]);
    const slack = loadShopLife(record).points.find(({ point }) => point === 'slack');
    expect(slack?.shims).toMatchObject([{ takenOn: '2025-01-10', shimMm: 0.5 }]);
    expect(pointCalled('Hook pin')?.renewals.map(({ kind, sizeMm }) => [kind, sizeMm])).toEqual([
      ['oversize', 31],
      ['new-part', null],
    ]);
    const written = exportedFiles(record).find(({ name }) => name === 'sizes.csv')!;
    const lines = new TextDecoder().decode(written.bytes).replace('\uFEFF', '').trim().split(/\r?\n/);
    expect([lines[0], ...lines.slice(1).sort()]).toEqual([head, ...rows.toSorted()]);
    const again = into(shop, { madeAt: '2026-11-10T08:00:00.000Z' });
    expect(again.brought).toMatchObject({ sizes: 0, renewals: 0 });
    expect(codes(into({ 'sizes.csv': [head, rows[1]?.replace('0.5', '')].join('\n') }).faults)).toEqual([
      'sizes.csv 2 cell-empty',
    ]);
  });

  test("knows an assembly by its positions when its name is nobody's kind", () => {
    const pin = (position: string, kindName: string) =>
      `M1,${kindName},"${position}",slack,Pivot slack,no,up,0.3,,1.3,,,0.05,0\n`;
    const head = POINTS.split('\n')[0];
    const account = into({
      ...SHOP,
      'points.csv': `${head}\n${pin('Boom foot pin, left', 'The loader')}${pin('Tilt ram pin, boom end', 'The loader')}${pin('Boom foot pin, left', 'Odd one')}${pin('Chute hinge', 'Odd one')}`,
      'sizes.csv': SIZES.split('\n')[0]!,
    });
    expect(account.faults).toEqual([]);
    const kindOf = (name: string) =>
      record.sqlite
        .prepare(
          'SELECT kinds.name FROM assemblies LEFT JOIN assembly_kinds kinds ON kinds.id = kind_id WHERE assemblies.name = ?',
        )
        .pluck()
        .get(name);
    expect(kindOf('The loader')).toBe('Front loader');
    expect(kindOf('Odd one')).toBeNull();
  });

  test('hours_before is the machine hours at the first dial row, whatever its dial shows', () => {
    into({
      'machines.csv': 'machine,customer,meter_digits,hours_before\nM1,Hill Farm,5,4300\n',
      'hours.csv': 'machine,date,dial_hours,event\nM1,2024-01-10,120.5,reading\nM1,2025-01-10,620.5,reading\n',
      'points.csv': POINTS,
      'sizes.csv': SIZES.split('\n')[0]!,
    });
    const line = hoursLine(lifeOf('M1')!, day('2025-01-10'));
    expect(line.nodes.map(({ machineHours }) => machineHours)).toEqual([4300, 4800]);
    expect(
      new TextDecoder().decode(exportedFiles(record).find(({ name }) => name === 'machines.csv')!.bytes),
    ).toContain('4300');
  });

  test('again makes no doubles, and true repeats stay repeats', () => {
    const twice = `${SIZES}M1,Hitch,Hook pin,diameter,,2024-06-10,1200,29.9,as-found,0.01\n`;
    into({ ...SHOP, 'sizes.csv': twice });
    expect(pointCalled('Hook pin')?.sizes).toHaveLength(2);
    const before = dump(record);
    const again = into({ ...SHOP, 'sizes.csv': twice }, { madeAt: '2026-11-10T08:00:00.000Z' });
    expect(again).toMatchObject({ done: true, faults: [], cautions: [] });
    expect(Object.values(again.brought).every((count) => count === 0)).toBe(true);
    expect(dump(record)).toBe(before);
    const third = into({
      ...SHOP,
      'sizes.csv': `${twice}M1,Hitch,Hook pin,diameter,,2024-06-10,1200,29.9,as-found,0.01\n`,
    });
    expect(third.brought).toMatchObject({ sizes: 1, dialReadings: 0 });
  });

  test('as a dry run says what it would bring and keeps nothing', () => {
    const before = dump(record);
    expect(into(SHOP, { dryRun: true })).toMatchObject({ done: false, brought: { machines: 2, sizes: 3 } });
    expect(dump(record)).toBe(before);
  });

  test('in semicolons, decimal commas and Windows-1252 is the same', () => {
    const european = (text: string) => text.replaceAll(',', ';').replace(/(\d)\.(\d)/g, '$1,$2');
    const latin = Uint8Array.from(european(MACHINES).replace('Hill', 'H\u00f6yde'), (letter) => letter.charCodeAt(0));
    const account = into({
      'machines.csv': latin,
      'hours.csv': european(HOURS),
      'points.csv': european(POINTS),
      'sizes.csv': european(SIZES).replace('11,2', '11,2 mm'),
    });
    expect(account.faults).toEqual([]);
    expect(lifeOf('M1')?.customer).toBe('H\u00f6yde Farm');
    expect(pointCalled('Strip top')?.sizes.map(({ sizeMm }) => sizeMm)).toEqual([11.4, 11.2]);
  });

  test('into a shop that has the machine needs only the new rows', () => {
    into(SHOP);
    const account = into({ 'hours.csv': 'machine,date,dial_hours\nm1,2026-01-10,1900\n' });
    expect(account).toMatchObject({ faults: [], brought: { machines: 0, dialReadings: 1 } });
    expect(lifeOf('M1')?.dialEvents.at(-1)?.dialHours).toBe(1900);
  });
});

describe('a fault stops the whole of it and is told by file, row, column and value', () => {
  const faulty: [string, Record<string, string>, string][] = [
    ['an unknown machine', { 'hours.csv': `${HOURS}M9,2024-01-10,5,,\n` }, 'hours.csv 5 unknown-machine'],
    ['an unknown event', { 'hours.csv': `${HOURS}M2,2024-02-10,500,guess,\n` }, 'hours.csv 5 not-one-of'],
    ['a day that does not exist', { 'hours.csv': `${HOURS}M2,2025-02-29,500,,\n` }, 'hours.csv 5 not-a-day'],
    ['a dial that falls', { 'hours.csv': `${HOURS}M1,2026-01-10,300,,\n` }, 'hours.csv 5 dial-went-back'],
    [
      'a dial that falls beside a size',
      { 'sizes.csv': SIZES.replaceAll('2024-06-10,1200', '2024-06-10,700') },
      'sizes.csv 2 dial-went-back',
    ],
    [
      'a new meter without its figure',
      { 'hours.csv': `${HOURS}M2,2025-01-01,500,new-meter,\n` },
      'hours.csv 5 cell-empty',
    ],
    ['inches', { 'sizes.csv': SIZES.replace('11.4', '0.45 in') }, 'sizes.csv 2 inches'],
    [
      'a decimal comma among points',
      { 'sizes.csv': SIZES.replace('11.4', '"11,4"') },
      'sizes.csv 2 mixed-decimal-marks',
    ],
    ['a thousands mark', { 'hours.csv': `${HOURS}M2,2025-01-01,"1,500.5",,\n` }, 'hours.csv 5 thousands-mark'],
    [
      'an unquoted decimal comma',
      { 'sizes.csv': SIZES.replace('29.9,as-found,0.01', '29,9,as-found,0.01') },
      'sizes.csv 5 too-many-cells',
    ],
    ['a size without a size', { 'sizes.csv': SIZES.replace('11.4', '') }, 'sizes.csv 2 cell-empty'],
    ['an unknown position', { 'sizes.csv': SIZES.replace('Strip top', 'Strip side') }, 'sizes.csv 2 unknown-position'],
    [
      'an unknown assembly',
      { 'sizes.csv': SIZES.replace('M1,Hitch,Strip top', 'M2,Hitch,Strip top') },
      'sizes.csv 2 unknown-assembly',
    ],
    [
      'a limit better than new',
      { 'points.csv': POINTS.replace(',9.5,', ',12.5,') },
      'points.csv 2 limit-better-than-new',
    ],
    ['a point twice', { 'points.csv': POINTS + POINTS.split('\n')[1] }, 'points.csv 4 point-twice'],
    ['a machine twice', { 'machines.csv': `${MACHINES}m1,,,,\n` }, 'machines.csv 4 machine-twice'],
    ['a missing column', { 'points.csv': POINTS.replace('part_class', 'class') }, 'points.csv 1 column-missing'],
    [
      'hours of a class out of order',
      { 'classes.csv': 'part_class,wear_from_mm,wear_to_mm,hours_from,hours_to\nPin,3,2,5000,6000\n' },
      'classes.csv 2 out-of-order',
    ],
    [
      'a closing before the finding',
      {
        'findings.csv':
          'machine,assembly,position,date,finding,severity,note,closed_date,outcome\nM1,Hitch,,2025-01-01,crack,watch,,2024-01-01,mended\n',
      },
      'findings.csv 2 closed-before-found',
    ],
    [
      'a move to where it sits',
      { 'moves.csv': 'machine,assembly,date,to_machine\nM1,Hitch,2025-01-01,M1\n' },
      'moves.csv 2 already-there',
    ],
  ];
  test.each(faulty)('%s', (_what, files, expected) => {
    const before = dump(record);
    const account = into({ ...SHOP, ...files });
    expect(codes(account.faults)).toContain(expected);
    expect(account.done).toBe(false);
    expect(account.faults.every(({ expected: wanted }) => wanted.length > 0)).toBe(true);
    expect(dump(record)).toBe(before);
  });

  test('a new row that makes a row on record impossible is the one at fault', () => {
    into(SHOP);
    const account = into({ 'hours.csv': 'machine,date,dial_hours\nM1,2024-12-01,1600\n' });
    expect(codes(account.faults)).toEqual(['hours.csv 2 dial-above-later']);
  });

  test('a row that cannot be read is told once, not again in every row that names what it brings', () => {
    const machines = { ...SHOP, 'machines.csv': MACHINES.replace(',0.5', ',half') };
    expect(codes(into(machines).faults)).toEqual(['machines.csv 2 not-a-number']);
    const points = { ...SHOP, 'points.csv': POINTS.replace(',down,12,', ',sideways,12,') };
    expect(codes(into(points).faults)).toEqual(['points.csv 2 not-one-of']);
    const limits = { ...SHOP, 'points.csv': POINTS.replace(',9.5,', ',12.5,') };
    expect(codes(into(limits).faults)).toEqual(['points.csv 2 limit-better-than-new']);
  });

  test('a file with nothing in it is told as a whole', () => {
    expect(codes(into({ ...SHOP, 'sizes.csv': '' }).faults)).toEqual(['sizes.csv null file-empty']);
  });

  test('a folder without any file of ours says which it may have', () => {
    expect(codes(into({ 'letter.csv': 'a\n1\n' }).faults)).toEqual([' null no-files-found']);
  });
});

describe('a caution is listed, kept out of the forecast, and stops nothing', () => {
  test('a rise over 24 h a day', () => {
    const account = into({ ...SHOP, 'hours.csv': `${HOURS}M1,2025-01-12,1900,,\nM1,2025-02-10,1540,,\n` });
    expect(codes(account.cautions)).toEqual(['hours.csv 5 rise-over-24-a-day']);
    expect(account.done).toBe(true);
    expect(lifeOf('M1')?.dialEvents.map(({ dialHours, parked }) => [dialHours, parked])).toEqual([
      [1000, false],
      [1200, false],
      [1500, false],
      [1900, true],
      [1540, false],
    ]);
  });

  test('a size ten times off, and one better than new', () => {
    const account = into({ ...SHOP, 'sizes.csv': SIZES.replace('11.4', '114').replace('29.9', '30.4') });
    expect(codes(account.cautions)).toEqual(['sizes.csv 2 ten-times-off', 'sizes.csv 5 better-than-new']);
    expect(pointCalled('Strip top')?.sizes.map(({ sizeMm, parked }) => [sizeMm, parked])).toEqual([
      [114, true],
      [11.2, false],
    ]);
  });

  test('a size put in ten times off', () => {
    const account = into({ ...SHOP, 'sizes.csv': SIZES.replace('1500,,renewed', '1500,120,renewed') });
    expect(codes(account.cautions)).toEqual(['sizes.csv 4 odd-new-size']);
    expect(account.done).toBe(true);
    expect(into({ ...SHOP, 'sizes.csv': SIZES.replace('1500,,renewed', '1500,12.1,renewed') }).cautions).toEqual([]);
  });

  test('extra columns, unknown files and later days are only noted', () => {
    const account = into({
      ...SHOP,
      'truth.csv': 'x\n1\n',
      'machines.csv': MACHINES.replace('customer', 'customer,colour')
        .replace('Hill Farm', 'Hill Farm,red')
        .replace('M2,', 'M2,,'),
      'hours.csv': `${HOURS}M1,2027-01-10,2400,,\n`,
    });
    expect(account.faults).toEqual([]);
    expect(codes(account.notes).sort()).toEqual([
      'hours.csv 5 after-as-of',
      'machines.csv 1 column-passed-over',
      'truth.csv null file-passed-over',
    ]);
  });
});

describe('moves and meters', () => {
  test('after a move, sizes may name either machine; the dial is that of the machine it sits on, and that is told', () => {
    const account = into({
      ...SHOP,
      'moves.csv': 'machine,assembly,date,dial_hours,to_machine,to_dial_hours\nM1,Hitch,2025-03-01,1600,M2,700\n',
      'sizes.csv': `${SIZES}M2,Hitch,Hook pin,diameter,,2025-06-01,900,29.8,as-found,\nM1,Hitch,Strip top,thickness,rear,2025-06-01,900,11.9,as-found,\n`,
    });
    expect(account.faults).toEqual([]);
    expect(account.notes.map(({ row, column, code }) => [row, column, code])).toEqual([
      [7, 'machine', 'had-left-machine'],
    ]);
    expect(account.notes[0]?.expected).toContain('M2, where it sat that day');
    expect(lifeOf('M1')?.dialEvents.map(({ dialHours }) => dialHours)).toEqual([1000, 1200, 1500, 1600]);
    expect(lifeOf('M2')?.dialEvents.map(({ dialHours }) => dialHours)).toEqual([200, 700, 900]);
    const pin = pointCalled('Hook pin');
    expect(pin?.machineId).toBe(lifeOf('M2')?.machineId);
    expect(pin?.sittings).toMatchObject([
      { from: null, machineId: lifeOf('M1')?.machineId },
      { from: '2025-03-01', dialHours: 1600, toDialHours: 700 },
    ]);
  });

  test('to the shelf and back, by the machine it came off', () => {
    const account = into({
      ...SHOP,
      'moves.csv':
        'machine,assembly,date,dial_hours,to_machine,to_dial_hours\nM1,Hitch,2025-03-01,1600,,\nM1,Hitch,2025-09-01,,M2,800\nM2,Hitch,2026-03-01,1000,M1,\n',
    });
    expect(account.faults).toEqual([]);
    expect(pointCalled('Hook pin')?.sittings.map(({ from, machineId }) => [from, machineId])).toEqual([
      [null, 1],
      ['2025-03-01', null],
      ['2025-09-01', 2],
      ['2026-03-01', 1],
    ]);
    expect(into({ 'moves.csv': 'machine,assembly,date,to_machine\nM2,Hitch,2026-03-01,M1\n' })).toMatchObject({
      faults: [],
      brought: { moves: 0 },
    });
  });

  test('a size measured on the old meter on the day of the change goes before the change', () => {
    const account = into({
      ...SHOP,
      'hours.csv': `${HOURS}M1,2026-01-10,1900,new-meter,0\n`,
      'sizes.csv': `${SIZES}M1,Hitch,Hook pin,diameter,,2026-01-10,1898,29.7,as-found,\nM1,Hitch,Strip top,thickness,rear,2026-01-10,2,11.9,as-left,\n`,
    });
    expect(account.faults).toEqual([]);
    expect(
      lifeOf('M1')
        ?.dialEvents.slice(-3)
        .map(({ kind, dialHours }) => [kind, dialHours]),
    ).toEqual([
      ['reading', 1898],
      ['new-meter', 1900],
      ['reading', 2],
    ]);
  });

  test('renewed without hours is some time since the previous size, unless it was measured that day', () => {
    into({
      ...SHOP,
      'sizes.csv': `${SIZES}M1,Hitch,Hook pin,diameter,,2025-01-10,,,renewed,\nM1,Hitch,Strip top,thickness,rear,2026-01-10,,11.5,as-found,\nM1,Hitch,Strip top,thickness,,2026-01-10,,,renewed,\n`,
    });
    expect(pointCalled('Hook pin')?.renewals).toMatchObject([{ hoursKnown: false, dialHours: null }]);
    expect(pointCalled('Strip top')?.renewals).toMatchObject([
      { hoursKnown: true },
      { hoursKnown: true, dialHours: null },
    ]);
  });

  test('a finding is closed by a later file, once', () => {
    const head = 'machine,assembly,position,date,finding,severity,note,closed_date,outcome\n';
    into({ ...SHOP, 'findings.csv': `${head}M1,Hitch,Hook pin,2025-01-10,crack,do-not-use,dye,,\n` });
    const closed = `${head}M1,Hitch,Hook pin,2025-01-10,crack,do-not-use,dye,2025-02-01,renewed\n`;
    expect(into({ 'findings.csv': closed })).toMatchObject({ faults: [], brought: { findings: 0 } });
    expect(loadShopLife(record).findings).toMatchObject([{ closedOn: '2025-02-01', outcome: 'renewed' }]);
    into({ 'findings.csv': closed });
    expect(loadShopLife(record).findings).toHaveLength(1);
    expect(loadShopLife(record, { asOf: '2025-01-20' }).findings).toMatchObject([{ closedOn: null }]);
  });
});
