import type { machinesStopped } from '../contract/machine.ts';
import type { Handler } from '../contract/operation.ts';
import { boundMachines } from '../record/boundMachines.ts';
import { machinesWithStops } from '../record/findingStore.ts';
import { loadShopLife } from '../record/loadShopLife.ts';
import { findingIsOpen } from '../shop/finding.ts';
import { type Context, keptInMemory, recordOf } from './context.ts';
import { findingSheet } from './findingSheet.ts';

/** What must not be used, wherever a machine is shown: asked often, so nothing is forecast for it and no other machine is read. */
export const machinesStoppedHandler: Handler<typeof machinesStopped, Context> = (context) => {
  const today = context.today();
  return keptInMemory(context, `stopped as of ${today}`, () => {
    const record = recordOf(context);
    const within = boundMachines(record, machinesWithStops(record, today));
    const life = loadShopLife(record, { asOf: today, within });
    return {
      findings: life.findings
        .filter((finding) => finding.severity === 'do-not-use' && findingIsOpen(finding, today))
        .map((finding) => findingSheet(finding, life)),
    };
  });
};
