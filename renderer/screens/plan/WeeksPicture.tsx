import { useId } from 'react';
import type { Plan, VisitLine } from '#core/contract/plan.ts';
import { type Day, day } from '#core/units/day.ts';
import { decimalFigure, monthYearText } from '#core/words/quantityText.ts';
import { StruckBox } from '#renderer/marks/DoNotUseBox.tsx';
import { useWriting } from '#renderer/record.tsx';
import { planWords as words } from '#renderer/words/planWords.ts';
import { type Stretch, scaleHours, type WeekRow } from './planLayout.ts';

export type WeeksPictureProps = {
  plan: Plan;
  rows: readonly WeekRow[];
  at: number | null;
  /** week a visit is being moved to; null: none is */
  target: Day | null;
  onStand: (visit: VisitLine) => void;
  onWeek: (weekFrom: Day) => void;
  /** a visit dragged onto a week */
  onDrop: (visitId: number, weekFrom: Day) => void;
};

/** Share of the scale below which a stretch has no room for its words. */
const ROOM_FOR_WORDS = 0.06;

const percent = (share: number): string => `${(100 * share).toFixed(3)}%`;

/** The winter as one picture: weeks down, hours across, the shop's hours as a limit line, over-hours cross-hatched. */
export function WeeksPicture(props: WeeksPictureProps) {
  const { plan, rows } = props;
  const writing = useWriting();
  const scale = scaleHours(plan.weeks);
  const ticks = Array.from({ length: Math.ceil(scale / 10) }, (_, i) => i * 10);
  return (
    <section className="weeks-picture" aria-label={words.benchHours}>
      <div className="weeks-head" aria-hidden="true">
        <span className="week-names">{words.weekFrom}</span>
        <div className="week-track">
          {ticks.map((tick) => (
            <span key={tick} className="hours-tick" style={{ left: percent(tick / scale) }}>
              {tick === 0 ? `0 ${words.benchHours}` : decimalFigure(tick, 0, writing)}
            </span>
          ))}
        </div>
      </div>
      {rows.map((row, place) => (
        <Week key={row.weekFrom} {...props} row={row} before={rows[place - 1] ?? null} scale={scale} />
      ))}
    </section>
  );
}

type WeekProps = WeeksPictureProps & { row: WeekRow; before: WeekRow | null; scale: number };

function Week({ row, before, scale, plan, at, target, onStand, onWeek, onDrop }: WeekProps) {
  const writing = useWriting();
  const from = day(row.weekFrom);
  const newMonth = before === null || before.weekFrom.slice(0, 7) !== row.weekFrom.slice(0, 7);
  const limit = row.benchHours / scale;
  const end = row.hours / scale;
  const className = ['week-row', newMonth && 'new-month', target === row.weekFrom && 'target'].filter(Boolean);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a visit may be dropped here; by keys it is moved with M
    <div
      className={className.join(' ')}
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => onDrop(Number(event.dataTransfer.getData('text/plain')), from)}
    >
      <button type="button" className="week-names" onClick={() => onWeek(from)}>
        <span className="month">{newMonth ? monthYearText(from) : ''}</span>
        <span className="day">
          {Number(row.weekFrom.slice(8))}
          <span className="said">{words.weekLabel(from)}</span>
        </span>
      </button>
      <div className="week-track">
        <Limit share={limit} from={before ? before.benchHours / scale : limit} />
        {row.stretches.map((stretch) => (
          <Visit
            key={stretch.visit.visitId}
            stretch={stretch}
            scale={scale}
            stood={at === stretch.visit.visitId}
            onStand={onStand}
          />
        ))}
        {row.farmHours > 0 && (
          <span
            className="visit farm-way"
            aria-hidden="true"
            style={{ left: percent((row.hours - row.farmHours) / scale), width: percent(row.farmHours / scale) }}
          >
            {row.farmHours / scale > ROOM_FOR_WORDS && words.farmHours(row.farmHours, writing)}
          </span>
        )}
        {row.overHours > 0 && <Over from={limit} to={end} />}
        <span className="week-words" style={{ left: percent(Math.max(limit, end)) }}>
          {row.overHours > 0 ? (
            <b className="over-words">{words.over(row.overHours, writing)}</b>
          ) : before === null || before.benchHours !== row.benchHours ? (
            <span className="limit-words">
              {row.benchHours === 0 ? words.shut(row.note ?? '') : words.shopHours(row.benchHours, writing)}
              {row.benchHours > 0 && row.note ? `: ${row.note}` : ''}
            </span>
          ) : null}
        </span>
      </div>
      <span className="said">
        {[
          `${decimalFigure(row.hours, 1, writing)} of ${decimalFigure(row.benchHours, 1, writing)} h`,
          row.farmHours > 0 && `${words.legend.farm} ${decimalFigure(row.farmHours, 1, writing)} h`,
          plan.winter.name,
        ]
          .filter(Boolean)
          .join(', ')}
      </span>
    </div>
  );
}

