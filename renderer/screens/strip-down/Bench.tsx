import { useEffect, useRef, useState } from 'react';
import { machineRead } from '#core/contract/machine.ts';
import type { ReplyOf } from '#core/contract/operation.ts';
import type { Gauge } from '#core/contract/shop.ts';
import { stripDownSave, type stripDownSheet } from '#core/contract/stripDown.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { Sheet as Paper } from '#renderer/controls/Sheet.tsx';
import { useToday, useWriting } from '#renderer/record.tsx';
import { StopBanner } from '#renderer/screens/machine/StopBanner.tsx';
import { askingFor, useDo } from '#renderer/useAsk.ts';
import { stripDownWords as words } from '#renderer/words/stripDownWords.ts';
import { openHours } from '../hours/openHours.ts';
import { MeasuringSheetKey } from '../old-sheets/MeasuringSheetKey.tsx';
import { Band } from './Band.tsx';
import { benchBlock } from './benchBlock.ts';
import { Foot } from './Foot.tsx';
import { Grid } from './Grid.tsx';
import { rowName } from './questions.ts';
import { DiscardAsk, MEANWHILE, MeanwhileAsk, SaveFault, SaveKeys, TypedMeanwhileAsk } from './SaveKeys.tsx';
import { draftOf, emptySheet, isBlank, readDial, type Sheet, sheetOf, tallyOf } from './sheet.ts';
import { typedMeanwhile, useKept } from './useKept.ts';
import { useTyping } from './useTyping.ts';

/** `measured`: the points that had a size, a renewal or both in the visit */
export type Saved = ReplyOf<typeof stripDownSave> & { takenOn: string; measured: number[] };

