import { useId } from 'react';
import { circlePath, type HoleDrawn, type HoleInBoss, wornHole } from '#core/axis/wornHole.ts';
import type { RepairSheet } from '#core/contract/repair.ts';
import type { Writing } from '#core/words/quantityText.ts';
import { Picture, useHatch } from '#renderer/marks/Picture.tsx';
import { repairWords } from '#renderer/words/repairWords.ts';

const WIDTH = 424;
const HEIGHT = 424;
const BOSS = { x: 224, y: 204, radius: 152 };
/** The worst place, so many times larger again. */
const DETAIL = { radius: 70, larger: 6 };

/** A hole can be drawn once it is known what cleans it up; its size when new is known then. */
type DrawnSheet = RepairSheet & { cleanUp: NonNullable<RepairSheet['cleanUp']> };

/** The worn hole in its boss, to scale: new size, worn outline, clean-up circle, and the worst place enlarged. */
export function JointDrawing({ sheet, writing }: { sheet: DrawnSheet; writing: Writing }) {
  const { cleanUp, facts } = sheet;
  const best = cleanUp.withinLimit ?? cleanUp.onOldCentre;
  const newBoreMm = facts.newBoreMm ?? 0;
  const shape: HoleInBoss = {
    circles: cleanUp.circles,
    newBoreMm,
    bossOutsideMm: facts.bossOutsideMm ?? newBoreMm * 2,
    cleanUp: { boreMm: best.boreMm, shift: best.shift },
  };
  const hole = wornHole(shape, BOSS);
  const sides = repairWords.sides[facts.run];
  return (
    <div className="joint-drawing">
      <Picture width={WIDTH} height={HEIGHT} label={repairWords.drawing(sheet, writing)}>
        <HoleFaces hole={hole} />
        <CentreLines hole={hole} />
        <text x={BOSS.x} y={BOSS.y - 6} className="blue heavy middle rimmed big">
          {repairWords.cleansUp(best.boreMm, writing)}
        </text>
        <text x={BOSS.x} y={BOSS.y + 16} className="blue middle rimmed">
          {repairWords.cleansUpWord}
        </text>
        <text x={BOSS.x} y={BOSS.y + 33} className="blue middle rimmed">
          {repairWords.moved(best.toward, writing)}
        </text>
        <BossDimension text={repairWords.boss(facts.bossOutsideMm ?? 0, writing)} />
        <Axes sheet={sheet} hole={hole} writing={writing} />
        <text x={8} y={HEIGHT - 10} className="ink2">
          {sides[0]}
        </text>
        <text x={WIDTH - 8} y={HEIGHT - 10} className="ink2 end">
          {sides[1]}
        </text>
      </Picture>
      <p className="second">{repairWords.lookedAt[facts.run]}</p>
      <div className="joint-foot">
        <Key sheet={sheet} writing={writing} />
        <WorstPlace shape={shape} hole={hole} mm={cleanUp.wearMm} writing={writing} />
      </div>
    </div>
  );
}

/** Boss in section, metal gone in red, new size, worn outline, clean-up circle. */
function HoleFaces({ hole }: { hole: HoleDrawn }) {
  const section = useHatch('section');
  const gone = useHatch('past');
  const { x, y, bossRadius, newRadius, outline, cleanUp, points } = hole;
  const lost = `${outline}${circlePath(x, y, newRadius)}`;
  return (
    <>
      {section.pattern}
      {gone.pattern}
      <path className="l-thick" style={{ fill: section.fill }} d={circlePath(x, y, bossRadius)} />
      <path className="paper" d={outline} />
      <path className="redwash" fillRule="evenodd" d={lost} />
      <path style={{ fill: gone.fill }} fillRule="evenodd" d={lost} />
      <path className="l-thick" d={outline} />
      <path className="l-new-size" d={circlePath(x, y, newRadius)} />
      <path className="l-clean-up" d={circlePath(cleanUp.x, cleanUp.y, cleanUp.radius)} />
      {points.map((point) => (
        <circle key={`${point.x} ${point.y}`} className="ink" cx={point.x} cy={point.y} r={2.4} />
      ))}
    </>
  );
}

function CentreLines({ hole: { x, y, bossRadius, cleanUp } }: { hole: HoleDrawn }) {
  const out = bossRadius + 12;
  return (
    <>
      <path className="l-centre" d={`M${x - out} ${y}H${x + out}M${x} ${y - out}V${y + out}`} />
      <path
        className="l-clean-up fine"
        d={`M${cleanUp.x - 8} ${cleanUp.y}H${cleanUp.x + 8}M${cleanUp.x} ${cleanUp.y - 8}V${cleanUp.y + 8}`}
      />
    </>
  );
}

