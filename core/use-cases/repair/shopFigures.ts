import type { Handler } from '../../contract/operation.ts';
import { type shopFiguresRead, type shopFiguresSave, zShopFigures } from '../../contract/shopFigures.ts';
import { writeEntry } from '../../record/entry.ts';
import type { ReadableRecord } from '../../record/recordFile.ts';
import { readRepairFigures, saveRepairFigures } from '../../record/shopFiguresStore.ts';
import { ROUND_BARS_MM } from '../../repair/cut-list/stockSize.ts';
import { knownOf } from '../../repair/howKnown.ts';
import {
  isLegalFigure,
  type RackBars,
  SHOP_FIGURE_NAMES,
  SHOP_FIGURES,
  type ShopFigureName,
  type ShopFigures,
  shopFiguresWith,
} from '../../repair/shopFigures.ts';
import { refuseField } from '../asked.ts';
import { type Context, entryNow, recordOf } from '../context.ts';

/** What this shop goes by in its repairs: the program's own figures but for what it has set otherwise. */
export function shopGoesBy(record: ReadableRecord): {
  figures: ShopFigures;
  roundBarsMm: readonly number[];
  rack: readonly RackBars[];
} {
  const kept = readRepairFigures(record);
  if (kept === null) return { figures: shopFiguresWith({}), roundBarsMm: ROUND_BARS_MM.value, rack: [] };
  const { changed, roundBarsMm, rack } = zShopFigures.parse(kept);
  return { figures: shopFiguresWith(changed), roundBarsMm: roundBarsMm ?? ROUND_BARS_MM.value, rack };
}

export const shopFiguresReadHandler: Handler<typeof shopFiguresRead, Context> = (context) => {
  const { figures, roundBarsMm, rack } = shopGoesBy(recordOf(context));
  return {
    figures: SHOP_FIGURE_NAMES.map((name) => {
      const { value: usual, ...about } = SHOP_FIGURES[name];
      return { name, value: figures[name], usual, ...about };
    }),
    roundBarsMm: [...roundBarsMm],
    usualRoundBars: { barsMm: [...ROUND_BARS_MM.value], ...knownOf(ROUND_BARS_MM) },
    rack: [...rack],
  };
};

export const shopFiguresSaveHandler: Handler<typeof shopFiguresSave, Context> = (context, { by, ...asked }) => {
  const changed: Record<string, number> = {};
  for (const [name, value] of Object.entries(asked.changed)) {
    const known = SHOP_FIGURE_NAMES.find((one) => one === name);
    if (!known) return refuseField(`changed.${name}`, 'a figure the program goes by');
    if (!isLegalFigure(known, value)) refuseField(`changed.${name}`, boundsText(known));
    if (value !== SHOP_FIGURES[known].value) changed[known] = value;
  }
  const roundBarsMm = asked.roundBarsMm && [...new Set(asked.roundBarsMm)].sort((a, b) => a - b);
  const usual = roundBarsMm?.join() === ROUND_BARS_MM.value.join();
  writeEntry(recordOf(context), entryNow(context, 'shopFigures/save', by), (w, entryId) =>
    saveRepairFigures(w, entryId, { changed, roundBarsMm: usual ? null : roundBarsMm, rack: asked.rack }),
  );
  return { saved: true };
};

function boundsText(name: ShopFigureName): string {
  const { from, to, whole, unit } = SHOP_FIGURES[name];
  return `${whole ? 'a whole number ' : ''}from ${from} to ${to} ${unit}`.trim();
}
