import type { AskOf } from '#core/contract/operation.ts';
import type { Gauge, gaugeSave } from '#core/contract/shop.ts';
import { inInches, lengthFigure, limitFigure, type Writing } from '#core/words/quantityText.ts';
import { readLength } from '../../words/readNumber.ts';
import { errorFigure } from '../take-in/form.ts';

/** A gauge as typed; its error as the shop says it, U = 2 sd. */
export type GaugeForm = {
  gaugeId: number | null;
  name: string;
  uText: string;
  stepText: string;
  measures: Gauge['measures'];
  active: boolean;
};

export const emptyGaugeForm: GaugeForm = {
  gaugeId: null,
  name: '',
  uText: '',
  stepText: '',
  measures: [],
  active: true,
};

export const gaugeForm = (gauge: Gauge, writing: Writing): GaugeForm => ({
  gaugeId: gauge.gaugeId,
  name: gauge.name,
  uText: errorFigure(gauge.errorMm, writing),
  stepText: inInches(writing) ? lengthFigure(gauge.stepMm, 3, writing) : limitFigure(gauge.stepMm, writing),
  measures: gauge.measures,
  active: gauge.active,
});

/** The gauge the row stands for: the record holds the sd, half of what is typed. Null: not one yet. */
export function gaugeRequest(form: GaugeForm, writing: Writing): AskOf<typeof gaugeSave> | null {
  const u = readLength(form.uText.replace(/^\s*(±|\+-)/, ''), writing);
  const step = readLength(form.stepText, writing);
  const stepMm = step.ok ? step.value : step.why === 'empty' ? 0 : null;
  if (form.name.trim() === '' || !u.ok || u.value < 0.001 || u.value > 20 || stepMm === null || stepMm < 0) return null;
  const { gaugeId, name, measures, active } = form;
  return { gaugeId, name: name.trim(), errorMm: u.value / 2, stepMm, measures, active };
}
