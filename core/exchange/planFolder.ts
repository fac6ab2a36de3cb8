import type { Day } from '../units/day.ts';
import { misreadNames } from './misreadNames.ts';
import type { KnownShop, Planning } from './plan.ts';
import { planKnownAssemblies, planPoints } from './planAssemblies.ts';
import { planClasses } from './planClasses.ts';
import { planFindings } from './planFindings.ts';
import { judgeHours, type NotedDial, planHours, planHoursBefore, planNotedDials } from './planHours.ts';
import { planMachines } from './planMachines.ts';
import { planMoves } from './planMoves.ts';
import { type JudgePoint, judgeSizes, planSizes } from './planSizes.ts';
import type { ReadFolder } from './readFolder.ts';
import { remarkOnFile } from './remark.ts';

/**
 * Fits the rows of a folder together with what the record holds, and thinks the whole import through before anything is
 * written. With a fault the plan is not to be carried out.
 *
 * @param asOf rows dated later are brought in and noted: forecasts leave them out until their day
 * @param judgePoint how a point's sizes are judged (series/judgeSize.ts)
 * @param told after each step, with the share of the steps done; what it throws ends the planning
 */
export function planFolder(
  { rows, misread }: Pick<ReadFolder, 'rows' | 'misread'>,
  known: KnownShop,
  asOf: Day,
  judgePoint: JudgePoint,
  told: (share: number) => void = () => {},
): Planning {
  let key = 0;
  const planning: Planning = {
    known,
    plan: { customers: [], machines: [], classes: [], assemblies: [], visits: [], findings: [] },
    machineByName: new Map(),
    misread: misreadNames(misread),
    faults: [],
    cautions: [],
    notes: [],
    nextKey: () => --key,
  };
  planMachines(planning, rows['machines.csv']);
  planKnownAssemblies(planning);
  told(0.1);
  planPoints(planning, rows['points.csv']);
  planClasses(planning, rows['classes.csv']);
  planMoves(planning, rows['moves.csv']);
  told(0.2);
  planHours(planning, rows['hours.csv']);
  planHoursBefore(planning);
  told(0.4);
  const besideSizes = planSizes(planning, rows['sizes.csv']);
  told(0.7);
  planNotedDials(planning, [...besideMoves(planning), ...besideSizes]);
  planFindings(planning, rows['findings.csv']);
  judgeHours(planning);
  told(0.8);
  judgeSizes(planning, judgePoint);
  told(1);
  noteLaterRows(planning, rows, asOf);
  return planning;
}

/** What the dials showed when an assembly changed machines. */
function besideMoves({ plan }: Planning): NotedDial[] {
  return plan.assemblies.flatMap(({ sittings }) =>
    sittings.flatMap(({ move, isNew, machine, dialHours, toDialHours }, place) => {
      if (!move || !isNew) return [];
      const left = sittings[place - 1]?.machine ?? null;
      const { line, date: takenOn } = move;
      return [
        ...(left && dialHours !== null ? [{ machine: left, takenOn, dialHours, line, column: 'dial_hours' }] : []),
        ...(machine && toDialHours !== null
          ? [{ machine, takenOn, dialHours: toDialHours, line, column: 'to_dial_hours' }]
          : []),
      ];
    }),
  );
}

function noteLaterRows({ notes }: Planning, rows: ReadFolder['rows'], asOf: Day): void {
  for (const file of ['hours.csv', 'sizes.csv', 'moves.csv', 'findings.csv'] as const) {
    const later = rows[file].filter(({ date }) => date > asOf);
    const [first] = later;
    if (!first) continue;
    notes.push(
      remarkOnFile(file, 'after-as-of', `days up to ${asOf}; later rows wait for their day`, {
        row: first.line.row,
        column: 'date',
        value: first.date,
        facts: { rows: later.length, asOf },
      }),
    );
  }
}
