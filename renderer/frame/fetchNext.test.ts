import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { FETCH_NEXT_MS, fetchNext, STILL_MS } from './fetchNext.ts';

// time is the test's own: nothing here waits, or depends on how fast it runs
beforeEach(() => vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] }));
afterEach(() => vi.useRealTimers());

/** Three screens to be fetched, and where hands are heard. */
function begun() {
  const fetched: number[] = [];
  const hands = new EventTarget();
  const end = fetchNext(
    [1, 2, 3].map((screen) => ({ fetch: () => fetched.push(screen) })),
    hands,
  );
  return { fetched, hands, end, move: (hand: string) => hands.dispatchEvent(new Event(hand)) };
}

test('where hands are still, one screen is fetched after the other, each once, the first screen drawn before', () => {
  const { fetched } = begun();
  vi.advanceTimersByTime(FETCH_NEXT_MS - 1);
  expect(fetched).toEqual([]);
  vi.advanceTimersByTime(1);
  expect(fetched).toEqual([1]);
  vi.advanceTimersByTime(2 * FETCH_NEXT_MS);
  expect(fetched).toEqual([1, 2, 3]);
  vi.advanceTimersByTime(60_000);
  expect(fetched).toEqual([1, 2, 3]);
});

test.each(['keydown', 'pointerdown', 'wheel', 'scroll'])(
  'while there is a %s nothing is fetched, and after it all is',
  (hand) => {
    const { fetched, move } = begun();
    for (let moves = 0; moves < 200; moves++) {
      move(hand);
      vi.advanceTimersByTime(STILL_MS / 2);
    }
    expect(fetched).toEqual([]);
    vi.advanceTimersByTime(STILL_MS);
    expect(fetched).toEqual([1]);
    // it is waited for anew before each
    for (let moves = 0; moves < 20; moves++) {
      move(hand);
      vi.advanceTimersByTime(STILL_MS / 2);
    }
    expect(fetched).toEqual([1]);
    vi.advanceTimersByTime(STILL_MS + FETCH_NEXT_MS);
    expect(fetched).toEqual([1, 2, 3]);
  },
);

test('ended, nothing more is fetched', () => {
  const { fetched, end } = begun();
  vi.advanceTimersByTime(FETCH_NEXT_MS);
  end();
  vi.advanceTimersByTime(60_000);
  expect(fetched).toEqual([1]);
});
