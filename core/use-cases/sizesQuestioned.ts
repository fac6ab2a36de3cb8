import type { z } from 'zod';
import type { sizesQuestioned, zQuestionedSize } from '../contract/oldSheets.ts';
import type { Handler } from '../contract/operation.ts';
import { machineOrRefuse } from '../record/machineStore.ts';
import { pointsOfAssemblies } from '../record/pointStore.ts';
import { sizeRowsOfPoints } from '../record/sizeStore.ts';
import type { Size } from '../shop/measuringPoint.ts';
import type { PointOnRecord } from '../shop/shopLife.ts';
import { decimalsOfGauge } from '../words/quantityText.ts';
import { type Context, recordOf } from './context.ts';
import { judgeAmongOthers } from './laterDoubts.ts';
import { seriesNow } from './seriesNow.ts';

/** Newest day first: what was typed last is best remembered. Each is judged anew, among what has come in since. */
export const sizesQuestionedHandler: Handler<typeof sizesQuestioned, Context> = (context, { machineId }) => {
  const record = recordOf(context);
  if (machineId !== null) machineOrRefuse(record, machineId);
  const { life } = seriesNow(context);
  const points = life.points.filter(
    (point) => (machineId === null || point.machineId === machineId) && point.sizes.some(({ parked }) => parked),
  );
  const rows = new Map(
    sizeRowsOfPoints(
      record,
      points.map(({ pointId }) => pointId),
    ).map((row) => [row.id, row]),
  );
  const measures = new Map(
    pointsOfAssemblies(record, [...new Set(points.map(({ assemblyId }) => assemblyId))]).map((point) => [
      point.id,
      point.measures,
    ]),
  );
  const names = new Map(life.machines.map((machine) => [machine.machineId, machine.name]));
  const tolerances = new Map(life.partClasses.map(({ name, newSizeTolMm }) => [name, newSizeTolMm]));
  const sizes = points.flatMap((point) =>
    point.sizes
      .filter(({ parked }) => parked)
      .map((size): z.input<typeof zQuestionedSize> => {
        const row = rows.get(size.id);
        const { pointId, item, position, point: name } = point;
        return {
          sizeId: size.id,
          stripDownId: row?.stripDownId ?? 0,
          pointId,
          machineId: point.machineId,
          machine: names.get(point.machineId) ?? '',
          takenOn: size.takenOn,
          item,
          position,
          point: name,
          measures: measures.get(pointId) ?? 'thickness',
          station: size.station,
          event: size.event,
          sizeMm: size.sizeMm,
          gaugeErrorMm: size.gaugeErrorMm ?? point.gaugeErrorMm,
          decimals: decimalsOfGauge(size.gaugeStepMm),
          question: questionOf(point, size, tolerances.get(point.partClass) ?? null, row?.question ?? null),
        };
      }),
  );
  return { sizes: sizes.sort((a, b) => (a.takenOn > b.takenOn ? -1 : a.takenOn < b.takenOn ? 1 : a.item - b.item)) };
};

/** What is odd about it now; nothing any more: other sizes have explained it, and it may be taken as it was read. */
function questionOf(point: PointOnRecord, size: Size, tolMm: number | null, asked: string | null) {
  const typed = { ...size, id: -1, parked: false };
  const others = { ...point, sizes: point.sizes.filter(({ id }) => id !== size.id) };
  const withIt = { ...point, sizes: point.sizes.map((one) => (one.id === size.id ? typed : one)) };
  const judgement = judgeAmongOthers(withIt, others, tolMm).get(-1);
  const [first] = judgement?.cautions ?? [];
  if (!first || !judgement) return { code: asked ?? 'explained-since', facts: {}, choices: ['right-as-read'] };
  return { code: first.code, facts: first.facts ?? {}, choices: [...judgement.choices] };
}
