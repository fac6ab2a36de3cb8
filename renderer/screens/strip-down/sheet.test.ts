import { describe, expect, it } from 'vitest';
import { aRow } from './aRow.ts';
import { boxesOf, boxKey } from './boxes.ts';
import {
  draftOf,
  emptySheet,
  isBlank,
  type Sheet,
  sheetOf,
  tallyOf,
  withEcho,
  withHow,
  withRenewedToggled,
  withShim,
  withSure,
  withSwapped,
  withText,
  withWasRenewed,
  worstTyped,
} from './sheet.ts';

const rows = [aRow({ pointId: 1, stations: ['front', 'rear'] }), aRow({ pointId: 2, stations: [''], gaugeId: null })];
const front = boxKey(1, 'front');
const rear = boxKey(1, 'rear');

const typed = (): Sheet =>
  withText(withText(emptySheet(7, '2026-11-02', 'Ines', '.'), 'as-found', front, '9,94'), 'as-found', rear, '10.7');

describe('the draft of a sheet', () => {
  it('carries what reads as a size, in the order of the grid', () => {
    const sheet = withText({ ...typed(), dialText: '6 838' }, 'as-found', boxKey(2, ''), 'nine');
    const { draft, remarks } = draftOf(sheet, rows);
    expect(remarks).toEqual([]);
    expect(draft).toMatchObject({ machineId: 7, takenOn: '2026-11-02', dialHours: 6838, fitter: 'Ines' });
    expect(draft?.sizes.map(({ station, sizeMm }) => [station, sizeMm])).toEqual([
      ['front', 9.94],
      ['rear', 10.7],
    ]);
  });
  it('is none on a day that is no day, and goes without a dial that is no figure', () => {
    expect(draftOf({ ...typed(), takenOn: '2026-13-01' }, rows).draft).toBeNull();
    const { draft, remarks } = draftOf({ ...typed(), dialText: 'about 6000' }, rows);
    expect(draft?.dialHours).toBeNull();
    expect(remarks).toEqual([{ field: 'dial', why: 'not-a-number' }]);
  });
  it('comes back to the screen as it was kept', () => {
    let sheet = withSure(typed(), 'as-found', front);
    sheet = withRenewedToggled(sheet, 'as-left', 1);
    sheet = withHow(sheet, 'as-left', 1, { stations: ['front', 'rear'], sizeMm: 12.1, sure: true });
    sheet = withHow(sheet, 'as-found', 2, { kind: 'oversize', sizeMm: 13, stamped: true });
    sheet = withShim(sheet, 1, 0.5);
    sheet = { ...sheet, dialText: '6838,5', gauges: { 1: 4 }, note: 'wet' };
    const { draft } = draftOf(sheet, rows);
    const back = sheetOf(draft!, rows, ',');
    expect(draftOf(back, rows).draft).toEqual(draft);
    expect(back.texts['as-found'][front]).toBe('9,94');
    expect(back.dialText).toBe('6\u2009838,5');
    const piece = {
      pointId: 1,
      sizeMm: 12.1,
      hoursKnown: true,
      kind: 'new-part',
      stamped: null,
      answer: 'right-as-read',
    };
    expect(draft?.renewals).toEqual([
      { ...piece, station: 'front' },
      { ...piece, station: 'rear' },
      { pointId: 2, sizeMm: 13, hoursKnown: false, kind: 'oversize', station: '', stamped: true, answer: null },
    ]);
    expect(draft?.shims).toEqual([{ pointId: 1, shimMm: 0.5 }]);
  });
});

describe('typing', () => {
  it('anew lets an answer go, an echo does not', () => {
    const sure = withSure(typed(), 'as-found', front);
    expect(withEcho(sure, 'as-found', front, '9.94').sure['as-found'][front]).toBe(true);
    expect(withText(sure, 'as-found', front, '9.9').sure['as-found'][front]).toBe(false);
  });
  it('marks the station worn furthest, whichever way the point wears', () => {
    const sheet = typed();
    expect(worstTyped(sheet, 'as-found', rows[0]!)).toBe('front');
    expect(worstTyped(sheet, 'as-found', { ...rows[0]!, wears: 'up' })).toBe('rear');
    expect(worstTyped(sheet, 'as-found', rows[1]!)).toBeNull();
  });
  it('of a renewal is once a visit: the later word takes the earlier one’s place', () => {
    const twice = withRenewedToggled(withRenewedToggled(typed(), 'as-found', 1), 'as-left', 1);
    expect(twice.renewed[1]).toMatchObject({ sinceLast: false, now: true });
    expect(withRenewedToggled(twice, 'as-left', 1).renewed[1]).toMatchObject({ sinceLast: false, now: false });
  });
  it('was renewed: here when found on the same day, else since the last size', () => {
    const { takenOn } = typed();
    const here = withWasRenewed(typed(), 1, takenOn);
    expect(here.renewed[1]).toMatchObject({ sinceLast: false, now: true });
    expect(withWasRenewed(here, 1, takenOn)).toBe(here);
    expect(withWasRenewed(typed(), 1, '2020-01-10').renewed[1]).toMatchObject({ sinceLast: true, now: false });
  });
  it('in the wrong box is mended by changing two boxes round', () => {
    const swapped = withSwapped(typed(), 'as-found', front, rear);
    expect(swapped.texts['as-found']).toMatchObject({ [front]: '10.7', [rear]: '9,94' });
  });
  it('is told how far it has come', () => {
    expect(tallyOf(withText(typed(), 'as-found', boxKey(2, ''), 'x'), 'as-found', boxesOf(rows), 1)).toEqual({
      typed: 2,
      boxes: 3,
      questioned: 1,
      notSizes: 1,
      findings: 0,
    });
    expect(isBlank(emptySheet(7, '2026-11-02', 'Ines', '.'))).toBe(true);
    expect(isBlank(typed())).toBe(false);
  });
});
