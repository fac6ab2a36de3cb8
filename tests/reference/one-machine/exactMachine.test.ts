import { describe, expect, it } from 'vitest';
import type { ShopLearning } from '#core/fit/learnShop.ts';
import { machineLaws } from '#core/fit/machineLaws.ts';
import { defaultModelSettings } from '#core/fit/modelSettings.ts';
import type { ClassFigures } from '#core/fit/partSite.ts';
import { hoursAtLimit } from '#core/forecast/hoursAtLimit.ts';
import { normalCdf } from '#core/maths/normal.ts';
import { aReading, aSeries } from '#tests/accuracy/aSeries.ts';
import { kernel } from '../plain-model/plainKernel.ts';

/**
 * A machine's parts with all that joins them, its class figures given, every unknown summed out over a grid: the machine's
 * ln rate u, its visits' errors e, each part's own ln rate, odd parts included. Against the production path, which sums
 * only the part's own and carries the rest as normals.
 */
type Sizes = Record<number, number>;

const prior = { partClass: 'slide', hRefHours: 5500, m0: Math.log(2.5), s0: 0.35, from: 'trade' as const };
const LIMIT_MM = 2.5;
const NEW_SIZE_SD_MM = 0.03;
const GAUGE_SD_MM = 0.05;
const { oddPartShare, oddPartWidth, driftDelta } = defaultModelSettings;

const grid = (middle: number, sd: number, reach: number, count: number) =>
  Array.from({ length: count }, (_, i) => middle + sd * reach * ((2 * i) / (count - 1) - 1));

const bell = (x: number, mean: number, sd: number) => Math.exp(-0.5 * ((x - mean) / sd) ** 2) / sd;

/** F(x) of the first part at each of `hours`. */
function exactChances(parts: readonly Sizes[], figures: ClassFigures, hours: readonly number[]): number[] {
  const visits = [...new Set(parts.flatMap((part) => Object.keys(part).map(Number)))].sort((a, b) => a - b);
  const uSd = Math.hypot(prior.s0, figures.machineScatter);
  const us = grid(prior.m0, uSd, 4, 41);
  const betas = grid(prior.m0, Math.hypot(uSd, 1.4 * figures.partScatter), 4.5, 121);
  const errorAxis = grid(0, figures.visitErrorMm, 3.6, 2 * Math.ceil((3.6 * figures.visitErrorMm) / GAUGE_SD_MM) + 1);
  const errors = visits.reduce<number[][]>((all, _) => all.flatMap((row) => errorAxis.map((e) => [...row, e])), [[]]);
  const laws = [
    { share: 1 - oddPartShare, sd: figures.partScatter },
    { share: oddPartShare, sd: oddPartWidth * figures.partScatter },
  ];
  // density of a part's ln rate given u, once for all
  const spread = us.map((u) =>
    betas.map((beta) => laws.reduce((sum, { share, sd }) => sum + share * bell(beta, u, sd), 0)),
  );
  const sums = hours.map(() => 0);
  let total = 0;
  for (const error of errors) {
    const curves = parts.map((part) =>
      betas.map((beta) => {
        const readings = Object.entries(part).map(([h, wearMm]) => ({
          hours: Number(h),
          wearMm: wearMm - error[visits.indexOf(Number(h))]!,
          sdMm: GAUGE_SD_MM,
        }));
        return kernel({ tau0Mm: NEW_SIZE_SD_MM, readings }, prior.hRefHours, beta, figures.pathScatter, figures.power);
      }),
    );
    const chances = curves.map((curve) => curve.map((node) => Math.exp(node.lnChance)));
    const last = Math.max(...Object.keys(parts[0]!).map(Number), 0);
    const past = curves[0]!.map((node, k) => hours.map((x) => pastAt(node, betas[k]!, figures, last, x)));
    const errorWeight = error.reduce((product, e) => product * bell(e, 0, figures.visitErrorMm), 1);
    us.forEach((u, iu) => {
      const z = chances.map((chance) => chance.reduce((sum, value, k) => sum + value * spread[iu]![k]!, 0));
      const others = z.slice(1).reduce((product, value) => product * value, 1);
      const weight = errorWeight * bell(u, prior.m0, uSd) * others;
      total += weight * z[0]!;
      for (let k = 0; k < betas.length; k++) {
        const share = weight * chances[0]![k]! * spread[iu]![k]!;
        for (let j = 0; j < hours.length; j++) sums[j] = sums[j]! + share * past[k]![j]!;
      }
    });
  }
  return sums.map((sum) => sum / total);
}

