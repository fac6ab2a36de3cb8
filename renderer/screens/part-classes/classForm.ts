import type { PartClassSheet } from '#core/contract/partClass.ts';
import { hoursFigure, limitFigure, type Writing } from '#core/words/quantityText.ts';
import { readLength, readNumber } from '../../words/readNumber.ts';

/** A part class as typed. */
export type ClassForm = {
  partClassId: number | null;
  name: string;
  wearFromText: string;
  wearToText: string;
  hoursFromText: string;
  hoursToText: string;
  source: string;
  toleranceText: string;
};

export const emptyClassForm: ClassForm = {
  partClassId: null,
  name: '',
  wearFromText: '',
  wearToText: '',
  hoursFromText: '',
  hoursToText: '',
  source: '',
  toleranceText: '',
};

export function classForm(sheet: PartClassSheet, writing: Writing): ClassForm {
  const { tradeWear, newSizeTolMm } = sheet;
  return {
    partClassId: sheet.partClassId,
    name: sheet.name,
    wearFromText: tradeWear ? limitFigure(tradeWear.wearFromMm, writing) : '',
    wearToText: tradeWear ? limitFigure(tradeWear.wearToMm, writing) : '',
    hoursFromText: tradeWear ? hoursFigure(tradeWear.hoursFrom) : '',
    hoursToText: tradeWear ? hoursFigure(tradeWear.hoursTo) : '',
    source: tradeWear?.source ?? '',
    toleranceText: newSizeTolMm === null ? '' : limitFigure(newSizeTolMm, writing),
  };
}

export type ClassRequest = {
  partClassId: number | null;
  name: string;
  tradeWear: { wearFromMm: number; wearToMm: number; hoursFrom: number; hoursTo: number; source: string } | null;
  newSizeTolMm: number | null;
};
export type ClassRemark = 'nameMissing' | 'tradeHalf' | 'tradeOrder' | 'not-a-number';

/** What the trade says takes all four of its figures, the smaller of each pair first, or none. */
export function classRequest(
  form: ClassForm,
  writing: Writing,
): { request: ClassRequest | null; remarks: ClassRemark[] } {
  const remarks: ClassRemark[] = [];
  if (form.name.trim() === '') remarks.push('nameMissing');
  const figure = (text: string, unit: 'mm' | 'h'): number | null => {
    const read = unit === 'mm' ? readLength(text, writing) : readNumber(text, unit);
    if (!read.ok && read.why !== 'empty') remarks.push('not-a-number');
    return read.ok ? read.value : null;
  };
  const wearFromMm = figure(form.wearFromText, 'mm');
  const wearToMm = figure(form.wearToText, 'mm');
  const hoursFrom = figure(form.hoursFromText, 'h');
  const hoursTo = figure(form.hoursToText, 'h');
  const newSizeTolMm = figure(form.toleranceText, 'mm');
  const given = [wearFromMm, wearToMm, hoursFrom, hoursTo].filter((value) => value !== null).length;
  if (given > 0 && given < 4) remarks.push('tradeHalf');
  let tradeWear: ClassRequest['tradeWear'] = null;
  if (wearFromMm !== null && wearToMm !== null && hoursFrom !== null && hoursTo !== null) {
    tradeWear = { wearFromMm, wearToMm, hoursFrom, hoursTo, source: form.source.trim() };
    if (wearFromMm > wearToMm || hoursFrom > hoursTo) remarks.push('tradeOrder');
  }
  const unique = [...new Set(remarks)];
  if (unique.length > 0) return { request: null, remarks: unique };
  return { request: { partClassId: form.partClassId, name: form.name.trim(), tradeWear, newSizeTolMm }, remarks: [] };
}
