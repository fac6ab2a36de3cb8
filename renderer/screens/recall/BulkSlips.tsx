import { useState } from 'react';
import type { DueFarm } from '#core/contract/recall.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { saveBytes } from '#renderer/screens/exchange/saveBytes.ts';
import { useJob } from '#renderer/screens/exchange/useJob.ts';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { recallWords as words } from '#renderer/words/recallWords.ts';

/** Slips of everybody on the list: long work beside the program, to be broken off with nothing half done. */
export function BulkSlips({ farms, onClose }: { farms: readonly DueFarm[]; onClose: () => void }) {
  const job = useJob();
  const [by, setBy] = useBy();
  const [noted, setNoted] = useState<'yes' | 'no'>('yes');
  const machineIds = farms.flatMap(({ machines }) => machines.map(({ machineId }) => machineId));
  const [asked] = useState({ machineIds, farms: farms.length });
  const { state } = job;
  const running = state?.state === 'running';
  const start = () =>
    job.start({ kind: 'winter-slips', ask: { machineIds: asked.machineIds, noteAsSent: noted === 'yes', by } });
  return (
    <section className="recall-panel" aria-label={words.bulkHead}>
      <h2>{words.bulkHead}</h2>
      <p>{words.bulkFact(asked.machineIds.length, asked.farms)}</p>
      {!running && !state?.slips && (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            if (by.trim() !== '') void start();
          }}
        >
          <Choice
            label={words.bulkNote}
            options={[
              { value: 'yes', text: 'yes' },
              { value: 'no', text: 'no' },
            ]}
            value={noted}
            onChange={setNoted}
          />
          <div className="fields">
            <ByField label={words.bulkBy} value={by} onChange={setBy} />
          </div>
          <Keys>
            <Key first type="submit" disabled={by.trim() === ''} onPress={() => {}}>
              {words.bulkStart}
            </Key>
            <Key letter="Escape" onPress={onClose}>
              {words.close}
            </Key>
          </Keys>
        </form>
      )}
      {running && (
        <>
          <FillingRule words={words.bulkSteps[state.step] ?? state.step} share={state.share} width={400} />
          <Keys>
            <Key letter="Escape" onPress={() => void job.breakOff()}>
              {words.bulkCancel}
            </Key>
          </Keys>
        </>
      )}
      {state?.state === 'cancelled' && <p role="status">{words.bulkCancelled}</p>}
      {job.fault && <FaultBox fault={job.fault} />}
      {state?.slips && <Made slips={state.slips} onClose={onClose} />}
    </section>
  );
}

function Made({
  slips,
  onClose,
}: {
  slips: NonNullable<NonNullable<ReturnType<typeof useJob>['state']>['slips']>;
  onClose: () => void;
}) {
  return (
    <>
      <p role="status">{words.bulkDone(slips.count, slips.leftOut)}</p>
      <Keys>
        <Key first letter="S" onPress={() => saveBytes(slips.pdfName, slips.pdfBase64, 'application/pdf')}>
          {words.savePdf}
        </Key>
        <Key letter="Z" onPress={() => saveBytes(slips.zipName, slips.zipBase64, 'application/zip')}>
          {words.saveZip}
        </Key>
        <Key letter="Escape" onPress={onClose}>
          {words.close}
        </Key>
      </Keys>
    </>
  );
}
