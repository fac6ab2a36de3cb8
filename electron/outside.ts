import { shell } from 'electron';

/**
 * True for what may be handed to the system: a web page over TLS, a mail, a telephone call. All other schemes can start
 * programs or open files; an https address that carries a user name may look like another host than it is.
 */
export function mayLeave(address: string): boolean {
  if (!URL.canParse(address)) return false;
  const { protocol, username, password, hostname } = new URL(address);
  if (protocol === 'mailto:' || protocol === 'tel:') return true;
  return protocol === 'https:' && username === '' && password === '' && hostname !== '';
}

/** Opens an address in the person's own browser, mail program or telephone; does nothing with any other. */
export function openOutside(address: string): void {
  if (mayLeave(address)) shell.openExternal(address).catch(() => {});
}
