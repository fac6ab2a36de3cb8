import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { zForecastRow, zWhy } from '../contract/forecast.ts';
import type { ImportAccount } from '../contract/record.ts';
import { flatCsv } from '../exchange/flatCsv.ts';
import { RefusedError } from '../outcome.ts';
import { systemClock } from '../record/clock.ts';
import { type Day, isDay } from '../units/day.ts';
import { bringIn } from '../use-cases/bring-in/bringIn.ts';
import { lifeOf, openContext, recordOf } from '../use-cases/context.ts';
import { forecastRows } from '../use-cases/forecastAll.ts';
import { whyForecast } from '../use-cases/forecastWhy.ts';
import { layDownShop } from '../use-cases/newShop.ts';
import { pointByName } from '../use-cases/pointByName.ts';
import { shopNowOf } from '../use-cases/shopNow.ts';
import { forecastTable } from './forecastTable.ts';
import { endQuietlyWithReader } from './quietEnd.ts';
import { remarkLines } from './remarkLines.ts';
import { whyLines } from './whyLines.ts';

const USAGE = `Forecast every measuring point of a shop.

  npm run --silent forecast -- --import FOLDER [--as-of YYYY-MM-DD] [--json | --csv]
  npm run --silent forecast -- --record FILE   [--as-of YYYY-MM-DD] [--as-known TIME] [--json | --csv]
  npm run --silent forecast -- --import FOLDER --explain MACHINE/ASSEMBLY/POSITION/POINT [--as-of YYYY-MM-DD] [--json]

  --import FOLDER   a folder of CSV files, brought into a throwaway record
  --record FILE     a record of the program
  --as-of DAY       rows dated later are left out; today when not given
  --as-known TIME   only what had been entered by then, what was put right or taken back since as it stood then: a past
                    forecast again. A day (its end) or a moment, 2026-10-12T14:30, by this computer's clock; with a Z at
                    its end by world time. Of a record only: a folder says nothing of when it was entered
  --explain NAME    why one point's forecast says what it says, step by step, and what makes its range wide; works with
                    --record too. Case and accents do not matter
  --json, --csv     instead of a table
`;

/** All that forecasts rest on. */
type Life = ReturnType<typeof lifeOf>;

/** A mistake of the asker's: told in a few lines, and the program ends with 1. */
class AskedWrong extends Error {}

type Asked = {
  importFolder: string | null;
  recordFile: string | null;
  asOf: Day;
  /** ISO instant; null: as known now */
  knownAt: string | null;
  as: 'table' | 'json' | 'csv';
  /** name of the point to be explained; null: all are listed */
  explain: string | null;
};

/** Where the user stood when npm was started. */
const fromWhereTheUserStood = (path: string): string => resolve(process.env.INIT_CWD ?? process.cwd(), path);

function askedFor(args: readonly string[]): Asked {
  const { values } = parseOrRefuse(args);
  if ((values.import === undefined) === (values.record === undefined)) {
    throw new AskedWrong(`Give either --import FOLDER or --record FILE.\n\n${USAGE}`);
  }
  if (values.json && values.csv) throw new AskedWrong('Give --json or --csv, not both.');
  if (values.explain !== undefined && values.csv)
    throw new AskedWrong('An explanation is told in words or with --json.');
  const asOf = values['as-of'] ?? systemClock.today();
  if (!isDay(asOf)) throw new AskedWrong(`--as-of ${asOf}: a day that exists, like 2026-10-12, was expected.`);
  if (values['as-known'] !== undefined && values.import !== undefined)
    throw new AskedWrong('--as-known goes with --record: a folder says nothing of when it was entered.');
  return {
    importFolder: values.import === undefined ? null : fromWhereTheUserStood(values.import),
    recordFile: values.record === undefined ? null : fromWhereTheUserStood(values.record),
    asOf,
    knownAt: values['as-known'] === undefined ? null : instantOf(values['as-known']),
    as: values.json ? 'json' : values.csv ? 'csv' : 'table',
    explain: values.explain ?? null,
  };
}

function parseOrRefuse(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      options: {
        import: { type: 'string' },
        record: { type: 'string' },
        'as-of': { type: 'string' },
        'as-known': { type: 'string' },
        explain: { type: 'string' },
        json: { type: 'boolean' },
        csv: { type: 'boolean' },
        help: { type: 'boolean' },
      },
    });
  } catch (thrown) {
    throw new AskedWrong(`${thrown instanceof Error ? thrown.message : thrown}\n\n${USAGE}`);
  }
}

/** A day to its end, or a moment; by the computer's clock unless it says otherwise. */
function instantOf(text: string): string {
  const atEnd = isDay(text) ? `${text}T23:59:59.999` : text;
  const moment = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}/.test(atEnd) ? Date.parse(atEnd) : Number.NaN;
  if (!Number.isNaN(moment)) return new Date(moment).toISOString();
  throw new AskedWrong(`--as-known ${text}: a day or a moment, like 2026-10-12 or 2026-10-12T14:30, was expected.`);
}

