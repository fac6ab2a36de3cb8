import { join, resolve } from 'node:path';
import { app, type BrowserWindow, dialog, session } from 'electron';
import { RefusedError } from '#core/outcome.ts';
import { RECORD_EXTENSION } from '#core/record/openRecord.ts';
import type { Log } from '#core/shells/answer.ts';
import { dataFolder } from '#core/shells/dataFolder.ts';
import { logInto } from '#core/shells/logFile.ts';
import { type OpenProgram, openProgram } from '#core/shells/openProgram.ts';
import { answerWindow } from './ipc.ts';
import { lockContents, lockSession } from './lock.ts';
import { setMenu } from './menu.ts';
import { announcePage, servePage } from './page.ts';
import { startArguments } from './startArguments.ts';
import { openWindow, placeFileIn } from './window.ts';

/** Built, this file is .build/electron/main.js; the window's files and the preload lie beside it. */
const built = join(import.meta.dirname, '..', '..', '.build');
const folder = dataFolder();
const log = logInto(folder);

let window: BrowserWindow | undefined;
let program: OpenProgram | undefined;

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
    if (named !== undefined) openRecordFile(resolve(standingIn, named));
  });
  app.on('open-file', (event, path) => {
    event.preventDefault();
    openRecordFile(path);
  });
  app
    .whenReady()
    .then(openAll)
    .catch((error: Error) => {
      if (error instanceof RefusedError) tellNotOpened(error.refusal.code, String(error.refusal.facts?.file ?? ''));
      else tellDefect('start', error, log);
      app.quit();
    });
}

async function openAll(): Promise<void> {
  const { recordPath, asOf } = startArguments(process.argv.slice(1), process.env.INIT_CWD ?? process.cwd());
  program = await openProgram({ recordPath, ...(asOf !== undefined && { asOf }), dataFolder: folder, log });
  lockSession(session.defaultSession);
  servePage(session.defaultSession, join(built, 'renderer'));
  answerWindow(program.ask);
  window = openWindow({ preload: join(built, 'electron', 'preload.cjs'), placeFile: placeFileIn(folder) });
  setMenu(window, { platform: process.platform, openRecord: openRecordFile });
  window.webContents.on('render-process-gone', (_event, { reason }) => {
    if (reason === 'clean-exit') return;
    log({ operation: 'window', error: new Error(`the window's process is gone: ${reason}`) });
    window?.webContents.reload();
  });
}

/** Opens another record and shows it; the page, loaded anew, reads everything from it. */
function openRecordFile(path: string): void {
  program?.ask('record/open', { path }).then((answer) => {
    if (answer.ok) window?.webContents.reload();
    else tellNotOpened(answer.fault.code, path);
  });
}

const asError = (thrown: unknown): Error => (thrown instanceof Error ? thrown : new Error(`Thrown: ${typeof thrown}`));

const tellNotOpened = (code: string, path: string): void =>
  dialog.showErrorBox('This record was not opened', `${path}\n\n${code}`);

function tellDefect(operation: string, error: Error, writeDown: Log): void {
  writeDown({ operation, error });
  dialog.showErrorBox(
    'Hours and Wear came upon a defect of its own',
    `${error.message}\n\nThe record is as it was last saved. What happened is written in ${join(folder, 'log.txt')}.`,
  );
}
