import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';

export const top = join(import.meta.dirname, '..', '..');

export type Running = {
  child: ChildProcess;
  /** what was printed so far */
  printed(): string;
  /** the first piece printed that the pattern finds; rejects when the program ends without it */
  until(pattern: RegExp): Promise<RegExpExecArray>;
  ended: Promise<{ code: number | null; out: string; err: string }>;
};

/** Runs a script of the project in a process of its own, as a person standing in some folder would. */
export function runScript(
  script: string,
  args: string[],
  { standingIn = top, env = {} as Record<string, string> } = {},
): Running {
  const child = spawn(process.execPath, [join(top, script), ...args], {
    cwd: top,
    env: { ...process.env, INIT_CWD: standingIn, ...env },
  });
  let out = '';
  let err = '';
  child.stdout.on('data', (chunk) => {
    out += chunk;
  });
  child.stderr.on('data', (chunk) => {
    err += chunk;
  });
  const ended = new Promise<{ code: number | null; out: string; err: string }>((done) =>
    child.once('close', (code) => done({ code, out, err })),
  );
  return {
    child,
    ended,
    printed: () => out,
    until: (pattern) =>
      new Promise((found, missed) => {
        const look = () => {
          const match = pattern.exec(out);
          if (match) found(match);
        };
        child.stdout.on('data', look);
        look();
        ended.then(() => missed(new Error(`ended without ${pattern}:\n${out}\n${err}`)));
      }),
  };
}
