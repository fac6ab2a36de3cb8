import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type FileSystems, mountsIn, recordPlace } from './recordPlace.ts';

const MOUNTS = `/dev/sda1 / ext4 rw,relatime 0 0
proc /proc proc rw 0 0
server:/export/office /mnt/office nfs4 rw,vers=4.2 0 0
//server/shop /mnt/shop\\040files cifs rw,vers=3.0 0 0
me@host:/records /hem/bo/far fuse.remote rw 0 0
/dev/sdb1 /media/stick fuseblk rw 0 0
portal /hem/bo/here fuse.portal rw 0 0
/dev/sdc1 /mnt/office/local ext4 rw 0 0
`;
const MAC = `/dev/disk3s1 on / (apfs, sealed, local, read-only)
//bo@server/shop on /Volumes/shop (smbfs, nodev, nosuid, mounted by bo)
`;

type Folders = Record<string, string[]>;
const linux = (folders: Folders = {}): FileSystems => ({
  platform: 'linux',
  home: '/hem/bo',
  mountsText: () => MOUNTS,
  realPath: (path) => path,
  namesIn: (folder) => folders[folder] ?? [],
});

describe('a record on a network', () => {
  test.each([
    ['/mnt/office/shop.hoursandwear', 'nfs4'],
    ['/mnt/shop files/2026/shop.hoursandwear', 'cifs'],
    ['/hem/bo/far/shop.hoursandwear', 'fuse.remote'],
    ['/mnt/office/local/shop.hoursandwear', null],
    ['/mnt/officers/shop.hoursandwear', null],
    ['/hem/bo/here/shop.hoursandwear', null],
    ['/media/stick/shop.hoursandwear', null],
    ['/hem/bo/shop.hoursandwear', null],
  ])('is known by how its folder is mounted: %s', (path, network) => {
    expect(recordPlace(path, linux()).network).toBe(network);
  });

  test('is known on macOS by what is mounted, on Windows by the name of the share, drive letters followed', () => {
    const mac: FileSystems = { ...linux(), platform: 'darwin', mountsText: () => MAC };
    expect(recordPlace('/Volumes/shop/a.hoursandwear', mac).network).toBe('smbfs');
    expect(recordPlace('/folk/bo/a.hoursandwear', mac).network).toBeNull();
    const windows: FileSystems = {
      ...linux(),
      platform: 'win32',
      home: 'C:\\folk\\bo',
      mountsText: () => '',
      realPath: (path) => path.replace(/^Z:/, '\\\\server\\shop'),
    };
    expect(recordPlace('\\\\server\\shop\\a.hoursandwear', windows).network).toBe('unc');
    expect(recordPlace('\\\\?\\UNC\\server\\shop\\a.hoursandwear', windows).network).toBe('unc');
    expect(recordPlace('Z:\\a.hoursandwear', windows).network).toBe('unc');
    expect(recordPlace('\\\\?\\C:\\shop\\a.hoursandwear', windows).network).toBeNull();
    expect(recordPlace('C:\\shop\\a.hoursandwear', windows).network).toBeNull();
  });

  test('links are followed, also for a file that is not there yet', () => {
    const linked: FileSystems = {
      ...linux(),
      realPath(path) {
        if (path === '/hem/bo/records') return '/mnt/office/records';
        throw new Error('ENOENT');
      },
    };
    expect(recordPlace('/hem/bo/records/new.hoursandwear', linked).network).toBe('nfs4');
  });
});

describe('a record in a folder another program may copy elsewhere', () => {
  const signOf = (path: string, folders: Folders = {}) => recordPlace(path, linux(folders)).sync;
  test('is suspected by the name of a folder, a hidden marker in one, or copies in conflict beside it', () => {
    expect(signOf('/hem/bo/Cloud/shop/a.hoursandwear')).toEqual({ folder: '/hem/bo/Cloud', sign: 'Cloud' });
    expect(signOf('/hem/bo/office (synced)/a.hoursandwear')?.sign).toBe('office (synced)');
    expect(signOf('/hem/bo/shop/2026/a.hoursandwear', { '/hem/bo/shop': ['x', '.sync-state'] })).toEqual({
      folder: '/hem/bo/shop',
      sign: '.sync-state',
    });
    const beside = ['a.hoursandwear', "a (Bo's conflicted copy 2026-11-01).hoursandwear"];
    expect(signOf('/hem/bo/shop/a.hoursandwear', { '/hem/bo/shop': beside })?.sign).toBe(beside[1]);
  });

  test('is not suspected without a sign: like names, settings in the home folder, other files in conflict', () => {
    expect(signOf('/hem/bo/shop/a.hoursandwear')).toBeNull();
    expect(signOf('/hem/bo/Cloudesley farm/a.hoursandwear')).toBeNull();
    expect(signOf('/hem/bo/a.hoursandwear', { '/hem/bo': ['.cloud-settings'] })).toBeNull();
    expect(signOf('/hem/bo/shop/a.hoursandwear', { '/hem/bo/shop': ['letter (conflict).txt'] })).toBeNull();
    expect(recordPlace(':memory:', linux())).toEqual({ network: null, sync: null });
  });
});

test.runIf(process.platform === 'linux')('this computer’s own mounts can be read', () => {
  expect(mountsIn(readFileSync('/proc/mounts', 'utf8')).map(({ at }) => at)).toContain('/');
  expect(mountsIn(MOUNTS)).toHaveLength(8);
});
