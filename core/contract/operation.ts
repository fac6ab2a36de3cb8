import type { z } from 'zod';

/**
 * One thing that can be asked of the program: its name, what is asked and what comes back.
 * An operation is data only. Its one handler lives in use-cases and takes its types from here; so does every asker.
 *
 * Requests and replies are plain JSON: no dates, maps, bytes or `undefined` that must arrive. The window, the loopback
 * server and the command line then carry exactly the same values. Bytes travel as base64 text.
 */
export type Operation<
  Name extends string = string,
  ZRequest extends z.ZodType = z.ZodType,
  ZReply extends z.ZodType = z.ZodType,
> = {
  /** "noun/verb", as in "reading/add" */
  readonly name: Name;
  /** What it does, in a few words: "Add a dial reading" */
  readonly title: string;
  readonly zRequest: ZRequest;
  readonly zReply: ZReply;
  /**
   * Which record a window's request is meant for: the open one, and said so; `any`: it names nothing of a record;
   * `unsaid-too`: a window that has just been loaded knows of none yet
   */
  readonly meantFor: MeantFor;
  /** Another record is open after it: its reply says which, and who asked for that goes on with it. */
  readonly opensRecord: boolean;
};

type MeantFor = 'the-open-one' | 'any' | 'unsaid-too';

/**
 * @example
 *   export const addReading = operation('reading/add', zAddReading, zReading, { title: 'Add a dial reading' });
 */
export function operation<const Name extends string, ZRequest extends z.ZodType, ZReply extends z.ZodType>(
  name: Name,
  zRequest: ZRequest,
  zReply: ZReply,
  { title, meantFor = 'the-open-one', opensRecord = false }: About,
): Operation<Name, ZRequest, ZReply> {
  return { name, title, zRequest, zReply, meantFor, opensRecord };
}

type About = { title: string; meantFor?: MeantFor; opensRecord?: boolean };

/** What an asker may send: fields with a default may be left out. */
export type AskOf<O extends Operation> = z.input<O['zRequest']>;

/** What the handler gets: read and completed by zRequest. */
export type RequestOf<O extends Operation> = z.output<O['zRequest']>;

/** What the handler gives back, before zReply has read it. */
export type GivenReplyOf<O extends Operation> = z.input<O['zReply']>;

/** What the asker gets. */
export type ReplyOf<O extends Operation> = z.output<O['zReply']>;

/**
 * The one function that carries out an operation. It may throw a RefusedError (core/outcome.ts), which reaches the asker
 * as a fault with that code and those facts; anything else it throws is a defect of ours and reaches the log.
 */
export type Handler<O extends Operation, Context> = (
  context: Context,
  request: RequestOf<O>,
) => GivenReplyOf<O> | Promise<GivenReplyOf<O>>;

/**
 * One handler for each operation of a list, by name. A missing one, or one nobody asks for, does not compile.
 * @example export const allHandlers: Handlers<typeof allOperations, Context> = { 'reading/add': addReading, ... };
 */
export type Handlers<Operations extends readonly Operation[], Context> = {
  readonly [Name in Operations[number]['name']]: Handler<Extract<Operations[number], { name: Name }>, Context>;
};

/** What comes back over any shell. Issues name the fields of the request that were not as expected. */
export type Answer<T = unknown> = { ok: true; value: T } | { ok: false; fault: Fault };

export type Fault = {
  /**
   * `unknown-operation`, `not-as-expected` (the request; see issues), `failed` (a defect of ours, see the log),
   * `no-connection` (the program no longer runs), or the code of the refusal.
   */
  code: string;
  /** the field it is about, "sizes.3.sizeMm" */
  path?: string;
  facts: Record<string, string | number | boolean | null>;
  issues?: FieldIssue[];
};

export type FieldIssue = { path: string; expected: string };