function BossDimension({ text }: { text: string }) {
  const [left, right, y] = [BOSS.x - BOSS.radius, BOSS.x + BOSS.radius, 22];
  return (
    <g>
      <path className="l-dim" d={`M${left} ${BOSS.y}V${y - 6}M${right} ${BOSS.y}V${y - 6}M${left} ${y}H${right}`} />
      <path className="arrow" d={`M${left} ${y}l10 -2.6v5.2zM${right} ${y}l-10 -2.6v5.2z`} />
      <text x={BOSS.x} y={y + 5} className="middle rimmed">
        {text}
      </text>
    </g>
  );
}

/** Diameters as read across and up, under and beside the drawing. */
function Axes({ sheet, hole, writing }: { sheet: RepairSheet; hole: HoleDrawn; writing: Writing }) {
  const [across, , upright] = sheet.facts.axesMm;
  const { x, y, newRadius } = hole;
  const [below, beside] = [BOSS.y + BOSS.radius + 30, BOSS.x - BOSS.radius - 34];
  return (
    <g>
      {across !== null && across !== undefined && (
        <>
          <path className="l-dim" d={`M${x - newRadius} ${y}V${below + 6}M${hole.x + newRadius} ${y}V${below + 6}`} />
          <path className="l-dim" d={`M${x - newRadius} ${below}H${x + newRadius}`} />
          <path
            className="arrow"
            d={`M${x - newRadius} ${below}l10 -2.6v5.2zM${x + newRadius} ${below}l-10 -2.6v5.2z`}
          />
          <text x={x} y={below + 5} className="middle rimmed heavy">
            {repairWords.axis('A', across, writing)}
          </text>
        </>
      )}
      {upright !== null && upright !== undefined && (
        <>
          <path className="l-dim" d={`M${x} ${y - newRadius}H${beside - 6}M${x} ${y + newRadius}H${beside - 6}`} />
          <path className="l-dim" d={`M${beside} ${y - newRadius}V${y + newRadius}`} />
          <path
            className="arrow"
            d={`M${beside} ${y - newRadius}l-2.6 10h5.2zM${beside} ${y + newRadius}l-2.6 -10h5.2z`}
          />
          <text transform={`translate(${beside + 5} ${y}) rotate(-90)`} className="middle rimmed heavy">
            {repairWords.axis('B', upright, writing)}
          </text>
        </>
      )}
    </g>
  );
}

/** The worst place, enlarged: from new size to worn outline to clean-up circle. Drawn anew on the larger scale, hatches as elsewhere. */
function WorstPlace({
  shape,
  hole,
  mm,
  writing,
}: {
  shape: HoleInBoss;
  hole: HoleDrawn;
  mm: number;
  writing: Writing;
}) {
  const edge = useId();
  const { radius, larger } = DETAIL;
  const size = 2 * radius + 8;
  const middle = size / 2;
  const [offX, offY] = [hole.worst.x - hole.x, hole.worst.y - hole.y];
  const off = Math.hypot(offX, offY) || 1;
  const room = { x: middle - larger * offX, y: middle - larger * offY, radius: larger * hole.bossRadius };
  return (
    <Picture width={size} height={size} label={null}>
      <clipPath id={edge}>
        <circle cx={middle} cy={middle} r={radius} />
      </clipPath>
      <g clipPath={`url(#${edge})`}>
        <HoleFaces hole={wornHole(shape, room)} />
      </g>
      <circle className="l-thin" cx={middle} cy={middle} r={radius} />
      {/* in the hole, off the lines it measures */}
      <text
        x={middle - (0.6 * radius * offX) / off}
        y={middle - (0.6 * radius * offY) / off + 5}
        className="middle heavy rimmed"
      >
        {repairWords.gone(mm, writing)}
      </text>
    </Picture>
  );
}

function Key({ sheet: { facts, cleanUp }, writing }: { sheet: DrawnSheet; writing: Writing }) {
  const gone = [
    ['l-new-size', repairWords.key.newSize(facts.newBoreMm ?? 0, writing)],
    ['l-thick', repairWords.key.worn],
    ['l-clean-up', repairWords.key.cleanUp(facts.aSideMm, writing)],
  ] as const;
  return (
    <ul className="drawing-key">
      {gone.map(([line, words]) => (
        <li key={line}>
          <Picture width={48} height={12} label={null}>
            <path className={line} d="M0 6H48" />
          </Picture>
          {words}
        </li>
      ))}
      <li>
        <Picture width={48} height={12} label={null}>
          <Gone />
        </Picture>
        {repairWords.key.gone(cleanUp.wearMm, writing)}
      </li>
    </ul>
  );
}

function Gone() {
  const { fill, pattern } = useHatch('past');
  return (
    <>
      {pattern}
      <rect width={48} height={12} style={{ fill }} />
    </>
  );
}
