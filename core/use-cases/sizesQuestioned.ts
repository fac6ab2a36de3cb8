import type { z } from 'zod';
import type { sizesQuestioned, zQuestionedSize } from '../contract/oldSheets.ts';
import type { Handler } from '../contract/operation.ts';
import { machineOrRefuse } from '../record/machineStore.ts';
import { pointsOfAssemblies } from '../record/pointStore.ts';
import { renewalRowsOfPoints } from '../record/renewalStore.ts';
import { machinesQuestioned, sizeRowsOfPoints } from '../record/sizeStore.ts';
import { judgeRenewal } from '../series/judgeRenewal.ts';
import type { Size } from '../shop/measuringPoint.ts';
import type { PointOnRecord, ShopLife } from '../shop/shopLife.ts';
import { decimalsOfGauge } from '../words/quantityText.ts';
import { type Context, lifeOfSome, recordOf } from './context.ts';
import { judgeAmongOthers } from './laterDoubts.ts';
import { seriesAround } from './seriesNow.ts';

/** Newest day first: what was typed last is best remembered. Each is judged anew, among what has come in since. */
export const sizesQuestionedHandler: Handler<typeof sizesQuestioned, Context> = (context, { machineId }) => {
  const record = recordOf(context);
  if (machineId !== null) machineOrRefuse(record, machineId);
  const life = machineId === null ? lifeOfQuestioned(context) : seriesAround(context, machineId).life;
  const points = life.points.filter((point) => machineId === null || point.machineId === machineId);
  const sizes = [...measured(context, points, life), ...putIn(context, points, life)];
  return { sizes: sizes.sort((a, b) => (a.takenOn > b.takenOn ? -1 : a.takenOn < b.takenOn ? 1 : a.item - b.item)) };
};

/** The machines on which something is kept aside until a question is answered. */
export const lifeOfQuestioned = (context: Context): ShopLife =>
  lifeOfSome(context, 'machines with questions', () => machinesQuestioned(recordOf(context)));

type Questioned = z.input<typeof zQuestionedSize>;

/** Sizes measured. */
function measured(context: Context, all: readonly PointOnRecord[], life: ShopLife): Questioned[] {
  const points = all.filter((point) => point.sizes.some(({ parked }) => parked));
  const named = namesOf(context, points, life);
  const pointIds = points.map(({ pointId }) => pointId);
  const rows = new Map(sizeRowsOfPoints(recordOf(context), pointIds).map((row) => [row.id, row]));
  return points.flatMap((point) =>
    point.sizes
      .filter(({ parked }) => parked)
      .map((size) => {
        const row = rows.get(size.id);
        return {
          ...named(point),
          sizeId: size.id,
          renewalId: null,
          stripDownId: row?.stripDownId ?? 0,
          takenOn: size.takenOn,
          station: size.station,
          event: size.event,
          sizeMm: size.sizeMm,
          gaugeErrorMm: size.gaugeErrorMm ?? point.gaugeErrorMm,
          decimals: decimalsOfGauge(size.gaugeStepMm),
          question: questionOf(point, size, named.tolMm(point), row?.question ?? null),
        };
      }),
  );
}

/** Sizes of parts put in. */
function putIn(context: Context, points: readonly PointOnRecord[], life: ShopLife): Questioned[] {
  const rows = renewalRowsOfPoints(
    recordOf(context),
    points.map(({ pointId }) => pointId),
  ).filter(({ parked, sizeMm }) => parked && sizeMm !== null);
  const asked = points.filter(({ pointId }) => rows.some((row) => row.pointId === pointId));
  const named = namesOf(context, asked, life);
  return asked.flatMap((point) =>
    rows
      .filter(({ pointId }) => pointId === point.pointId)
      .map(({ id, stripDownId, takenOn, station, sizeMm, kind, question }) => {
        const odd = judgeRenewal(point, { takenOn, sizeMm, kind }, named.tolMm(point));
        return {
          ...named(point),
          sizeId: null,
          renewalId: id,
          stripDownId,
          takenOn,
          station,
          event: 'as-left' as const,
          sizeMm: sizeMm!,
          gaugeErrorMm: point.gaugeErrorMm,
          decimals: 2,
          question: {
            code: odd?.code ?? question ?? 'explained-since',
            facts: odd?.facts ?? {},
            choices: ['right-as-read'],
          },
        };
      }),
  );
}

/** What a list of several machines needs beside a size; and the tolerance of a point's class. */
function namesOf(context: Context, points: readonly PointOnRecord[], life: ShopLife) {
  const assemblyIds = [...new Set(points.map(({ assemblyId }) => assemblyId))];
  const measures = new Map(
    pointsOfAssemblies(recordOf(context), assemblyIds).map((point) => [point.id, point.measures]),
  );
  const machines = new Map(life.machines.map((machine) => [machine.machineId, machine.name]));
  const tolerances = new Map(life.partClasses.map(({ name, newSizeTolMm }) => [name, newSizeTolMm]));
  const names = ({ pointId, machineId, item, position, point }: PointOnRecord) => ({
    pointId,
    machineId,
    machine: machines.get(machineId) ?? '',
    item,
    position,
    point,
    measures: measures.get(pointId) ?? ('thickness' as const),
  });
  return Object.assign(names, { tolMm: (point: PointOnRecord) => tolerances.get(point.partClass) ?? null });
}

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
