import { useState } from 'react';
import { type Rebuild, rebuildApprove } from '#core/contract/rebuild.ts';
import { type Day, day } from '#core/units/day.ts';
import { dayText } from '#core/words/quantityText.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { DayField } from '#renderer/controls/DayField.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { useToday } from '#renderer/record.tsx';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { jobWords as words } from '#renderer/words/jobWords.ts';

type How = 'in-person' | 'by-telephone' | 'in-writing';

/** What the customer agreed to and declined, in his words. */
export function Approval({ job, isOpen }: { job: Rebuild; isOpen: boolean }) {
  const open = job.lines.filter(({ stands }) => stands === 'proposed');
  if (job.approvals.length === 0 && (!isOpen || open.length === 0)) return null;
  return (
    <section>
      <h2>{words.approval}</h2>
      {job.approvals.map((one) => (
        <p key={`${one.saidOn} ${one.saidBy} ${one.agreed} ${one.declined}`}>
          {words.approvedLine(one.saidBy, words.hows[one.how], dayText(day(one.saidOn)), one.agreed, one.declined)}
        </p>
      ))}
      {isOpen && open.length > 0 && <Write key={open.map(({ lineId }) => lineId).join()} job={job} open={open} />}
    </section>
  );
}

function Write({ job, open }: { job: Rebuild; open: Rebuild['lines'] }) {
  const today = useToday();
  const approve = useDo(rebuildApprove);
  const [says, setSays] = useState<ReadonlyMap<number, 'agreed' | 'declined'>>(new Map());
  const [said, setSaid] = useState<ReadonlyMap<number, string>>(new Map());
  const [saidBy, setSaidBy] = useState(job.customer);
  const [saidOn, setSaidOn] = useState<Day | null>(today);
  const [how, setHow] = useState<How>('by-telephone');
  const [by, setBy] = useBy();
  const agreed = open.filter(({ lineId }) => says.get(lineId) === 'agreed').map(({ lineId }) => lineId);
  const declined = open
    .filter(({ lineId }) => says.get(lineId) === 'declined')
    .map(({ lineId }) => ({ lineId, words: said.get(lineId) ?? '' }));
  const complete = saidBy.trim() !== '' && saidOn !== null && agreed.length + declined.length > 0;
  const send = () => {
    if (complete) void approve.run({ rebuildId: job.rebuildId, saidOn, saidBy, how, agreed, declined, by });
  };
  return (
    <RowForm
      className="job-form"
      complete={complete}
      doing={approve}
      send={words.write}
      onSend={send}
      above={open.map((line) => (
        <div key={line.lineId} className="fields job-row">
          <Choice
            label={[line.position, line.what].filter(Boolean).join(': ')}
            value={says.get(line.lineId) ?? 'open'}
            onChange={(now) => now !== 'open' && setSays(new Map([...says, [line.lineId, now]]))}
            options={[
              { value: 'open', text: words.stands.proposed },
              { value: 'agreed', text: words.agreedKey },
              { value: 'declined', text: words.declinedKey },
            ]}
          />
          {says.get(line.lineId) === 'declined' && (
            <TextField
              label={words.declinedWords(line.what)}
              value={said.get(line.lineId) ?? ''}
              onChange={(text) => setSaid(new Map([...said, [line.lineId, text]]))}
              maxLength={1000}
            />
          )}
        </div>
      ))}
      below={
        <Choice
          label={words.how}
          value={how}
          onChange={setHow}
          options={(Object.keys(words.hows) as How[]).map((value) => ({ value, text: words.hows[value] }))}
        />
      }
    >
      <TextField label={words.saidBy} value={saidBy} onChange={setSaidBy} maxLength={120} />
      <DayField label={words.saidOn} value={saidOn} onChange={setSaidOn} today={today} />
      <ByField label={words.by} value={by} onChange={setBy} />
    </RowForm>
  );
}