/** The shop's hours of the week: thick chain, red; beyond it hatched. */
function Limit({ share, from }: { share: number; from: number }) {
  const hatch = useId();
  const [left, right] = [Math.min(share, from), Math.max(share, from)];
  return (
    <svg className="picture week-limit" width="100%" height="100%" aria-hidden="true">
      <defs>
        <pattern id={hatch} width="9" height="9" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V9" className="beyond-line" />
        </pattern>
      </defs>
      <rect x={percent(share)} y="0" width={percent(1 - share)} height="100%" fill={`url(#${hatch})`} />
      <line className="limit-chain" x1={percent(share)} x2={percent(share)} y1="0" y2="100%" />
      {right > left && <line className="limit-chain" x1={percent(left)} x2={percent(right)} y1="0" y2="0" />}
    </svg>
  );
}

function Over({ from, to }: { from: number; to: number }) {
  const hatch = useId();
  return (
    <svg className="picture week-over" style={{ left: percent(from), width: percent(to - from) }} aria-hidden="true">
      <defs>
        <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V6M0 0H6" className="over-line" />
        </pattern>
      </defs>
      <rect width="100%" height="100%" fill={`url(#${hatch})`} />
    </svg>
  );
}

type VisitProps = { stretch: Stretch; scale: number; stood: boolean; onStand: (visit: VisitLine) => void };

function Visit({ stretch: { visit, fromHours, hours, continues }, scale, stood, onStand }: VisitProps) {
  const writing = useWriting();
  const className = ['visit', visit.stands, visit.waitsForParts && 'waits', stood && 'stood', continues].filter(
    Boolean,
  );
  return (
    <button
      type="button"
      className={className.join(' ')}
      style={{ left: percent(fromHours / scale), width: percent(hours / scale) }}
      aria-pressed={stood}
      draggable={visit.stands !== 'done'}
      onDragStart={(event) => event.dataTransfer.setData('text/plain', String(visit.visitId))}
      onClick={() => onStand(visit)}
      onFocus={() => onStand(visit)}
    >
      {visit.doNotUse && continues !== 'from-before' && <StruckBox width={22} height={15} />}
      <span className="visit-name">
        <b>{continues === 'from-before' ? words.continued : visit.machine}</b>
        {continues !== 'from-before' && visit.customer && <span className="visit-farm"> {visit.customer}</span>}
        {continues !== 'from-before' && visit.farm && <span className="visit-farm"> {words.atFarm}</span>}
      </span>
      <span className="visit-hours">
        {decimalFigure(hours, 1, writing)}
        <span className="said">{words.visitLabel(visit)}</span>
      </span>
    </button>
  );
}

/** What each mark means. */
export function Legend() {
  const signs = ['agreed', 'pinned', 'proposed', 'waits'] as const;
  return (
    <ul className="plan-legend">
      {signs.map((sign) => (
        <li key={sign}>
          <span className={`visit sign ${sign}`} aria-hidden="true" />
          {words.legend[sign]}
        </li>
      ))}
      <li>
        <span className="visit sign farm-way" aria-hidden="true" />
        {words.legend.farm}
      </li>
      <li>
        <StruckBox width={24} height={16} />
        {words.legend.stop}
      </li>
      <li className="scale">{words.legend.scale}</li>
    </ul>
  );
}
