import { describe, expect, it } from 'vitest';
import { seededDice } from '#tests/support/seededDice.ts';
import { defaultModelSettings as settings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { normalCdf, normalQuantile } from '../maths/normal.ts';
import { chanceSlackBelow, forecastJoint, type JointLaw, slackAt, slackPastBy } from './slackOfJoint.ts';
import { wearNodes } from './wearLaw.ts';

/** A law of lognormal rates, as the fit leaves it: never read, or read at `lastHours`. */
function lawOf(its: {
  rateMm: number;
  lnSd: number;
  nodes: number;
  scatter?: number;
  lastHours?: number;
  wearMm?: number;
}): PartLaw {
  const { rateMm, lnSd, nodes, scatter = 0.1, lastHours = null, wearMm = 0 } = its;
  const z = Array.from({ length: nodes }, (_, i) => normalQuantile((i + 0.5) / nodes));
  const basis = {
    own: 0.5,
    machine: 0,
    lnRateMean: Math.log(rateMm),
    lnRateVar: lnSd ** 2,
    lnRateVarClassAndMachine: 0,
    lnRateVarClass: 0,
  };
  return {
    pointId: 1,
    ordinal: 0,
    machineId: 1,
    partClass: 'pin',
    hRefHours: 6000,
    readings: lastHours === null ? 0 : 1,
    lastHours,
    weight: Float64Array.from(z, () => 1 / nodes),
    rate: Float64Array.from(z, (at) => rateMm * Math.exp(lnSd * at)),
    wearMm: Float64Array.from(z, () => wearMm),
    wearVar: Float64Array.from(z, () => 0.03 ** 2),
    shapeOf: Uint16Array.from(z, () => 0),
    shapes: [{ pathScatter: scatter, power: 1, lastTime: (lastHours ?? 0) / 6000, visitErrorMm: 0 }],
    basis,
  };
}

const noDrift = 0;

describe('slack of a joint', () => {
  it('is the normal sum where each end has one rate: means add, variances add', () => {
    const pin = { law: lawOf({ rateMm: 1, lnSd: 0, nodes: 1 }), workedHoursNow: 3000 };
    const bore = { law: lawOf({ rateMm: 0.6, lnSd: 0, nodes: 1, scatter: 0.2 }), workedHoursNow: 1500, offsetMm: 0.05 };
    // worn for 0.75 and 0.5 of a typical life, 1500 h from now
    const mean = 0.05 + 1 * 0.75 + 0.6 * 0.5;
    const sd = Math.sqrt(0.03 ** 2 + 0.1 ** 2 * 0.75 + 0.03 ** 2 + (0.6 * 0.2) ** 2 * 0.5);
    for (const gainMm of [0.8, 1, 1.1, 1.4]) {
      const chance = chanceSlackBelow({ pin, bores: [bore] }, gainMm, 1500, noDrift);
      expect(chance).toBeCloseTo(normalCdf((gainMm - mean) / sd), 12);
    }
    const range = slackAt({ pin, bores: [bore] }, 1500, noDrift);
    expect(range.middle).toBeCloseTo(mean, 6);
    expect(range.high).toBeCloseTo(mean + 1.2815515655446004 * sd, 6);
  });

  const componentsOf = (law: PartLaw, hours: number, delta: number) => {
    const { mean, variance } = wearNodes(law, hours, delta);
    return Array.from(law.weight, (weight, i) => ({ weight, mean: mean[i]!, variance: variance[i]! }));
  };

  const pin = {
    law: lawOf({ rateMm: 0.9, lnSd: 0.5, nodes: 240, lastHours: 2000, wearMm: 0.3 }),
    workedHoursNow: 2400,
  };
  const bore = { law: lawOf({ rateMm: 0.7, lnSd: 0.6, nodes: 180, scatter: 0.2 }), workedHoursNow: 2400, offsetMm: 0 };
  const other = { law: lawOf({ rateMm: 0.5, lnSd: 0.4, nodes: 60 }), workedHoursNow: 2400, offsetMm: 0.1 };

  it('loses nothing by gathering the laws: the same as every node with every node', () => {
    for (const ahead of [-400, 0, 2000, 8000]) {
      const p = componentsOf(pin.law, 2400 + ahead, settings.driftDelta);
      const q = componentsOf(bore.law, 2400 + ahead, settings.driftDelta);
      const middle = slackAt({ pin, bores: [bore] }, ahead, settings.driftDelta).middle;
      for (const gainMm of [0.5 * middle, middle, 1.8 * middle]) {
        const whole = p.reduce(
          (sum, a) =>
            sum +
            q.reduce(
              (s, b) =>
                s + a.weight * b.weight * normalCdf((gainMm - a.mean - b.mean) / Math.sqrt(a.variance + b.variance)),
              0,
            ),
          0,
        );
        expect(
          Math.abs(chanceSlackBelow({ pin, bores: [bore] }, gainMm, ahead, settings.driftDelta) - whole),
        ).toBeLessThan(0.001);
      }
    }
  });

  /** Slack gained of many joints, some worked hours from now: each law drawn from, apart. */
  function simulated({ pin: onePin, bores }: JointLaw, ahead: number, count: number): number[] {
    const { uniform, normal } = seededDice(7);
    const drawer = ({ law, workedHoursNow }: JointLaw['pin']) => {
      const nodes = componentsOf(law, workedHoursNow + ahead, settings.driftDelta);
      return () => {
        const node = nodes[Math.floor(uniform() * nodes.length)]!;
        return node.mean + Math.sqrt(node.variance) * normal();
      };
    };
    const drawPin = drawer(onePin);
    const drawBores = bores.map((one) => ({ draw: drawer(one), offsetMm: one.offsetMm }));
    return Array.from({ length: count }, () => {
      const w = drawPin();
      return Math.max(...drawBores.map(({ draw, offsetMm }) => w + draw() + offsetMm));
    });
  }

  it.each([
    ['one bore', { pin, bores: [bore] }],
    ['two bores, of which the wider counts', { pin, bores: [bore, other] }],
  ] as const)('with %s is what simulated joints show', (_, joint) => {
    const count = 20_000;
    const gains = simulated(joint, 2500, count).sort((a, b) => a - b);
    for (const share of [0.1, 0.5, 0.9]) {
      const gainMm = gains[Math.floor(share * count)]!;
      const sd = Math.sqrt((share * (1 - share)) / count);
      expect(Math.abs(chanceSlackBelow(joint, gainMm, 2500, settings.driftDelta) - share)).toBeLessThan(4 * sd);
    }
  });

  it('reaches its limit at the hours at which that share of simulated joints has', () => {
    const joint = { pin, bores: [bore] };
    const { hoursAtLimit } = forecastJoint(joint, 1.4, 2400, settings);
    const { past0 } = slackPastBy(joint, 1.4, settings);
    for (const [share, hours] of [
      [0.1, hoursAtLimit?.low],
      [0.5, hoursAtLimit?.middle],
      [0.9, hoursAtLimit?.high],
    ] as const) {
      const past = 1 - chanceSlackBelow(joint, 1.4, hours! - 2400, settings.driftDelta);
      expect((past - past0) / (1 - past0)).toBeCloseTo(share, 2);
    }
    const count = 20_000;
    const gone = simulated(joint, hoursAtLimit!.middle! - 2400, count).filter((gainMm) => gainMm >= 1.4).length / count;
    expect(Math.abs(gone - (past0 + 0.5 * (1 - past0)))).toBeLessThan(4 * Math.sqrt(0.25 / count));
  });

  it('comes sooner than either end alone, and a second bore can only bring it nearer', () => {
    const still = (law: PartLaw): PartLaw => ({ ...law, rate: law.rate.map(() => 1e-9) });
    const at = (joint: JointLaw) => forecastJoint(joint, 1.4, 2400, settings).hoursAtLimit!.middle!;
    const both = at({ pin, bores: [bore] });
    expect(both).toBeLessThan(at({ pin, bores: [{ ...bore, law: still(bore.law) }] }));
    expect(at({ pin, bores: [bore, other] })).toBeLessThanOrEqual(both + 1);
  });

  it('past at the last look is said so, with how far', () => {
    const forecast = forecastJoint(
      {
        pin: { ...pin, law: lawOf({ rateMm: 0.9, lnSd: 0.3, nodes: 60, lastHours: 2300, wearMm: 1.5 }) },
        bores: [bore],
      },
      1,
      2400,
      settings,
    );
    expect(forecast.hoursAtLimit?.pastAtLastSize).toBe(true);
    expect(forecast.pastLimitMm).toBeGreaterThan(0.4);
    expect(forecast.chancePast).toBeGreaterThan(0.9);
  });
});
