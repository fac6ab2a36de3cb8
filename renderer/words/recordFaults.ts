import type { Fault } from '#core/contract/operation.ts';
import { hoursText, limitText } from '#core/words/quantityText.ts';

type Facts = Fault['facts'];
type Said = { what: string; safe?: string; next?: string };

/** Refusals of the record and its entries, by code. The facts of each are those its use case gives. */
export const recordFaults: Record<string, (facts: Facts) => Said> = {
  'no-such-record': (f) => ({ what: `There is no file at ${f.file}.`, next: 'Look at the path again.' }),
  'not-a-record': (f) => ({ what: `${f.file} is not a record of this program.`, next: 'Choose another file.' }),
  'record-newer': (f) => ({
    what: `This record was laid out by a newer program (${f.recordVersion}, this one knows ${f.programVersion}).`,
    next: 'Open it with that program; this one leaves it as it is.',
  }),
  'record-in-use': () => ({
    what: 'Another program is writing in this record.',
    next: 'Close it, or wait a moment, and try again.',
  }),
  'record-read-only': (f) => ({
    what: `The record may only be read: ${f.file}.`,
    next: 'Give leave to write to the file and its folder.',
  }),
  'record-damaged': (f) => ({
    what: `The record is damaged: ${f.file}.`,
    next: 'Restore its last backup; the damaged file is kept aside.',
  }),
  'cannot-open-record': (f) => ({ what: `The record could not be opened: ${f.file}.`, next: 'Is its drive there?' }),
  'cannot-reach-record': (f) => ({
    what: `The record can no longer be reached: ${f.file}.`,
    next: 'Is its drive still there?',
  }),
  'disk-full': () => ({ what: 'The disk is full.', next: 'Make room and try again.' }),
  'backup-not-whole': () => ({ what: 'The copy did not come out whole and was thrown away.', next: 'Try again.' }),
  'backup-would-fill-disk': (f) => ({
    what: `There is too little room for a backup in ${f.folder}: ${f.freeMb} MB are free, ${f.neededMb} MB are wanted.`,
    next: 'Make room, or choose a further folder for backups on another disk.',
  }),
  'folder-not-there': (f) => ({
    what: `There is no folder at ${f.folder}.`,
    next: 'Is the stick plugged in, the share on?',
  }),
  'another-record': (f) => ({
    what: f.file ? `Another window opened another record: ${f.file}.` : 'Another window closed this record.',
    safe: 'Nothing was entered into either; what you typed stands here.',
    next: 'Choose at the top of this window: open this record again, or load the other.',
  }),
  'record-moved': (f) => ({
    what: `The record’s file was moved, deleted or replaced while it was open: ${f.file}.`,
    next: 'Put the file back in its place, or open it where it lies now; then enter this again.',
  }),
  'migration-failed': (f) => ({
    what: `The record could not be brought to the layout of this program: ${f.reason ?? f.file}.`,
    safe: 'It is as the earlier program left it.',
    next: 'Go on with the earlier program, and let its maker see the record.',
  }),
  'file-is-there': (f) => ({ what: `There is a file already: ${f.file}.`, next: 'Open it, or choose another name.' }),

  'record-on-network': () => ({
    what: 'The record lies on a network drive: a lost connection can damage it.',
    next: 'Keep it on this computer, and have backups copied to the network instead.',
  }),
  'record-may-be-synced': (f) => ({
    what: `The record seems to lie in a folder that is copied elsewhere while it is open: ${f.folder}.`,
    next: 'Keep it outside that folder, and have backups copied there instead.',
  }),
  'record-synced': (f) => ({
    what: `The record lies in a folder that is copied elsewhere while it is open: ${f.folder}.`,
    next: 'Keep it outside that folder, and have backups copied there instead.',
  }),
  'backup-failed': () => ({
    what: 'The last backup could not be made.',
    safe: 'The record itself is whole.',
    next: 'Make room on the disk, then make a backup now.',
  }),
  'backup-folder-failed': (f) => ({
    what: `The last backup could not be copied to ${f.folder}.`,
    safe: 'It lies with the program’s own files.',
    next: 'Is the stick plugged in, the share on?',
  }),

  'machine-name-taken': (f) => ({
    what: `Another machine is called ${f.name}.`,
    next: 'Call this one otherwise: with its farm, or a number.',
  }),
  'name-taken': (f) => ({ what: `${f.name} is there already.`, next: 'Give it another name.' }),
  'position-twice': (f) => ({ what: `Two positions are called ${f.name}.`, next: 'Left and right, front and rear?' }),
  'point-twice': (f) => ({
    what: `Two points of this position are called ${f.name}.`,
    next: 'Tell them apart by name.',
  }),
  'limit-better-than-new': (f) => ({
    what: `It wears ${f.wears} from ${limitText(Number(f.newSizeMm))}: ${limitText(Number(f.limitMm))} is no limit for it.`,
  }),
  'reject-before-renew': (f) => ({
    what: `Reject at ${limitText(Number(f.rejectAtMm))} comes before renew at ${limitText(Number(f.renewAtMm))}.`,
  }),
  'dial-over-full-scale': (f) => ({
    what: `${hoursText(Number(f.dialHours))} is more than this meter can show: it turns over at ${hoursText(Number(f.fullScaleHours))}.`,
    next: 'Look at the digits on the dial again.',
  }),
  'nothing-typed': () => ({ what: 'Nothing is typed yet, so there is nothing to save.' }),
  'unknown-renewal': () => ({ what: 'That renewal is not on record.', next: 'Open the machine afresh.' }),
  'unknown-station': (facts) => ({
    what: `${facts.station ?? ''} is no station of this point.`,
    next: 'Choose one of its stations.',
  }),
  'must-stay-standard': (facts) => ({
    what: `${facts.position ?? 'This position'} must stay standard: what fits there has to fit elsewhere.`,
    next: 'Bush it, build it up where that is allowed, or renew it.',
  }),
  'oversize-needs-size': () => ({ what: 'Oversize, and no size said.', next: 'Type the size it was made to.' }),
  'oversize-of-what': () => ({
    what: 'Only a whole pin or bore is made oversize.',
    next: 'Say what was done otherwise, or at the pin or bore itself.',
  }),
  'turned-what': () => ({ what: 'Only a strip is turned over.', next: 'Say what was done otherwise.' }),
  'turned-needs-size': () => ({
    what: 'A strip turned over goes on from what is left of it, and nobody said how thick that is.',
    next: 'Measure it as found or as left, or type its thickness.',
  }),
  'joint-point-unknown': (facts) => ({
    what: `A joint names ${facts.point ?? 'a point'} at ${facts.item ?? 'an item'}, which is not laid out.`,
    next: 'Choose points of this assembly.',
  }),
  'joint-point-other': (facts) => ({
    what: `${facts.point ?? 'A point'} at ${facts.item ?? 'an item'} does not measure what a joint needs there.`,
    next: 'A joint takes a pin (diameter), its bores, and their slack.',
  }),
  'joint-twice': () => ({
    what: 'One slack stands in two joints, or one bore twice in a joint.',
    next: 'Give each joint a slack of its own.',
  }),
  'renewed-twice': () => ({ what: 'The same part is renewed twice in one visit.', next: 'Take one of them out.' }),
  'demo-laid-down-anew': (f) => ({
    what: 'The demo workshop was laid down anew: its data have changed since it was made here.',
    safe:
      f.kept === ''
        ? 'Nobody had entered anything into the old one.'
        : `What was entered into the old one stays, in a file of its own: ${f.kept}.`,
  }),
  'already-there': () => ({ what: 'It sits there already.' }),
  'other-kind': (f) => ({
    what: `Halves go between assemblies of one kind: this is a ${f.kind}, that ${f.other === '' ? 'of no kind' : `a ${f.other}`}.`,
    next: 'Choose an assembly of the same kind.',
  }),
  'half-is-there': (f) => ({
    what: `${f.assembly} has a ${f.group} already.`,
    next: 'Say whether that one comes here in exchange or goes to the shelf.',
  }),
  'already-closed': (f) => ({ what: `This finding was closed on ${f.closedOn}.` }),
  'already-put-right': () => ({
    what: 'This one was put right already.',
    next: 'Put the newer one right instead.',
  }),
  'not-questioned': () => ({ what: 'Nobody asked about this size.' }),
};
