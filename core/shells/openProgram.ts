import { allOperations } from '../contract/allOperations.ts';
import { allHandlers } from '../use-cases/allHandlers.ts';
import { backUpIfDue } from '../use-cases/backUps.ts';
import { type Context, openContext } from '../use-cases/context.ts';
import { type Ask, answerWith, type Log } from './answer.ts';

export type OpenProgram = { ask: Ask; close(): Promise<void> };

export type ProgramOptions = {
  /** absolute; need not exist yet, the first start then offers to lay it down */
  recordPath: string;
  /** ISO day taken as today; absent: the clock's */
  asOf?: string;
  /**
   * where the program keeps what is not in the record, backups above all: the record is then backed up at the start, once
   * a day; absent: the record's folder, and no backup is made of a record that is only looked into
   */
  dataFolder?: string;
  log: Log;
};

/**
 * The whole program but its window: the record opened, every operation ready to be asked.
 * @throws RefusedError when the record is there and cannot be opened (in use, damaged, made by a later program)
 */
export async function openProgram({ log, ...options }: ProgramOptions): Promise<OpenProgram> {
  const context = await openContext(options);
  if (options.dataFolder !== undefined) await backUpAtStart(context, log);
  return {
    ask: answerWith({ operations: allOperations, handlers: allHandlers, context, log }),
    close: async () => context.close(),
  };
}

/** A backup that cannot be made (a full disk, a folder that is gone) is written down and keeps nobody from the record. */
async function backUpAtStart(context: Context, log: Log): Promise<void> {
  try {
    await backUpIfDue(context);
  } catch (thrown) {
    log({ operation: 'record/backUp', error: thrown instanceof Error ? thrown : new Error(String(thrown)) });
  }
}
