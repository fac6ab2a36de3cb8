import { expect, it } from 'vitest';
import { aRow } from './aRow.ts';
import { boxesOf, boxKey } from './boxes.ts';
import { answerOfLetter, likelyMm, openQuestions, questionInHand, rowName } from './questions.ts';
import { emptySheet, withSure } from './sheet.ts';

const rows = [aRow({ pointId: 1, stations: ['front', 'rear'] }), aRow({ pointId: 2, stations: [''] })];
const boxes = boxesOf(rows);
const question = { code: 'better-than-last', facts: {}, choices: ['measure-again', 'right-as-read', 'was-renewed'] };
const asked = (pointId: number, station: string) => ({ pointId, station, event: 'as-found' as const, question });
const judged = { questions: [asked(2, ''), asked(1, 'rear')], renewalQuestions: [], dialQuestion: null, worst: [] };
const sheet = emptySheet(7, '2026-11-02', '', '.');

it('questions stand in the order of the boxes, and an answered one is gone', () => {
  expect(openQuestions(judged, sheet, 'as-found', boxes).map(({ key }) => key)).toEqual([
    boxKey(1, 'rear'),
    boxKey(2, ''),
  ]);
  const sure = withSure(sheet, 'as-found', boxKey(1, 'rear'));
  expect(openQuestions(judged, sure, 'as-found', boxes).map(({ key }) => key)).toEqual([boxKey(2, '')]);
  expect(openQuestions(judged, sheet, 'as-left', boxes)).toEqual([]);
});

it('letters answer the question of the row in hand, else the first', () => {
  const open = openQuestions(judged, sheet, 'as-found', boxes);
  expect(questionInHand(open, boxes[2]!)?.key).toBe(boxKey(2, ''));
  expect(questionInHand(open, boxes[0]!)?.key).toBe(boxKey(1, 'rear'));
  expect(questionInHand(open, null)?.key).toBe(boxKey(1, 'rear'));
  expect(questionInHand([], boxes[0]!)).toBeNull();
});

it('a letter is an answer only where its key stands', () => {
  expect(answerOfLetter(question, 'k')).toBe('right-as-read');
  expect(answerOfLetter(question, 't')).toBeNull();
  const slip = { code: 'ten-times-off', facts: { likelyMm: 10.7 }, choices: ['right-as-read'] };
  expect(answerOfLetter(slip, 't')).toBe('take');
  expect(likelyMm(question)).toBeNull();
});

it('a row is named by its position, and by its point where there are two', () => {
  expect(rowName(rows[0]!, rows)).toBe('Slide strip, top front');
  const two = [
    aRow({ pointId: 1, positionId: 9, point: 'bush bore', stations: [''] }),
    aRow({ pointId: 2, positionId: 9, point: 'pin diameter', stations: [''] }),
  ];
  expect(rowName(two[1]!, two)).toBe('Slide strip, top front, pin diameter');
});
