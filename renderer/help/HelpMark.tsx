import type { CSSProperties } from 'react';
import { useLocation } from 'wouter';
import { type HelpTopicId, helpTopics } from '#renderer/words/helpWords.ts';
import { openHelp } from './helpOpen.ts';
import './help.css';

/** A question mark at a term: what is asked of it is answered over the sheet, and leaving that comes back here. */
export function HelpMark({ about, style }: { about: HelpTopicId; style?: CSSProperties }) {
  const [here] = useLocation();
  const topic = helpTopics.find(({ id }) => id === about);
  return (
    <button
      type="button"
      className="help-mark"
      aria-label={topic?.ask}
      title={topic?.ask}
      {...(style && { style })}
      onClick={() => openHelp(here, about)}
    >
      <span aria-hidden="true">?</span>
    </button>
  );
}
