import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync, realpathSync } from 'node:fs';
import { homedir } from 'node:os';
import { posix, win32 } from 'node:path';

/** A file system that is mounted: where, of what sort, and from where. */
export type Mount = { at: string; type: string; from: string };

/** What of a computer tells where a file truly lies; given by tests. */
export type FileSystems = {
  platform: NodeJS.Platform;
  home: string;
  /** as /proc/mounts has it, or as `mount` prints it on macOS; empty: not known */
  mountsText(): string;
  /** whole path with links, and on Windows drive letters of shares, followed */
  realPath(path: string): string;
  /** names in a folder; none when it cannot be read */
  namesIn(folder: string): string[];
};

/**
 * Where a record lies, as far as it endangers it.
 *  - network: type of the file system when another computer holds the file, so that locks and the order of writes cannot
 *    be relied on and write-ahead logging does not work
 *  - syncSign: what suggests that another program copies the folder elsewhere and back; a guess, to be put to a person
 * @source SQLite, "Write-Ahead Logging", section 1 (all processes on the same host), and "How To Corrupt An SQLite Database
 *   File", section 2.1 (file systems with broken locks)
 */
export type RecordPlace = { network: string | null; sync: { folder: string; sign: string } | null };

export function recordPlace(path: string, on: FileSystems = thisComputer): RecordPlace {
  if (path === ':memory:') return { network: null, sync: null };
  const real = realPath(path, on);
  const network = networkOf(real, on);
  return { network, sync: network ? null : syncSign(real, on) };
}

const pathsOf = ({ platform }: FileSystems) => (platform === 'win32' ? win32 : posix);

/** The file may not be there yet: then where its folder truly lies. */
function realPath(path: string, on: FileSystems): string {
  const { dirname, basename, join } = pathsOf(on);
  try {
    return on.realPath(path);
  } catch {
    try {
      return join(on.realPath(dirname(path)), basename(path));
    } catch {
      return path;
    }
  }
}

/** "\\server\share\..." (and its long form "\\?\UNC\..."): a name of another computer's folder on Windows. */
const isUnc = (path: string): boolean => /^(\\\\|\/\/)(?![?.][\\/])[^\\/]/.test(path) || /^\\\\\?\\UNC\\/i.test(path);

/** Names the kernels give to file systems that another computer holds; from memory. */
const NETWORK_TYPES = new Set(
  'nfs nfs4 cifs smbfs smb2 smb3 afs afpfs ncpfs ncp 9p ceph coda glusterfs lustre davfs webdav ftp'.split(' '),
);

function networkOf(real: string, on: FileSystems): string | null {
  if (isUnc(real)) return 'unc';
  const mount = mountOf(real, mountsIn(on.mountsText()));
  if (!mount) return null;
  const isRemote =
    NETWORK_TYPES.has(mount.type.toLowerCase()) || (isInUserSpace(mount.type) && isElsewhere(mount.from));
  return isRemote ? mount.type : null;
}

/** Driven by a program of its own: whether it is local its type does not tell, but what it is mounted from does. */
const isInUserSpace = (type: string): boolean => /^(mac)?fuse(\.|$)/i.test(type);

/** "name@host:folder", "//host/share", "https://...": not a device, not a folder here. */
const isElsewhere = (from: string): boolean => /^(\/\/|[a-z][\w+.-]*:\/\/)|^[^/]+:/i.test(from);

/** Reads "/dev/sda1 / ext4 rw 0 0" and "//me@host/share on /Volumes/share (smbfs, nosuid)". */
export function mountsIn(text: string): Mount[] {
  return text.split('\n').flatMap((line) => {
    const printed = /^(.+) on (\/.*) \(([^,)]+)/.exec(line);
    if (printed) return [{ from: printed[1] ?? '', at: printed[2] ?? '', type: printed[3] ?? '' }];
    const [from, at, type] = line.split(' ');
    return from && at?.startsWith('/') && type ? [{ from: unescaped(from), at: unescaped(at), type }] : [];
  });
}

/** A blank in a name is written \040 in /proc/mounts. */
const unescaped = (text: string): string =>
  text.replace(/\\([0-7]{3})/g, (_whole, octal: string) => String.fromCharCode(Number.parseInt(octal, 8)));

/** The mount a path lies under: the longest that it begins with; of two on one place, the later. */
function mountOf(path: string, mounts: readonly Mount[]): Mount | null {
  const under = mounts.filter(({ at }) => at === '/' || path === at || path.startsWith(`${at}/`));
  return under.reduce<Mount | null>((best, mount) => (!best || mount.at.length >= best.at.length ? mount : best), null);
}

/** A folder's own name says it. macOS keeps what its file providers copy in one named like this. */
const SYNC_FOLDER = /(^|[^a-z])(sync|synced|synchroni[sz]ed|cloud|cloudstorage|mobile documents)([^a-z]|$)/i;
/** What a copying program leaves in the folder it watches: a hidden file or folder that says so. */
const SYNC_MARKER = /^\.[^.]*(sync|cloud)/i;
/** "shop (conflicted copy ...)", "shop.sync-conflict-...": two computers wrote, and both versions were kept. */
const CONFLICT_COPY = /conflict/i;

function syncSign(real: string, on: FileSystems): RecordPlace['sync'] {
  const { dirname, basename, extname } = pathsOf(on);
  const folder = dirname(real);
  const stem = basename(real, extname(real));
  const copies = on
    .namesIn(folder)
    .find((name) => name.startsWith(stem) && CONFLICT_COPY.test(name.slice(stem.length)));
  if (copies) return { folder, sign: copies };
  for (let at = folder; ; at = dirname(at)) {
    // in a person's home such names are programs' settings
    if (at === on.home || dirname(at) === at) return null;
    if (SYNC_FOLDER.test(basename(at))) return { folder: at, sign: basename(at) };
    const marker = on.namesIn(at).find((name) => SYNC_MARKER.test(name));
    if (marker) return { folder: at, sign: marker };
  }
}

const thisComputer: FileSystems = {
  platform: process.platform,
  home: homedir(),
  mountsText() {
    try {
      if (process.platform === 'linux') return readFileSync('/proc/mounts', 'utf8');
      if (process.platform === 'darwin') return execFileSync('/sbin/mount', { encoding: 'utf8', timeout: 2000 });
    } catch {
      // not known then; what the path itself says is left
    }
    return '';
  },
  realPath: (path) => realpathSync.native(path),
  namesIn(folder) {
    try {
      return readdirSync(folder);
    } catch {
      return [];
    }
  },
};