function csvFilesOf(folder: string) {
  try {
    return readdirSync(folder)
      .filter((name) => /\.csv$/i.test(name))
      .sort()
      .map((name) => ({ name, bytes: readFileSync(join(folder, name)) }));
  } catch (thrown) {
    throw new AskedWrong(`${folder} cannot be read: ${thrown instanceof Error ? thrown.message : thrown}`);
  }
}

/** Brings the folder in whole or not at all; what is said of it goes to stderr. */
function lifeOfFolder(folder: string, asOf: Day, say: (line: string) => void): Life {
  const context = openContext({ recordPath: ':memory:', asOf, dataFolder: folder });
  try {
    const record = recordOf(context);
    layDownShop(record, context.now(), { isDemo: false });
    const made = { madeAt: context.now(), madeBy: 'forecast', what: 'record/bringIn' };
    const account = bringIn(record, csvFilesOf(folder), made, { asOf, dryRun: false });
    sayAccount(account, say);
    if (account.faults.length > 0)
      throw new AskedWrong(`${counted(account.faults.length, 'fault')}: nothing was brought in.`);
    return lifeOf(context, { asOf });
  } finally {
    context.close();
  }
}

function sayAccount({ faults, cautions, notes }: ImportAccount, say: (line: string) => void): void {
  for (const line of remarkLines(faults)) say(line);
  if (cautions.length > 0) say(`Kept out of the forecast until answered (${cautions.length}):`);
  for (const line of remarkLines(cautions)) say(`  ${line}`);
  for (const line of remarkLines(notes)) say(`Note: ${line}`);
}

function lifeOfRecord(file: string, asOf: Day, knownAt: string | null): Life {
  const context = openContext({ recordPath: file, asOf, onlyLooks: true });
  try {
    if (!context.record && !context.trouble) throw new AskedWrong(`${file} is not there.`);
    return lifeOf(context, knownAt === null ? { asOf } : { asOf, knownAt });
  } finally {
    context.close();
  }
}

const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;

function printed(life: Life, { as, asOf, explain }: Asked): string {
  if (explain !== null) {
    const why = zWhy.parse(whyForecast(shopNowOf(life, asOf), pointAsked(life, explain)));
    return as === 'json' ? `${JSON.stringify(why, null, 2)}\n` : whyLines(why, asOf);
  }
  const rows = forecastRows(life, asOf);
  if (as === 'json') return `${JSON.stringify(rows, null, 2)}\n`;
  return as === 'csv' ? flatCsv(rows, columnsOf(zForecastRow)) : forecastTable(rows, asOf);
}

function pointAsked(life: Life, name: string): number {
  const by = pointByName(life, name);
  if (by.found) return by.found.pointId;
  const listed = (names: readonly string[]) => names.map((one) => `  ${one}`).join('\n');
  if (by.oneOf) throw new AskedWrong(`${name} may be any of these; give more of the name:\n${listed(by.oneOf)}`);
  if (by.near.length === 0) throw new AskedWrong('There is no measuring point in it.');
  throw new AskedWrong(`There is no ${name}. Most like it:\n${listed(by.near)}`);
}

/** @returns the code the program ends with: 0, or 1 when what was given could not be used */
export function forecastCommand(
  args: readonly string[],
  out: (text: string) => void,
  say: (line: string) => void,
): 0 | 1 {
  if (args.includes('--help')) {
    out(USAGE);
    return 0;
  }
  try {
    const asked = askedFor(args);
    const life = asked.importFolder
      ? lifeOfFolder(asked.importFolder, asked.asOf, say)
      : lifeOfRecord(asked.recordFile ?? '', asked.asOf, asked.knownAt);
    out(printed(life, asked));
    return 0;
  } catch (thrown) {
    if (thrown instanceof AskedWrong) say(thrown.message);
    else if (thrown instanceof RefusedError) say(refusalLine(thrown));
    else throw thrown;
    return 1;
  }
}

type Shaped = { shape?: Record<string, unknown> };

/** Columns of a flattened row, from the shape of it: "hoursLeft_low". */
const columnsOf = ({ shape = {} }: Shaped, under = ''): string[] =>
  Object.entries(shape).flatMap(([name, field]) =>
    (field as Shaped).shape ? columnsOf(field as Shaped, `${under}${name}_`) : [under + name],
  );

function refusalLine({ refusal }: RefusedError): string {
  const facts = Object.entries(refusal.facts ?? {}).map(([name, value]) => `${name} ${value}`);
  return `${refusal.code.replaceAll('-', ' ')}${facts.length > 0 ? `: ${facts.join(', ')}` : ''}`;
}

if (import.meta.main) {
  endQuietlyWithReader();
  process.exitCode = forecastCommand(
    process.argv.slice(2),
    (text) => process.stdout.write(text),
    (line) => process.stderr.write(`${line}\n`),
  );
}
