import { type HoursScale, hoursToPx, pxPerHour } from './scale.ts';
import { hoursFigureWidth } from './textWidth.ts';

/** Tick lengths [px]: of a unit, of five, of ten. At the usual scale: 100 h, 500 h, 1 000 h. */
export const TICK_PX = { minor: 4, mid: 8, major: 11 } as const;

export type TickRank = keyof typeof TICK_PX;
export type RuleTick = { hours: number; x: number; rank: TickRank; lengthPx: number; past: boolean };
export type RuleFigure = { hours: number; x: number; rank: 'mid' | 'major'; past: boolean };
export type HoursRule = { fromPx: number; toPx: number; unitHours: number; ticks: RuleTick[]; figures: RuleFigure[] };

/** Ticks nearer than this run together into a grey band. */
const LEAST_TICK_PX = 3.6;
/** Paper between two figures, and between a figure and the flag. */
const FIGURE_CLEAR_PX = 16;
const FLAG_CLEAR_PX = 5;
/** How far past its end the rule's last figure may reach; the margin it stands in. */
const FIGURE_OVERHANG_PX = 26;

export type RuleNeeds = {
  /** type size of the figures [px] */
  figurePx: number;
  /** the flag of present hours: where it stands and how wide it is; no figure is set under it */
  flag: { hours: number; widthPx: number } | null;
  /** hours before this are marked past; a scale of hours left has 0 here, a scale of machine hours null */
  pastBefore: number | null;
};

/**
 * The hours rule: ticks of one, five and ten units, and the figures that fit.
 * The unit is the smallest of 1, 10, 100, 1 000 ... h whose ticks stand apart on this scale, so a baler of 60 h a year and
 * a machine of 60 000 h both get a rule that reads as a rule.
 */
export function hoursRule(scale: HoursScale, needs: RuleNeeds): HoursRule {
  const unitHours = tickUnit(scale);
  const ticks = ticksOf(scale, unitHours, needs.pastBefore);
  return {
    fromPx: scale.fromPx,
    toPx: scale.toPx,
    unitHours,
    ticks,
    figures: figuresOf(scale, unitHours, ticks, needs),
  };
}

function tickUnit(scale: HoursScale): number {
  let unitHours = 1;
  while (unitHours * pxPerHour(scale) < LEAST_TICK_PX) unitHours *= 10;
  return unitHours;
}

function ticksOf(scale: HoursScale, unitHours: number, pastBefore: number | null): RuleTick[] {
  const ticks: RuleTick[] = [];
  const last = Math.floor(scale.toHours / unitHours + 1e-9);
  for (let n = Math.ceil(scale.fromHours / unitHours - 1e-9); n <= last; n++) {
    const rank: TickRank = n % 10 === 0 ? 'major' : n % 5 === 0 ? 'mid' : 'minor';
    const hours = n * unitHours;
    ticks.push({ hours, x: hoursToPx(scale, hours), rank, lengthPx: TICK_PX[rank], past: isPast(hours, pastBefore) });
  }
  return ticks;
}

const isPast = (hours: number, pastBefore: number | null): boolean => pastBefore !== null && hours < pastBefore;

function figuresOf(scale: HoursScale, unitHours: number, ticks: RuleTick[], needs: RuleNeeds): RuleFigure[] {
  const widest = Math.max(...[scale.fromHours, scale.toHours].map((h) => hoursFigureWidth(h, needs.figurePx)));
  const room = (hours: number) => hours * pxPerHour(scale) >= widest + FIGURE_CLEAR_PX;
  const every = [5, 10, 20, 50, 100].map((n) => n * unitHours).find(room) ?? 100 * unitHours;
  return ticks
    .filter((tick) => isMultiple(tick.hours, every) && hasRoom(tick, scale, needs))
    .map(({ hours, x, past, rank }) => ({
      hours,
      x,
      past,
      rank: rank === 'major' ? ('major' as const) : ('mid' as const),
    }));
}

const isMultiple = (hours: number, of: number): boolean => Math.abs(hours / of - Math.round(hours / of)) < 1e-9;

function hasRoom(tick: RuleTick, scale: HoursScale, needs: RuleNeeds): boolean {
  const half = hoursFigureWidth(tick.hours, needs.figurePx) / 2;
  if (tick.x - half < scale.fromPx - FIGURE_OVERHANG_PX || tick.x + half > scale.toPx + FIGURE_OVERHANG_PX)
    return false;
  if (!needs.flag) return true;
  const flagX = hoursToPx(scale, needs.flag.hours);
  return Math.abs(tick.x - flagX) >= half + needs.flag.widthPx / 2 + FLAG_CLEAR_PX;
}

/** Where a flag of some width stands over its hours without leaving the rule's margins: its left edge [px]. */
export function flagLeft(scale: HoursScale, hours: number, widthPx: number): number {
  const centred = hoursToPx(scale, hours) - widthPx / 2;
  return Math.max(scale.fromPx - FIGURE_OVERHANG_PX, Math.min(centred, scale.toPx + FIGURE_OVERHANG_PX - widthPx));
}
