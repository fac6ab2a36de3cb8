import type { Answer, Handlers, Operation } from '../contract/operation.ts';
import { type Refusal, RefusedError } from '../outcome.ts';
import { fieldIssues } from './expected.ts';
import { withoutPerson } from './logFile.ts';

/**
 * The one door to the core: an operation's name and what is asked, as they came over a shell. Never throws.
 * @param meantFor the record a window means by what it names, as record/state told it; absent: whoever asks opened the record
 */
export type Ask = (name: string, request: unknown, meantFor?: string) => Promise<Answer>;

/** Where defects of ours are written down. Gets the operation's name and where it broke, never what was asked. */
export type Log = (entry: { operation: string; error: Error }) => void;

type Behind<Operations extends readonly Operation[], Context> = {
  operations: Operations;
  handlers: Handlers<NoInfer<Operations>, NoInfer<Context>>;
  context: Context;
  log: Log;
  /** what a person can mend of something thrown (a disk that is full, a file that is damaged); null: a defect of ours */
  refusalOf?: (context: NoInfer<Context>, thrown: unknown) => Refusal | null;
  /** the record that is open; absent: there is but one */
  openRecord?: (context: NoInfer<Context>) => { recordId: string; path: string | null };
};

/**
 * Opens the door: every shell asks through what this returns, so that the window, the loopback server and the command
 * line treat a request alike. Looks whether it is meant for the record that is open, reads the request, runs its one handler,
 * reads the reply.
 *
 * A reply that is not as the contract says is a defect of ours, as is anything thrown but a refusal: the asker learns
 * `failed`, the log learns where.
 */
export function answerWith<const Operations extends readonly Operation[], Context>(
  behind: Behind<Operations, Context>,
): Ask {
  const operations = Object.fromEntries(behind.operations.map((operation) => [operation.name, operation]));
  // each handler's own types were checked where the map was written; here one of them is picked by a name from outside
  const handlers = behind.handlers as Readonly<Record<string, (context: Context, request: unknown) => unknown>>;

  return async (name, request, meantFor) => {
    // own names only: "toString" is nobody's operation
    const operation = Object.hasOwn(operations, name) ? operations[name] : undefined;
    const handler = Object.hasOwn(handlers, name) ? handlers[name] : undefined;
    if (!operation || !handler) return { ok: false, fault: { code: 'unknown-operation', facts: {} } };
    const open = behind.openRecord?.(behind.context);
    if (open && meantFor !== undefined && !isMeantFor(operation, meantFor, open.recordId))
      return { ok: false, fault: { code: 'another-record', facts: { file: open.path } } };

    try {
      const asked = operation.zRequest.safeParse(request);
      if (!asked.success) return notAsExpected(asked.error.issues);
      const reply = operation.zReply.safeParse(await handler(behind.context, asked.data));
      if (!reply.success) throw new BadReplyError(fieldIssues(reply.error.issues));
      return { ok: true, value: reply.data };
    } catch (thrown) {
      if (thrown instanceof RefusedError) return refused(thrown);
      const refusal = behind.refusalOf?.(behind.context, thrown);
      if (refusal) return refused(new RefusedError(refusal));
      const error = thrown instanceof Error ? thrown : new Error(`Thrown: ${typeof thrown}`);
      behind.log({ operation: name, error });
      return { ok: false, fault: { code: 'failed', facts: { operation: name, detail: firstLine(error) } } };
    }
  };
}

/** A machine's number means another machine in another record. */
function isMeantFor(operation: Operation, said: string, openId: string): boolean {
  if (operation.meantFor === 'any' || said === openId) return true;
  return operation.meantFor === 'unsaid-too' && said === '';
}

function notAsExpected(zodIssues: Parameters<typeof fieldIssues>[0]): Answer {
  const issues = fieldIssues(zodIssues);
  const first = issues[0];
  return {
    ok: false,
    fault: {
      code: 'not-as-expected',
      ...(first && { path: first.path }),
      facts: first ? { expected: first.expected } : {},
      issues,
    },
  };
}

/** A refusal may name the field it is about among its facts, as `path`; it then moves up beside the code. */
export function refused({ refusal }: RefusedError): Extract<Answer, { ok: false }> {
  const { path, ...facts } = refusal.facts ?? {};
  return { ok: false, fault: { code: refusal.code, ...(typeof path === 'string' && { path }), facts } };
}

class BadReplyError extends Error {
  constructor(issues: ReturnType<typeof fieldIssues>) {
    const told = issues.slice(0, 5).map(({ path, expected }) => `${path || 'the reply'}: ${expected}`);
    super(`Broken invariant: the reply is as the contract says (expected ${told.join('; ')})`);
    this.name = 'BadReplyError';
  }
}

const firstLine = (error: Error): string =>
  withoutPerson(error, `${error.name}: ${error.message.split('\n')[0] ?? ''}`).slice(0, 300);
