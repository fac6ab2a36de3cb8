import type { machinesList } from '../contract/machine.ts';
import type { Handler } from '../contract/operation.ts';
import { entriesRevision } from '../record/entry.ts';
import { loadMachineNames } from '../record/loadMachines.ts';
import type { Learning } from '../way.ts';
import { type Context, recordOf } from './context.ts';
import { startForecasting } from './jobs/jobs.ts';
import { forecastNow, keepForecastsNow, keptList, type Line } from './keptList.ts';
import { isLarge } from './learning/heardNow.ts';
import { isFromPriors, shopLearning } from './learning/shopLearning.ts';
import { byGroupThenSoonest, machineLine } from './machineLine.ts';
import { shopNow } from './shopNow.ts';

/** So many machines are forecast while the list is waited for; more are forecast beside it. */
const AT_ONCE = 8;

/**
 * The list is what was last forecast of each machine, and a new forecast of those something was entered for. Of a large shop
 * nobody waits for the rest: older lines stand in, the list says so, and it is forecast beside the program.
 */
export const machinesListHandler: Handler<typeof machinesList, Context> = (context, { atOnce }) => {
  const asOf = context.today();
  const learning = shopLearning(context, asOf, atOnce || isLarge(context));
  if (isFromPriors(learning)) return isLarge(context) ? bareList(context) : listOfPriors(context);
  const list = keptList(context, learning, 'line');
  const lines = [...list.holding.values()];
  if (atOnce && isLarge(context) && list.wanting.length > AT_ONCE) {
    const forecasting = startForecasting(context);
    const named = new Map(bareLines(context).map((line) => [line.machineId, line]));
    for (const machineId of list.wanting) lines.push(list.older.get(machineId) ?? named.get(machineId)!);
    return { asOf, machines: lines.sort(byGroupThenSoonest), learning: true, forecasting };
  }
  const whole = list.wanting.length > AT_ONCE ? wholeShop(context, learning, list.wanting) : null;
  lines.push(...(whole ?? forecastThem(context, learning, list.wanting)));
  return { asOf, machines: lines.sort(byGroupThenSoonest), learning: false, forecasting: null };
};

/** Forecast one by one, each read by itself, and kept a few at a time. */
function forecastThem(context: Context, learning: Learning, machineIds: readonly number[]): Line[] {
  const revision = entriesRevision(recordOf(context));
  const lines: Line[] = [];
  for (let from = 0; from < machineIds.length; from += 50) {
    const some = machineIds.slice(from, from + 50).flatMap((id) => forecastNow(context, learning, id) ?? []);
    keepForecastsNow(
      context,
      learning,
      revision,
      some.map(({ kept }) => kept),
    );
    lines.push(...some.map(({ line }) => line));
  }
  return lines;
}

/** Many at once of a shop that is no large one: read in one go. */
function wholeShop(context: Context, learning: Learning, machineIds: readonly number[]): Line[] | null {
  if (isLarge(context)) return null;
  const revision = entriesRevision(recordOf(context));
  const { shop, ofMachine } = shopNow(context);
  const wanted = new Set(machineIds);
  const made = shop.life.machines
    .filter(({ machineId }) => wanted.has(machineId))
    .map((machine) => {
      const { points } = ofMachine(machine.machineId);
      return { machineId: machine.machineId, points, line: machineLine(shop, machine, points) };
    });
  const kept = made.map(({ machineId, line, points }) => {
    return { machineId, line: JSON.stringify(line), points: JSON.stringify(points) };
  });
  keepForecastsNow(context, learning, revision, kept);
  return made.map(({ line }) => line);
}

function listOfPriors(context: Context) {
  const { asOf, shop, ofMachine } = shopNow(context, context.today(), true);
  const lines = shop.life.machines.map((machine) => machineLine(shop, machine, ofMachine(machine.machineId).points));
  return { asOf, machines: lines.sort(byGroupThenSoonest), learning: true, forecasting: null };
}

/** Before a large shop was ever learned from: its machines by name, to be opened and written to. */
const bareList = (context: Context) => ({
  asOf: context.today(),
  machines: bareLines(context).sort(byGroupThenSoonest),
  learning: true,
  forecasting: null,
});

const bareLines = (context: Context): Line[] =>
  loadMachineNames(recordOf(context), context.today()).map((named) => ({
    ...named,
    assemblies: [],
    hours: {
      ...{ machineHours: null, sdHours: 0, estimated: false, machineHoursRead: null, readOn: null },
      ...{ dialHours: null, dialMachine: null },
    },
    hoursPerYear: null,
    winters: [],
    planLineHours: null,
    planWinter: '',
    group: 'no-forecast',
    first: null,
    others: [],
    openFindings: [],
  }));
