import type { ReplyOf } from '../contract/operation.ts';
import type { recallRead } from '../contract/recall.ts';
import { shared } from '../words/english.ts';
import { dayText, hoursText, NO_BREAK_SPACE, whenText } from '../words/quantityText.ts';
import { reasonText } from '../words/recallWords.ts';
import type { ShopOnPaper } from './paperHead.ts';
import { printListPaper } from './rebuild/listPaper.ts';
import { sentences, tableSection } from './rebuild/table.ts';
import { findingText, severityWords } from './slipNames.ts';

type List = ReplyOf<typeof recallRead>;
type Farm = List['toContact'][number];
type Machine = Farm['machines'][number];

const words = {
  title: 'Recall list',
  head: 'To contact, in this order',
  none: 'Nobody is to be contacted.',
  waiting: 'Sent, no answer yet',
  before: 'Before ringing',
  cautions: [
    'What must not be used comes first, and is not to be worked with till it is made good.',
    'A forecast is a planning aid, not a certificate. The maker’s instructions and the law where you work come first.',
  ],
} as const;

/** The list as it goes to the telephone: a box in each line for what was answered. */
export const printRecallList = (list: List, shop: ShopOnPaper): Promise<Uint8Array> =>
  printListPaper({
    title: words.title,
    shop,
    printedOn: list.asOf,
    sections: [
      tableSection(
        words.head,
        COLUMNS,
        list.toContact.flatMap((farm) => linesOf(farm, list.asOf)),
        words.none,
      ),
      ...(list.waiting.length === 0
        ? []
        : [
            tableSection(
              words.waiting,
              COLUMNS,
              list.waiting.flatMap((farm) => linesOf(farm, list.asOf)),
            ),
          ]),
      sentences(words.before, words.cautions),
    ],
    cells: [
      [shared.asOf, list.asOf, 1.2],
      [shared.planningAid, shared.notACertificate, 1.6],
      ['Winter', list.winter, 0.8],
      ['Called in before', `${list.leadDays} days`, 1.6],
    ],
  });

const COLUMNS = [
  { head: 'Farm', share: 20 },
  { head: 'Machine', share: 18 },
  { head: 'Why now', share: 35 },
  { head: 'In by', share: 12, align: 'right' },
  { head: 'Last contact', share: 12 },
  { head: 'Answer', share: 12, box: true },
] as const;

function linesOf({ farm, machines }: Farm, asOf: List['asOf']): string[][] {
  const { distanceKm } = farm.terms;
  const km = distanceKm === null ? '' : `${Math.round(distanceKm)} km`;
  const who = [farm.name, [farm.place, km].filter(Boolean).join(', '), unbroken(farm.phone)].filter(Boolean).join('\n');
  return machines.map((machine, i) => [
    i === 0 ? who : '',
    [machine.name, machine.serial].filter(Boolean).join('\n'),
    whyText(machine),
    comeInText(machine, asOf),
    machine.lastContact === null ? '' : dayText(machine.lastContact.madeOn),
    '',
  ]);
}

/** A telephone number stands on one line. */
const unbroken = (phone: string): string => phone.replaceAll(' ', NO_BREAK_SPACE);

const whyText = ({ safetyFindings, reasons }: Machine): string =>
  [
    ...safetyFindings.map(({ severity, position, kind, note }) => {
      const grave = severity === 'do-not-use' ? shared.doNotUse : severityWords[severity];
      return `${grave}: ${[position, findingText({ finding: kind, note })].filter(Boolean).join(', ')}`;
    }),
    ...reasons.filter(({ code }) => code !== 'safety').map(reasonText),
  ].join('\n');

function comeInText({ comeInBy }: Machine, asOf: List['asOf']): string {
  if (comeInBy === null) return '';
  const { dialHours, hoursAre, decidingHoursLeft, about } = comeInBy;
  const hours = hoursText(Math.round(dialHours / 10) * 10);
  const when = decidingHoursLeft < 0 ? shared.passed : whenText(about, asOf);
  return [hours, hoursAre === 'machine' ? 'since new' : 'on the dial', when].join('\n');
}
