import type { Caution, Refusal } from '../../outcome.ts';
import { type ShopFigures, USUAL_SHOP_FIGURES } from '../shopFigures.ts';
import { bearingWearMm, endOf, type SlideStrip, type StripPlace } from './slidePlay.ts';

/** What can be done with a worn strip. */
export const STRIP_CHOICES = ['leave', 'shim', 'turn', 'renew'] as const;
export type StripChoice = (typeof STRIP_CHOICES)[number];

/** What the shop knows of how a strip is held, and goes by. */
export type StripHeld = {
  /** thickness at which the screw heads lie bare; null: not known [mm] */
  headsBareAtMm: number | null;
  /** the holes fit when it is turned end for end; null: not known */
  endsAlike: boolean | null;
  figures?: Pick<ShopFigures, 'stripEvenWithinMm' | 'overScrewHeadsMm'>;
};

export type StripOption = {
  choice: StripChoice;
  /** why it is not open; empty: open */
  closed: Refusal[];
  cautions: Caution[];
  /** gap that then stays at the end where it bears [mm]; null: not measured */
  gapMm: number | null;
  /** packing under the strip [mm]; 0 but for shimming */
  shimMm: number;
  /** thickness where it then bears [mm]: what the next wear starts from; null: not measured */
  bearingThicknessMm: number | null;
};

/**
 * What each choice leaves of a strip's gap, and why some are closed. Renewing sets it back to new; a shim closes what has worn
 * everywhere along it and leaves its thickness; turned end for end the other end bears.
 *
 * @source own derivation; common practice: no shim under a wedge, none where screw heads come near
 * @checked core/repair/slides/slides.test.ts
 */
export function stripOptions(place: StripPlace, strip: SlideStrip, held: StripHeld): StripOption[] {
  const wornMm = bearingWearMm(place, strip);
  const nowMm = wornMm === null ? null : strip.newMm - wornMm;
  const option = (choice: StripChoice, of: Partial<StripOption>): StripOption => ({
    ...{ choice, closed: [], cautions: [], gapMm: wornMm, shimMm: 0, bearingThicknessMm: nowMm },
    ...of,
  });
  return [
    option('leave', {}),
    option('shim', shimmed(strip, wornMm, held)),
    option('turn', turned(place, strip, held)),
    option('renew', { gapMm: 0, bearingThicknessMm: strip.newMm }),
  ];
}

const readings = ({ thicknessMm }: SlideStrip): number[] =>
  Object.values(thicknessMm).filter((mm): mm is number => mm !== null);

function shimmed(strip: SlideStrip, wornMm: number | null, held: StripHeld): Partial<StripOption> {
  const { stripEvenWithinMm: evenWithinMm, overScrewHeadsMm } = held.figures ?? USUAL_SHOP_FIGURES;
  const read = readings(strip);
  if (wornMm === null) return { closed: [{ code: 'strip-not-measured' }] };
  const [thinnestMm, thickestMm] = [Math.min(...read), Math.max(...read)];
  // packing thicker than the least worn place would jam the carrier there
  const shimMm = Math.max(0, strip.newMm - thickestMm);
  const closed: Refusal[] = [];
  const unevenMm = thickestMm - thinnestMm;
  if (unevenMm > evenWithinMm) closed.push({ code: 'strip-worn-to-a-wedge', facts: { unevenMm, evenWithinMm } });
  if (shimMm === 0) closed.push({ code: 'nothing-to-shim' });
  if (held.headsBareAtMm !== null && thinnestMm - held.headsBareAtMm < overScrewHeadsMm)
    closed.push({
      code: 'screw-heads-near',
      facts: { overHeadsMm: thinnestMm - held.headsBareAtMm, leastMm: overScrewHeadsMm },
    });
  const cautions = held.headsBareAtMm === null ? [{ code: 'screw-head-depth-not-known' }] : [];
  return { closed, cautions, shimMm, gapMm: wornMm - shimMm };
}

function turned(place: StripPlace, strip: SlideStrip, held: StripHeld): Partial<StripOption> {
  const other = strip.thicknessMm[endOf(place) === 'front' ? 'rear' : 'front'];
  const nowMm = strip.thicknessMm[endOf(place)];
  const closed: Refusal[] = [];
  if (other === null || nowMm === null) return { closed: [{ code: 'strip-ends-not-measured' }] };
  if (held.endsAlike === false) closed.push({ code: 'strip-holes-not-alike' });
  if (other <= nowMm) closed.push({ code: 'other-end-no-thicker', facts: { otherEndMm: other, thisEndMm: nowMm } });
  const cautions = held.endsAlike === null ? [{ code: 'strip-holes-not-known' }] : [];
  return { closed, cautions, gapMm: Math.max(0, strip.newMm - other), bearingThicknessMm: other };
}
