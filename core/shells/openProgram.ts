import { allOperations } from '../contract/allOperations.ts';
import { allHandlers } from '../use-cases/allHandlers.ts';
import { openContext } from '../use-cases/context.ts';
import { type Ask, answerWith, type Log } from './answer.ts';

export type OpenProgram = { ask: Ask; close(): Promise<void> };

export type ProgramOptions = {
  /** absolute; need not exist yet, the first start then offers to lay it down */
  recordPath: string;
  /** ISO day taken as today; absent: the clock's */
  asOf?: string;
  /** where the program keeps what is not in the record; absent: the record's folder */
  dataFolder?: string;
  log: Log;
};

/**
 * The whole program but its window: the record opened, every operation ready to be asked.
 * @throws RefusedError when the record is there and cannot be opened (in use, damaged, made by a later program)
 */
export async function openProgram({ log, ...options }: ProgramOptions): Promise<OpenProgram> {
  const context = await openContext(options);
  return {
    ask: answerWith({ operations: allOperations, handlers: allHandlers, context, log }),
    close: async () => context.close(),
  };
}
