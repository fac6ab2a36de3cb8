import { useRef, useState } from 'react';
import { sizeEcho, type Writing } from '#core/words/quantityText.ts';
import { dropPhotos } from '#renderer/photos/dropPhotos.ts';
import { type Box, boxesOf, boxKey, nextEmpty, type SheetRow } from './boxes.ts';
import type { GridProps } from './Grid.tsx';
import { letterDoes } from './letters.ts';
import { likelyMm, type OpenQuestion, openQuestions, questionInHand } from './questions.ts';
import {
  draftOf,
  type Sheet,
  type SizeEvent,
  withEcho,
  withHow,
  withRenewedToggled,
  withShim,
  withSure,
  withSwapped,
  withText,
  withWasRenewed,
} from './sheet.ts';
import { settled, typedSize } from './typedSize.ts';
import { useJudged } from './useJudged.ts';

/**
 * Typing in the grid of a sheet, at the bench or from old paper: what a key, a letter or an answer does to it. Rows come and go (a point is added, the
 * sheet's day moves the sizes before it); what was typed stays.
 */
export function useTyping({
  sheet,
  rows,
  writing,
  change,
  onHours,
  onOtherLetter = () => false,
  onEnd,
}: {
  sheet: Sheet;
  rows: readonly SheetRow[];
  writing: Writing;
  change: (next: (sheet: Sheet) => Sheet) => void;
  /** the letter of the hours strip */
  onHours: () => void;
  /** a letter the grid has no use for; false: nobody had, it is left to the box */
  onOtherLetter?: (letter: string) => boolean;
  /** Enter in the last box */
  onEnd: () => void;
}) {
  const [event, setEvent] = useState<SizeEvent>('as-found');
  const [here, setHere] = useState<Box | null>(null);
  const [typingKey, setTypingKey] = useState<string | null>(null);
  const [swapFrom, setSwapFrom] = useState<Box | null>(null);
  const [partRow, setPartRow] = useState<number | null>(null);
  const [seeingRow, setSeeingRow] = useState<number | null>(null);
  const inputs = useRef(new Map<string, HTMLInputElement>());
  const boxes = boxesOf(rows);
  const keyOf = (box: Box) => boxKey(box.pointId, box.station);
  const focus = (box: Box) => inputs.current.get(keyOf(box))?.focus();
  const isEmpty = (box: Box) => typedSize(sheet.texts[event][keyOf(box)] ?? '', writing).state === 'empty';
  const nextAfter = (box: Box | null) => nextEmpty(boxes, box, isEmpty);
  const focusFirst = () => {
    const first = nextAfter(null) ?? boxes[0];
    if (first) focus(first);
  };

  const { draft, remarks } = draftOf(sheet, rows);
  const judged = useJudged(sheet.machineId > 0 ? draft : null);
  // what was judged may be of a sheet that has gone: nothing is asked about an empty box
  const open = openQuestions(judged, sheet, event, boxes).filter(
    ({ key }) => key !== typingKey && (sheet.texts[event][key] ?? '').trim() !== '',
  );
  const inHand = questionInHand(open, here);

  const answer = (asked: OpenQuestion, choice: string) => {
    const row = rows[asked.box.row];
    const likely = likelyMm(asked.question);
    if (choice === 'measure-again') {
      change((s) => withText(s, event, asked.key, ''));
      focus(asked.box);
    } else if (choice === 'was-renewed') {
      change((s) => withWasRenewed(s, asked.box.pointId, asked.question.facts.lastOn));
    } else if (choice === 'wrong-place') {
      setSwapFrom(asked.box);
      focus(asked.box);
    } else if (choice === 'take' && likely !== null && row) {
      const rounded = Math.round(likely * 10 ** row.decimals) / 10 ** row.decimals;
      change((s) => withText(s, event, asked.key, sizeEcho(rounded, row.decimals, writing)));
    } else change((s) => withSure(s, event, asked.key));
  };

  const letter = (box: Box, key: string): boolean => {
    const pressed = letterDoes(key, inHand, swapFrom !== null);
    if (!pressed) return onOtherLetter(key.toUpperCase());
    switch (pressed.does) {
      case 'answer':
        if (inHand) answer(inHand, pressed.choice);
        break;
      case 'see':
        setSeeingRow(box.row);
        break;
      case 'swap':
        setSwapFrom(box);
        break;
      case 'stop-swapping':
        setSwapFrom(null);
        break;
      case 'renewed':
        change((s) => withRenewedToggled(s, event, box.pointId));
        break;
      case 'part':
        setPartRow(box.row);
        break;
      case 'gauge':
        document.querySelector<HTMLElement>(`[data-gauge-of="${box.pointId}"]`)?.focus();
        break;
      case 'hours':
        onHours();
        break;
      case 'other-grid':
        setEvent(event === 'as-found' ? 'as-left' : 'as-found');
        break;
    }
    return true;
  };

  const on: GridProps['on'] = {
    text: (box, text) => {
      setTypingKey(keyOf(box));
      change((s) => withText(s, event, keyOf(box), text));
    },
    leave: (box, decimals) => {
      setTypingKey(null);
      const key = keyOf(box);
      change((s) => withEcho(s, event, key, settled(s.texts[event][key] ?? '', decimals, writing)));
    },
    here: setHere,
    focus,
    end: onEnd,
    swapWith: (box) => {
      if (swapFrom) change((s) => withSwapped(s, event, keyOf(swapFrom), keyOf(box)));
      setSwapFrom(null);
    },
    gauge: (pointId, gaugeId) => change((s) => ({ ...s, gauges: { ...s.gauges, [pointId]: gaugeId } })),
    answer,
    see: setSeeingRow,
    addFinding: (finding) => {
      change((s) => ({ ...s, findings: [...s.findings, finding] }));
      setSeeingRow(null);
    },
    dropFinding: (at) => {
      dropPhotos(sheet.findings[at]?.photoIds ?? []);
      change((s) => ({ ...s, findings: s.findings.filter((_, i) => i !== at) }));
    },
    part: setPartRow,
    how: (pointId, how) => change((s) => withHow(s, event, pointId, how)),
    shim: (pointId, shimMm) => change((s) => withShim(s, pointId, shimMm)),
    letter,
  };
  return {
    draft,
    draftNow: (of: Sheet) => draftOf(of, rows),
    remarks,
    boxes,
    event,
    setEvent,
    here,
    focus,
    nextAfter,
    focusFirst,
    open,
    judged,
    swapFrom,
    grid: { inputs, sheet, event, writing, judged, open, inHand, typingKey, swapFrom, seeingRow, partRow, on },
  };
}
