import type { Answer, AskOf, Fault, Operation, ReplyOf } from '#core/contract/operation.ts';
import type { WindowBridge } from '#core/contract/windowBridge.ts';
import { hearOfRecord, meantFor } from './whichRecord.ts';

/**
 * The window's one way to the core: over Electron's bridge where there is one, else over the loopback server.
 * Both carry the same answers. Import this module before the router: it takes the token out of the address.
 */

declare global {
  interface Window {
    readonly hoursAndWear?: WindowBridge;
  }
}

const TOKEN_KEY = 'token';
const token = tokenOfThisStart();

/** The program refused, failed or could not be reached; words/faultText turns the fault into words. */
export class FaultError extends Error {
  readonly fault: Fault;
  constructor(fault: Fault) {
    super(fault.code);
    this.name = 'FaultError';
    this.fault = fault;
  }
}

/**
 * @example const machines = await ask(machinesList, {});
 * @throws FaultError
 */
export async function ask<O extends Operation>(operation: O, request: AskOf<O>): Promise<ReplyOf<O>> {
  const answer = await answerTo(operation, request);
  if (answer.ok) return answer.value;
  throw new FaultError(answer.fault);
}

/** As {@link ask}, for forms: the fault comes back as a value, its path and issues name fields of the request. */
export async function answerTo<O extends Operation>(operation: O, request: AskOf<O>): Promise<Answer<ReplyOf<O>>> {
  const said = meantFor();
  const { name } = operation;
  const answer = await (window.hoursAndWear?.ask(name, request, said) ?? askLoopback(name, request, said));
  hearOfRecord(operation, said, answer);
  // the door has read the reply by zReply: its shape is the operation's
  return answer as Answer<ReplyOf<O>>;
}

/** Whole path of a picked file; null in a browser, which does not tell. */
export const pathOfFile = (file: File): string | null => window.hoursAndWear?.pathOfFile(file) ?? null;

async function askLoopback(name: string, request: unknown, said: string): Promise<Answer> {
  if (token === null) return fault('no-token');
  try {
    const response = await fetch(`/op/${name}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', authorization: `Bearer ${token}`, 'meant-for': said },
      body: JSON.stringify(request),
    });
    return (await response.json()) as Answer;
  } catch {
    // fetch tells "refused" and "gone" apart for nobody; the server is on this computer, so it has ended
    return fault('no-connection');
  }
}

const fault = (code: string): Answer => ({ ok: false, fault: { code, facts: {} } });

/**
 * The token comes in the fragment and leaves it at once: the address bar, the history and a copied link do not hold it.
 * It stays in this tab so that a reload goes on working.
 */
function tokenOfThisStart(): string | null {
  const inAddress = /^#token=([\w-]+)$/.exec(window.location.hash)?.[1];
  if (inAddress === undefined) return window.sessionStorage.getItem(TOKEN_KEY);
  window.sessionStorage.setItem(TOKEN_KEY, inAddress);
  window.history.replaceState(null, '', window.location.pathname);
  return inAddress;
}
