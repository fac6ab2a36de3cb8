/**
 * Width of a line of text, near enough to keep labels from touching.
 *
 * Advances in thousandths of the type size of Sofia Sans Semi Condensed, weight 680, tabular figures, characters 32 to 126:
 * measured in Chromium from the bundled font at 1000 px. Weight 500 runs up to 4 % narrower, so the answer errs wide.
 * Other characters are taken as wide as a figure.
 */
const ADVANCES = [
  196, 247, 365, 580, 599, 897, 638, 196, 266, 265, 398, 572, 255, 461, 253, 375, 603, 603, 603, 603, 603, 603, 603,
  603, 603, 603, 248, 258, 572, 572, 572, 466, 937, 559, 561, 612, 617, 516, 494, 628, 635, 253, 261, 584, 465, 748,
  636, 620, 533, 620, 583, 542, 520, 620, 577, 831, 549, 536, 528, 266, 374, 266, 497, 507, 233, 481, 515, 500, 519,
  504, 363, 495, 532, 233, 233, 492, 233, 799, 532, 516, 515, 519, 352, 449, 380, 520, 489, 706, 481, 486, 451, 277,
  249, 277, 572,
];
const FIGURE_ADVANCE = 603;
const GAP_ADVANCE = 200;
const GAPS = '\u2009\u00A0\u202F';

/** @returns width [px] of `text` set at `sizePx` */
export function textWidth(text: string, sizePx: number): number {
  let thousandths = 0;
  for (const character of text) {
    const advance = ADVANCES[(character.codePointAt(0) ?? 0) - 32];
    thousandths += GAPS.includes(character) ? GAP_ADVANCE : (advance ?? FIGURE_ADVANCE);
  }
  return (thousandths * sizePx) / 1000;
}

/**
 * A name cut in its middle until it fits, since positions differ at their ends ("..., left", "..., right").
 *
 * @returns the whole text where it fits
 */
export function shortenMiddle(text: string, roomPx: number, sizePx: number): string {
  if (textWidth(text, sizePx) <= roomPx) return text;
  const characters = [...text];
  for (let kept = characters.length - 1; kept > 2; kept--) {
    const head = Math.ceil(kept * 0.62);
    const short = `${characters.slice(0, head).join('').trimEnd()} ... ${characters
      .slice(characters.length - (kept - head))
      .join('')
      .trimStart()}`;
    if (textWidth(short, sizePx) <= roomPx) return short;
  }
  return characters.slice(0, 3).join('');
}

/**
 * A text cut at the end of a word until it fits so many lines, and three dots behind it: a paper's own way to cut draws the
 * last line together until its words touch.
 *
 * @returns the whole text where it fits
 */
export function cutToLines(text: string, roomPx: number, sizePx: number, lines: number): string {
  const words = text.split(' ');
  let [line, width] = [1, 0];
  for (const [place, word] of words.entries()) {
    const isLast = place === words.length - 1;
    const wide = textWidth(width === 0 ? word : ` ${word}`, sizePx);
    const dots = line === lines && !isLast ? textWidth(' ...', sizePx) : 0;
    if (width > 0 && width + wide + dots > roomPx) {
      if (line === lines) return `${words.slice(0, place).join(' ')} ...`;
      line++;
      width = textWidth(word, sizePx);
    } else width += wide;
  }
  return text;
}

/** Width of a whole number of hours with its thousands gaps and minus [px]. */
export function hoursFigureWidth(hours: number, sizePx: number): number {
  const digits = String(Math.abs(Math.round(hours)));
  const gaps = Math.floor((digits.length - 1) / 3);
  const minus = hours < 0 ? FIGURE_ADVANCE : 0;
  return ((digits.length * FIGURE_ADVANCE + gaps * GAP_ADVANCE + minus) * sizePx) / 1000;
}
