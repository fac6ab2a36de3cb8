import type { customerExport } from '../contract/customer.ts';
import type { Handler } from '../contract/operation.ts';
import { zSlip } from '../contract/slip.ts';
import { csvFile, type WrittenCell } from '../exchange/writeCsv.ts';
import { zipOf } from '../exchange/zipFiles.ts';
import { assembliesOnMachine } from '../record/assemblyStore.ts';
import { listContacts, listQuietPeriods, listTerms } from '../record/contactStore.ts';
import { customersKnown, detailsEverOf, type OwnedStretch, ownedStretches } from '../record/customerStore.ts';
import { dialRowsOf } from '../record/dialStore.ts';
import { namedBy, namingTexts, rowsOfPerson, SAID_TABLES } from '../record/eraseCustomer.ts';
import { declinesOf, findingsOf } from '../record/findingStore.ts';
import { machineNames } from '../record/machineStore.ts';
import { blankedOf } from '../record/namedPerson.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import { slipsOfCustomers } from '../record/slipStore.ts';
import { type Context, recordOf } from './context.ts';
import { aboutCustomer } from './customerExportAbout.ts';
import { customerOrRefuse } from './customerOrRefuse.ts';
import { pdfBase64 } from './slipPreview.ts';

/**
 * Everything on record about a person, readable without this program: their rows, machines in the time they were theirs,
 * what was said and found then, slips as printed, and every text that names them. Other customers are left out of it.
 */
export const customerExportHandler: Handler<typeof customerExport, Context> = async (context, { customerId }) => {
  const record = recordOf(context);
  const { name } = customerOrRefuse(record, customerId);
  const ids = rowsOfPerson(record, customerId);
  const tables = tablesAbout(record, ids);
  const slips = slipsOfCustomers(record, ids);
  const pages = [];
  for (const { number, slip } of slips) {
    const pdf = await pdfBase64(zSlip.parse(slip));
    pages.push({ name: `slips/${number}.pdf`, bytes: new Uint8Array(Buffer.from(pdf, 'base64')) });
  }
  const about = aboutCustomer(name, context.today(), tables, slips.length);
  const files = [
    { name: 'about.txt', bytes: new TextEncoder().encode(about) },
    ...tables.map(({ file, heads, rows }) => csvFile(file, heads, rows)),
    ...pages,
  ];
  return {
    fileName: `customer-${customerId}-${context.today()}.zip`,
    zipBase64: Buffer.from(zipOf(files)).toString('base64'),
    files: files.map((file) => file.name),
  };
};

export type AboutTable = { file: string; what: string; heads: string[]; rows: WrittenCell[][] };

function tablesAbout(record: ReadableRecord, ids: readonly number[]): AboutTable[] {
  const ever = detailsEverOf(record, ids);
  const names = machineNames(record);
  const machine = (machineId: number) => names.get(machineId) ?? '';
  const hideOthers = othersHidden(record, ids);
  const texts = namingTexts(record, ids, namedBy(record, ids, []));
  return [
    {
      file: 'customer.csv',
      what: 'names, addresses and telephones, as they were entered and changed',
      heads: ['name', 'place', 'address', 'phone', 'email', 'changed_at', 'changed_by'],
      rows: ever.map((row) => [row.name, row.place, row.address, row.phone, row.email, row.madeAt, row.madeBy]),
    },
    ...tablesOfMachines(record, ids, hideOthers),
    {
      file: 'contacts.csv',
      what: 'what was sent to you or said with you, and what you answered',
      heads: ['machine', 'date', 'way', 'with', 'note', 'answer', 'answer_day', 'call_back'],
      rows: listContacts(record)
        .filter(({ customerId, struck }) => ids.includes(customerId) && !struck)
        .map((row) => [
          ...[row.machineId === null ? '' : machine(row.machineId), row.madeOn, row.way, hideOthers(row.saidBy)],
          ...[hideOthers(row.note), row.answer, row.answerOn, row.callBackOn],
        ]),
    },
    {
      file: 'wishes.csv',
      what: 'what you asked for in being reached, and how far away you are',
      heads: ['wish', 'from', 'until', 'words', 'km', 'minutes'],
      rows: [
        ...listTerms(record)
          .filter(({ customerId }) => ids.includes(customerId))
          .map((row) => [
            ...[row.noContact ? 'not to be contacted' : 'may be contacted', row.saidOn, row.seasonTo],
            ...[hideOthers(row.words), row.distanceKm, row.driveMinutes],
          ]),
        ...listQuietPeriods(record)
          .filter(({ customerId }) => ids.includes(customerId))
          .map((row) => ['quiet period', row.fromOn, row.toOn, hideOthers(row.why), null, null]),
      ],
    },
    {
      file: 'texts.csv',
      what: 'every further text of the record that names this customer',
      heads: ['table', 'column', 'text'],
      rows: texts
        .filter(({ table, column }) => column !== 'slip' && !SAID_TABLES.includes(table))
        .map(({ table, column, before }) => [table, column, hideOthers(before)]),
    },
  ];
}

