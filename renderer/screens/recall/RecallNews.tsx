import { useEffect, useState } from 'react';
import { useLocation } from 'wouter';
import type { ReplyOf } from '#core/contract/operation.ts';
import { recallNews, recallSeen } from '#core/contract/recall.ts';
import { newsHead, newsLines } from '#core/words/recallWords.ts';
import { ask } from '#renderer/ask.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { Notice } from '#renderer/controls/Notice.tsx';
import { newsWords as words } from '#renderer/words/recallWords.ts';

type News = ReplyOf<typeof recallNews>;

/** The shop is learned, or the list stands, before anybody asks for news [ms]. */
const FIRST_MS = 1500;
const AGAIN_MS = 5000;

/** Asked once in the life of this window. */
let asked = false;

/** What became due since the list was last looked at: once, when the window opens on the machines. */
export function RecallNews() {
  const [, goTo] = useLocation();
  const [news, setNews] = useState<News | null>(null);
  useEffect(() => {
    if (asked) return;
    let timer: ReturnType<typeof setTimeout>;
    const look = async () => {
      // who cannot be told now is told at the next start
      const told = await ask(recallNews, {}).catch(() => null);
      if (told?.learning) timer = setTimeout(() => void look(), AGAIN_MS);
      else if (told) {
        asked = true;
        setNews(told);
      }
    };
    timer = setTimeout(() => void look(), FIRST_MS);
    return () => clearTimeout(timer);
  }, []);
  if (!news?.since || news.became.length === 0) return null;
  return (
    <section className="recall-news" aria-label={words.label}>
      <Notice
        head={words.head(newsHead(news.became), news.since)}
        kind="waiting"
        keys={
          <>
            <Key first onPress={() => goTo('/recall')}>
              {words.toList}
            </Key>
            <Key
              onPress={() => {
                setNews(null);
                void ask(recallSeen, {}).catch(() => {});
              }}
            >
              {words.seen}
            </Key>
          </>
        }
      >
        <ul>
          {newsLines(news.became).map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </Notice>
    </section>
  );
}
