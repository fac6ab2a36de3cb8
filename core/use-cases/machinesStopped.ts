import type { z } from 'zod';
import type { machinesStopped, zFinding } from '../contract/machine.ts';
import type { Handler } from '../contract/operation.ts';
import { machinesWithStops } from '../record/findingStore.ts';
import { findingIsOpen } from '../shop/finding.ts';
import { type Context, lifeOfSome, recordOf } from './context.ts';
import { findingSheet } from './findingSheet.ts';

type Finding = z.input<typeof zFinding>;

/** What must not be used, wherever a machine is shown: asked often, so nothing is forecast for it. */
export const machinesStoppedHandler: Handler<typeof machinesStopped, Context> = (context) => ({
  findings: stopsNow(context),
});

/** Open findings that forbid use; of the record only the machines that have some are read. */
export function stopsNow(context: Context): Finding[] {
  const today = context.today();
  const life = lifeOfSome(context, 'machines with stops', () => machinesWithStops(recordOf(context), today));
  return life.findings
    .filter((finding) => finding.severity === 'do-not-use' && findingIsOpen(finding, today))
    .map((finding) => findingSheet(finding, life));
}
