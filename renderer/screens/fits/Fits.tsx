import { useState } from 'react';
import { useLocation, useParams } from 'wouter';
import { fitRead } from '#core/contract/fits.ts';
import { REPAIR_CHOICE_NAMES, type RepairChoiceName, repairRead } from '#core/contract/repair.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { planningAidCell, Sheet } from '#renderer/controls/Sheet.tsx';
import { StaysInMm } from '#renderer/controls/StaysInMm.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { useIdInAddress } from '#renderer/useIdInAddress.ts';
import { fitsWords as words } from '#renderer/words/fitsWords.ts';
import { repairWords } from '#renderer/words/repairWords.ts';
import { type Carried, carriedFrom, NOTHING_CARRIED } from './carried.ts';
import { FitPart } from './FitPart.tsx';
import { PinJointPart } from './PinJointPart.tsx';
import { PressPart } from './PressPart.tsx';
import { StraightPart } from './StraightPart.tsx';
import './fits.css';

const PARTS = ['fit', 'press', 'joint', 'straight'] as const;

/** To a part of the sheet, into its first box. */
const goToPart = (part: (typeof PARTS)[number]): void => {
  const section = document.getElementById(`fits-${part}`);
  section?.scrollIntoView({ block: 'start' });
  section?.querySelector<HTMLElement>('input')?.focus({ preventScroll: true });
};

/** Fits and press: the shop's slide rule. Nothing here is kept in the record. */
export default function Fits() {
  const positionId = useIdInAddress('positionId');
  const { choice } = useParams<{ choice?: string }>();
  const from = REPAIR_CHOICE_NAMES.find((name) => name === choice);
  if (choice !== undefined)
    return <OfJoint key={`${positionId} ${choice}`} positionId={positionId} choice={from ?? 'leave'} />;
  return <WithFigures carried={NOTHING_CARRIED} from={null} />;
}

/** With the figures of a joint's choice typed in. */
function OfJoint({ positionId, choice }: { positionId: number | null; choice: RepairChoiceName }) {
  const sheet = useAsk(repairRead, positionId === null ? null : { positionId });
  if (positionId && sheet.value)
    return (
      <WithFigures
        carried={carriedFrom(sheet.value, choice) ?? NOTHING_CARRIED}
        from={{ positionId, said: words.from(repairWords.title(sheet.value), repairWords.choice(choice)) }}
      />
    );
  return <NotYetSheet title={words.title} of={sheet} words={repairWords.loading} noSuch="unknown-position" />;
}

type From = { positionId: number; said: string };

function WithFigures({ carried, from }: { carried: Carried; from: From | null }) {
  const [, goTo] = useLocation();
  const [fit, setFit] = useState(carried.fit);
  const asked = useAsk(fitRead, fit.trim() === '' ? null : { fit });
  return (
    <Sheet
      title={words.title}
      sub={from?.said ?? words.sub}
      actions={
        <>
          {PARTS.map((part) => (
            <Key key={part} letter={words.jumps[part].letter} onPress={() => goToPart(part)}>
              {words.jumps[part].text}
            </Key>
          ))}
          <Key letter="B" onPress={() => goTo(from ? `/repair/${from.positionId}` : '/shop')}>
            {from ? words.toJoint : words.toShop}
          </Key>
        </>
      }
      block={[
        { label: words.block.fit, value: asked.value ? fit : '' },
        { label: words.block.rule, value: words.block.ruleIs },
        { label: words.block.units, value: words.block.unitsAre },
        { ...planningAidCell, grow: true },
      ]}
    >
      <div className="fits">
        <StaysInMm />
        <FitPart fit={fit} onFit={setFit} asked={asked} />
        <PressPart fit={fit} of={asked.value ?? null} onFit={setFit} start={carried.press} />
        <PinJointPart start={carried.joint} />
        <StraightPart />
      </div>
    </Sheet>
  );
}
