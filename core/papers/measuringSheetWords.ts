import type { MeasuringSheet } from '../contract/measuringSheet.ts';
import { day } from '../units/day.ts';
import { gaugeErrorFigure, hoursText, lengthFigure, limitFigure, type Writing } from '../words/quantityText.ts';
import { longDay, shortDay } from './slipFigures.ts';
import { findingText, midSentence, severityWords } from './slipNames.ts';

/** The words of the blank measuring sheet. */

export type SheetPoint = MeasuringSheet['assemblies'][number]['points'][number];

const measuresWords: Record<SheetPoint['measures'], string> = {
  thickness: 'thickness',
  diameter: 'diameter',
  bore: 'bore',
  slack: 'slack',
  section: 'section',
  depth: 'depth',
};

export const sheetWords = {
  title: 'Measuring sheet',
  printed: (sheet: MeasuringSheet) => `Printed ${longDay(day(sheet.printedOn))}`,
  date: 'Day, month, year',
  dial: (dialHours: number | null) => (dialHours === null ? 'Hour meter, h' : `Meter, about ${hoursText(dialHours)}`),
  fitter: 'Fitter',
  gauges: (unit: string): string => `Measured with; its error in ${unit === 'in' ? 'inches' : unit}`,
  otherGauge: 'other:',

  point: (unit: string) => `Measuring point, ${unit}`,
  asFound: 'As found',
  last: (sheet: MeasuringSheet) =>
    sheet.lastTakenOn === null
      ? 'not measured before'
      : `small in the box: last size, up to ${shortDay(day(sheet.lastTakenOn))}`,
  asLeft: 'As left',
  renewed: 'renewed',
  seenKinds: ['crack', 'bent', 'broken', 'seized', 'missing'] as const,

  seenHead: 'What was seen: where, how long, how deep',
  item: 'Item',
  where: 'What and where',
  severities: ['watch', 'repair', 'do not use'] as const,
  stillSo: 'still so',
  putRight: 'put right',
  notes: 'Notes: parts made, welds, shims, what to watch',
  empty: 'No measuring points are laid out on this machine yet.',

  doNotUse: 'DO NOT USE',
  cautionHead: 'Before you reach in:',
  caution:
    'hold up what may drop and let the pressure out of rams and hoses. Clean before you measure. ' +
    'A crack, a bend or a break in what tows or lifts: do not use it, and say so. ' +
    "The maker's instructions and the law where you work come first. Limits printed here are the shop's; a planning aid, not a certificate.",

  machine: 'Machine',
  customer: 'Customer',
  printedCell: 'Printed',
  sheet: 'Sheet',
  ofPages: (page: number, pages: number) => `${page} of ${pages}`,
} as const;

/** "Harrod V118, V118-2207, telescopic pick-up hitch": what it is, beside its name. */
export const plateLine = ({ machine, assemblies }: MeasuringSheet): string =>
  [
    machine.name.includes(machine.makeModel) ? '' : machine.makeModel,
    machine.serial === '' ? '' : `serial ${machine.serial}`,
    ...assemblies.map(assemblyName),
  ]
    .filter((part) => part !== '')
    .join(', ');

export const customerLine = ({ customer }: MeasuringSheet): string =>
  [customer.name, customer.place].filter((part) => part !== '').join(', ');

export const assemblyName = ({ name, serial }: MeasuringSheet['assemblies'][number]): string =>
  [midSentence(name), serial].filter((part) => part !== '').join(' ');

/** What is measured there, by the point's own name. */
export const pointName = ({ point, measures }: SheetPoint): string => (point === '' ? measuresWords[measures] : point);

/** "Vernier calliper ±0.10". */
export const gaugeText = ({ gauge, gaugeErrorMm }: SheetPoint, writing: Writing): string =>
  [gauge, gaugeErrorFigure(gaugeErrorMm, writing)].filter((part) => part !== '').join(' ');

/** "new 12.0". */
export const newSizeText = ({ newSizeMm }: SheetPoint, writing: Writing): string =>
  `new ${limitFigure(newSizeMm, writing)}`;

/** "renew 9.5, reject 8.5". */
export const limitsText = ({ renewAtMm, rejectAtMm }: SheetPoint, writing: Writing): string =>
  [
    renewAtMm === null ? '' : `renew ${limitFigure(renewAtMm, writing)}`,
    rejectAtMm === null ? '' : `reject ${limitFigure(rejectAtMm, writing)}`,
    renewAtMm === null && rejectAtMm === null ? 'no limit set' : '',
  ]
    .filter((part) => part !== '')
    .join(', ');

export const lastFigure = (sizeMm: number, point: SheetPoint, writing: Writing): string =>
  lengthFigure(sizeMm, point.decimals, writing);

/** "Pivot boss, left: cracked, 34 mm at the weld toe; repair, 12 Oct 2026". */
export const openFindingText = (finding: MeasuringSheet['openFindings'][number]): string =>
  `${finding.position === null ? '' : `${finding.position}: `}${findingText({ finding: finding.kind, note: finding.note })}; ${severityWords[finding.severity]}, ${shortDay(day(finding.takenOn))}`;
