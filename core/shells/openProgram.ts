import { allOperations } from '../contract/allOperations.ts';
import { allHandlers } from '../use-cases/allHandlers.ts';
import { backUpIfDue } from '../use-cases/backUps.ts';
import { type Context, faultOfRecord, openContext, whichIsOpen } from '../use-cases/context.ts';
import { type Ask, answerWith, type Log } from './answer.ts';

export type OpenProgram = { ask: Ask; close(): Promise<void> };

export type ProgramOptions = {
  /** absolute; need not exist yet, the first start then offers to lay it down */
  recordPath: string;
  /** ISO day taken as today; absent: the clock's */
  asOf?: string;
  /**
   * where the program keeps what is not in the record, backups above all: the record is then backed up at the start and
   * once a day while the program runs; absent: the record's folder, and no backup is made of a record that is only looked
   * into
   */
  dataFolder?: string;
  /** how often it is looked whether a backup is due [ms] */
  lookEveryMs?: number;
  log: Log;
};

/** A computer that sleeps at night is looked at soon after it wakes [ms]. */
const LOOK_EVERY_MS = 3_600_000;

/**
 * The whole program but its window: the record opened, every operation ready to be asked. A record that is there and cannot
 * be opened (in use, damaged, made by a later program) leaves the program without one; record/state then says why.
 */
export async function openProgram({ log, lookEveryMs, ...options }: ProgramOptions): Promise<OpenProgram> {
  const context = openContext(options);
  const backups = options.dataFolder === undefined ? null : backUpDaily(context, log, lookEveryMs ?? LOOK_EVERY_MS);
  await backups?.looked();
  return {
    ask: doorOf(context, log),
    close: async () => {
      await backups?.stop();
      context.close();
    },
  };
}

/** The one door, with every operation behind it, on an open context. */
export const doorOf = (context: Context, log: Log): Ask =>
  answerWith({
    ...{ operations: allOperations, handlers: allHandlers, context, log, refusalOf: faultOfRecord },
    openRecord: whichIsOpen,
  });

type Daily = {
  /** resolves once the last look is over */
  looked(): Promise<void>;
  stop(): Promise<void>;
};

/** Looks at once, and every so often, whether a backup is due; keeps no program alive. */
function backUpDaily(context: Context, log: Log, everyMs: number): Daily {
  let looking = look(context, log);
  const timer = setInterval(() => {
    looking = looking.then(() => look(context, log));
  }, everyMs);
  timer.unref();
  return {
    looked: () => looking,
    stop: () => {
      clearInterval(timer);
      return looking;
    },
  };
}

/** A backup that cannot be made (a full disk, a folder that is gone) is written down and keeps nobody from the record. */
async function look(context: Context, log: Log): Promise<void> {
  try {
    await backUpIfDue(context);
  } catch (thrown) {
    log({ operation: 'record/backUp', error: thrown instanceof Error ? thrown : new Error(String(thrown)) });
  }
}
