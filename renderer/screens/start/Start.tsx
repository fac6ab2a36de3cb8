import { type ReactNode, useState } from 'react';
import { useLocation } from 'wouter';
import {
  type RecordState,
  recordBackUp,
  recordOpen,
  recordOpenDemo,
  recordRestore,
  recordStartEmpty,
  recordState,
} from '#core/contract/record.ts';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox, Notice } from '#renderer/controls/Notice.tsx';
import { Sheet, type TitleCell } from '#renderer/controls/Sheet.tsx';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { type FaultSaid, faultText } from '#renderer/words/faultText.ts';
import { recordFaults } from '#renderer/words/recordFaults.ts';
import { startWords as words } from '#renderer/words/startWords.ts';
import { BringBack } from '../exchange/BringBack.tsx';
import { BringIn } from './BringIn.tsx';
import { OpenFile } from './OpenFile.tsx';
import { PlaceKeys } from './PlaceKeys.tsx';
import { Restore } from './Restore.tsx';
import './start.css';

type Opened = 'bring-in' | 'bring-back' | 'open' | 'restore' | null;

/** How to begin: shown while no record is open, and from Shop for changing to another. */
export default function Start() {
  const [, goTo] = useLocation();
  const record = useAsk(recordState, {});
  const demo = useDo(recordOpenDemo);
  const empty = useDo(recordStartEmpty);
  const open = useDo(recordOpen);
  const restore = useDo(recordRestore);
  const backUp = useDo(recordBackUp);
  const [opened, setOpened] = useState<Opened>(null);
  const [anew, setAnew] = useState<RecordState | null>(null);
  const [backedUp, setBackedUp] = useState<string | null>(null);
  const busy = demo.busy || empty.busy || open.busy || restore.busy || backUp.busy;
  const state = record.value;
  const isOpen = state?.open ?? false;

  const then = (opening: Promise<RecordState | null>) => void opening.then((reply) => reply && goTo('/'));
  const leave = () => setOpened(null);
  return (
    <Sheet
      title={isOpen ? words.titleOpen : words.title}
      sub={isOpen ? state?.path : words.sub}
      actions={
        isOpen && (
          <Key letter="M" onPress={() => goTo('/')}>
            {words.toMachines}
          </Key>
        )
      }
      {...(state && { block: blockOf(state) })}
    >
      <div className="start">
        {state && <Trouble state={state} />}
        {!isOpen && <p className="start-job">{words.job}</p>}
        {isOpen && (
          <Way
            letter="B"
            first
            text={words.backUp}
            what={words.backUpWhat}
            disabled={busy}
            onPress={() => void backUp.run({}).then((made) => made && setBackedUp(made.file))}
          >
            {backedUp && <Notice head={words.backedUp(backedUp)} />}
            {backUp.fault && <FaultBox fault={backUp.fault} />}
          </Way>
        )}
        <Way
          letter="D"
          text={words.demo}
          what={words.demoWhat}
          disabled={busy}
          first={!isOpen}
          onPress={() => void demo.run({}).then((reply) => (laidDownAnew(reply) ? setAnew(reply) : reply && goTo('/')))}
        >
          {demo.busy && <FillingRule words={words.waiting} />}
          {demo.fault && <FaultBox fault={demo.fault} />}
          {anew && <Anew state={anew} onGo={() => goTo('/')} />}
        </Way>
        <Way
          letter="E"
          text={words.empty}
          what={state ? (isOpen ? words.emptyWhatBeside : words.emptyWhat(state.defaultPath)) : words.emptyWhatBare}
          disabled={busy}
          onPress={() => then(empty.run({}))}
        >
          {empty.fault && <FaultBox fault={empty.fault} />}
        </Way>
        <Way
          letter="C"
          text={words.bringIn}
          what={words.bringInWhat}
          disabled={busy}
          onPress={() => setOpened('bring-in')}
        >
          {opened === 'bring-in' && <BringIn onLeave={leave} />}
        </Way>
        <Way
          letter="X"
          text={words.bringBack}
          what={isOpen ? words.bringBackWhatBeside : words.bringBackWhat}
          disabled={busy}
          onPress={() => setOpened('bring-back')}
        >
          {opened === 'bring-back' && <BringBack letter="Z" onDone={() => goTo('/')} />}
        </Way>
        <Way letter="O" text={words.open} what={words.openWhat} disabled={busy} onPress={() => setOpened('open')}>
          {opened === 'open' && (
            <OpenFile
              name={words.open}
              verb={words.openIt}
              recent={(state?.recent ?? []).filter((path) => path !== state?.path)}
              busy={busy}
              fault={open.fault}
              onOpen={(path) => then(open.run({ path }))}
              onLeave={leave}
            />
          )}
        </Way>
        <Way
          letter="R"
          text={words.restore}
          what={words.restoreWhat}
          disabled={busy}
          onPress={() => setOpened('restore')}
        >
          {opened === 'restore' && (
            <Restore
              open={isOpen}
              busy={busy}
              fault={restore.fault}
              onRestore={(file) => then(restore.run({ file }))}
              onLeave={leave}
            />
          )}
        </Way>
        {record.fault && <FaultBox fault={record.fault} />}
      </div>
    </Sheet>
  );
}

