import type { RingState } from '#core/axis/itemRing.ts';
import type { Sketch as SketchData } from '#core/contract/shop.ts';
import { ItemRing } from './ItemRing.tsx';
import { Picture, useHatch } from './Picture.tsx';

export type SketchProps = {
  sketch: SketchData;
  /** state of each item's ring; one not named is plain */
  states: ReadonlyMap<number, RingState>;
  /** item whose ring is filled blue: the one being looked at */
  chosen: number | null;
  width: number;
  label: string;
  onChoose?: (item: number) => void;
};

/** An assembly as a drawing: its shapes by line type, its positions as rings on leaders. */
export function Sketch({ sketch, states, chosen, width, label, onChoose }: SketchProps) {
  const scale = width / sketch.width;
  return (
    <Picture width={width} height={Math.round(sketch.height * scale)} label={label}>
      <g transform={`scale(${scale})`}>
        {sketch.shapes.map((shape, i) => (
          <Shape key={i} d={shape.d} style={shape.style} />
        ))}
        {sketch.items.map((item) => (
          <g key={item.item}>
            <path
              className="l-dim"
              d={`M${item.ring.x} ${item.ring.y}L${item.at.x} ${item.at.y}`}
              vectorEffect="non-scaling-stroke"
            />
            <circle cx={item.at.x} cy={item.at.y} r={1.8 / scale} style={{ fill: 'var(--ink2)' }} />
          </g>
        ))}
      </g>
      {sketch.items.map((item) => (
        // biome-ignore lint/a11y/noStaticElementInteractions: a second way for the pointer; by keys the rows are chosen
        <g
          key={item.item}
          onClick={onChoose && (() => onChoose(item.item))}
          style={onChoose ? { cursor: 'pointer' } : undefined}
        >
          <ItemRing
            item={item.item}
            state={item.item === chosen ? 'chosen' : (states.get(item.item) ?? 'leave')}
            x={item.ring.x * scale}
            y={item.ring.y * scale}
          />
        </g>
      ))}
    </Picture>
  );
}

type ShapeStyle = SketchData['shapes'][number]['style'];

const Shape = ({ d, style }: { d: string; style: ShapeStyle }) =>
  style === 'section' || style === 'section-other' || style === 'nylon' ? (
    <CutThrough d={d} style={style} />
  ) : (
    <path className={`s-${style}`} d={d} vectorEffect="non-scaling-stroke" />
  );

function CutThrough({ d, style }: { d: string; style: 'section' | 'section-other' | 'nylon' }) {
  const { fill, pattern } = useHatch(style);
  return (
    <>
      {pattern}
      <path className="paper" d={d} />
      <path className="s-section" style={{ fill }} d={d} vectorEffect="non-scaling-stroke" />
    </>
  );
}