function pastAt(
  node: { meanMm: number; varMm2: number; time: number },
  beta: number,
  figures: ClassFigures,
  last: number,
  x: number,
): number {
  const b = Math.exp(beta);
  const dt = (x / prior.hRefHours) ** figures.power - node.time;
  const drift = last > 0 ? (x / last) ** (driftDelta * driftDelta) - 1 : 0;
  const variance = node.varMm2 + b * b * (figures.pathScatter ** 2 * dt + drift * dt * dt);
  return normalCdf((node.meanMm + b * dt - LIMIT_MM) / Math.sqrt(variance));
}

/** A learning that knows the figures for certain, and has met no machine. */
const knownFigures = (figures: ClassFigures): ShopLearning => ({
  classes: [
    {
      partClass: 'slide',
      prior,
      sharedErrors: true,
      nodes: [{ ...figures, weight: 1, muLambda: prior.s0 ** -2, muEta: prior.m0 * prior.s0 ** -2 }],
      machines: [],
      partsRead: 0,
      machinesRead: 0,
    },
  ],
});

const figures: ClassFigures = {
  partScatter: 0.2,
  pathScatter: 0.12,
  power: 1,
  machineScatter: 0.3,
  visitErrorMm: 0.08,
};

const machines: { title: string; parts: Sizes[]; figures: ClassFigures }[] = [
  { title: 'two parts, one visit', parts: [{ 2000: 1.1 }, { 2000: 0.8 }], figures },
  { title: 'a part never read beside two that were', parts: [{}, { 2500: 1.6 }, { 2500: 1.9 }], figures },
  {
    title: 'three parts, two visits, quickening wear',
    parts: [{ 1500: 0.5, 4000: 1.6 }, { 4000: 2.1 }, { 1500: 0.75 }],
    figures: { ...figures, power: 1.1 },
  },
  {
    title: 'an odd part among like ones',
    parts: [{ 2000: 1.9 }, { 2000: 0.6 }, { 2000: 0.65 }, { 2000: 0.7 }],
    figures: { ...figures, partScatter: 0.12 },
  },
  {
    title: "a visit's error wide beside the wear",
    parts: [{ 1100: 0.29, 2200: 0.6 }, { 2200: 0.39 }, { 2200: 0.28 }],
    figures: { ...figures, visitErrorMm: 0.15 },
  },
  {
    title: 'a part never read beside those of a visit whose error is wide',
    parts: [{}, { 2200: 0.39 }, { 2200: 0.28 }],
    figures: { ...figures, visitErrorMm: 0.15 },
  },
  {
    title: 'two visits, each with an error wide beside the wear of its parts',
    parts: [{ 1500: 0.3 }, { 1500: 0.4 }, { 2500: 0.5 }, { 2500: 0.45 }],
    figures: { ...figures, visitErrorMm: 0.12 },
  },
  {
    title: 'parts that hardly differ, none of them read sharply',
    parts: [{ 600: 0.2 }, { 700: 0.17 }, { 550: 0.15 }, { 650: 0.2 }],
    figures: { ...figures, partScatter: 0.04, visitErrorMm: 0.01 },
  },
];

describe('parts of one machine, every unknown summed out', () => {
  for (const { title, parts, figures: its } of machines)
    it(title, () => {
      const series = parts.map((part, i) =>
        aSeries({
          pointId: i + 1,
          newSizeSdMm: NEW_SIZE_SD_MM,
          readings: Object.entries(part).map(([hours, wearMm]) =>
            aReading({ workedHours: Number(hours), wearMm, errorSdMm: GAUGE_SD_MM, visit: hours }),
          ),
        }),
      );
      const law = machineLaws(knownFigures(its), series, defaultModelSettings)[0]!;
      const at = hoursAtLimit(law, LIMIT_MM, defaultModelSettings);
      const found = [at.low!, at.middle!, at.high!];
      const exact = exactChances(parts, its, [
        law.lastHours ?? 1e-6,
        ...found,
        ...found.map((x) => 0.995 * x),
        ...found.map((x) => 1.005 * x),
      ]);
      const past0 = exact[0]!;
      [0.1, 0.5, 0.9].forEach((u, i) => {
        const chance = (k: number) => (exact[1 + k]! - past0) / (1 - past0);
        expect(Math.abs(chance(i) - u)).toBeLessThan(0.002);
        // half a per cent either way brackets the exact hours
        expect(chance(3 + i)).toBeLessThan(u);
        expect(chance(6 + i)).toBeGreaterThan(u);
      });
    });
});
