import { machinesList } from '#core/contract/machine.ts';
import type { ReplyOf } from '#core/contract/operation.ts';
import { type Asked, useAsk } from './useAsk.ts';

/** While the classes are being learned for the first time the list is asked for again so often [ms]. */
const WHILE_LEARNING_MS = 2000;
/** A long list is asked for less often: while it is forecast beside the program, older lines stand in [ms]. */
const WHILE_FORECASTING_MS = 15_000;
const MANY = 400;

/** All machines, at once: from what the trade says while nothing has been learned yet, and then as learned. */
export const useMachines = (wanted = true): Asked<ReplyOf<typeof machinesList>> =>
  useAsk(machinesList, wanted ? { atOnce: true } : null, ({ learning, forecasting, machines }) =>
    learning ? (forecasting || machines.length > MANY ? WHILE_FORECASTING_MS : WHILE_LEARNING_MS) : null,
  );
