import { NO_BREAK_SPACE, wholeFigure } from '#core/words/quantityText.ts';
import { counted } from './english.ts';

/** Words of where backups go and what room they take. */
export const backupWords = {
  where: 'Where backups go',
  own: 'The program’s own folder',
  chosen: 'The folder you chose',
  holds: (backups: number, bytes: number) =>
    `${backups} ${counted(backups, 'backup', 'backups')}, ${roomText(bytes)} together`,
  free: (bytes: number) => `${roomText(bytes)} free on that disk`,
  away: 'not there just now: a backup goes there as soon as it is',
  folder: 'A further folder for every backup',
  folderHint: 'on another disk, a stick or a share, for example E:\\Backups, or /media/stick/backups',
  choose: 'Copy backups there too',
  chooseOther: 'Copy them there instead',
  letGo: 'No further folder',

  notSynced: 'Nothing copies this folder',
  synced: 'It is copied elsewhere',
} as const;

/** Room on a disk: whole megabytes, from ten thousand of them on gigabytes; a little is never nothing. */
export function roomText(bytes: number): string {
  const megabytes = Math.ceil(bytes / 1e6);
  return megabytes < 10_000
    ? `${wholeFigure(megabytes)}${NO_BREAK_SPACE}MB`
    : `${wholeFigure(Math.floor(bytes / 1e9))}${NO_BREAK_SPACE}GB`;
}
