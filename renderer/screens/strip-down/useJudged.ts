import { useEffect, useState } from 'react';
import type { ReplyOf } from '#core/contract/operation.ts';
import { type StripDownDraft, stripDownJudge } from '#core/contract/stripDown.ts';
import { answerTo } from '#renderer/ask.ts';

export type Judged = ReplyOf<typeof stripDownJudge>;

/** Soon enough to seem at once, late enough not to judge half a figure [ms]. */
const REST_MS = 200;

const NOTHING_ODD: Judged = { questions: [], renewalQuestions: [], dialQuestion: null, worst: [] };

/**
 * What is odd about a draft, and which station governs. The last judgement stands while a new one is on its way;
 * one that comes late, of an older draft, is dropped.
 */
export function useJudged(draft: StripDownDraft | null): Judged {
  const [judged, setJudged] = useState<Judged>(NOTHING_ODD);
  const typed = draft === null ? null : JSON.stringify(draft);
  useEffect(() => {
    if (typed === null) return;
    let stale = false;
    const timer = setTimeout(async () => {
      const answer = await answerTo(stripDownJudge, JSON.parse(typed) as StripDownDraft);
      if (!stale && answer.ok) setJudged(answer.value);
    }, REST_MS);
    return () => {
      stale = true;
      clearTimeout(timer);
    };
  }, [typed]);
  return judged;
}
