import { isWithin } from '../maths/bounds.ts';
import type { StepHours } from '../shop/stripDownTree.ts';
import { type HowKnown, type Sourced, sourced } from './howKnown.ts';
import { LABOUR_HOURS, WORK_STEPS, type WorkStep } from './strip-down-tree/labourHours.ts';

/** A figure a shop goes by in its repairs: the program's own with how it is known, and how far it may be set otherwise. */
export type ShopFigureAbout = Sourced<number> & {
  from: number;
  to: number;
  unit: 'mm' | '°C' | 'h' | 'of the bore' | 'times';
  whole: boolean;
};

const figure = (
  value: number,
  [from, to]: readonly [from: number, to: number],
  unit: ShopFigureAbout['unit'],
  known: { howKnown: HowKnown; source: string } = { howKnown: 'common-practice', source: 'common practice, no source' },
): ShopFigureAbout => ({ ...sourced(value, known.howKnown, known.source), from, to, unit, whole: false });

const OWN_FIGURES = {
  /** oversize pins go up by this */
  oversizeStepMm: figure(0.5, [0.05, 10], 'mm'),
  /** a hole is opened this many times, then bushed back */
  oversizesAtMost: { ...figure(2, [0, 10], 'times'), whole: true },
  /** outsides of bushes go up by this */
  bushStepMm: figure(1, [0.05, 20], 'mm'),
  /** wall of a bush: not under this share of its bore, nor this much */
  bushWallShareOfBore: figure(0.05, [0, 0.5], 'of the bore'),
  bushWallLeastMm: figure(3, [0.5, 30], 'mm'),
  /** wall of the boss: not under this share of the bore, nor this much, whichever is more */
  bossWallShareOfBore: figure(0.3, [0.05, 2], 'of the bore'),
  bossWallLeastMm: figure(8, [1, 100], 'mm'),
  /** from the edge of the hole to the end of the lug, as a share of the bore */
  endLigamentShareOfBore: figure(0.9, [0.1, 3], 'of the bore'),
  /** metal taken off beyond the worn outline on each side, so that the cutter never runs in air; shops use 0.1 to 0.25 */
  cleanUpASideMm: figure(0.15, [0, 5], 'mm'),
  /** a pressing starts from here */
  roomC: figure(20, [-30, 50], '°C'),
  /** metal on the diameter that is turned off, and on each end that is faced */
  turnedOffMm: figure(2, [0, 20], 'mm'),
  facedEachEndMm: figure(1, [0, 20], 'mm'),
  /** width of the saw's cut, and what squaring off a bar's first end takes */
  sawKerfMm: figure(3, [0, 20], 'mm'),
  sawTrimMm: figure(5, [0, 100], 'mm'),
  /** bars as they are bought, and what is worth putting back on the rack */
  barLengthMm: figure(3000, [100, 12_000], 'mm'),
  keepFromMm: figure(150, [10, 6000], 'mm'),
  /** play of a slide as set on assembly, top and bottom together */
  slidePlayMm: figure(0.4, [0, 10], 'mm'),
  /** more difference than this along a strip is a wedge: a shim under it rocks */
  stripEvenWithinMm: figure(0.5, [0, 10], 'mm'),
  /** plastic that must stay over the screw heads */
  overScrewHeadsMm: figure(1, [0, 20], 'mm'),
} satisfies Record<string, ShopFigureAbout>;

type OwnName = keyof typeof OWN_FIGURES;
type HoursName = `hours:${WorkStep}`;
export type ShopFigureName = OwnName | HoursName;

const hoursFigures = Object.fromEntries(
  WORK_STEPS.map((step) => [`hours:${step}`, figure(LABOUR_HOURS[step].value.typical, [0.05, 100], 'h')]),
) as Record<HoursName, ShopFigureAbout>;

/** Every figure a shop may set otherwise; the usual hours of each work among them. */
export const SHOP_FIGURES: Readonly<Record<ShopFigureName, ShopFigureAbout>> = { ...OWN_FIGURES, ...hoursFigures };
export const SHOP_FIGURE_NAMES = Object.keys(SHOP_FIGURES) as ShopFigureName[];

/** Bars of one sort on the rack: ends and whole ones. */
export type RackBars = { bar: string; lengthMm: number; count: number };

/** What this shop goes by. */
export type ShopFigures = Readonly<Record<ShopFigureName, number>>;

/** The program's own, with what the shop has set otherwise. A name that is no longer known is left out. */
export const shopFiguresWith = (changed: Readonly<Record<string, number>>): ShopFigures =>
  Object.fromEntries(SHOP_FIGURE_NAMES.map((name) => [name, changed[name] ?? SHOP_FIGURES[name].value])) as ShopFigures;

export const USUAL_SHOP_FIGURES: ShopFigures = shopFiguresWith({});

export function isLegalFigure(name: ShopFigureName, value: number): boolean {
  return isWithin(SHOP_FIGURES[name], value);
}

/**
 * Hours of each work: the usual ones as the shop has them; from and to move in the same proportion.
 * @source own derivation; the proportions are common practice, no source
 */
export const workHoursOf = (figures: ShopFigures): Readonly<Record<WorkStep, StepHours>> =>
  Object.fromEntries(
    WORK_STEPS.map((step) => {
      const { low, typical, high } = LABOUR_HOURS[step].value;
      const times = figures[`hours:${step}`] / typical;
      return [step, { low: low * times, typical: typical * times, high: high * times }];
    }),
  ) as Record<WorkStep, StepHours>;

/**
 * Least wall of a boss about a bore.
 *   wall = max(0.3 bore, 8 mm)
 * @source common practice, no source
 */
export const leastBossWallMm = (boreMm: number, figures = USUAL_SHOP_FIGURES): number =>
  Math.max(figures.bossWallShareOfBore * boreMm, figures.bossWallLeastMm);

/**
 * Least wall of a bush.
 *   wall = max(0.05 bore, 3 mm)
 * @source common practice, no source
 */
export const leastBushWallMm = (bushBoreMm: number, figures = USUAL_SHOP_FIGURES): number =>
  Math.max(figures.bushWallShareOfBore * bushBoreMm, figures.bushWallLeastMm);

/**
 * Least from the edge of a hole to the end of its lug.
 *   ligament = 0.9 bore
 * @source common practice, no source
 */
export const leastEndLigamentMm = (boreMm: number, figures = USUAL_SHOP_FIGURES): number =>
  figures.endLigamentShareOfBore * boreMm;
