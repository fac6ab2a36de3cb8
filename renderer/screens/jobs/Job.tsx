import { useLocation } from 'wouter';
import { type Rebuild, rebuildRead } from '#core/contract/rebuild.ts';
import { day } from '#core/units/day.ts';
import { dayText, hoursText } from '#core/words/quantityText.ts';
import { whereaboutsText } from '#core/words/whereabouts.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { Notice } from '#renderer/controls/Notice.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { DoNotUseBanner, planningAidCell, Sheet } from '#renderer/controls/Sheet.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { useIdInAddress } from '#renderer/useIdInAddress.ts';
import { jobWords as words } from '#renderer/words/jobWords.ts';
import { Approval } from './Approval.tsx';
import { Checks } from './Checks.tsx';
import { Cuts } from './Cuts.tsx';
import { HandOver } from './HandOver.tsx';
import { Intake } from './Intake.tsx';
import { Quotes } from './Quotes.tsx';
import { Work } from './Work.tsx';
import './jobs.css';

/** A job from intake to hand-over, in the order it is worked: work, quotes, what the customer says, cuts, checks, hand-over. */
export default function Job() {
  const rebuildId = useIdInAddress('rebuildId');
  const job = useAsk(rebuildRead, rebuildId === null ? null : { rebuildId });
  if (job.value) return <Whole job={job.value} />;
  return (
    <NotYetSheet
      title={words.tab}
      of={job}
      words={words.loading}
      noSuch="unknown-rebuild"
      list={{ at: '/jobs', words: words.toJobs }}
    />
  );
}

function Whole({ job }: { job: Rebuild }) {
  const [, goTo] = useLocation();
  const isOpen = job.handedOverOn === null;
  const paper = (name: keyof typeof words.papers, letter: string, first = false) => (
    <Key letter={letter} first={first} onPress={() => goTo(`/job/${job.rebuildId}/${name}`)}>
      {words.papers[name]}
    </Key>
  );
  return (
    <Sheet
      title={words.of(job.number, job.machine)}
      sub={[job.customer, job.place].filter(Boolean).join(', ')}
      actions={
        <>
          <Key letter="M" onPress={() => goTo(`/machine/${job.machineId}`)}>
            {words.machineKey}
          </Key>
          {paper('machining-list', 'L')}
          {paper('cut-list', 'C')}
          {paper('close-out', 'O')}
          {paper('job-card', 'P', true)}
        </>
      }
      banner={job.doNotUse.length > 0 && <DoNotUseBanner>{job.doNotUse.join('; ')}</DoNotUseBanner>}
      block={[
        { label: words.heads.takenIn, value: job.takenInOn },
        { label: words.heads.wanted, value: job.wantedBy ?? words.wantedWhenReady },
        { label: words.heads.where, value: whereaboutsText(job) || words.whereNotSaid },
        { label: words.dial, value: job.dialHours === null ? words.dialNotRead : hoursText(job.dialHours) },
        { ...planningAidCell, grow: true },
      ]}
    >
      <div className="job-page">
        <div className="job-part work">
          <Intake job={job} isOpen={isOpen} />
          {!isOpen && (
            <Notice head={words.handedOverFact(dayText(day(job.handedOverOn ?? '')))}>
              {job.doNotUse.length > 0 && words.stays}
            </Notice>
          )}
          <Work job={job} isOpen={isOpen} />
        </div>
        <section className="job-part minding">
          <h2>{words.cautions}</h2>
          {job.cautions.map((caution) => (
            <p key={caution}>{caution}</p>
          ))}
        </section>
        <div className="job-part agreed">
          <Quotes job={job} isOpen={isOpen} />
          <Approval job={job} isOpen={isOpen} />
          <Cuts job={job} isOpen={isOpen} />
        </div>
        <div className="job-part checks">
          <Checks job={job} isOpen={isOpen} />
        </div>
        <div className="job-part over">{isOpen && <HandOver job={job} />}</div>
      </div>
    </Sheet>
  );
}