/** What became of the machines in the time they were this customer's. */
function tablesOfMachines(
  record: ReadableRecord,
  ids: readonly number[],
  hideOthers: ReturnType<typeof othersHidden>,
): AboutTable[] {
  const stretches = ownedStretches(record).filter(({ customerId }) => ids.includes(customerId));
  const names = machineNames(record);
  const machine = (machineId: number) => names.get(machineId) ?? '';
  const readings = stretches.flatMap((stretch) =>
    dialRowsOf(record, stretch.machineId)
      .filter(({ takenOn, undone, struck }) => !undone && !struck && isWithin(stretch, takenOn))
      .map((row) => [machine(stretch.machineId), row.takenOn, row.kind, row.dialHours, hideOthers(row.saidBy)]),
  );
  const found = stretches.flatMap((stretch) => {
    const assemblies = new Set(assembliesOnMachine(record, stretch.machineId).map(({ id }) => id));
    return findingsOf(record)
      .filter(({ assemblyId, takenOn }) => assemblies.has(assemblyId) && isWithin(stretch, takenOn))
      .map((finding) => ({ stretch, finding }));
  });
  const declines = declinesOf(record);
  return [
    {
      file: 'machines.csv',
      what: 'machines, in the time they were this customer’s',
      heads: ['machine', 'from', 'until'],
      rows: stretches.map(({ machineId, fromOn, untilOn }) => [machine(machineId), fromOn, untilOn]),
    },
    {
      file: 'hours.csv',
      what: 'meter readings of that time, and who gave them',
      heads: ['machine', 'date', 'kind', 'dial_hours', 'said_by'],
      rows: readings,
    },
    {
      file: 'findings.csv',
      what: 'what was found on the machines in that time, and what became of it',
      heads: ['machine', 'date', 'finding', 'severity', 'note', 'closed', 'outcome'],
      rows: found.map(({ stretch, finding }) => [
        ...[machine(stretch.machineId), finding.takenOn, finding.kind, finding.severity, hideOthers(finding.note)],
        ...[finding.closedOn, hideOthers(finding.outcome ?? '')],
      ]),
    },
    {
      file: 'refusals.csv',
      what: 'repairs refused in that time',
      heads: ['machine', 'said_on', 'said_by', 'words'],
      rows: found.flatMap(({ stretch, finding }) =>
        declines
          .filter(({ findingId, saidOn, struck }) => findingId === finding.id && !struck && isWithin(stretch, saidOn))
          .map((said) => [machine(stretch.machineId), said.saidOn, hideOthers(said.saidBy), hideOthers(said.words)]),
      ),
    },
  ];
}

const isWithin = ({ fromOn, untilOn }: OwnedStretch, on: string): boolean =>
  (fromOn === null || fromOn <= on) && (untilOn === null || on < untilOn);

/** Nobody is told of another customer. */
function othersHidden(record: ReadableRecord, ids: readonly number[]): (text: string) => string {
  const others = [...customersKnown(record).own.keys()].filter((id) => !ids.includes(id));
  const own = new Set(namedBy(record, ids, []).names.map((name) => name.toLowerCase()));
  const by = namedBy(record, others, []);
  const blanked = blankedOf({ ...by, names: by.names.filter((name) => !own.has(name.toLowerCase())) });
  return (text) => blanked(text).replaceAll('[erased]', '[another customer]');
}
