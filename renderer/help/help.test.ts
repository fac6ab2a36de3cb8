import { expect, test } from 'vitest';
import { routes } from '#renderer/screens/routes.tsx';
import { helpTopics } from '#renderer/words/helpWords.ts';
import { tourSteps } from '#renderer/words/tourWords.ts';
import { topicsAt } from './topicsAt.ts';
import { stateOf } from './tour.ts';

/** Whether an address leads to a screen: ":machineId" stands for a figure. */
const leadsSomewhere = (at: string): boolean =>
  routes.some(({ path }) => new RegExp(`^${path.replace(/:\w+/g, '\\w+')}$`).test(at));

test('every step of the tour stands on a screen there is, and takes about two minutes to read aloud', () => {
  expect(tourSteps.filter(({ at }) => !leadsSomewhere(at))).toEqual([]);
  const words = tourSteps.flatMap(({ head, text }) => `${head} ${text}`.split(/\s+/)).length;
  // unhurried reading, 150 to 200 words a minute (common practice, no source)
  expect(words / 150).toBeLessThan(2.2);
});

test('each screen answers something, its own questions first', () => {
  expect(topicsAt('/machine/1')[0]?.id).toBe('wide');
  expect(topicsAt('/strip-down/3').map(({ id }) => id)).toContain('questioned');
  for (const { path } of routes) expect(topicsAt(path).length).toBeGreaterThan(0);
  expect(
    helpTopics.filter(({ at }) => at.some((path) => !routes.some((route) => route.path.startsWith(path)))),
  ).toEqual([]);
  expect(new Set(helpTopics.map(({ id }) => id)).size).toBe(helpTopics.length);
});

test('what is kept of the tour reads as offered, a step, or out; anything else is out', () => {
  expect(stateOf('offered')).toEqual({ is: 'offered' });
  expect(stateOf('3')).toEqual({ is: 'at', step: 3 });
  for (const kept of ['out', '', '-1', '3.5', 'x']) expect(stateOf(kept)).toEqual({ is: 'out' });
});
