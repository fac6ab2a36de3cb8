import { useState } from 'react';
import {
  type Rebuild,
  rebuildAddPhotos,
  rebuildChange,
  rebuildStrikePhoto,
  WHEREABOUTS,
} from '#core/contract/rebuild.ts';
import { type Day, day } from '#core/units/day.ts';
import { whereaboutsNames, whereaboutsText } from '#core/words/whereabouts.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { DayField } from '#renderer/controls/DayField.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { AddPhotos, ShownPhoto, StrikePhoto } from '#renderer/photos/PutPhotos.tsx';
import { Thumbs } from '#renderer/photos/Thumbs.tsx';
import { useToday } from '#renderer/record.tsx';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { jobWords as words } from '#renderer/words/jobWords.ts';
import { photoWords } from '#renderer/words/photoWords.ts';

export type Where = Pick<Rebuild, 'whereabouts' | 'whereaboutsNote'>;

/** What the customer says is wrong. */
export function ComplaintField({ value, onChange }: { value: string; onChange: (complaint: string) => void }) {
  return <TextField label={words.complaint} value={value} onChange={onChange} lines={3} maxLength={2000} autoFocus />;
}

/** The day by which the customer wants it back. */
export function WantedByField({ value, onChange }: { value: Day | null; onChange: (wantedBy: Day | null) => void }) {
  const today = useToday();
  return (
    <DayField label={words.wantedBy} hint={words.wantedHint} value={value} onChange={onChange} today={today} future />
  );
}

/** Where the machine of a job stands. */
export function WhereFields({ where, onChange }: { where: Where; onChange: (where: Where) => void }) {
  return (
    <>
      <Choice
        label={words.whereabouts}
        value={where.whereabouts}
        onChange={(whereabouts) => onChange({ ...where, whereabouts })}
        options={WHEREABOUTS.map((value) => ({ value, text: whereaboutsNames[value] }))}
      />
      <TextField
        label={words.whereaboutsNote}
        hint={words.whereaboutsHint}
        value={where.whereaboutsNote}
        onChange={(whereaboutsNote) => onChange({ ...where, whereaboutsNote })}
        maxLength={200}
      />
    </>
  );
}

/** What a job was taken in with: complaint, where the machine stands, photos; put right while the job is open. */
export function Intake({ job, isOpen }: { job: Rebuild; isOpen: boolean }) {
  const [open, setOpen] = useState<'change' | 'photos' | number | null>(null);
  const [by] = useBy();
  const add = useDo(rebuildAddPhotos);
  const strike = useDo(rebuildStrikePhoto);
  const { rebuildId, photos } = job;
  const of = words.photosOf(job.number);
  const where = whereaboutsText(job);
  const done = () => setOpen(null);
  return (
    <section>
      <p className="complaint-line">
        <b>{job.complaint}</b>
        {job.comebackOf && <span> {words.comesBackFrom(job.comebackOf.number)}</span>}
      </p>
      {where !== '' && (
        <p>
          {words.whereabouts} {where}.
        </p>
      )}
      {photos.length > 0 && (
        <Thumbs photos={photos} of={of} shown={typeof open === 'number' ? open : null} onShow={setOpen} />
      )}
      {typeof open === 'number' && (
        <ShownPhoto
          key={open}
          photos={photos}
          photoId={open}
          of={of}
          onShow={setOpen}
          onClose={done}
          strike={(onDone) => (
            <StrikePhoto
              strike={(reason, who) => strike.run({ rebuildId, photoId: open, reason, by: who })}
              doing={strike}
              onDone={onDone}
            />
          )}
        />
      )}
      {open === 'photos' && (
        <AddPhotos
          of={of}
          add={(photoId, who) => add.run({ rebuildId, photoIds: [photoId], by: who || by })}
          doing={add}
          onDone={done}
        />
      )}
      {open === 'change' && <Change job={job} onDone={done} />}
      {open === null && (
        <Keys>
          {isOpen && <Key onPress={() => setOpen('change')}>{words.change}</Key>}
          <Key onPress={() => setOpen('photos')}>{photoWords.take}</Key>
        </Keys>
      )}
    </section>
  );
}

function Change({ job, onDone }: { job: Rebuild; onDone: () => void }) {
  const change = useDo(rebuildChange);
  const [complaint, setComplaint] = useState(job.complaint);
  const [wantedBy, setWantedBy] = useState<Day | null>(job.wantedBy === null ? null : day(job.wantedBy));
  const [where, setWhere] = useState<Where>(job);
  const [reason, setReason] = useState('');
  const [by, setBy] = useBy();
  const { whereabouts, whereaboutsNote } = where;
  const send = async () => {
    const asked = { rebuildId: job.rebuildId, complaint, wantedBy, whereabouts, whereaboutsNote, reason, by };
    if (await change.run(asked)) onDone();
  };
  return (
    <RowForm
      className="job-form"
      fact={words.changeHead}
      complete={complaint.trim() !== ''}
      doing={change}
      send={words.changeKeep}
      onSend={send}
      onLeave={onDone}
      leave={words.leave}
      above={<ComplaintField value={complaint} onChange={setComplaint} />}
    >
      <WantedByField value={wantedBy} onChange={setWantedBy} />
      <WhereFields where={where} onChange={setWhere} />
      <TextField label={words.changeReason} value={reason} onChange={setReason} maxLength={2000} />
      <ByField label={words.by} value={by} onChange={setBy} />
    </RowForm>
  );
}
