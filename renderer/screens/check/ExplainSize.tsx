import { useRef } from 'react';
import { useLocation, useParams } from 'wouter';
import { checkExplain, type Explanation } from '#core/contract/check.ts';
import { Across } from '#renderer/controls/Across.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { planningAidCell, Sheet } from '#renderer/controls/Sheet.tsx';
import { HoursRule, RULE_BASE_PX } from '#renderer/marks/HoursRule.tsx';
import { IntervalBar } from '#renderer/marks/IntervalBar.tsx';
import { Picture } from '#renderer/marks/Picture.tsx';
import { PresentLine } from '#renderer/marks/PresentHours.tsx';
import { useWriting } from '#renderer/record.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { useIdInAddress } from '#renderer/useIdInAddress.ts';
import { checkWords as words } from '#renderer/words/checkWords.ts';
import { shared } from '#renderer/words/english.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { useWidth } from '../machines/useWidth.ts';
import { type ExplainedReply, type ExplainRow, explainPicture } from './explainPicture.ts';
import './check.css';

/** The picture is at least and at most so wide, beside the words and the figures [px]. */
const PICTURE = { least: 300, most: 1300, beside: 620 } as const;
const ROW_PX = 41;

/** A size beyond its range: what would explain it, each a step from its correction, and the forecast then, now and with it. */
export default function ExplainSize() {
  const pointId = useIdInAddress('pointId');
  const { takenOn = '' } = useParams<{ takenOn?: string }>();
  const [, goTo] = useLocation();
  const asked = useAsk(checkExplain, pointId === null ? null : { pointId, takenOn });
  const back = (
    <Key letter="Escape" onPress={() => goTo('/forecast-check')}>
      {words.back}
    </Key>
  );
  if (asked.value) return <Explained reply={asked.value} back={back} />;
  return (
    <NotYetSheet
      title={words.explainTitle}
      of={asked}
      words={words.explainLoading}
      noSuch="unknown-point"
      list={{ at: '/forecast-check', words: words.back }}
    />
  );
}

function Explained({ reply, back }: { reply: ExplainedReply; back: React.ReactNode }) {
  const writing = useWriting();
  const [, goTo] = useLocation();
  const { size, stood } = reply;
  const holder = useRef<HTMLDivElement>(null);
  const widthPx = Math.min(PICTURE.most, Math.max(PICTURE.least, useWidth(holder) - PICTURE.beside));
  const picture = explainPicture(reply, widthPx);
  return (
    <Sheet
      title={words.explainTitle}
      sub={`${size.machine}: ${size.item} ${size.position}, ${size.point}`}
      actions={
        <>
          {back}
          <Key letter="M" onPress={() => goTo(placeOf(size, 'sizes'))}>
            {words.toMachine}
          </Key>
        </>
      }
      block={[
        { label: shared.asOf, value: stood.asOf },
        planningAidCell,
        { label: words.origin, value: words.origins[size.origin] },
        { label: words.block.range, value: words.block.rangeIs },
        { label: words.block.corrections, value: words.savesNothing, grow: true },
      ]}
    >
      <div className="check explain" ref={holder}>
        <p className="check-kept">
          <Figures>{words.explainHead(size, writing)}</Figures>{' '}
          <Figures>{`${words.visitSentence(reply.visit)} ${words.wellSaid}`}</Figures>
        </p>
        <Across>
          <table className="check-explained">
            <caption className="said">{words.explain}</caption>
            <thead>
              <tr>
                <th scope="col">{words.cause}</th>
                <th scope="col" className="explain-rule">
                  <span className="line">{words.atLimit}</span>
                  <Picture width={widthPx} height={RULE_BASE_PX + 2} label={null}>
                    <HoursRule rule={picture.rule} />
                  </Picture>
                </th>
                {(['low', 'middle', 'high'] as const).map((end) => (
                  <th key={end} scope="col" className="figures">
                    {shared[end]}, h
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {picture.rows.map((row) => (
                <Row
                  key={row.of}
                  row={row}
                  reply={reply}
                  widthPx={widthPx}
                  nowX={row.of === 'then' ? (picture.thenX ?? picture.nowX) : picture.nowX}
                  onCorrect={goTo}
                />
              ))}
            </tbody>
          </table>
        </Across>
      </div>
    </Sheet>
  );
}

type RowProps = {
  row: ExplainRow;
  reply: ExplainedReply;
  widthPx: number;
  nowX: number;
  onCorrect: (address: string) => void;
};

function Row({ row, reply, widthPx, nowX, onCorrect }: RowProps) {
  const writing = useWriting();
  const { explanation, atLimit, of } = row;
  const { size, stood } = reply;
  const head =
    of === 'then' ? words.rowThen(stood.asOf, size.origin === 'kept') : of === 'now' ? words.rowNow : words.rowWith[of];
  return (
    <tr data-fits={explanation?.explains || undefined}>
      <th scope="row">
        {head}
        {explanation && (
          <>
            <small>
              <Figures>{words.causeText(explanation, writing)}</Figures>
            </small>
            <Key onPress={() => onCorrect(correctionOf(explanation.code, size))}>{words.correct[explanation.code]}</Key>
          </>
        )}
      </th>
      <td className="explain-rule">
        <Picture width={widthPx} height={ROW_PX} label={null}>
          <PresentLine x={nowX} y0={0} y1={ROW_PX} estimated={false} />
          {row.bar && <IntervalBar bar={row.bar} y={ROW_PX / 2} triangle={false} />}
        </Picture>
      </td>
      {atLimit.low === null ? (
        <td colSpan={3} className="figures second">
          {words.notReckoned}
        </td>
      ) : (
        (['low', 'middle', 'high'] as const).map((end) => (
          <td key={end} className={end === 'middle' ? 'figures main' : 'figures'}>
            {words.figure(atLimit[end])}
          </td>
        ))
      )}
    </tr>
  );
}

type Size = ExplainedReply['size'];

const placeOf = ({ machineId, pointId }: Pick<Size, 'machineId' | 'pointId'>, panel: string): string =>
  `/machine/${machineId}/${pointId}/${panel}`;

/** The screen on which that cause is put right. */
export const correctionOf = (code: Explanation['code'], size: Pick<Size, 'machineId' | 'pointId'>): string => {
  if (code === 'renewal') return `/strip-down/${size.machineId}`;
  return placeOf(size, code === 'gauge' ? 'sizes' : 'hours');
};
