import type { ReactElement } from 'react';
import { historyLine } from '#core/axis/historyLine.ts';
import { flagLeft, hoursRule } from '#core/axis/hoursRule.ts';
import { intervalBar, pastStub, thinInterval } from '#core/axis/intervalBar.ts';
import { limitStrip } from '#core/axis/limitStrip.ts';
import { hoursScale, hoursToPx } from '#core/axis/scale.ts';
import { winterBands } from '#core/axis/winterBands.ts';
import { DoNotUseBox } from '#renderer/marks/DoNotUseBox.tsx';
import { HistoryLine, MeterChange } from '#renderer/marks/History.tsx';
import { HoursRule } from '#renderer/marks/HoursRule.tsx';
import { IntervalBar, PastStub, ThinInterval } from '#renderer/marks/IntervalBar.tsx';
import { ItemRing } from '#renderer/marks/ItemRing.tsx';
import { LimitLine } from '#renderer/marks/LimitLine.tsx';
import { LimitStrip } from '#renderer/marks/LimitStrip.tsx';
import { useHatch } from '#renderer/marks/Picture.tsx';
import { flagWidth, PresentFlag, PresentLine } from '#renderer/marks/PresentHours.tsx';
import { Questioned } from '#renderer/marks/Questioned.tsx';
import { PutRight, ReadingDot } from '#renderer/marks/ReadingDot.tsx';
import { PlanLine, WinterBand } from '#renderer/marks/WinterBand.tsx';
import type { marksWords } from '#renderer/words/marksWords.ts';
import { flagText, pastLimitText } from '#renderer/words/markWords.ts';

export type SampleName = keyof typeof marksWords.marks;

/** One scale for all samples: 6 000 to 9 000 h over 140 px, now at 6 840 h. */
export const SAMPLE = { width: 140, height: 44, middle: 24 } as const;
const scale = hoursScale({ fromHours: 6000, toHours: 9000, fromPx: 4, toPx: 136 });
const NOW = 6840;

const bar = (
  low: number,
  middle: number,
  high: number,
  ownReadings: number,
  decides: 'low' | 'middle' = 'middle',
  nowHours = 6100,
) => <IntervalBar bar={intervalBar({ low, middle, high, nowHours, decides, ownReadings }, scale)} y={SAMPLE.middle} />;
const nowLine = <PresentLine x={hoursToPx(scale, NOW)} y0={4} y1={44} estimated={false} />;

/** Every mark of the pictures, drawn from the same geometry as the screens. */
export const samples: Record<SampleName, ReactElement> = {
  own: bar(6300, 7300, 8700, 3),
  part: bar(6300, 7300, 8700, 2),
  borrowed: bar(6300, 7300, 8700, 0),
  towing: bar(6300, 7300, 8700, 2, 'low'),
  offScale: bar(6700, 7900, 11_000, 1),
  past: (
    <>
      {bar(6200, 6600, 7900, 3, 'middle', NOW)}
      {nowLine}
    </>
  ),
  pastAtLast: (
    <>
      {nowLine}
      <PastStubSample />
    </>
  ),
  beyond: bar(11_000, 12_400, 14_000, 1),
  thin: <ThinSample />,
  doNotUse: <DoNotUseBox x={4} y={SAMPLE.middle} width={132} finding="" />,
  now: <Flag estimated={false} />,
  estimated: <Flag estimated />,
  renewal: <HistorySample known />,
  renewalUnknown: <HistorySample known={false} />,
  meter: <MeterChange x={70} y={SAMPLE.middle} />,
  reading: (
    <>
      <ReadingDot x={40} y={24} y0={12} y1={36} governs />
      <ReadingDot x={80} y={24} y0={21} y1={27} governs />
      <ReadingDot x={110} y={18} y0={18} y1={18} governs={false} />
    </>
  ),
  putRight: (
    <>
      <PutRight x={70} y={36} newY={14} />
      <ReadingDot x={70} y={14} y0={8} y1={20} governs />
    </>
  ),
  questioned: <Questioned x={28} y={SAMPLE.middle} text="11.75" />,
  limits: (
    <>
      <LimitLine kind="new-size" x0={4} x1={136} y={11} />
      <LimitLine kind="renew-at" x0={4} x1={136} y={23} />
      <LimitLine kind="reject-at" x0={4} x1={136} y={35} />
    </>
  ),
  winter: <WinterSample />,
  rings: (
    <>
      <ItemRing item={4} state="now" x={16} y={24} />
      <ItemRing item={1} state="with-it" x={43} y={24} />
      <ItemRing item={2} state="leave" x={70} y={24} />
      <ItemRing item={11} state="stop" x={97} y={24} />
      <ItemRing item={5} state="none" x={124} y={24} />
    </>
  ),
  strip: <StripSample />,
  rule: (
    <HoursRule
      rule={hoursRule(hoursScale({ fromHours: 1600, toHours: 3300, fromPx: 4, toPx: 136 }), {
        figurePx: 15,
        flag: null,
        pastBefore: null,
      })}
      y={4}
    />
  ),
  hatches: <Hatches />,
};

