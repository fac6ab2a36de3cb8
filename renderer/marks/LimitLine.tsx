import type { LimitKind } from '#core/axis/wearChart.ts';

/** New size, renew at, reject at: three line types. */
export function LimitLine({ kind, x0, x1, y }: { kind: LimitKind; x0: number; x1: number; y: number }) {
  return <path className={`l-${kind}`} d={`M${x0} ${y}H${x1}`} />;
}
