import { type Rebuild, rebuildCheck } from '#core/contract/rebuild.ts';
import { handOverCheckNames } from '#core/words/handOverChecks.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { jobWords as words } from '#renderer/words/jobWords.ts';

/** What is looked at before a machine leaves: latch under load above all. */
export function Checks({ job, isOpen }: { job: Rebuild; isOpen: boolean }) {
  const check = useDo(rebuildCheck);
  const [by] = useBy();
  if (!job.lines.some(({ stands }) => stands === 'agreed')) return null;
  return (
    <section>
      <h2>{words.checks}</h2>
      <div className="job-checks">
        {job.checks.map((one) => (
          <Choice
            key={one.check}
            label={handOverCheckNames[one.check] ?? one.check}
            value={one.answer ?? 'open'}
            disabled={!isOpen}
            onChange={(answer) =>
              answer !== 'open' && void check.run({ rebuildId: job.rebuildId, check: one.check, answer, by })
            }
            options={[
              { value: 'open', text: words.answers.open },
              { value: 'done', text: words.answers.done },
              { value: 'does-not-apply', text: words.answers['does-not-apply'] },
            ]}
          />
        ))}
      </div>
      {check.fault && <FaultBox fault={check.fault} />}
    </section>
  );
}
