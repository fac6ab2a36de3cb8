import type { Handler } from '../../contract/operation.ts';
import {
  type SlideAsked,
  STRIP_PLACE_NAMES,
  type slideFacts,
  type slideRead,
  type slideSaveFacts,
  zSlideFacts,
} from '../../contract/slide.ts';
import { orRefuse, RefusedError } from '../../outcome.ts';
import { writeEntry } from '../../record/entry.ts';
import { saveSlideFacts, slideFactsOf } from '../../record/slideStore.ts';
import { slideAfter } from '../../repair/slides/slideAfter.ts';
import { type SlideStrip, STRIP_PLACES, type StripPlace, type StripThickness } from '../../repair/slides/slidePlay.ts';
import { type StripHeld, stripOptions } from '../../repair/slides/stripOptions.ts';
import type { PointOnRecord } from '../../shop/shopLife.ts';
import { type Context, entryNow, recordOf } from '../context.ts';
import { type ShopNow, shopAroundAssembly } from '../shopNow.ts';
import { lastSizes, limitsNow } from './jointPoints.ts';
import { shopGoesBy } from './shopFigures.ts';

/** A slide worked out from its strips' last sizes and what is said of the rest. */
export const slideReadHandler: Handler<typeof slideRead, Context> = (context, asked) => {
  const now = shopAroundAssembly(context, asked.assemblyId);
  const points = stripsOf(now, asked.assemblyId);
  const strips = perPlace((place) => stripOf(now, points[place]));
  const { figures } = shopGoesBy(recordOf(context));
  const held: StripHeld = { headsBareAtMm: asked.headsBareAtMm, endsAlike: asked.endsAlike, figures };
  const { machineId, assembly } = points['top-front'];
  const machine = now.shop.life.machines.find((one) => one.machineId === machineId);
  return {
    ...{ machineId, assembly, machine: machine?.name ?? '', customer: machine?.customer ?? '' },
    strips: STRIP_PLACE_NAMES.map((place) => ({
      ...{ place, item: points[place].item, position: points[place].position, ...strips[place] },
      options: stripOptions(place, strips[place], held),
    })),
    ...playOf(strips, asked, held),
  };
};

export const slideFactsHandler: Handler<typeof slideFacts, Context> = (context, { assemblyId }) => {
  const record = recordOf(context);
  stripsOf(shopAroundAssembly(context, assemblyId), assemblyId);
  const kept = slideFactsOf(record, assemblyId);
  if (kept !== null) return { facts: zSlideFacts.parse(kept), kept: true };
  const unmeasured = { spanMm: null, overhangMm: null, channelFrontMm: 0, channelRearMm: 0 };
  const newPlayMm = shopGoesBy(record).figures.slidePlayMm;
  return { facts: { ...unmeasured, newPlayMm, headsBareAtMm: null, endsAlike: null }, kept: false };
};

export const slideSaveFactsHandler: Handler<typeof slideSaveFacts, Context> = (context, { assemblyId, facts, by }) => {
  const record = recordOf(context);
  stripsOf(shopAroundAssembly(context, assemblyId), assemblyId);
  writeEntry(record, entryNow(context, 'slide/saveFacts', by), (w, entryId) =>
    saveSlideFacts(w, entryId, assemblyId, facts),
  );
  return { saved: true };
};

const perPlace = <T>(of: (place: StripPlace) => T): Record<StripPlace, T> =>
  Object.fromEntries(STRIP_PLACES.map((place) => [place, of(place)])) as Record<StripPlace, T>;

function playOf(strips: Record<StripPlace, SlideStrip>, asked: SlideAsked, held: StripHeld) {
  const { spanMm, overhangMm, newPlayMm } = asked;
  const notMeasured = STRIP_PLACES.filter((place) =>
    Object.values(strips[place].thicknessMm).every((mm) => mm === null),
  );
  if (spanMm === null || overhangMm === null) return { notMeasured, play: null };
  const channelWornMm = { front: asked.channelFrontMm, rear: asked.channelRearMm };
  const slide = { strips, channelWornMm, newPlayMm, spanMm, overhangMm };
  const { before, after, givesBack } = orRefuse(
    slideAfter(
      slide,
      asked.choice,
      perPlace(() => held),
    ),
  );
  return { notMeasured, play: { before, after, givesBack } };
}

/** Each place by the name of its position: "Slide strip, top front". @throws RefusedError unknown-assembly; not-a-slide */
export function stripsOf({ shop }: ShopNow, assemblyId: number): Record<StripPlace, PointOnRecord> {
  const own = shop.life.points.filter((point) => point.assemblyId === assemblyId);
  if (own.length === 0) throw new RefusedError({ code: 'unknown-assembly', facts: { path: 'assemblyId', assemblyId } });
  return perPlace((place) => {
    const [over, end] = place.split('-');
    const named = new RegExp(`\\b${over}\\b.*\\b${end}\\b`, 'i');
    const found = own.find(({ position, wears }) => wears === 'down' && named.test(position));
    if (!found) throw new RefusedError({ code: 'not-a-slide', facts: { path: 'assemblyId', assemblyId } });
    return found;
  });
}

function stripOf(now: ShopNow, point: PointOnRecord): SlideStrip {
  const sizes = lastSizes(point);
  const at = (station: string) => sizes.find((size) => size.station === station)?.sizeMm ?? null;
  const thicknessMm: StripThickness = { front: at('front'), middle: at('middle'), rear: at('rear') };
  return { newMm: limitsNow(point, now).newSizeMm, thicknessMm };
}
