import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { RECORD_EXTENSION } from '#core/record/openRecord.ts';
import { defaultRecordPath } from '#core/shells/dataFolder.ts';

export type StartArguments = {
  /** whole path */
  recordPath: string;
  /** ISO day taken as today */
  asOf?: string;
  /** print the address and open nothing */
  noOpen: boolean;
  /** open in a browser even where Electron's program is present */
  inBrowser: boolean;
  /** try again to fetch Electron's program after it could not be fetched once */
  fetchElectron: boolean;
};

/**
 * What a start was asked for. Words that are neither an option of ours nor a record are passed over: the platform adds
 * some of its own when a file is opened by double-click.
 * @param standingIn folder that relative paths are taken from
 */
export function startArguments(args: readonly string[], standingIn: string): StartArguments {
  const { values, positionals } = parseArgs({
    args: [...args],
    strict: false,
    allowPositionals: true,
    options: {
      record: { type: 'string' },
      'as-of': { type: 'string' },
      'no-open': { type: 'boolean' },
      'in-browser': { type: 'boolean' },
      'fetch-electron': { type: 'boolean' },
    },
  });
  const named = values.record ?? positionals.find((word) => word.endsWith(RECORD_EXTENSION));
  const asOf = values['as-of'];
  return {
    recordPath: typeof named === 'string' ? resolve(standingIn, named) : defaultRecordPath(),
    ...(typeof asOf === 'string' && { asOf }),
    noOpen: values['no-open'] === true,
    inBrowser: values['in-browser'] === true,
    fetchElectron: values['fetch-electron'] === true,
  };
}
