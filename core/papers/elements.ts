import { Circle, G, Line, Path, Rect, Svg, Text, View } from '@react-pdf/renderer';
import { type ComponentProps, createElement, type ReactElement, type ReactNode } from 'react';
import { THIN_GAP } from '../words/quantityText.ts';
import { sentenceFont, tableFont, WEIGHT } from './paperFonts.ts';

/**
 * What papers are drawn with. Plain calls instead of markup: Node runs this file as it stands, and it strips types only.
 * Lengths of the page are points; inside a picture they are the units of the geometry (px), scaled as a whole.
 */
type Style = Exclude<NonNullable<ComponentProps<typeof View>['style']>, readonly unknown[]>;
/** its types know neither a stack of faces nor figure features, which it sets all the same */
type TextProps = ComponentProps<typeof Text>;

export const INK = '#000000';
export const PAPER = '#ffffff';
/** the one tint of a paper: winters, always with edges so that it survives a fax */
export const WINTER_GREY = '#e2e2e2';
export const HAIR = '#b5b5b5';

/** A4, ISO 216: 210 mm x 297 mm. */
export const A4_WIDTH_PT = 595.28;
export const A4_HEIGHT_PT = 841.89;
/** Page margin, 14 mm. */
export const MARGIN_PT = (14 / 25.4) * 72;

/** No word is ever broken: a hyphen in a name or a figure would be read as its own. */
const NEVER = 10_000;

/** The faces have no thin gap; their no-break space is as thin as one. A straight apostrophe is set as a raised comma. */
const printable = (text: string): string => text.replaceAll(THIN_GAP, '\u00A0').replaceAll("'", '\u2019');

const figures = ['tnum', 'lnum'] as const;

export const view = (style: Style, ...children: ReactNode[]): ReactElement =>
  createElement(View, { style }, ...children);

/** Stands at its place on the page whatever flows past it. */
export const fixedView = (style: Style, ...children: ReactNode[]): ReactElement =>
  createElement(View, { style: { position: 'absolute', ...style }, fixed: true }, ...children);

/** Stands again at the top of what is carried over to a next page: heads of a long table. */
export const carriedOver = (style: Style, ...children: ReactNode[]): ReactElement =>
  createElement(View, { style, fixed: true }, ...children);

/** Begins no page's last lines: so much of what follows goes with it [pt]. */
export const notAlone = (aheadPt: number, style: Style, ...children: ReactNode[]): ReactElement =>
  createElement(View, { style, minPresenceAhead: aheadPt, wrap: false }, ...children);

/** A view that is never split over two pages. */
export const block = (style: Style, ...children: ReactNode[]): ReactElement =>
  createElement(View, { style, wrap: false }, ...children);

type Face = 'sentence' | 'table';
type TextKind = { face?: Face; sizePt: number; weight?: number; lines?: number };

const faceOf = (face: Face | undefined): string[] => (face === 'table' ? tableFont : sentenceFont);

export function text(kind: TextKind, style: Record<string, unknown>, ...content: ReactNode[]): ReactElement {
  const full = {
    fontFamily: faceOf(kind.face),
    fontSize: kind.sizePt,
    fontWeight: kind.weight ?? WEIGHT.text,
    fontFeatureSettings: figures,
    lineHeight: 1.28,
    ...(kind.lines && { maxLines: kind.lines, textOverflow: 'ellipsis' }),
    ...style,
  };
  return createElement(
    Text,
    { style: full, hyphenationPenalty: NEVER } as unknown as TextProps,
    ...content.map(asPrinted),
  );
}

const asPrinted = (content: ReactNode): ReactNode => (typeof content === 'string' ? printable(content) : content);

/** A heavier stretch inside a text. */
export const strong = (content: string): ReactElement =>
  createElement(Text, { style: { fontWeight: WEIGHT.head } }, printable(content));

/** A picture of `width` x `height` px, `widthPt` wide on the paper. */
export const picture = (
  size: { width: number; height: number; widthPt: number },
  ...shapes: ReactNode[]
): ReactElement =>
  createElement(
    Svg,
    {
      viewBox: `0 0 ${size.width} ${size.height}`,
      style: { width: size.widthPt, height: (size.widthPt * size.height) / size.width },
    },
    ...shapes,
  );

export const group = (x: number, y: number, ...shapes: ReactNode[]): ReactElement =>
  createElement(G, { transform: `translate(${x}, ${y})` }, ...shapes);

export type Stroke = { width: number; colour?: string; dash?: string };

const stroked = ({ width, colour, dash }: Stroke) => ({
  stroke: colour ?? INK,
  strokeWidth: width,
  ...(dash && { strokeDasharray: dash }),
});

export const line = (x1: number, y1: number, x2: number, y2: number, stroke: Stroke): ReactElement =>
  createElement(Line, { x1, y1, x2, y2, ...stroked(stroke) });

export const path = (d: string, stroke: Stroke | null, fill: string | null = null): ReactElement =>
  createElement(Path, { d, fill: fill ?? 'none', ...(stroke && stroked(stroke)) });

export const rect = (
  x: number,
  y: number,
  width: number,
  height: number,
  fill: string | null,
  stroke?: Stroke,
): ReactElement => createElement(Rect, { x, y, width, height, fill: fill ?? 'none', ...(stroke && stroked(stroke)) });

export const circle = (cx: number, cy: number, r: number, fill: string | null, stroke: Stroke): ReactElement =>
  createElement(Circle, { cx, cy, r, fill: fill ?? 'none', ...stroked(stroke) });

export function label(
  x: number,
  y: number,
  content: string,
  its: { sizePx: number; weight?: number; anchor?: 'start' | 'middle' | 'end'; colour?: string },
): ReactElement {
  const style = {
    fontFamily: tableFont,
    fontSize: its.sizePx,
    fontWeight: its.weight ?? WEIGHT.text,
    fontFeatureSettings: figures,
  };
  return createElement(
    Text,
    { x, y, style, fill: its.colour ?? INK, textAnchor: its.anchor ?? 'start' } as unknown as TextProps,
    printable(content),
  );
}
