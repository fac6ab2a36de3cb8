import type { machinesStopped } from '../contract/machine.ts';
import type { Handler } from '../contract/operation.ts';
import { machinesWithStops } from '../record/findingStore.ts';
import { findingIsOpen } from '../shop/finding.ts';
import { type Context, lifeOfSome, recordOf } from './context.ts';
import { findingSheet } from './findingSheet.ts';

/** What must not be used, wherever a machine is shown: asked often, so nothing is forecast for it and no other machine is read. */
export const machinesStoppedHandler: Handler<typeof machinesStopped, Context> = (context) => {
  const today = context.today();
  const life = lifeOfSome(context, 'machines with stops', () => machinesWithStops(recordOf(context), today));
  return {
    findings: life.findings
      .filter((finding) => finding.severity === 'do-not-use' && findingIsOpen(finding, today))
      .map((finding) => findingSheet(finding, life)),
  };
};