function PastStubSample() {
  const stub = pastStub(6700, scale);
  return stub && <PastStub stub={stub} y={SAMPLE.middle} text={pastLimitText(0.36)} />;
}

function ThinSample() {
  const interval = thinInterval({ low: 6300, middle: 7300, high: 8700 }, scale);
  return interval && <ThinInterval interval={interval} y={SAMPLE.middle} />;
}

function Flag({ estimated }: { estimated: boolean }) {
  const text = flagText(NOW, estimated);
  const wide = hoursScale({ fromHours: 6000, toHours: 7680, fromPx: 4, toPx: 136 });
  return (
    <>
      <PresentFlag left={flagLeft(wide, NOW, flagWidth(text))} y={2} text={text} estimated={estimated} />
      <PresentLine x={hoursToPx(wide, NOW)} y0={22} y1={42} estimated={estimated} />
    </>
  );
}

function HistorySample({ known }: { known: boolean }) {
  const renewal = known
    ? { hours: 6500, known, fromHours: 6500, toHours: 6500 }
    : { hours: 6800, known, fromHours: 6300, toHours: 7400 };
  const line = historyLine({ renewals: [renewal], readings: [7700, 8300], meterChanges: [], untilHours: 9000 }, scale);
  return line && <HistoryLine line={line} y={SAMPLE.middle + 6} />;
}

function WinterSample() {
  const { bands, names } = winterBands([{ name: '27/28', fromHours: 7200, toHours: 7900 }], scale, 14);
  return (
    <>
      {bands.map((band) => (
        <WinterBand key={band.name} band={band} y0={4} y1={42} />
      ))}
      <PlanLine x={hoursToPx(scale, 7200)} y0={4} y1={42} />
      {names.map((name) => (
        <text key={name.name} x={name.x} y={28} className="second">
          {name.name}
        </text>
      ))}
    </>
  );
}

function StripSample() {
  const strip = limitStrip({
    wears: 'down',
    newSizeMm: 12,
    renewAtMm: 9.5,
    rejectAtMm: 8.5,
    lastMm: 10.84,
    foundMm: 10.19,
    errorSdMm: 0.05,
    fromPx: 4,
    toPx: 136,
  });
  return strip && <LimitStrip strip={strip} y={SAMPLE.middle} />;
}

function Hatches() {
  const [section, other, past] = [useHatch('section'), useHatch('section-other'), useHatch('past')];
  return (
    <>
      {section.pattern}
      {other.pattern}
      {past.pattern}
      <rect x={4} y={10} width={40} height={26} className="s-section" style={{ fill: section.fill }} />
      <rect x={44} y={10} width={40} height={26} className="s-section" style={{ fill: other.fill }} />
      <rect x={100} y={10} width={34} height={26} className="bar-past" style={{ fill: past.fill }} />
    </>
  );
}
