import type { Handler } from '../contract/operation.ts';
import type { stripDownJudge } from '../contract/stripDown.ts';
import { averageStations, wearOf, worstStation } from '../series/visitSizes.ts';
import { limitsOn } from '../shop/limitsOn.ts';
import type { Context } from './context.ts';
import { askAboutDial } from './dialQuestion.ts';
import { dialReadingEvent } from './notedDial.ts';
import { hoursOfMachine } from './seriesNow.ts';
import { readyToSave } from './stripDownSave.ts';
import { judgeTyped, judgeTypedRenewals, type TypedStripDown, typedStripDown } from './typedStripDown.ts';

/** What is odd about what was typed so far; keeps nothing. */
export const stripDownJudgeHandler: Handler<typeof stripDownJudge, Context> = (context, draft) => {
  const typed = typedStripDown(context, draft);
  const questions = [...judgeTyped(context, typed)].flatMap(([place, { cautions, choices }]) => {
    const entry = draft.sizes[place]!;
    const [first] = cautions;
    if (!first || entry.answer !== null) return [];
    const { pointId, station, event } = entry;
    return [{ pointId, station, event, question: { code: first.code, facts: first.facts ?? {}, choices } }];
  });
  const renewalQuestions = [...judgeTypedRenewals(context, typed)].flatMap(([place, { code, facts = {} }]) => {
    const { pointId, station, answer } = draft.renewals[place]!;
    return answer === null
      ? [{ pointId, station, question: { code, facts, choices: ['measure-again', 'right-as-read'] } }]
      : [];
  });
  readyToSave(context, typed);
  const { line } = hoursOfMachine(context, draft.machineId);
  const dialQuestion =
    draft.dialHours === null ? null : askAboutDial(line, dialReadingEvent(typed.takenOn, draft.dialHours)).question;
  return { questions, renewalQuestions, dialQuestion, worst: worstOf(typed) };
};

/** The station worn most of each point and event: the one that governs. */
function worstOf({ takenOn, sizes }: TypedStripDown) {
  const visits = Map.groupBy(sizes, ({ size, point }) => `${point.life.pointId} ${size.event}`);
  return [...visits.values()].flatMap((visit) => {
    const [first] = visit;
    if (!first) return [];
    const { life } = first.point;
    const worst = worstStation(
      life.wears,
      averageStations(
        life,
        visit.map(({ size }) => size),
      ),
    );
    if (!worst) return [];
    const wearMm = wearOf(life.wears, limitsOn(life, takenOn).newSizeMm, worst.sizeMm);
    return [{ pointId: life.pointId, event: first.size.event, station: worst.station, wearMm }];
  });
}
