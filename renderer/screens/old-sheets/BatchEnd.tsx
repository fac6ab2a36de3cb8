import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { MachineLine } from '#core/contract/machine.ts';
import { type OldSheet, oldSheetsProgress, type QuestionedSize, sizesQuestioned } from '#core/contract/oldSheets.ts';
import type { Fault, ReplyOf } from '#core/contract/operation.ts';
import { hoursLeftFigure, type Writing } from '#core/words/quantityText.ts';
import { answerTo } from '#renderer/ask.ts';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox, Notice } from '#renderer/controls/Notice.tsx';
import { planningAidCell, Sheet } from '#renderer/controls/Sheet.tsx';
import { useToday, useWriting } from '#renderer/record.tsx';
import { askAllAnew, useAsk } from '#renderer/useAsk.ts';
import { useMachineLines } from '#renderer/useMachines.ts';
import { shared } from '#renderer/words/english.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { oldSheetsWords as words } from '#renderer/words/oldSheetsWords.ts';
import { Waiting } from './Waiting.tsx';

/** How often is asked how far it has come [ms]. */
const ASK_EVERY_MS = 200;

/** A batch is a stack of paper: so many of its machines are listed. */
const MOST_LINES = 200;

type Progress = ReplyOf<typeof oldSheetsProgress>;

/** After the last sheet: the forecasts are made anew, and the batch's machines stand with what they now say. */
export function BatchEnd({ sheets, by, onAgain }: { sheets: readonly OldSheet[]; by: string; onAgain: () => void }) {
  const { progress, fault } = useProgress();
  const writing = useWriting();
  const today = useToday();
  const [, goTo] = useLocation();
  const over = progress?.stage === 'done' || progress?.stage === 'stopped';
  const waiting = useAsk(sizesQuestioned, over ? { machineId: null } : null);
  const machineIds = [...new Set(sheets.map(({ machineId }) => machineId))];
  const lines = useMachineLines(over ? machineIds.slice(0, MOST_LINES) : null).value?.lines;
  const ofBatch = (waiting.value?.sizes ?? []).filter(({ machineId }) => machineIds.includes(machineId));
  return (
    <Sheet
      title={words.title}
      sub={over ? words.ended(sheets.length) : words.ending}
      actions={
        over && (
          <>
            <Key letter="M" onPress={() => goTo('/machines')}>
              {words.toMachines}
            </Key>
            <Key first letter="A" onPress={onAgain}>
              {words.again}
            </Key>
          </>
        )
      }
      block={[
        { label: shared.asOf, value: today },
        planningAidCell,
        { label: words.rest, value: words.restIs(ofBatch.length), grow: true },
      ]}
    >
      {fault && <FaultBox fault={fault} />}
      {progress?.stage === 'stopped' && (
        <Notice head={words.endStopped} kind="waiting">
          {words.endStoppedNext}
        </Notice>
      )}
      {!over && progress && <FillingRule words={progressWords(progress)} share={shareOf(progress)} width={400} />}
      {lines && <EndTable lines={lines} sheets={sheets} />}
      {ofBatch.length > 0 && <EndWaiting sizes={ofBatch} writing={writing} by={by} />}
    </Sheet>
  );
}

/** Asks again and again until it is over; then everything in the window is asked anew. */
function useProgress(): { progress: Progress | null; fault: Fault | null } {
  const queries = useQueryClient();
  const [progress, setProgress] = useState<Progress | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  useEffect(() => {
    let left = false;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const ask = async () => {
      const answer = await answerTo(oldSheetsProgress, {});
      if (left) return;
      if (!answer.ok) return setFault(answer.fault);
      if (answer.value.stage === 'done' || answer.value.stage === 'stopped') await askAllAnew(queries);
      else timer = setTimeout(() => void ask(), ASK_EVERY_MS);
      setProgress(answer.value);
    };
    void ask();
    return () => {
      left = true;
      clearTimeout(timer);
    };
  }, [queries]);
  return { progress, fault };
}

const progressWords = ({ stage, done, total }: Progress): string =>
  stage === 'forecasting' ? words.forecasting(done, total) : words.learning;

/** Learning is the first third: nobody can say how far it is. */
const shareOf = ({ stage, done, total }: Progress): number =>
  stage === 'forecasting' && total > 0 ? (1 + (2 * done) / total) / 3 : 0.08;

function EndTable({ lines, sheets }: { lines: readonly MachineLine[]; sheets: readonly OldSheet[] }) {
  const of = (machineId: number) => sheets.filter((sheet) => sheet.machineId === machineId);
  return (
    <table className="table end-table">
      <thead>
        <tr>
          <th scope="col">{words.machine}</th>
          <th scope="col" className="figures">
            {words.sheetsColumn}
          </th>
          <th scope="col" className="figures">
            {words.sizesColumn}
          </th>
          <th scope="col">{words.firstColumn}</th>
          {FIGURES.map((figure) => (
            <th key={figure} scope="col" className="figures">
              {words.left[figure]}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => {
          const own = of(line.machineId);
          return (
            <tr key={line.machineId}>
              <th scope="row">
                <Link href={`/machine/${line.machineId}`}>{line.name}</Link>
              </th>
              <td className="figures">{own.length}</td>
              <td className="figures">{own.reduce((sum, { sizes }) => sum + sizes, 0)}</td>
              <td>{firstText(line)}</td>
              {FIGURES.map((figure) => (
                <td key={figure} className={decides(line, figure) ? 'figures decides' : 'figures'}>
                  <Figures>{leftText(line, figure)}</Figures>
                </td>
              ))}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

const firstText = ({ first, group }: MachineLine): string =>
  group === 'do-not-use' ? words.endedStop : first ? `${first.item} ${first.position}` : words.endedNoLimit;

const FIGURES = ['low', 'middle', 'high'] as const;
type Figure = (typeof FIGURES)[number];

/** A finding that forbids use stands in place of a forecast. */
const leftText = ({ first, group }: MachineLine, figure: Figure): string => {
  if (!first || group === 'do-not-use') return '';
  const hours = first.hoursLeft[figure];
  return hours === null ? words.beyond : hoursLeftFigure(hours);
};

const decides = ({ first }: MachineLine, figure: Figure): boolean => first?.decides === figure;

const EndWaiting = ({ sizes, writing, by }: { sizes: readonly QuestionedSize[]; writing: Writing; by: string }) => (
  <section className="end-waiting">
    <h2>{words.waiting}</h2>
    <p className="second">{words.endedWaiting(sizes.length)}</p>
    <Waiting sizes={sizes} writing={writing} by={by} machineNamed />
  </section>
);
