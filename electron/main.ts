import { join, resolve } from 'node:path';
import { app, type BrowserWindow, dialog, session } from 'electron';
import type { Fault, ReplyOf } from '#core/contract/operation.ts';
import type { recordState } from '#core/contract/record.ts';
import { RefusedError } from '#core/outcome.ts';
import { RECORD_EXTENSION } from '#core/record/openRecord.ts';
import type { Log } from '#core/shells/answer.ts';
import { dataFolder } from '#core/shells/dataFolder.ts';
import { logInto } from '#core/shells/logFile.ts';
import { type OpenProgram, openProgram } from '#core/shells/openProgram.ts';
import { faultText } from '#renderer/words/faultText.ts';
import { answerWindow } from './ipc.ts';
import { lockContents, lockSession } from './lock.ts';
import { setMenu } from './menu.ts';
import { announcePage, PAGE_ADDRESS, servePage } from './page.ts';
import { noticeOfRecall } from './recallNotice.ts';
import { startArguments } from './startArguments.ts';
import { openWindow, placeFileIn } from './window.ts';

/** Built, this file is .build/electron/main.js; the window's files and the preload lie beside it. */
const built = join(import.meta.dirname, '..', '..', '.build');
const folder = dataFolder();
const log = logInto(folder);

let window: BrowserWindow | undefined;
let program: OpenProgram | undefined;
/** a record asked for before there was a program to open it: a double-click starts the program, too */
let askedEarly: string | undefined;

app.setName('Hours and Wear');
app.setPath('userData', join(folder, 'electron'));
process.on('uncaughtException', (error) => tellDefect('program', error, log));
process.on('unhandledRejection', (reason) => tellDefect('program', asError(reason), log));

// a second start hands its record to the first and ends
if (app.requestSingleInstanceLock()) begin();
else app.quit();

function begin(): void {
  announcePage();
  app.enableSandbox();
  app.on('web-contents-created', (_event, contents) => lockContents(contents));
  app.on('window-all-closed', () => app.quit());
  app.on('will-quit', () => void program?.close());
  app.on('second-instance', (_event, args, standingIn) => {
    if (window?.isMinimized()) window.restore();
    window?.focus();
    const named = args.find((word) => word.endsWith(RECORD_EXTENSION));
    if (named !== undefined) void openRecordFile(resolve(standingIn, named));
  });
  app.on('open-file', (event, path) => {
    event.preventDefault();
    void openRecordFile(path);
  });
  app
    .whenReady()
    .then(openAll)
    .catch((error: Error) => {
      if (error instanceof RefusedError)
        tellNotOpened({ ...error.refusal, facts: error.refusal.facts ?? {} }, String(error.refusal.facts?.file ?? ''));
      else tellDefect('start', error, log);
      app.quit();
    });
}

async function openAll(): Promise<void> {
  const { recordPath, asOf } = startArguments(process.argv.slice(1), process.env.INIT_CWD ?? process.cwd());
  program = await openProgram({ recordPath, ...(asOf !== undefined && { asOf }), dataFolder: folder, log });
  lockSession(session.defaultSession);
  servePage(session.defaultSession, join(built, 'renderer'));
  const { ask } = program;
  answerWindow(async (name, request) => {
    const answer = await ask(name, request);
    if (answer.ok && name.startsWith('record/') && name !== 'record/state') void showRecent();
    return answer;
  });
  window = openWindow({ preload: join(built, 'electron', 'preload.cjs'), placeFile: placeFileIn(folder) });
  await showRecent();
  if (askedEarly !== undefined) await openRecordFile(askedEarly);
  noticeOfRecall(ask, showRecall);
  window.webContents.on('render-process-gone', (_event, { reason }) => {
    if (reason === 'clean-exit') return;
    log({ operation: 'window', error: new Error(`the window's process is gone: ${reason}`) });
    window?.webContents.reload();
  });
}

/** Brings the window to the front, on the recall list. */
function showRecall(): void {
  if (window?.isMinimized()) window.restore();
  window?.focus();
  void window?.loadURL(`${PAGE_ADDRESS}#/recall`).catch(() => {});
}

/** Opens another record and shows it; the page, loaded anew, reads everything from it. */
async function openRecordFile(path: string): Promise<void> {
  if (!program) {
    askedEarly = path;
    return;
  }
  const answer = await program.ask('record/open', { path });
  if (answer.ok) {
    window?.webContents.reload();
    await showRecent();
  } else tellNotOpened(answer.fault, path);
}

/** The records opened last, in the menu and in the list the system keeps of a program's files. */
async function showRecent(): Promise<void> {
  const answer = await program?.ask('record/state', {});
  const state = answer?.ok ? (answer.value as ReplyOf<typeof recordState>) : undefined;
  if (state?.open && state.path !== null) app.addRecentDocument(state.path);
  if (!window) return;
  const recent = state?.recent ?? [];
  setMenu(window, { platform: process.platform, recent, openRecord: (path) => void openRecordFile(path) });
}

const asError = (thrown: unknown): Error => (thrown instanceof Error ? thrown : new Error(`Thrown: ${typeof thrown}`));

function tellNotOpened(fault: Fault, path: string): void {
  const { what, safe, next } = faultText(fault);
  dialog.showErrorBox('This record was not opened', [path, [what, safe, next].filter(Boolean).join(' ')].join('\n\n'));
}

function tellDefect(operation: string, error: Error, writeDown: Log): void {
  writeDown({ operation, error });
  dialog.showErrorBox(
    'Hours and Wear came upon a defect of its own',
    `${error.message}\n\nThe record is as it was last saved. What happened is written in ${join(folder, 'log.txt')}.`,
  );
}
