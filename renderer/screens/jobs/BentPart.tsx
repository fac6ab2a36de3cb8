import { useState } from 'react';
import { machineRead } from '#core/contract/machine.ts';
import { type Rebuild, rebuildLookAtBent, rebuildTakeStraighten } from '#core/contract/rebuild.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { Empty, FaultBox } from '#renderer/controls/Notice.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { StraightAnswer } from '#renderer/screens/fits/StraightAnswer.tsx';
import { BarFields, BentPartFields } from '#renderer/screens/fits/StraightPart.tsx';
import { emptyStraightForm, type StraightForm, straightRequest } from '#renderer/screens/fits/straightForm.ts';
import { useKept } from '#renderer/screens/fits/useKept.ts';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { fitsWords } from '#renderer/words/fitsWords.ts';
import { jobWords as words } from '#renderer/words/jobWords.ts';
import { PlacePick } from './PlacePick.tsx';
import { placesOf } from './placesOf.ts';
import '#renderer/screens/fits/fits.css';

/** A bent pin, bar or arm of the job's machine: may it be pressed straight, with what force, and on the job with it. */
export function BentPart({ job, onDone }: { job: Rebuild; onDone: () => void }) {
  const machine = useAsk(machineRead, { machineId: job.machineId });
  const places = placesOf(machine.value?.points ?? []);
  const [form, setForm] = useState<StraightForm>(() => ({ ...emptyStraightForm, steel: 'unknown' }));
  const [positionId, setPositionId] = useState<number | null>(job.bent[0]?.positionId ?? null);
  const [what, setWhat] = useState('');
  const [by, setBy] = useBy();
  const take = useDo(rebuildTakeStraighten);
  const onChange = (next: Partial<StraightForm>) => setForm({ ...form, ...next });
  const bent = { rebuildId: job.rebuildId, positionId, ...straightRequest(form) };
  const asked = useAsk(rebuildLookAtBent, bent);
  const kept = useKept(asked.value, asked.fault !== null);
  const named = what.trim() || (places.find((place) => place.positionId === positionId)?.position ?? '');
  const isOpen = kept !== null && kept.closedBecause.length === 0 && kept.press !== null;
  const onRecord = kept ? words.bentOnRecord(kept.onRecord) : '';
  const send = async () => {
    if (isOpen && named !== '' && (await take.run({ ...bent, what: named, by }))) onDone();
  };
  return (
    <RowForm
      className="bent-part"
      complete={isOpen && named !== ''}
      doing={take}
      send={words.putOnJob}
      onSend={send}
      onLeave={onDone}
      leave={words.leave}
      above={
        <>
          <h3>{words.bentHead}</h3>
          {job.bent.length > 0 && (
            <p>
              {words.bentFound} {job.bent.map(({ said }) => said).join('; ')}
            </p>
          )}
        </>
      }
      below={
        <div className="fits-part">
          <div className="fits-form">
            <BarFields form={form} onChange={onChange} />
            <BentPartFields form={form} onChange={onChange} procedure={(kept?.closedBecause.length ?? 0) > 0} />
          </div>
          <div className="fits-answer wide" aria-live="polite">
            {onRecord !== '' && (
              <p>
                <b>{words.onRecord}</b> {onRecord}.
              </p>
            )}
            {kept && kept.closedBecause.length === 0 && !kept.press && <Empty head={fitsWords.straightNeeds} />}
            {asked.fault && <FaultBox fault={asked.fault} />}
            {kept && (kept.press || kept.closedBecause.length > 0) && <StraightAnswer of={kept} />}
          </div>
        </div>
      }
    >
      <PlacePick places={places} positionId={positionId} onPick={setPositionId} />
      <TextField label={words.bentWhat} value={what} onChange={setWhat} hint={named} maxLength={120} />
      <ByField label={words.by} value={by} onChange={setBy} />
    </RowForm>
  );
}
