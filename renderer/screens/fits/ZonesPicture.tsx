import { type Dimension, toleranceZones, type Zone } from '#core/axis/toleranceZones.ts';
import { decimalFigure, type Writing } from '#core/words/quantityText.ts';
import { Picture, useHatch } from '#renderer/marks/Picture.tsx';
import { useWriting } from '#renderer/record.tsx';
import { deviationFigure, fitsWords as words } from '#renderer/words/fitsWords.ts';
import type { FitShown } from './FitPart.tsx';

const WIDTH = 400;
const HEIGHT = 250;
/** room for figures left of the scale, and for a label above and below the zones */
const FRAME = { fromPx: 64, toPx: WIDTH - 52, topPx: 24, bottomPx: HEIGHT - 26 };
const LABEL_RISE_PX = 5;
const LABEL_DROP_PX = 14;

/** Tolerance zones about the nominal size, to scale: the hole hatched one way, the shaft the other. */
export function ZonesPicture({ of }: { of: FitShown }) {
  const writing = useWriting();
  const zones = toleranceZones({ hole: of.hole, shaft: of.shaft, ...FRAME });
  const pair = `${of.nominalMm} ${of.hole.toleranceClass}/${of.shaft.toleranceClass}`;
  const { kind, range } = words.answer(of, of.feel, writing);
  return (
    <Picture
      width={WIDTH}
      height={HEIGHT}
      label={words.pictureSays(pair, `${kind}, ${range}`)}
      className="zones-picture"
    >
      <g className="zones-scale">
        <path className="l-thin" d={`M46 ${FRAME.topPx}V${FRAME.bottomPx}`} />
        {zones.ticks.map(({ um, y }) => (
          <g key={um}>
            <path className="l-thin" d={`M41 ${y}H46`} />
            <text className="second end" x={37} y={y + 5}>
              {tickFigure(um, writing)}
            </text>
          </g>
        ))}
      </g>
      <text className="second end" x={46} y={FRAME.topPx - 10}>
        {words.block.unitsAre}
      </text>
      <path className="l-centre" d={`M46 ${zones.nominalY}H${WIDTH}`} />
      <text className="second end rimmed" x={WIDTH} y={zones.nominalY - 4}>
        {words.nominal(decimalFigure(of.nominalMm, decimalsOf(of.nominalMm), writing))}
      </text>
      <Extension of={zones.least} from={zones.hole.x1} to={zones.shaft.x0} />
      <Extension of={zones.most} from={zones.hole.x1} to={zones.shaft.x0} />
      <ZoneBox zone={zones.hole} name={of.hole.toleranceClass} limits={of.hole} hatch="section" />
      <ZoneBox zone={zones.shaft} name={of.shaft.toleranceClass} limits={of.shaft} hatch="section-other" />
      <DimensionText of={zones.least} word={words.leastWord[of.kind]} um={of.leastClearanceUm} />
      <DimensionText of={zones.most} word={words.mostWord[of.kind]} um={of.mostClearanceUm} />
    </Picture>
  );
}

const decimalsOf = (mm: number): number => Math.min(3, (String(mm).split('.')[1] ?? '').length);

/** Ticks are round: as many places as they need. */
const tickFigure = (um: number, writing: Writing): string =>
  um === 0 ? '0' : deviationFigure(um, writing).replace(/0+$/, '');

function ZoneBox({
  zone,
  name,
  limits,
  hatch,
}: {
  zone: Zone;
  name: string;
  limits: { upperDeviationUm: number; lowerDeviationUm: number };
  hatch: 'section' | 'section-other';
}) {
  const writing = useWriting();
  const { fill, pattern } = useHatch(hatch);
  const high = Math.max(1, zone.lowerY - zone.upperY);
  const middle = (zone.x0 + zone.x1) / 2;
  return (
    <g>
      {pattern}
      <rect className="paper" x={zone.x0} y={zone.upperY} width={zone.x1 - zone.x0} height={high} />
      <rect
        className="s-section"
        style={{ fill }}
        x={zone.x0}
        y={zone.upperY}
        width={zone.x1 - zone.x0}
        height={high}
      />
      <text className="middle rimmed" x={middle} y={zone.upperY - LABEL_RISE_PX}>
        {deviationFigure(limits.upperDeviationUm, writing)}
      </text>
      <text className="middle rimmed" x={middle} y={zone.lowerY + LABEL_DROP_PX}>
        {deviationFigure(limits.lowerDeviationUm, writing)}
      </text>
      {high >= 22 && (
        <text className="middle heavy rimmed" x={middle} y={(zone.upperY + zone.lowerY) / 2 + 5}>
          {name}
        </text>
      )}
    </g>
  );
}

/** From the hole's edge to its dimension line, and on from there to the shaft's. */
const Extension = ({ of, from, to }: { of: Dimension; from: number; to: number }) => (
  <path className="l-dim" d={`M${from + 3} ${of.holeY}H${of.x + 4}M${to - 3} ${of.shaftY}H${of.x - 4}`} />
);

function DimensionText({ of, word, um }: { of: Dimension; word: string; um: number }) {
  const writing = useWriting();
  const y = (of.holeY + of.shaftY) / 2;
  return (
    <g>
      <path className="l-dim dim-arrows" d={of.arrows} />
      <text className="rimmed second" x={of.x + 7} y={y - 3}>
        {word}
      </text>
      <text className="rimmed heavy" x={of.x + 7} y={y + 12}>
        {words.dimension(um, writing)}
      </text>
    </g>
  );
}
