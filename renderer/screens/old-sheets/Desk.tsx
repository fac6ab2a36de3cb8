import { useEffect, useRef, useState } from 'react';
import {
  type OldSheet,
  oldSheetsEnd,
  type oldSheetsRead,
  oldSheetsSave,
  sizesQuestioned,
} from '#core/contract/oldSheets.ts';
import type { ReplyOf } from '#core/contract/operation.ts';
import type { shopRead } from '#core/contract/shop.ts';
import { isDay } from '#core/units/day.ts';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key, Letter } from '#renderer/controls/Key.tsx';
import { Empty } from '#renderer/controls/Notice.tsx';
import { Sheet as Paper } from '#renderer/controls/Sheet.tsx';
import { useToday, useWriting } from '#renderer/record.tsx';
import { StopBanner } from '#renderer/screens/machine/StopBanner.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { oldSheetsWords as words } from '#renderer/words/oldSheetsWords.ts';
import { openHours } from '../hours/openHours.ts';
import { boxKey } from '../strip-down/boxes.ts';
import { Grid } from '../strip-down/Grid.tsx';
import { emptySheet, isBlank, readDial, type Sheet, sheetOf, withText } from '../strip-down/sheet.ts';
import { typedMeanwhile, useKept } from '../strip-down/useKept.ts';
import '../strip-down/strip-down.css';
import { useTyping } from '../strip-down/useTyping.ts';
import { AddPoint } from './AddPoint.tsx';
import { BatchSide } from './BatchSide.tsx';
import { DeskBand } from './DeskBand.tsx';
import { DeskFoot } from './DeskFoot.tsx';
import { DeskQuestions } from './DeskQuestions.tsx';
import { deskBlock } from './deskBlock.ts';
import { NewMachine } from './NewMachine.tsx';
import { SwapStrip } from './SwapStrip.tsx';
import { useAskedAnewOnLeaving, useDeskDo, useGrid } from './useDesk.ts';
import { useSaveKeys } from './useSaveKeys.ts';

/** Which box takes the focus next: of the band by its place, of the grid by its point once that is there. */
type FocusOn = { field: number } | { pointId: number } | Record<string, never>;

/** What stands between the band and the grid. */
/** Letters the desk has beside those of the bench, and the strip each opens. */
const DESK_LETTERS: Record<string, 'add-point' | 'swap'> = { A: 'add-point', W: 'swap' };

type Strip = { is: 'new-machine'; name: string } | { is: 'add-point' } | { is: 'swap' } | null;

