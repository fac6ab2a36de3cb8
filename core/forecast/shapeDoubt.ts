import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { driftSince } from './wearLaw.ts';

/**
 * Which share of the doubt about ln hours at limit comes from how wear goes on beyond the last size (whether it runs in or
 * quickens, and how far its law drifts), not from the rate, the sizes or the ups and downs of the path. Per node, with
 * t the model time at the limit, dt that since the last size, b the rate, g the power:
 *   ln T = ln H + ln(t) / g,  t = t_n + (L - m) / b
 *   var = var(ln T over nodes) + mean of (P + b^2 c^2 dt) / (b g t)^2 + mean of drift (dt / (g t))^2
 *   of the shape: cov(ln T, ln g)^2 / var(ln g), and the drift
 *
 * @param limitWearMm wear at the limit [mm], > 0
 * @returns 0 to 1; 0 for a part never read, or already past at every node
 * @source own derivation: first-order (delta method) variances, and the part of var(ln T) that is linear in ln g
 */
export function shapeDoubt(law: PartLaw, limitWearMm: number, settings: ModelSettings): number {
  if (law.lastHours === null) return 0;
  const { weight, rate, wearMm, wearVar, shapeOf, shapes } = law;
  const sum = { w: 0, lnT: 0, lnT2: 0, lnG: 0, lnG2: 0, both: 0, path: 0, drift: 0 };
  for (let i = 0; i < weight.length; i++) {
    const shape = shapes[shapeOf[i]!]!;
    const b = rate[i]!;
    const dt = (limitWearMm - wearMm[i]!) / b;
    if (!(dt > 0)) continue;
    const t = shape.lastTime + dt;
    const w = weight[i]!;
    const lnT = Math.log(t) / shape.power;
    const lnG = Math.log(shape.power);
    sum.w += w;
    sum.lnT += w * lnT;
    sum.lnT2 += w * lnT * lnT;
    sum.lnG += w * lnG;
    sum.lnG2 += w * lnG * lnG;
    sum.both += w * lnT * lnG;
    sum.path += (w * (wearVar[i]! + (b * shape.pathScatter) ** 2 * dt)) / (b * shape.power * t) ** 2;
    const drift = driftSince(law, law.hRefHours * Math.exp(lnT), settings.driftDelta);
    sum.drift += w * drift * (dt / (shape.power * t)) ** 2;
  }
  if (sum.w <= 0) return 0;
  const mean = (total: number) => total / sum.w;
  const nodes = Math.max(0, mean(sum.lnT2) - mean(sum.lnT) ** 2);
  const powers = Math.max(0, mean(sum.lnG2) - mean(sum.lnG) ** 2);
  const together = mean(sum.both) - mean(sum.lnT) * mean(sum.lnG);
  const bend = powers > 1e-12 ? Math.min(nodes, together ** 2 / powers) : 0;
  const total = nodes + mean(sum.path) + mean(sum.drift);
  return total > 0 ? Math.min(1, (bend + mean(sum.drift)) / total) : 0;
}
