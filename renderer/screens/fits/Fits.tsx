import { useState } from 'react';
import { useLocation } from 'wouter';
import { fitRead } from '#core/contract/fits.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { planningAidCell, Sheet } from '#renderer/controls/Sheet.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { fitsWords as words } from '#renderer/words/fitsWords.ts';
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
  const [, goTo] = useLocation();
  const [fit, setFit] = useState('50 H7/s6');
  const asked = useAsk(fitRead, fit.trim() === '' ? null : { fit });
  return (
    <Sheet
      title={words.title}
      sub={words.sub}
      actions={
        <>
          {PARTS.map((part) => (
            <Key key={part} letter={words.jumps[part].letter} onPress={() => goToPart(part)}>
              {words.jumps[part].text}
            </Key>
          ))}
          <Key letter="B" onPress={() => goTo('/shop')}>
            {words.toShop}
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
        <FitPart fit={fit} onFit={setFit} asked={asked} />
        <PressPart fit={fit} of={asked.value ?? null} onFit={setFit} />
        <PinJointPart />
        <StraightPart />
      </div>
    </Sheet>
  );
}
