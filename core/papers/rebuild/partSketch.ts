import type { ReactElement } from 'react';
import type { Rebuild } from '../../contract/rebuild.ts';
import { decimalFigure, type Writing } from '../../words/quantityText.ts';
import { label, line, path, picture, rect } from '../elements.ts';
import { hatchLines } from './hatchLines.ts';

type Make = Rebuild['lines'][number]['makes'][number];

const SIZE = { width: 300, height: 96, widthPt: 270 } as const;
const BODY = { x: 30, y: 16, width: 130, height: 44 } as const;
const THIN = { width: 0.6 } as const;
const THICK = { width: 1.4 } as const;
const CHAIN = { width: 0.6, dash: '8 2 2 2' } as const;

/**
 * A part to make, drawn as on a workshop drawing: pins from the side, bushes and bosses in half section, strips from the
 * edge; outlines thick, centre lines thin chains, dimensions with slim arrows. Not to scale: the figures say the size.
 * @source ISO 128-2 (line kinds), ISO 129-1 (dimensions): from memory
 */
export function partSketch(make: Make, writing: Writing): ReactElement {
  const { x, y, width, height } = BODY;
  const middle = y + height / 2;
  const isHollow = make.insideMm !== null && make.outsideMm !== null && make.outsideMm > 0;
  const holePx = isHollow ? Math.min(0.86, (make.insideMm ?? 0) / (make.outsideMm ?? 1)) * height : 0;
  const round = make.kind !== 'strip' && make.kind !== 'other';
  const figure = (sizeMm: number | null, sign: string) =>
    sizeMm === null ? '' : `${sign}${decimalFigure(sizeMm, 2, writing)}`;
  return picture(
    SIZE,
    rect(x, y, width, height, null, THICK),
    ...(isHollow
      ? [
          line(x, middle - holePx / 2, x + width, middle - holePx / 2, THICK),
          path(hatchLines(x, y, width, (height - holePx) / 2, 5), THIN),
          line(x, middle, x + width, middle, THICK),
        ]
      : []),
    ...(round ? [line(x - 10, middle, x + width + 10, middle, CHAIN)] : []),
    ...across(x, x + width, y + height + 18, figure(make.lengthMm, '')),
    ...(make.outsideMm === null
      ? []
      : upright(y, y + height, x + width + 26, figure(make.outsideMm, round ? 'Ø' : ''))),
    ...(isHollow ? upright(middle - holePx / 2, middle + holePx / 2, x + width + 64, figure(make.insideMm, 'Ø')) : []),
    ...(make.widthMm === null ? [] : [label(x, 10, `× ${figure(make.widthMm, '')}`, { sizePx: 10.5 })]),
  );
}

function across(x1: number, x2: number, y: number, words: string): ReactElement[] {
  if (words === '') return [];
  return [
    line(x1, y - 14, x1, y + 3, THIN),
    line(x2, y - 14, x2, y + 3, THIN),
    line(x1, y, x2, y, THIN),
    path(`M${x1} ${y}l7 -1.4v2.8ZM${x2} ${y}l-7 -1.4v2.8Z`, null, '#000000'),
    label((x1 + x2) / 2, y - 3, words, { sizePx: 11, anchor: 'middle' }),
  ];
}

function upright(y1: number, y2: number, x: number, words: string): ReactElement[] {
  return [
    line(x - 22, y1, x + 3, y1, THIN),
    line(x - 22, y2, x + 3, y2, THIN),
    line(x, y1, x, y2, THIN),
    path(`M${x} ${y1}l-1.4 7h2.8ZM${x} ${y2}l-1.4 -7h2.8Z`, null, '#000000'),
    label(x + 3, (y1 + y2) / 2 + 4, words, { sizePx: 11 }),
  ];
}
