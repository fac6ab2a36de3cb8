import { useState } from 'react';
import { useLocation } from 'wouter';
import { stripDownRead, stripDownSwap } from '#core/contract/oldSheets.ts';
import type { ReplyOf } from '#core/contract/operation.ts';
import { hoursText, lengthUnit, sizeEcho, type Writing } from '#core/words/quantityText.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox, Notice } from '#renderer/controls/Notice.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { Sheet } from '#renderer/controls/Sheet.tsx';
import { RingSign } from '#renderer/marks/ItemRing.tsx';
import { useWriting } from '#renderer/record.tsx';
import { StopBanner } from '#renderer/screens/machine/StopBanner.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { useIdInAddress } from '#renderer/useIdInAddress.ts';
import { oldSheetsWords as words } from '#renderer/words/oldSheetsWords.ts';
import { ByField, useBy } from '../machine/panels/ByField.tsx';
import { columnNames, columnsOf } from '../strip-down/boxes.ts';
import { rowName } from '../strip-down/questions.ts';
import { SwapStrip } from './SwapStrip.tsx';
import type { Place, SwapPair } from './swapPairs.ts';
import { useDeskDo } from './useDesk.ts';
import './old-sheets.css';

type Saved = ReplyOf<typeof stripDownRead>;

/** A strip-down on record: its sizes as they stand, what was put right struck beside them, and a way to change them round. */
export default function SavedSheet() {
  const stripDownId = useIdInAddress('stripDownId');
  const saved = useAsk(stripDownRead, stripDownId === null ? null : { stripDownId });
  if (stripDownId && saved.value) return <OfSheet saved={saved.value} stripDownId={stripDownId} again={saved.again} />;
  return <NotYetSheet title={words.title} of={saved} words={words.loading} noSuch="unknown-strip-down" />;
}

function OfSheet({ saved, stripDownId, again }: { saved: Saved; stripDownId: number; again: () => void }) {
  const [, goTo] = useLocation();
  const writing = useWriting();
  const [by, setBy] = useBy();
  const swap = useDeskDo(stripDownSwap);
  const [swapping, setSwapping] = useState(false);
  const [done, setDone] = useState<ReplyOf<typeof stripDownSwap> | null>(null);
  const events = (['as-found', 'as-left'] as const).filter((event) => saved.sizes.some((size) => size.event === event));
  const textAt = (place: Place) =>
    events.map((event) => sizeText(saved, { ...place, event }, writing)).find((text) => text !== '') ?? '';
  const send = async (pairs: SwapPair[]) => {
    const reply = await swap.run({ stripDownId, pairs, reason: words.swapReason, by });
    if (!reply) return;
    setSwapping(false);
    setDone(reply);
    again();
  };
  const dial = saved.dialHours === null ? '' : hoursText(saved.dialHours);
  return (
    <Sheet
      title={words.savedOf(saved.machine)}
      sub={words.savedSub(saved.takenOn, dial, saved.fitter)}
      actions={
        <>
          <Key letter="M" onPress={() => goTo(`/machine/${saved.machineId}`)}>
            {words.toMachine}
          </Key>
          <Key letter="B" onPress={() => goTo('/old-sheets')}>
            {words.savedAgain}
          </Key>
          <Key first letter="W" disabled={swapping} onPress={() => setSwapping(true)}>
            {words.swap}
          </Key>
        </>
      }
      banner={
        <>
          <StopBanner machineId={saved.machineId} />
          {swap.fault && <FaultBox fault={swap.fault} />}
          {swapping && (
            <SwapStrip
              rows={saved.rows}
              from={null}
              sizeAt={textAt}
              onSwap={(pairs) => void send(pairs)}
              onLeave={() => setSwapping(false)}
            />
          )}
        </>
      }
      block={[
        { label: words.day, value: saved.takenOn },
        { label: words.dial, value: dial || '\u2013' },
        { label: words.fitter, value: saved.fitter || '\u2013' },
        { label: words.struckCell, value: words.struckIs, grow: true },
      ]}
    >
      {done && (
        <Notice head={words.swapped(done.moved)} kind={done.parked > 0 ? 'waiting' : 'plain'}>
          {done.parked > 0 && words.swappedParked(done.parked)}
        </Notice>
      )}
      <div className="desk-fields">
        <ByField value={by} onChange={setBy} />
      </div>
      {events.map((event) => (
        <SavedTable key={event} saved={saved} event={event} writing={writing} />
      ))}
      {saved.note !== '' && <p>{saved.note}</p>}
    </Sheet>
  );
}

function SavedTable({ saved, event, writing }: { saved: Saved; event: 'as-found' | 'as-left'; writing: Writing }) {
  const columns = columnsOf(saved.rows);
  return (
    <table className="table saved-sheet">
      <caption>{event === 'as-found' ? words.asFound : words.asLeft}</caption>
      <thead>
        <tr>
          <th scope="col">{words.savedPoint(lengthUnit(writing))}</th>
          {columnNames(saved.rows).map((names, i) => (
            <th key={i} scope="col" className="figures">
              {names.slice(0, 3).join(' or ')}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {saved.rows.map((row) => (
          <tr key={row.pointId}>
            <th scope="row">
              <div>
                <RingSign item={row.item} state="leave" />
                {rowName(row, saved.rows)}
              </div>
            </th>
            {Array.from({ length: columns }, (_, i) => {
              const station = row.stations[i]?.station;
              return (
                <td key={i} className="figures">
                  {station !== undefined && (
                    <SavedCell saved={saved} place={{ pointId: row.pointId, station, event }} writing={writing} />
                  )}
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

type PlaceOfEvent = Place & { event: 'as-found' | 'as-left' };

const sizesAt = (saved: Saved, { pointId, station, event }: PlaceOfEvent) =>
  saved.sizes.filter((size) => size.pointId === pointId && size.station === station && size.event === event);

function SavedCell({ saved, place, writing }: { saved: Saved; place: PlaceOfEvent; writing: Writing }) {
  const decimals = saved.rows.find(({ pointId }) => pointId === place.pointId)?.decimals ?? 2;
  const sizes = sizesAt(saved, place);
  return sizes.map((size) => (
    <div key={size.sizeId}>
      {size.sizeMm !== null && (
        <span className={size.parked ? 'parked' : undefined} title={size.parked ? words.waits : undefined}>
          {sizeEcho(size.sizeMm, decimals, writing)}
        </span>
      )}
      {size.was.map((was) => (
        <span key={was.at} className="was" title={words.was(sizeEcho(was.sizeMm, decimals, writing), was.reason)}>
          {sizeEcho(was.sizeMm, decimals, writing)}
        </span>
      ))}
    </div>
  ));
}

function sizeText(saved: Saved, place: PlaceOfEvent, writing: Writing): string {
  const decimals = saved.rows.find(({ pointId }) => pointId === place.pointId)?.decimals ?? 2;
  const standing = sizesAt(saved, place).find(({ sizeMm }) => sizeMm !== null);
  return standing?.sizeMm == null ? '' : sizeEcho(standing.sizeMm, decimals, writing);
}
