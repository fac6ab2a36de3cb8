import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { ReplyOf } from '#core/contract/operation.ts';
import { rebuildsList } from '#core/contract/rebuild.ts';
import { day } from '#core/units/day.ts';
import { dayText, decimalFigure } from '#core/words/quantityText.ts';
import { whereaboutsText } from '#core/words/whereabouts.ts';
import { Across } from '#renderer/controls/Across.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { Empty } from '#renderer/controls/Notice.tsx';
import { NotYet } from '#renderer/controls/NotYet.tsx';
import { Sheet } from '#renderer/controls/Sheet.tsx';
import { useWriting } from '#renderer/record.tsx';
import { useListKeys } from '#renderer/screens/machines/useListKeys.ts';
import { useAsk } from '#renderer/useAsk.ts';
import { jobWords as words } from '#renderer/words/jobWords.ts';
import './jobs.css';

type Listed = ReplyOf<typeof rebuildsList>['rebuilds'][number];

/** All jobs: open ones first, by the day they are wanted; arrows and Enter open one. */
export default function Jobs() {
  const [, goTo] = useLocation();
  const list = useAsk(rebuildsList, {});
  const jobs = list.value?.rebuilds ?? [];
  const [stood, setAt] = useState(0);
  const at = Math.min(stood, jobs.length - 1);
  const open = (to: number) => jobs[to] && goTo(`/job/${jobs[to].rebuildId}`);
  useListKeys({ count: jobs.length, at, page: 12, open, goTo: setAt });
  const handedOver = jobs.filter((job) => job.handedOverOn !== null).length;
  return (
    <Sheet title={words.title} sub={jobs.length > 0 && words.count(jobs.length - handedOver, handedOver)}>
      <NotYet of={list} words={words.loading} />
      {list.value && jobs.length === 0 && (
        <Empty
          head={words.none}
          keys={
            <Key first onPress={() => goTo('/machines')}>
              {words.toMachines}
            </Key>
          }
        >
          {words.noneNext}
        </Empty>
      )}
      {jobs.length > 0 && (
        <Across>
          <table className="table jobs-table wide-table">
            <thead>
              <tr>
                <th>{words.heads.number}</th>
                <th>{words.heads.machine}</th>
                <th>{words.heads.customer}</th>
                <th>{words.heads.complaint}</th>
                <th>{words.heads.where}</th>
                <th>{words.heads.wanted}</th>
                <th className="figures">{words.heads.hours}</th>
                <th>{words.heads.state}</th>
              </tr>
            </thead>
            <tbody>
              {jobs.map((job, place) => (
                <JobRow key={job.rebuildId} job={job} stood={place === at} onOpen={() => open(place)} />
              ))}
            </tbody>
          </table>
        </Across>
      )}
    </Sheet>
  );
}

function JobRow({ job, stood, onOpen }: { job: Listed; stood: boolean; onOpen: () => void }) {
  const writing = useWriting();
  return (
    <tr className={stood ? 'stood-on' : undefined} onClick={onOpen}>
      <td className="nw">
        <Link href={`/job/${job.rebuildId}`}>{job.number}</Link>
      </td>
      <td>{job.machine}</td>
      <td>{job.customer}</td>
      <td className="complaint">{job.complaint}</td>
      <td>{whereaboutsText(job)}</td>
      <td className="nw">{job.wantedBy === null ? '' : dayText(day(job.wantedBy))}</td>
      <td className="figures">{decimalFigure(job.hours, 1, writing)}</td>
      <td>{stateText(job)}</td>
    </tr>
  );
}

function stateText({ handedOverOn, proposed, agreed, declined }: Listed): string {
  if (handedOverOn !== null) return words.handedOver(dayText(day(handedOverOn)));
  return proposed + agreed + declined === 0 ? words.nothingYet : words.counts(proposed, agreed, declined);
}
