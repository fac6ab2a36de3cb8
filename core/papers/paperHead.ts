import type { ReactElement } from 'react';
import { INK, text, view } from './elements.ts';
import { WEIGHT } from './paperFonts.ts';

export type ShopOnPaper = { name: string; headLines: readonly string[]; phone: string; email: string };

/** The shop's head, and which paper this is. */
export const paperHead = (shop: ShopOnPaper, paper: readonly [what: string, when: string]): ReactElement =>
  view(
    {
      flexDirection: 'row',
      justifyContent: 'space-between',
      alignItems: 'flex-end',
      borderBottomWidth: 1.5,
      borderBottomColor: INK,
      paddingBottom: 6,
    },
    view(
      { flexGrow: 1, flexBasis: 0, paddingRight: 20 },
      text({ sizePt: 15, weight: WEIGHT.head, lines: 1 }, {}, shop.name),
      text({ face: 'table', sizePt: 11.5, lines: 2 }, {}, shopLine(shop)),
    ),
    view({ alignItems: 'flex-end' }, ...paper.map((words) => text({ face: 'table', sizePt: 11.5 }, {}, words))),
  );

const shopLine = ({ headLines, phone, email }: ShopOnPaper): string =>
  [...headLines, phone, email].filter((words) => words !== '').join(', ');
