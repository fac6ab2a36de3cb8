import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import { type JobAsk, type JobState, jobsCancel, jobsStart, jobsState } from '#core/contract/jobs.ts';
import type { Answer, Fault } from '#core/contract/operation.ts';
import { answerTo } from '#renderer/ask.ts';
import { askAllAnew } from '#renderer/useAsk.ts';

/** How often long work is asked how far it is [ms]. */
const LOOK_EVERY_MS = 250;

/** Long work: started, looked after while it runs, and broken off when asked or when this screen is left. */
export function useJob() {
  const queries = useQueryClient();
  const [state, setState] = useState<JobState | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const running = state?.state === 'running' ? state.jobId : null;
  const jobRunning = useRef<string | null>(null);
  jobRunning.current = running;

  const heard = (answer: Answer<JobState>) => {
    if (!answer.ok) {
      setState(null);
      setFault(answer.fault);
      return;
    }
    setState(answer.value);
    if (answer.value.state === 'refused') setFault(answer.value.fault);
    if (answer.value.state === 'done' && answer.value.account?.done) void askAllAnew(queries);
  };
  const last = useRef(heard);
  last.current = heard;

  useEffect(() => {
    if (running === null) return;
    let asked = false;
    const timer = setInterval(async () => {
      if (asked) return;
      asked = true;
      const answer = await answerTo(jobsState, { jobId: running });
      asked = false;
      if (jobRunning.current === running) last.current(answer);
    }, LOOK_EVERY_MS);
    return () => clearInterval(timer);
  }, [running]);

  useEffect(
    () => () => {
      if (jobRunning.current !== null) void answerTo(jobsCancel, { jobId: jobRunning.current });
    },
    [],
  );

  return {
    state,
    fault,
    start: async (job: JobAsk) => {
      setFault(null);
      heard(await answerTo(jobsStart, { job }));
    },
    breakOff: async () => {
      if (running !== null) heard(await answerTo(jobsCancel, { jobId: running }));
    },
    clear: () => {
      setState(null);
      setFault(null);
    },
  };
}