/** The grid at the bench: one machine's measuring points, typed, questioned, kept, saved. */
export function Bench({
  machineId,
  title,
  sub,
  sheetAsked,
  gauges,
  fitters,
  onSaved,
  onDiscarded,
  onOther,
}: {
  machineId: number;
  title: string;
  sub: string;
  sheetAsked: ReplyOf<typeof stripDownSheet>;
  gauges: readonly Gauge[];
  fitters: readonly string[];
  onSaved: (saved: Saved) => void;
  onDiscarded: () => void;
  /** what another window has typed on this sheet is wanted in its place */
  onOther: () => void;
}) {
  const today = useToday();
  const writing = useWriting();
  const { rows, openFindings, lastStripDownId, draftKeptAt } = sheetAsked;
  const { kept, keeper } = useKept(machineId, draftKeptAt);
  const save = useDo(stripDownSave, () => askingFor(machineRead, { machineId }));

  const [sheet, setSheet] = useState<Sheet>(() =>
    sheetAsked.draft
      ? sheetOf(sheetAsked.draft, rows, writing)
      : emptySheet(machineId, today, fitters.length === 1 ? (fitters[0] ?? '') : '', writing, lastStripDownId),
  );
  const latest = useRef(sheet);
  const [dialSure, setDialSure] = useState(false);
  const [discarding, setDiscarding] = useState(false);
  const band = useRef<HTMLDivElement>(null);
  const saveKey = useRef<HTMLDivElement>(null);

  const change = (next: (sheet: Sheet) => Sheet) => {
    const was = latest.current;
    latest.current = next(was);
    if (latest.current === was) return;
    setSheet(latest.current);
    const { draft } = draftOf(latest.current, rows);
    if (draft && !(isBlank(latest.current) && isBlank(was))) keeper.keep(draft);
  };
  const typing = useTyping({
    sheet,
    rows,
    writing,
    change,
    onHours: () => openHours({ machineId }),
    onEnd: () => saveKey.current?.querySelector<HTMLElement>('.key.first')?.focus(),
  });
  const { draft, remarks, boxes, event, here, swapFrom } = typing;

  // the first box to be typed has the focus when the sheet opens
  useEffect(() => {
    const first = typing.nextAfter(null);
    if (first) typing.focus(first);
  }, []);

  const onDialAnswer = (choice: string) => {
    const { dialHours } = readDial(sheet.dialText);
    if (choice === 'typed-wrong') band.current?.querySelector<HTMLElement>('input.number')?.focus();
    else if (choice === 'new-meter' || choice === 'rollover' || choice === 'estimate') {
      openHours({ machineId, kind: choice, ...(dialHours !== null && { dialHours }) });
    } else setDialSure(true);
  };

  const saving = useRef(false);
  const saveAll = async (anotherSure = false) => {
    if (!draft) {
      band.current?.querySelector<HTMLElement>('input')?.focus();
      return;
    }
    // a dial that cannot be read is no dial left out
    if (remarks.some(({ field }) => field === 'dial')) {
      band.current?.querySelector<HTMLElement>('input.number')?.focus();
      return;
    }
    if (saving.current) return;
    saving.current = true;
    await keeper.shut();
    const reply = await save.run({ ...draft, dialSure, anotherSure, typedSince: keeper.knows });
    if (!reply) {
      saving.current = false;
      return keeper.reopen();
    }
    keeper.saved(reply.stripDownId);
    onSaved({
      ...reply,
      takenOn: draft.takenOn,
      measured: [...draft.sizes, ...draft.renewals].map(({ pointId }) => pointId),
    });
  };
  const throwAway = async () => {
    if ((await keeper.discard(machineId)) === null) onDiscarded();
    else keeper.reopen();
  };
  useSaveByKeys(() => void saveAll());
  const meanwhile = typedMeanwhile([save.fault, kept.fault]);
  const keepThis = (keptAt: string) => {
    keeper.know(keptAt);
    save.clear();
    keeper.flush();
  };
  const takeOther = async () => {
    await keeper.shut();
    onOther();
  };

  const nextBox = here && typing.nextAfter(here);
  const nextRow = nextBox && rows[nextBox.row];
  const nextName = nextRow ? [rowName(nextRow, rows), nextBox.station].filter(Boolean).join(': ') : null;
  const swapRow = swapFrom && rows[swapFrom.row];
  return (
    <Paper
      title={title}
      sub={sub}
      bench
      bleed
      actions={
        <SaveKeys
          event={event}
          saveBox={saveKey}
          disabled={isBlank(sheet) || save.busy}
          onEvent={typing.setEvent}
          onSave={() => void saveAll()}
        />
      }
      banner={
        <>
          <StopBanner machineId={machineId} />
          {meanwhile ? (
            <TypedMeanwhileAsk facts={meanwhile.facts} onTake={() => void takeOther()} onKeep={keepThis} />
          ) : save.fault?.code === MEANWHILE ? (
            <MeanwhileAsk
              facts={save.fault.facts}
              onSaveToo={() => void saveAll(true)}
              onDiscard={() => void throwAway()}
            />
          ) : (
            <SaveFault fault={save.fault} writing={writing} />
          )}
          {discarding && !meanwhile && !isBlank(sheet) && (
            <DiscardAsk onYes={() => void throwAway()} onNo={() => setDiscarding(false)} />
          )}
        </>
      }
      block={benchBlock({ kept, blank: isBlank(sheet), remarks, nextName, allIn: here !== null && nextBox === null })}
    >
      <Band
        sheet={sheet}
        today={today}
        writing={writing}
        fitters={fitters}
        expectedDialHours={sheetAsked.dialHours}
        dialMachine={sheetAsked.dialMachine}
        dialQuestion={dialSure ? null : typing.judged.dialQuestion}
        dayBox={band}
        onSheet={(next) => {
          if (next.dialText !== sheet.dialText) setDialSure(false);
          change(() => next);
        }}
        onDialAnswer={onDialAnswer}
      />
      <Grid rows={rows} gauges={gauges} openFindings={openFindings} {...typing.grid} />
      <div className="bench-note">
        <label htmlFor="bench-note">{words.note}</label>
        <textarea
          id="bench-note"
          rows={2}
          maxLength={2000}
          value={sheet.note}
          onChange={(e) => change((s) => ({ ...s, note: e.target.value }))}
        />
        <div className="keys">
          <MeasuringSheetKey machineId={machineId} />
          <Key disabled={isBlank(sheet) || save.busy} onPress={() => setDiscarding(true)}>
            {words.discard}
          </Key>
        </div>
      </div>
      <Foot
        event={event}
        tally={tallyOf(sheet, event, boxes, typing.open.length)}
        swapping={swapRow ? [rowName(swapRow, rows), swapFrom.station].filter(Boolean).join(', ') : null}
      />
    </Paper>
  );
}

/** Ctrl and Enter save from anywhere on the sheet, also from inside a box. */
function useSaveByKeys(save: () => void): void {
  const latest = useRef(save);
  latest.current = save;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Enter' || !(event.ctrlKey || event.metaKey) || event.repeat) return;
      event.preventDefault();
      latest.current();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}