/** The desk: one old sheet after another, of one machine or of many. */
export function Desk({
  batch,
  shop,
  onEnded,
}: {
  batch: ReplyOf<typeof oldSheetsRead>;
  shop: ReplyOf<typeof shopRead>;
  onEnded: (sheets: readonly OldSheet[], by: string) => void;
}) {
  const today = useToday();
  const writing = useWriting();
  const fitters = shop.fitters.filter(({ active }) => active).map(({ name }) => name);
  const [machineId, setMachineId] = useState<number | null>(null);
  const [sheet, setSheet] = useState<Sheet>(() =>
    emptySheet(0, '', fitters.length === 1 ? (fitters[0] ?? '') : '', writing),
  );
  /** a new sheet is new boxes: nothing of the last one stays in them */
  const [serial, setSerial] = useState(0);
  const [version, setVersion] = useState(0);
  const [strip, setStrip] = useState<Strip>(null);
  const [dialSure, setDialSure] = useState(false);
  /** day of a sheet found typed and not saved */
  const [wasHere, setWasHere] = useState<string | null>(null);
  const [focusOn, setFocusOn] = useState<FocusOn>({ field: 0 });
  const loaded = useRef<string | null>(null);
  const machineBox = useRef<HTMLInputElement>(null);
  const band = useRef<HTMLDivElement>(null);
  const keys = useRef<HTMLDivElement>(null);
  const {
    grid,
    version: gridVersion,
    fault,
  } = useGrid(machineId, isDay(sheet.takenOn) ? sheet.takenOn : null, version);
  const rows = grid?.rows ?? [];
  const { kept, keeper } = useKept(machineId ?? 0);
  const save = useDeskDo(oldSheetsSave);
  const end = useDeskDo(oldSheetsEnd);
  const questioned = useAsk(sizesQuestioned, { machineId: null });
  useAskedAnewOnLeaving();

  const latest = useRef(sheet);
  latest.current = sheet;
  const change = (next: (sheet: Sheet) => Sheet) => {
    const was = latest.current;
    const now = next(was);
    if (now === was) return;
    latest.current = now;
    setSheet(now);
    const { draft } = typing.draftNow(now);
    if (draft && machineId !== null && !(isBlank(now) && isBlank(was))) keeper.keep(draft);
  };
  const typing = useTyping({
    sheet,
    rows,
    writing,
    change: (next) => change(next),
    onHours: () => openHours(machineId === null ? {} : { machineId }),
    onOtherLetter: (letter) => {
      const opens = DESK_LETTERS[letter];
      if (opens) setStrip({ is: opens });
      return opens !== undefined;
    },
    onEnd: () => keys.current?.querySelector<HTMLElement>('.key.first')?.focus(),
  });

  // the first thing a sheet says is whose it is; after that, where the last step left off, once its boxes are drawn
  useEffect(() => {
    if ('field' in focusOn)
      band.current?.querySelectorAll<HTMLElement>('input:not([type=radio])')[focusOn.field]?.focus();
  }, [focusOn]);
  // once, when the added point has come into the grid
  useEffect(() => {
    const added = 'pointId' in focusOn && typing.boxes.find(({ pointId }) => pointId === focusOn.pointId);
    if (!added) return;
    typing.focus(added);
    setFocusOn({});
  }, [focusOn, grid]);

  // what was typed on that machine and not saved goes back into its boxes, once, when the grid has come
  useEffect(() => {
    if (!grid || machineId === null || gridVersion !== version) return;
    const key = `${machineId} ${serial}`;
    if (loaded.current === key) return;
    loaded.current = key;
    keeper.know(grid.draftKeptAt);
    const typed = grid.draft && sheetOf(grid.draft, grid.rows, writing);
    const isFound = typed !== null && !isBlank(typed);
    latest.current = isFound ? typed : { ...latest.current, afterStripDownId: grid.lastStripDownId };
    setSheet(latest.current);
    if (isFound) setWasHere(typed.takenOn);
    if (grid.rows.length === 0) setStrip({ is: 'add-point' });
  }, [grid, gridVersion, version, machineId, serial, writing, keeper]);

  const begin = (nextMachineId: number | null, keep: Partial<Sheet>) => {
    const next = { ...emptySheet(nextMachineId ?? 0, '', latest.current.fitter, writing), ...keep };
    latest.current = next;
    setSheet(next);
    setMachineId(nextMachineId);
    setStrip(null);
    setDialSure(false);
    setWasHere(null);
    save.clear();
    setVersion((was) => was + 1);
  };
  const pick = (id: number) => {
    const { takenOn, dialText } = latest.current;
    keeper.flush();
    begin(id, machineId === null ? { takenOn, dialText } : {});
    setSerial(serial + 1);
    focusBand(1);
  };
  const focusBand = (at: number) => setFocusOn({ field: at });
  const saveSheet = async (then: 'same' | 'other', anotherSure = false) => {
    const { draft } = typing;
    if (!draft) return focusBand(machineId === null ? 0 : 1);
    await keeper.shut();
    const reply = await save.run({ ...draft, dialSure, anotherSure, typedSince: keeper.knows });
    if (!reply) return keeper.reopen();
    keeper.beginAnew();
    setSerial(serial + 1);
    begin(then === 'same' ? machineId : null, {});
    focusBand(then === 'same' ? 1 : 0);
  };
  const discard = async () => {
    if (machineId === null) return;
    if (await keeper.discard(machineId)) return keeper.reopen();
    keeper.beginAnew();
    setSerial(serial + 1);
    begin(machineId, {});
    focusBand(1);
  };
  const keepThis = (keptAt: string) => {
    keeper.know(keptAt);
    save.clear();
    keeper.flush();
  };
  const takeOther = async () => {
    await keeper.shut();
    keeper.beginAnew();
    save.clear();
    setSerial(serial + 1);
    begin(machineId, {});
    focusBand(1);
  };
  const endBatch = async () => {
    const by = sheet.fitter.trim();
    if (await end.run({ by })) onEnded(batch.sheets, by);
  };
  const blank = isBlank(sheet);
  const canSave = machineId !== null && !save.busy && !(blank && readDial(sheet.dialText).dialHours === null);
  useSaveKeys(canSave ? (then) => void saveSheet(then) : null);

  const picked = batch.machines.find((machine) => machine.machineId === machineId) ?? null;
  const by = sheet.fitter.trim();
  const inBatch = new Set(batch.sheets.map((one) => one.machineId));
  const waiting = (questioned.value?.sizes ?? []).filter((size) => inBatch.has(size.machineId));
  return (
    <Paper
      title={words.title}
      sub={words.sub(batch.sheets.length)}
      bleed
      actions={
        <div className="keys" ref={keys}>
          <Key disabled={end.busy || batch.sheets.length === 0} onPress={() => void endBatch()}>
            {words.end}
          </Key>
          <Key disabled={!canSave} onPress={() => void saveSheet('other')}>
            {words.other}
            <Letter>{words.otherKeys}</Letter>
          </Key>
          <Key first disabled={!canSave} onPress={() => void saveSheet('same')}>
            {words.next}
            <Letter>{words.nextKeys}</Letter>
          </Key>
        </div>
      }
      banner={
        <>
          <div ref={band} key={serial}>
            <DeskBand
              machines={batch.machines}
              picked={picked}
              machineBox={machineBox}
              sheet={sheet}
              event={typing.event}
              today={today}
              writing={writing}
              fitters={fitters}
              aboutDialHours={isDay(sheet.takenOn) ? (grid?.dialHours ?? null) : null}
              onPick={pick}
              onNew={(name) => setStrip({ is: 'new-machine', name })}
              onSheet={(next) => {
                if (next.dialText !== undefined) setDialSure(false);
                change((s) => ({ ...s, ...next }));
              }}
              onEvent={typing.setEvent}
              onDone={typing.focusFirst}
            />
          </div>
          <StopBanner machineId={machineId} />
          <DeskQuestions
            faults={[save.fault, end.fault, fault]}
            meanwhile={typedMeanwhile([save.fault, kept.fault])}
            onTakeOther={() => void takeOther()}
            onKeepThis={keepThis}
            onSaveToo={() => void saveSheet('same', true)}
            writing={writing}
            dialQuestion={dialSure || sheet.dialText.trim() === '' ? null : typing.judged.dialQuestion}
            twiceOn={picked?.stripDownDays.includes(sheet.takenOn as never) ? sheet.takenOn : null}
            wasHere={wasHere}
            onDiscard={() => void discard()}
            onDialAnswer={(choice) => {
              const { dialHours } = readDial(sheet.dialText);
              if (choice === 'typed-wrong') focusBand(2);
              else if (choice === 'right-as-read') setDialSure(true);
              else if (choice === 'new-meter' || choice === 'rollover' || choice === 'estimate')
                openHours({
                  ...(machineId !== null && { machineId }),
                  kind: choice,
                  ...(dialHours !== null && { dialHours }),
                });
            }}
          />
          {strip?.is === 'new-machine' && (
            <NewMachine
              name={strip.name}
              kinds={shop.kinds}
              onTaken={pick}
              onLeave={() => {
                setStrip(null);
                machineBox.current?.focus();
              }}
            />
          )}
          {strip?.is === 'add-point' && machineId !== null && (
            <AddPoint
              key={version}
              machineId={machineId}
              rows={rows}
              partClasses={[
                ...new Set(
                  shop.kinds.flatMap((kind) => kind.positions.flatMap(({ points }) => points)).map((p) => p.partClass),
                ),
              ]}
              by={by}
              onAdded={(pointId) => {
                setVersion(version + 1);
                setStrip(null);
                setFocusOn({ pointId });
              }}
              onLeave={() => {
                setStrip(null);
                typing.focusFirst();
              }}
            />
          )}
          {strip?.is === 'swap' && (
            <SwapStrip
              rows={rows}
              from={typing.here?.pointId ?? null}
              sizeAt={({ pointId, station }) => sheet.texts[typing.event][boxKey(pointId, station)] ?? ''}
              onSwap={(pairs) => {
                change((s) => pairs.reduce((swapped, { one, other }) => withBothSwapped(swapped, one, other), s));
                setStrip(null);
                typing.focusFirst();
              }}
              onLeave={() => {
                setStrip(null);
                typing.focusFirst();
              }}
            />
          )}
        </>
      }
      block={deskBlock({ kept, sheet, machineId, waiting: waiting.length })}
    >
      <div className="desk">
        <div className="desk-grid">
          {machineId === null && strip === null && <Empty head={words.pickFirst}>{words.pickFirstNext}</Empty>}
          {machineId !== null && grid === null && !fault && <FillingRule words={words.loading} />}
          {grid !== null && rows.length === 0 && <Empty head={words.emptyMachine}>{words.emptyMachineNext}</Empty>}
          {rows.length > 0 && (
            <>
              <Grid rows={rows} gauges={shop.gauges} openFindings={grid?.openFindings ?? []} {...typing.grid} />
              <DeskFoot event={typing.event} sheet={sheet} boxes={typing.boxes} questioned={typing.open.length} />
            </>
          )}
        </div>
        <BatchSide
          batch={batch}
          waiting={waiting}
          machineId={machineId}
          writing={writing}
          by={by}
          onOpen={(id) => {
            keeper.flush();
            begin(id, {});
            setSerial(serial + 1);
          }}
        />
      </div>
    </Paper>
  );
}

/** Sizes of both events change places; each is a new claim. */
function withBothSwapped(
  sheet: Sheet,
  one: { pointId: number; station: string },
  other: { pointId: number; station: string },
): Sheet {
  const [a, b] = [boxKey(one.pointId, one.station), boxKey(other.pointId, other.station)];
  return (['as-found', 'as-left'] as const).reduce((s, event) => {
    const texts = s.texts[event];
    return withText(withText(s, event, a, texts[b] ?? ''), event, b, texts[a] ?? '');
  }, sheet);
}
