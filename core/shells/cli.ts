import { resolve } from 'node:path';
import { text } from 'node:stream/consumers';
import { parseArgs } from 'node:util';
import { allOperations } from '../contract/allOperations.ts';
import type { Answer } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import { refused } from './answer.ts';
import { defaultRecordPath } from './dataFolder.ts';
import type { OpenProgram, ProgramOptions } from './openProgram.ts';
import { endQuietlyWithReader } from './quietEnd.ts';
import { shapeText } from './shapeText.ts';

const USAGE = `npm run --silent call -- OPERATION 'JSON' [--record FILE] [--as-of YYYY-MM-DD]
  JSON "-" is read from standard input. Without OPERATION, lists the operations.`;

export type CommandLine =
  | { kind: 'list' }
  | { kind: 'call'; name: string; json: string; recordPath: string; asOf?: string }
  | { kind: 'wrong'; text: string };

/** @param standingIn folder that relative paths are taken from */
export function readCommandLine(args: readonly string[], standingIn: string): CommandLine {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { record: { type: 'string' }, 'as-of': { type: 'string' } },
    });
    const [name, json = '{}', ...more] = positionals;
    if (more.length > 0) return { kind: 'wrong', text: `One operation and one JSON text, not also: ${more.join(' ')}` };
    if (name === undefined) return { kind: 'list' };
    const asOf = values['as-of'];
    const recordPath = values.record === undefined ? defaultRecordPath() : resolve(standingIn, values.record);
    return { kind: 'call', name, json, recordPath, ...(asOf !== undefined && { asOf }) };
  } catch (thrown) {
    return { kind: 'wrong', text: thrown instanceof Error ? thrown.message : String(thrown) };
  }
}

/** Every operation with what it takes (->) and gives (<-), one after another. */
export const operationsText = (): string =>
  allOperations
    .map(
      ({ name, title, zRequest, zReply }) =>
        `${name}  ${title}\n  -> ${shapeText(zRequest, 'request')}\n  <- ${shapeText(zReply, 'reply')}`,
    )
    .join('\n\n');

/** Exit code: 0 answered, 1 a fault came back, 2 the command line was not understood. */
async function run(command: CommandLine): Promise<number> {
  if (command.kind === 'list') {
    console.log(operationsText());
    return 0;
  }
  if (command.kind === 'wrong') {
    console.error(`${command.text}\n${USAGE}`);
    return 2;
  }
  const json = command.json === '-' ? await text(process.stdin) : command.json;
  let request: unknown;
  try {
    request = JSON.parse(json);
  } catch {
    console.error(`The request is no JSON: ${json.slice(0, 200)}\n${USAGE}`);
    return 2;
  }
  // here, not above: listing the operations opens no record
  const { openProgram } = await import('./openProgram.ts');
  const answer = await answerOnce(openProgram, command, request);
  console.log(JSON.stringify(answer, null, 2));
  return answer.ok ? 0 : 1;
}

type Call = Extract<CommandLine, { kind: 'call' }>;

/** Opens the record, asks one thing of it and closes it; a record that cannot be opened is a fault like any other. */
async function answerOnce(
  openProgram: (options: ProgramOptions) => Promise<OpenProgram>,
  { name, recordPath, asOf }: Call,
  request: unknown,
): Promise<Answer> {
  try {
    const program = await openProgram({
      recordPath,
      ...(asOf !== undefined && { asOf }),
      log: ({ operation, error }) => console.error(`${operation}\n${error.stack}`),
    });
    try {
      return await program.ask(name, request);
    } finally {
      await program.close();
    }
  } catch (thrown) {
    if (thrown instanceof RefusedError) return refused(thrown);
    throw thrown;
  }
}

if (import.meta.main) {
  endQuietlyWithReader();
  // npm runs scripts in the project's folder; paths in the request too are meant from where the person stood
  const standingIn = process.env.INIT_CWD ?? process.cwd();
  process.chdir(standingIn);
  process.exitCode = await run(readCommandLine(process.argv.slice(2), standingIn));
}
