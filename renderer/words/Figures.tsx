import { Fragment, type ReactNode } from 'react';
import { MINUS, NO_BREAK_SPACE, THIN_GAP } from '#core/words/quantityText.ts';

const FIGURE = new RegExp(`(${MINUS}?\\d+(?:${THIN_GAP}\\d{3})+(?:[.,]\\d+)?(?:${NO_BREAK_SPACE}\\S+)?)`);

/** A sentence with figures in it: a figure with thousands gaps is never broken over two lines. */
export function Figures({ children }: { children: string }): ReactNode {
  return children.split(FIGURE).map((piece, i) =>
    i % 2 === 1 ? (
      <span className="nw" key={i}>
        {piece}
      </span>
    ) : (
      <Fragment key={i}>{piece}</Fragment>
    ),
  );
}
