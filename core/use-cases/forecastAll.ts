import type { ForecastRow, forecastAll } from '../contract/forecast.ts';
import { zForecastRow } from '../contract/forecast.ts';
import type { Handler } from '../contract/operation.ts';
import type { ShopLife } from '../shop/shopLife.ts';
import { type Day, day } from '../units/day.ts';
import { forecastShop } from '../way.ts';
import type { Context } from './context.ts';
import { shopNow } from './shopNow.ts';

/** Every measuring point's row, in the order of the record: the whole way from a shop's life, nothing kept. */
export const forecastRows = (life: ShopLife, asOf: Day): ForecastRow[] =>
  forecastShop(life, asOf).machines.flatMap(({ points }) => points.map((point) => zForecastRow.parse(point)));

export const forecastAllHandler: Handler<typeof forecastAll, Context> = (context, request) => {
  const { asOf, shop, ofMachine } = shopNow(context, request.asOf ? day(request.asOf) : undefined);
  const machineIds = [...new Set(shop.life.points.map((point) => point.machineId))];
  return { asOf, rows: machineIds.flatMap((machineId) => [...ofMachine(machineId).points]) };
};
