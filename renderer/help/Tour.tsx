import { useEffect } from 'react';
import { useLocation } from 'wouter';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { useRecord } from '#renderer/record.tsx';
import { tourSteps, tourWords as words } from '#renderer/words/tourWords.ts';
import { goToStep, leaveTour, useTour } from './tour.ts';
import './help.css';

/** The tour, over the sheet it speaks of: offered once on the demo, left at any step, started again under Help. */
export function Tour() {
  const tour = useTour();
  const { isDemo } = useRecord();
  if (!isDemo || tour.is === 'out') return null;
  return tour.is === 'offered' ? <Offer /> : <Step step={Math.min(tour.step, tourSteps.length - 1)} />;
}

function Offer() {
  return (
    <section className="help-strip" aria-label={words.region}>
      <div>
        <h2>{words.offerHead}</h2>
        <p>{words.offer}</p>
      </div>
      <Keys>
        <Key first letter="F2" onPress={() => goToStep(0)}>
          {words.start}
        </Key>
        <Key letter="F4" onPress={leaveTour}>
          {words.notNow}
        </Key>
      </Keys>
    </section>
  );
}

function Step({ step }: { step: number }) {
  const [, goTo] = useLocation();
  const { at, head, text } = tourSteps[step] as (typeof tourSteps)[number];
  useEffect(() => goTo(at), [at, goTo]);
  const isLast = step === tourSteps.length - 1;
  return (
    <section className="help-strip" aria-label={words.region}>
      <div role="status">
        <small>{words.count(step + 1, tourSteps.length)}</small>
        <h2>{head}</h2>
        <p>{text}</p>
      </div>
      <Keys>
        <Key letter="F3" disabled={step === 0} onPress={() => goToStep(step - 1)}>
          {words.back}
        </Key>
        {!isLast && (
          <Key first letter="F2" onPress={() => goToStep(step + 1)}>
            {words.next}
          </Key>
        )}
        <Key first={isLast} letter="F4" onPress={leaveTour}>
          {isLast ? words.done : words.leave}
        </Key>
      </Keys>
    </section>
  );
}
