import { type HelpTopic, helpTopics } from '#renderer/words/helpWords.ts';

/** What may be asked on a screen: its own questions first, those that hold everywhere last. */
export function topicsAt(here: string): readonly HelpTopic[] {
  const own = helpTopics.filter(({ at }) => at.some((path) => here.startsWith(path)));
  return [...own, ...helpTopics.filter(({ at }) => at.length === 0)];
}
