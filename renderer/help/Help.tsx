import { useEffect, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import { recordOpenDemo } from '#core/contract/record.ts';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { useAccelerator } from '#renderer/controls/useAccelerator.ts';
import { useRecord } from '#renderer/record.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { helpTopics, helpWords as words } from '#renderer/words/helpWords.ts';
import { tourWords } from '#renderer/words/tourWords.ts';
import { openHelp } from './helpOpen.ts';
import { topicsAt } from './topicsAt.ts';
import { goToStep } from './tour.ts';
import './help.css';

/** Help in the frame: a key beside the find box, F1 or ?, and a strip over the sheet that answers what is asked there. */
export function HelpKey({ onPress }: { onPress: () => void }) {
  useAccelerator('?', onPress);
  return (
    <span className="help-key">
      <Key letter="F1" onPress={onPress}>
        {words.key}
      </Key>
    </span>
  );
}

/** @param topic the one question it stands on; null: all that is asked on the screen */
export function HelpStrip({ topic, onClose }: { topic: string | null; onClose: () => void }) {
  const [here] = useLocation();
  const [asksForDemo, setAsksForDemo] = useState(false);
  const { isDemo } = useRecord();
  const cameFrom = useRef(document.activeElement);
  const strip = useRef<HTMLElement>(null);
  const close = () => {
    onClose();
    if (cameFrom.current instanceof HTMLElement && cameFrom.current.isConnected) cameFrom.current.focus();
  };
  useAccelerator('Escape', close);
  useEffect(() => strip.current?.querySelector('summary')?.focus(), []);
  const topics = topic === null ? topicsAt(here) : helpTopics.filter(({ id }) => id === topic);
  const start = () => {
    if (!isDemo) return setAsksForDemo(true);
    onClose();
    goToStep(0);
  };
  return (
    <section className="help-strip" aria-label={words.head} ref={strip}>
      <div>
        <h2>{words.head}</h2>
        {topics.map(({ id, ask, answer }) => (
          <details key={id} name="help" open={id === topic}>
            <summary>{ask}</summary>
            <p>{answer}</p>
          </details>
        ))}
      </div>
      {asksForDemo ? (
        <OpenDemo onOpen={onClose} />
      ) : (
        <Keys>
          {topic === null ? (
            <Key onPress={start}>{words.tour}</Key>
          ) : (
            <Key onPress={() => openHelp(here)}>{words.all}</Key>
          )}
          <Key letter="Escape" onPress={close}>
            {words.close}
          </Key>
        </Keys>
      )}
    </section>
  );
}

function OpenDemo({ onOpen }: { onOpen: () => void }) {
  const demo = useDo(recordOpenDemo);
  const open = async () => {
    if (!(await demo.run({}))) return;
    onOpen();
    goToStep(0);
  };
  return (
    <div>
      <p>
        <b>{tourWords.onDemo}</b> {tourWords.onDemoNext}
      </p>
      {demo.fault && <FaultBox fault={demo.fault} />}
      <Keys>
        <Key first disabled={demo.busy} onPress={() => void open()}>
          {tourWords.openDemo}
        </Key>
      </Keys>
    </div>
  );
}
