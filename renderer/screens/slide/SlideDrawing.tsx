import type { ReplyOf } from '#core/contract/operation.ts';
import type { SlideAsked, slideRead } from '#core/contract/slide.ts';
import type { Writing } from '#core/words/quantityText.ts';
import { Picture, useHatch } from '#renderer/marks/Picture.tsx';
import { slideWords } from '#renderer/words/slideWords.ts';

type Play = NonNullable<ReplyOf<typeof slideRead>['play']>;

const WIDTH = 760;
const HEIGHT = 216;
const LEFT = 60;
const RIGHT = 600;
const AXIS = 100;
/** The larger travel at the hook is drawn this high; play is enlarged for that, lengths are to one scale [px]. */
const TRAVEL_PX = 150;

/** The carrier as a lever in its frame: where it lies at its highest and lowest, now thin, then thick. */
export function SlideDrawing({ play, asked, writing }: { play: Play; asked: SlideAsked; writing: Writing }) {
  const [span, overhang] = [asked.spanMm ?? 1, asked.overhangMm ?? 1];
  const rear = LEFT + (span * (RIGHT - LEFT)) / (span + overhang);
  const pxPerMm = TRAVEL_PX / Math.max(1, play.before.hookMm, play.after.hookMm);
  return (
    <Picture width={WIDTH} height={HEIGHT} label={slideWords.drawing(play, writing)} className="slide-drawing">
      <Frame rear={rear} />
      <path className="l-centre" d={`M20 ${AXIS}H${RIGHT + 12}`} />
      <Lever play={play.before} rear={rear} pxPerMm={pxPerMm} className="l-thin" />
      <Lever play={play.after} rear={rear} pxPerMm={pxPerMm} className="l-thick" />
      {[
        { x: RIGHT + 58, mm: play.before.hookMm, head: slideWords.before, heavy: false },
        { x: RIGHT + 130, mm: play.after.hookMm, head: slideWords.after, heavy: true },
      ].map(({ x, mm, head, heavy }) => (
        <g key={head}>
          <Travel x={x} half={(mm / 2) * pxPerMm} text={slideWords.mm(mm, writing)} heavy={heavy} />
          <text x={x} y={HEIGHT - 6} className="middle ink2">
            {head}
          </text>
        </g>
      ))}
      <text x={8} y={HEIGHT - 6} className="ink2">
        {slideWords.front}
      </text>
      <text x={RIGHT} y={HEIGHT - 6} className="end ink2">
        {slideWords.hook}
      </text>
    </Picture>
  );
}

/** Frame cut through, and the strips between it and the carrier; not to scale. */
function Frame({ rear }: { rear: number }) {
  const [nylon, section] = [useHatch('nylon'), useHatch('section')];
  return (
    <>
      {nylon.pattern}
      {section.pattern}
      {[AXIS - 80, AXIS + 64].map((y) => (
        <rect
          key={y}
          className="l-thin"
          style={{ fill: section.fill }}
          x={LEFT - 20}
          y={y}
          width={rear - LEFT + 40}
          height={16}
        />
      ))}
      {[LEFT, rear - 60].flatMap((x) =>
        [AXIS - 64, AXIS + 52].map((y) => (
          <rect key={`${x} ${y}`} className="l-thin" style={{ fill: nylon.fill }} x={x} y={y} width={60} height={12} />
        )),
      )}
    </>
  );
}

/** Highest: front down, rear up. Lowest: front up, rear down. Each goes half its play from the middle. */
function Lever({
  play,
  rear,
  pxPerMm,
  className,
}: {
  play: Play['before'];
  rear: number;
  pxPerMm: number;
  className: string;
}) {
  const half = (mm: number) => (mm / 2) * pxPerMm;
  const line = (way: 1 | -1) =>
    `M${LEFT} ${AXIS + way * half(play.frontMm)}L${rear} ${AXIS - way * half(play.rearMm)}L${RIGHT} ${AXIS - way * half(play.hookMm)}`;
  return <path className={className} style={{ fill: 'none' }} d={`${line(1)}${line(-1)}`} />;
}

function Travel({ x, half, text, heavy }: { x: number; half: number; text: string; heavy: boolean }) {
  return (
    <g>
      <path
        className="l-dim"
        d={`M${x} ${AXIS - half}V${AXIS + half}M${x - 6} ${AXIS - half}h12M${x - 6} ${AXIS + half}h12`}
      />
      <text x={x} y={AXIS + 5} className={heavy ? 'middle heavy rimmed' : 'middle rimmed'}>
        {text}
      </text>
    </g>
  );
}
