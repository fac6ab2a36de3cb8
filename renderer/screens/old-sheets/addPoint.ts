import type { pointAdd } from '#core/contract/oldSheets.ts';
import type { AskOf } from '#core/contract/operation.ts';
import type { Writing } from '#core/words/quantityText.ts';
import { readLength } from '../../words/readNumber.ts';
import type { SheetRow } from '../strip-down/boxes.ts';
import { stationsOf, usualWay } from '../take-in/form.ts';

export type PointForm = {
  /** of the machine; null: a new one */
  assemblyId: number | null;
  assemblyName: string;
  position: string;
  safety: boolean;
  measures: SheetRow['measures'];
  name: string;
  partClass: string;
  newSizeText: string;
  renewAtText: string;
  stationsText: string;
};

export type PointRemark = 'position' | 'new-size' | 'renew-at' | 'assembly';

/** 1 sd of the gauge a point is usually measured with, until the shop says otherwise: a calliper's, common practice. */
const USUAL_GAUGE_SD_MM = 0.05;

export const emptyPoint = (rows: readonly SheetRow[]): PointForm => ({
  assemblyId: rows[0]?.assemblyId ?? null,
  assemblyName: '',
  position: '',
  safety: false,
  measures: 'thickness',
  name: '',
  partClass: '',
  newSizeText: '',
  renewAtText: '',
  stationsText: '',
});

/** The request a form stands for, or what keeps it from being one. */
export function pointRequest(
  form: PointForm,
  machineId: number,
  rows: readonly SheetRow[],
  by: string,
  writing: Writing,
): { request: AskOf<typeof pointAdd> | null; remarks: PointRemark[] } {
  const newSize = readLength(form.newSizeText, writing);
  const renewAt = readLength(form.renewAtText, writing);
  const position = form.position.trim();
  const remarks: PointRemark[] = [];
  if (form.assemblyId === null && form.assemblyName.trim() === '') remarks.push('assembly');
  if (position === '') remarks.push('position');
  if (!newSize.ok) remarks.push('new-size');
  if (!renewAt.ok && renewAt.why !== 'empty') remarks.push('renew-at');
  if (remarks.length > 0 || !newSize.ok) return { request: null, remarks };
  const known = rows.find(
    (row) => row.assemblyId === form.assemblyId && row.position.toLowerCase() === position.toLowerCase(),
  );
  const name = form.name.trim() || form.measures;
  return {
    remarks: [],
    request: {
      machineId,
      assemblyId: form.assemblyId,
      assemblyName: form.assemblyId === null ? form.assemblyName.trim() : null,
      positionId: known?.positionId ?? null,
      position: known ? null : { item: nextItem(rows, form.assemblyId), name: position, safety: form.safety },
      point: {
        name,
        measures: form.measures,
        wears: usualWay(form.measures),
        partClass: form.partClass.trim() || `${position.split(',')[0]}`,
        newSizeMm: newSize.value,
        newSizeTolMm: null,
        renewAtMm: renewAt.ok ? renewAt.value : null,
        rejectAtMm: null,
        limitSource: null,
        gaugeErrorMm: USUAL_GAUGE_SD_MM,
        stations: stationsOf(form.stationsText),
      },
      by,
    },
  };
}

/** The item number after the highest of the assembly. */
const nextItem = (rows: readonly SheetRow[], assemblyId: number | null): number =>
  rows.filter((row) => row.assemblyId === assemblyId).reduce((most, { item }) => Math.max(most, item), 0) + 1;
