import { type Outcome, ok, type Refusal, refuse } from '../../outcome.ts';
import { type GapAt, gapsOf, playOf, type Slide, type SlidePlay, STRIP_PLACES, type StripPlace } from './slidePlay.ts';
import { type StripChoice, type StripHeld, type StripOption, stripOptions } from './stripOptions.ts';

/** What is chosen for each strip. */
export type SlideChoice = Readonly<Record<StripPlace, StripChoice>>;

export const LEAVE_ALL: SlideChoice = {
  'top-front': 'leave',
  'top-rear': 'leave',
  'bottom-front': 'leave',
  'bottom-rear': 'leave',
};

/** A slide before and after what was chosen. */
export type SlideAfter = {
  before: SlidePlay;
  after: SlidePlay;
  /** play taken away [mm] */
  givesBack: SlidePlay;
  /** strips nobody measured: their wear counts as none */
  notMeasured: StripPlace[];
  options: Readonly<Record<StripPlace, StripOption[]>>;
};

/**
 * Play of a slide before and after a choice for each strip: "top and bottom front renewed gives back 4.2 mm at the hook".
 *
 * @refuses slide-length-not-positive (span or overhang); slide-choice-closed, with the place, the choice and why
 * @source own derivation; see slidePlay.ts
 * @checked core/repair/slides/slides.test.ts
 */
export function slideAfter(
  slide: Slide,
  choice: SlideChoice,
  held: Readonly<Record<StripPlace, StripHeld>>,
): Outcome<SlideAfter> {
  if (!(slide.spanMm > 0 && slide.overhangMm >= 0))
    return refuse({
      code: 'slide-length-not-positive',
      facts: { spanMm: slide.spanMm, overhangMm: slide.overhangMm },
    });
  const options = Object.fromEntries(
    STRIP_PLACES.map((place) => [place, stripOptions(place, slide.strips[place], held[place])]),
  ) as Record<StripPlace, StripOption[]>;
  const chosen = STRIP_PLACES.map((place) => ({ place, option: optionOf(options[place], choice[place]) }));
  const closed = chosen.map(({ place, option }) => closedChoice(place, option)).find((refusal) => refusal !== null);
  if (closed) return refuse(closed);

  const gaps = Object.fromEntries(chosen.map(({ place, option }) => [place, option.gapMm ?? 0])) as GapAt;
  const [before, after] = [playOf(slide, gapsOf(slide)), playOf(slide, gaps)];
  return ok({
    ...{ before, after, options },
    givesBack: {
      frontMm: before.frontMm - after.frontMm,
      rearMm: before.rearMm - after.rearMm,
      hookMm: before.hookMm - after.hookMm,
    },
    notMeasured: STRIP_PLACES.filter((place) => optionOf(options[place], 'leave').gapMm === null),
  });
}

function optionOf(options: readonly StripOption[], choice: StripChoice): StripOption {
  const found = options.find((option) => option.choice === choice);
  if (!found) throw new Error(`Broken invariant: ${choice} is among a strip's options`);
  return found;
}

const closedChoice = (place: StripPlace, { choice, closed }: StripOption): Refusal | null =>
  closed[0] ? { code: 'slide-choice-closed', facts: { place, choice, because: closed[0].code } } : null;