const laidDownAnew = (state: RecordState | null) => state?.warnings.find(({ code }) => code === 'demo-laid-down-anew');

/** The demo is another one than before: said before it is gone to. */
function Anew({ state, onGo }: { state: RecordState; onGo: () => void }) {
  const warning = laidDownAnew(state);
  if (!warning) return null;
  const { what, safe } = said(warning);
  return (
    <Notice
      head={what}
      keys={
        <Key first autoFocus onPress={onGo}>
          {words.toMachines}
        </Key>
      }
    >
      {safe}
    </Notice>
  );
}

/** Why the record the program was started with is not open, and what endangers the one that is. */
const Trouble = ({ state }: { state: RecordState }) => (
  <>
    {state.trouble && <FaultBox said={{ ...said(state.trouble), safe: words.troubleNext }} />}
    {state.warnings.map((warning) => {
      const { what, safe, next } = said(warning);
      return (
        <Notice
          key={warning.code}
          kind="waiting"
          head={what}
          keys={warning.code === 'record-may-be-synced' && <PlaceKeys />}
        >
          {[safe, next].filter(Boolean).join(' ')}
        </Notice>
      );
    })}
  </>
);

const said = ({ code, facts }: RecordState['warnings'][number]): FaultSaid => ({
  safe: '',
  next: '',
  ...(recordFaults[code]?.(facts) ?? faultText({ code, facts })),
});

/** One way to begin: its key, what it does, and what opens under it. */
function Way({
  letter,
  text,
  what,
  first = false,
  disabled,
  onPress,
  children,
}: {
  letter: string;
  text: string;
  what: string;
  first?: boolean;
  disabled: boolean;
  onPress: () => void;
  children?: ReactNode;
}) {
  return (
    <div className="way">
      <Key letter={letter} first={first} disabled={disabled} onPress={onPress}>
        {text}
      </Key>
      <p>{what}</p>
      <div className="way-opened">{children}</div>
    </div>
  );
}

function blockOf(state: RecordState): TitleCell[] {
  const { machines, sizes } = state.counts;
  return [
    { label: words.block.record, value: state.open ? (state.path?.split(/[\\/]/).at(-1) ?? '') : words.block.none },
    ...(state.open
      ? [
          { label: words.block.holds, value: words.holds(machines, sizes) },
          { label: words.block.schema, value: words.block.version(state.schemaVersion) },
          ...(state.isDemo ? [{ label: words.block.demo, value: words.block.isDemo }] : []),
        ]
      : []),
    { label: words.block.day, value: state.today },
    { label: words.block.safe, value: words.block.safeIs, grow: true },
  ];
}
