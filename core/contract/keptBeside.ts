import { z } from 'zod';

/**
 * What this computer keeps beside the record, in the program's own folder. Read with tolerance: it is a convenience, and a
 * file that cannot be read counts as one that is not there.
 */

/** Where else backups go, and the identity of the record that lay at each path: so its backups are found when it cannot be opened. */
export const zBackupChoices = z.object({
  folder: z.string().nullable().catch(null),
  identities: z.record(z.string(), z.string()).catch({}),
});
export type BackupChoices = z.infer<typeof zBackupChoices>;

/** What a person has said of folders: true, another program copies the folder elsewhere; false, none does. */
export const zConfirmedPlaces = z.record(z.string(), z.boolean());
