/** Ends of a carrier where strips bear on it. */
export const SLIDE_ENDS = ['front', 'rear'] as const;
export type SlideEnd = (typeof SLIDE_ENDS)[number];

/** Where a strip sits: over or under the carrier, at its front or rear end. */
export const STRIP_PLACES = ['top-front', 'top-rear', 'bottom-front', 'bottom-rear'] as const;
export type StripPlace = (typeof STRIP_PLACES)[number];

export const endOf = (place: StripPlace): SlideEnd => (place.endsWith('front') ? 'front' : 'rear');

/** Thickness of a strip along its length; where nobody measured: null [mm]. */
export type StripThickness = { front: number | null; middle: number | null; rear: number | null };

export type SlideStrip = {
  newMm: number;
  thicknessMm: StripThickness;
};

/** A carrier in its frame, and the hook behind it. Lengths along the carrier in the position it works in. */
export type Slide = {
  strips: Readonly<Record<StripPlace, SlideStrip>>;
  /** wear of the channel or carrier faces under the strips, top and bottom together [mm] */
  channelWornMm: Readonly<Record<SlideEnd, number>>;
  /** play the shop sets on assembly, top and bottom together [mm] */
  newPlayMm: number;
  /** between the outer ends of the front and rear strips, where a tilted carrier bears [mm] */
  spanMm: number;
  /** from the rear one to the hook [mm] */
  overhangMm: number;
};

/** Play at both ends of the carrier, and what it comes to at the hook [mm]. */
export type SlidePlay = { frontMm: number; rearMm: number; hookMm: number };

/**
 * Wear of a strip where a tilted carrier bears on it: at the strip's outer end, the front end of a front strip and the rear end of a
 * rear one. End zones wear more than the middle. Not measured there: the thinnest place that was.
 *
 * @returns [mm], 0 or more; null: never measured
 * @source own derivation; common practice: the worst end decides
 * @example bearingWearMm('top-front', { newMm: 12, thicknessMm: { front: 9.5, middle: 11, rear: 10.5 } }) // 2.5
 */
export function bearingWearMm(place: StripPlace, { newMm, thicknessMm }: SlideStrip): number | null {
  const read = Object.values(thicknessMm).filter((mm) => mm !== null);
  if (read.length === 0) return null;
  const bearing = thicknessMm[endOf(place)] ?? Math.min(...read);
  return Math.max(0, newMm - bearing);
}

/**
 * How far the hook moves up and down for play at the carrier's two ends. The carrier is a lever: its rear end rises by up to its
 * play, its front end by up to its own, and the hook hangs behind.
 *   hook = rear (1 + overhang / span) + front overhang / span
 *
 * @returns whole travel between its lowest and highest [mm]
 * @source own derivation: a straight line through both ends, each at its own end of travel
 * @checked core/repair/slides/slides.test.ts
 * @example hookPlayMm({ frontMm: 4, rearMm: 0 }, { spanMm: 500, overhangMm: 400 }) // 3.2
 */
export function hookPlayMm(
  play: { frontMm: number; rearMm: number },
  { spanMm, overhangMm }: { spanMm: number; overhangMm: number },
): number {
  const lever = overhangMm / spanMm;
  return play.rearMm * (1 + lever) + play.frontMm * lever;
}

/** Gap that each place adds to the play at its end [mm]: a strip's wear where it bears; not measured counts as none. */
export type GapAt = Readonly<Record<StripPlace, number>>;

export const gapsOf = (slide: Slide): GapAt =>
  Object.fromEntries(STRIP_PLACES.map((place) => [place, bearingWearMm(place, slide.strips[place]) ?? 0])) as GapAt;

/**
 * Play at the carrier's front and rear.
 *   play = as set on assembly + wear of the strips above and below + wear of the channel
 *
 * @source own derivation: heights add up
 * @checked core/repair/slides/slides.test.ts
 */
export function playOf(slide: Slide, gaps: GapAt): SlidePlay {
  const at = (end: SlideEnd) =>
    slide.newPlayMm +
    slide.channelWornMm[end] +
    STRIP_PLACES.filter((place) => endOf(place) === end).reduce((sum, place) => sum + gaps[place], 0);
  const play = { frontMm: at('front'), rearMm: at('rear') };
  return { ...play, hookMm: hookPlayMm(play, slide) };
}
