import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import type { Answer, AskOf, Operation, ReplyOf } from '#core/contract/operation.ts';
import { DERIVED_TABLES } from '#core/record/allRows.ts';
import { doorOf } from '#core/shells/openProgram.ts';
import { type Context, openContext } from '#core/use-cases/context.ts';
import { dump } from '#tests/support/aRecord.ts';

export type Program = {
  context: Context;
  folder: string;
  /** the value, or the fault thrown as an error that names it */
  ask<O extends Operation>(operation: O, request: AskOf<O>): Promise<ReplyOf<O>>;
  answer<O extends Operation>(operation: O, request: unknown): Promise<Answer<ReplyOf<O>>>;
  /** every row of the open record but what is only learned from it, and tables left out */
  rows(leaveOut?: readonly string[]): string;
  defects: string[];
  end(): void;
};

/** The whole program behind its one door, in a folder of its own, today being the day given. */
export function aProgram(asOf = '2026-11-09'): Program {
  const folder = mkdtempSync(join(tmpdir(), 'program-'));
  const program = aProgramAt(join(folder, 'shop.hoursandwear'), asOf);
  return {
    ...program,
    end: () => {
      program.context.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** The same on a record file of one's own; what it keeps beside lies in the file's folder, unless another is named. */
export function aProgramAt(recordPath: string, asOf = '2026-11-09', dataFolder?: string): Program {
  const context = openContext({ recordPath, asOf, dataFolder });
  const defects: string[] = [];
  const ask = doorOf(context, ({ operation, error }) => defects.push(`${operation}: ${error.stack}`));
  const answer = async <O extends Operation>(operation: O, request: unknown) =>
    (await ask(operation.name, JSON.parse(JSON.stringify(request)))) as Answer<ReplyOf<O>>;
  return {
    context,
    folder: dirname(recordPath),
    defects,
    answer,
    ask: async (operation, request) => {
      const answered = await answer(operation, request);
      if (!answered.ok) throw new Error(`${operation.name}: ${JSON.stringify(answered.fault)} ${defects.join('\n')}`);
      return answered.value;
    },
    rows: (leaveOut = []) => {
      const path = context.record?.path;
      if (!path) return '';
      // by a way of its own into the file: what it sees was committed
      const sqlite = new Database(path, { readonly: true });
      try {
        return dump({ sqlite }, ['learnings', ...DERIVED_TABLES, ...leaveOut]);
      } finally {
        sqlite.close();
      }
    },
    end: () => context.close(),
  };
}
