import { Notification } from 'electron';
import type { ReplyOf } from '#core/contract/operation.ts';
import type { recallNews } from '#core/contract/recall.ts';
import type { Ask } from '#core/shells/answer.ts';
import { newsHead, newsLines } from '#core/words/recallWords.ts';

/** After the window has its first list, and again while the shop is being learned [ms]. */
const FIRST_MS = 3000;
const AGAIN_MS = 10_000;
/** A shop that is still learning then is told of in the window alone. */
const MOST_LOOKS = 30;

/**
 * Tells on the desktop what became due since the recall list was last looked at: once, after the start. Pressed, it leads
 * to the list. Where the system shows no notices, the window's own summary says the same.
 */
export function noticeOfRecall(ask: Ask, toList: () => void): void {
  if (Notification.isSupported()) lookLater(ask, toList, FIRST_MS, MOST_LOOKS);
}

function lookLater(ask: Ask, toList: () => void, inMs: number, looksLeft: number): void {
  setTimeout(async () => {
    const answer = await ask('recall/news', {});
    // no record is open, or it is in use: there is nothing to tell
    if (!answer.ok) return;
    const news = answer.value as ReplyOf<typeof recallNews>;
    if (news.learning && looksLeft > 1) return lookLater(ask, toList, AGAIN_MS, looksLeft - 1);
    if (news.since === null || news.became.length === 0) return;
    const notice = new Notification({ title: newsHead(news.became), body: newsLines(news.became).join('\n') });
    notice.on('click', toList);
    notice.show();
  }, inMs).unref();
}
