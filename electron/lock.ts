import type { Session, WebContents } from 'electron';
import { openOutside } from './outside.ts';
import { isOwnPage, PAGE_ADDRESS } from './page.ts';

/** Keeps whatever is shown in a window on our own page: nothing else is loaded, opened or embedded. */
export function lockContents(contents: WebContents): void {
  contents.on('will-navigate', (event) => {
    if (isOwnPage(event.url)) return;
    event.preventDefault();
    openOutside(event.url);
  });
  contents.on('will-frame-navigate', (event) => {
    // the one frame there may be is a paper of ours, shown from memory
    if (!isOwnPage(event.url) && !event.url.startsWith(`blob:${PAGE_ADDRESS}`)) event.preventDefault();
  });
  contents.on('will-redirect', (event) => {
    if (!isOwnPage(event.url)) event.preventDefault();
  });
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(({ url }) => {
    openOutside(url);
    return { action: 'deny' };
  });
}

/** Cameras, places, devices, notifications from the page: none is asked for and none is given. */
export function lockSession(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, decide) => decide(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.on('will-download', (event, item) => {
    // papers made in the window are saved where the person says; nothing is ever fetched from elsewhere
    if (!item.getURL().startsWith(`blob:${PAGE_ADDRESS}`)) event.preventDefault();
    else item.setSaveDialogOptions({ defaultPath: item.getFilename() });
  });
}
