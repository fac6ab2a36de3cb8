import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Answer } from '#core/contract/operation.ts';
import { electronDouble, NotificationDouble } from './electronDouble.ts';

vi.mock('electron', () => ({}));

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const reason = (hoursLeft: number) => ({ code: 'hours', hoursLeft, on: '2027-03-01', passed: false });
const due = (machine: string) => ({ machineId: 1, machine, farm: 'Hollin Top', reason: reason(140) });
const news = (its: Record<string, unknown> = {}): Answer => ({
  ok: true,
  value: { since: '2026-11-20', became: [due('Vessel 118')], toContact: 3, learning: false, ...its },
});

/** Asks through the answers given, the last of them again and again. */
async function told(answers: Answer[], toList = () => {}) {
  const electron = electronDouble();
  vi.resetModules();
  vi.doMock('electron', () => electron);
  const { noticeOfRecall } = await import('#electron/recallNotice.ts');
  const ask = vi.fn(async () => (answers.length > 1 ? answers.shift()! : answers[0]!));
  return { ask, start: () => noticeOfRecall(ask, toList) };
}

test('what became due is told on the desktop once, with why; pressed, it leads to the list', async () => {
  const toList = vi.fn();
  const { ask, start } = await told([news({ became: ['A', 'B', 'C', 'D', 'E'].map(due) })], toList);
  start();
  await vi.advanceTimersByTimeAsync(60_000);
  expect(ask).toHaveBeenCalledTimes(1);
  expect(NotificationDouble.shown).toHaveLength(1);
  const [notice] = NotificationDouble.shown;
  expect(notice!.options.title).toBe('5 machines became due');
  expect(notice!.options.body.split('\n')).toEqual([
    expect.stringMatching(/^A \(Hollin Top\): deciding hours in 140\sh, about Mar 2027$/),
    ...[expect.stringMatching(/^B/), expect.stringMatching(/^C/), 'and 2 more'],
  ]);
  notice!.emit('click');
  expect(toList).toHaveBeenCalledOnce();
});

test.each([
  { what: 'nothing became due', answer: news({ became: [] }) },
  { what: 'the list was never looked at', answer: news({ since: null }) },
  { what: 'no record is open', answer: { ok: false, fault: { code: 'no-record', facts: {} } } as Answer },
])('nothing is told where $what', async ({ answer }) => {
  const { start } = await told([answer]);
  start();
  await vi.advanceTimersByTimeAsync(60_000);
  expect(NotificationDouble.shown).toEqual([]);
});

test('while the shop is being learned it is asked again, and told then', async () => {
  const { ask, start } = await told([news({ learning: true, became: [] }), news()]);
  start();
  await vi.advanceTimersByTimeAsync(60_000);
  expect(ask).toHaveBeenCalledTimes(2);
  expect(NotificationDouble.shown).toHaveLength(1);
});

test('where the system shows no notices nothing is asked', async () => {
  const { ask, start } = await told([news()]);
  NotificationDouble.supported = false;
  start();
  await vi.advanceTimersByTimeAsync(60_000);
  expect(ask).not.toHaveBeenCalled();
});
