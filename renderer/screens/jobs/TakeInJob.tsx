import { useState } from 'react';
import { useLocation } from 'wouter';
import { machineRead } from '#core/contract/machine.ts';
import { photoDrop } from '#core/contract/photo.ts';
import { COMEBACK_DAYS, rebuildsList, rebuildTakeIn } from '#core/contract/rebuild.ts';
import { addDays, type Day, day } from '#core/units/day.ts';
import { dayText } from '#core/words/quantityText.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { DayField } from '#renderer/controls/DayField.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { NumberField } from '#renderer/controls/NumberField.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { Sheet } from '#renderer/controls/Sheet.tsx';
import { TakePhotos } from '#renderer/photos/TakePhotos.tsx';
import { Thumbs } from '#renderer/photos/Thumbs.tsx';
import { useTakePhotos } from '#renderer/photos/useTakePhotos.ts';
import { useToday, useWriting } from '#renderer/record.tsx';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { StopBanner } from '#renderer/screens/machine/StopBanner.tsx';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { useIdInAddress } from '#renderer/useIdInAddress.ts';
import { jobWords as words } from '#renderer/words/jobWords.ts';
import { ComplaintField, WantedByField, type Where, WhereFields } from './Intake.tsx';
import './jobs.css';

/** Takes a job in on a machine: complaint, when it is wanted, what the meter shows. */
export default function TakeInJob() {
  const machineId = useIdInAddress('machineId');
  const [, goTo] = useLocation();
  const today = useToday();
  const writing = useWriting();
  const machine = useAsk(machineRead, machineId === null ? null : { machineId });
  const jobs = useAsk(rebuildsList, {});
  const takeIn = useDo(rebuildTakeIn);
  const [complaint, setComplaint] = useState('');
  const [wantedBy, setWantedBy] = useState<Day | null>(null);
  const [takenInOn, setTakenInOn] = useState<Day | null>(today);
  const [dialHours, setDialHours] = useState<number | null>(null);
  const [comeback, setComeback] = useState<'yes' | 'no'>('yes');
  const [where, setWhere] = useState<Where>({ whereabouts: 'in-the-yard', whereaboutsNote: '' });
  const [photoIds, setPhotoIds] = useState<readonly number[]>([]);
  const taking = useTakePhotos((photoId) => setPhotoIds((ids) => [...ids, photoId]));
  const drop = useDo(photoDrop);
  const [by, setBy] = useBy();
  if (!machineId || !machine.value)
    return <NotYetSheet title={words.key} of={machine} words={words.loading} noSuch="unknown-machine" />;
  const since = addDays(today, -COMEBACK_DAYS);
  const last = jobs.value?.rebuilds.find(
    (job) => job.machineId === machineId && job.handedOverOn !== null && job.handedOverOn >= since,
  );
  const complete = complaint.trim() !== '' && takenInOn !== null;
  const send = async () => {
    if (!complete) return;
    const said = { machineId, takenInOn, wantedBy, complaint, dialHours, ...where };
    const asked = { ...said, photoIds: [...photoIds], comeback: comeback === 'yes', by };
    const taken = await takeIn.run(asked);
    if (taken) goTo(`/job/${taken.rebuildId}`);
  };
  return (
    <Sheet title={words.takeInTitle(machine.value.name)} banner={<StopBanner machineId={machineId} />}>
      <RowForm
        className="job-form"
        complete={complete}
        doing={takeIn}
        send={words.takeIn}
        onSend={send}
        onLeave={() => goTo(`/machine/${machineId}`)}
        leave={words.leave}
        above={<ComplaintField value={complaint} onChange={setComplaint} />}
        below={
          <>
            <TakePhotos taking={taking}>
              {photoIds.length > 0 && (
                <>
                  <p role="status">{words.photosTaken(photoIds.length)}</p>
                  <Thumbs
                    photos={photoIds.map((photoId) => ({ photoId }))}
                    of={words.intake}
                    onShow={(photoId) => {
                      setPhotoIds((ids) => ids.filter((id) => id !== photoId));
                      void drop.run({ photoId });
                    }}
                  />
                  <p className="second">{words.photoOut}</p>
                </>
              )}
            </TakePhotos>
            {last && (
              <Choice
                label={words.comeback(last.number, dayText(day(last.handedOverOn ?? today)))}
                value={comeback}
                onChange={setComeback}
                options={[
                  { value: 'yes', text: words.comebackYes },
                  { value: 'no', text: words.comebackNo },
                ]}
              />
            )}
          </>
        }
      >
        <DayField label={words.takenInOn} value={takenInOn} onChange={setTakenInOn} today={today} />
        <WantedByField value={wantedBy} onChange={setWantedBy} />
        <NumberField
          label={words.dial}
          unit="h"
          hint={words.dialHint}
          value={dialHours}
          onChange={setDialHours}
          writing={writing}
        />
        <WhereFields where={where} onChange={setWhere} />
        <ByField label={words.by} value={by} onChange={setBy} />
      </RowForm>
    </Sheet>
  );
}
