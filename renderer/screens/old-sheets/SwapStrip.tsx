import { useRef, useState } from 'react';
import { Choice } from '#renderer/controls/Choice.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { oldSheetsWords as words } from '#renderer/words/oldSheetsWords.ts';
import type { SheetRow } from '../strip-down/boxes.ts';
import { rowName } from '../strip-down/questions.ts';
import { likelyStations, type Place, pairsOfPoints, pairsOfStations, partnerOf, type SwapPair } from './swapPairs.ts';
import { useEnterTakes } from './useEnterTakes.ts';

const WHATS = [
  { value: 'points' as const, text: words.swapPoints },
  { value: 'stations' as const, text: words.swapStations },
];
const ALL = '';

/** Left and right, or front and rear, were mixed up on the paper: says what would change round, and does it. */
export function SwapStrip({
  rows,
  from,
  sizeAt,
  onSwap,
  onLeave,
}: {
  rows: readonly SheetRow[];
  /** point that was being looked at; null: the first */
  from: number | null;
  /** what stands in a place, as text; empty: nothing */
  sizeAt: (place: Place) => string;
  onSwap: (pairs: SwapPair[]) => void;
  onLeave: () => void;
}) {
  const first = rows.find(({ pointId }) => pointId === from) ?? rows[0];
  const ends = likelyStations(rows);
  const [what, setWhat] = useState<'points' | 'stations'>('points');
  const [one, setOne] = useState(first?.pointId ?? 0);
  const [other, setOther] = useState((first && partnerOf(rows, first)?.pointId) ?? rows[1]?.pointId ?? 0);
  const [stations, setStations] = useState<[string, string]>(ends ?? ['', '']);
  const [scope, setScope] = useState(ALL);
  const strip = useRef<HTMLElement>(null);
  const rowOf = (pointId: number) => rows.find((row) => row.pointId === pointId);
  const nameOf = (place: Place) => {
    const row = rowOf(place.pointId);
    return row ? [`${row.item} ${rowName(row, rows)}`, place.station].filter(Boolean).join(', ') : '';
  };
  const [rowOne, rowOther] = [rowOf(one), rowOf(other)];
  const all =
    what === 'stations'
      ? pairsOfStations(scope === ALL ? rows : rows.filter(({ pointId }) => String(pointId) === scope), ...stations)
      : rowOne && rowOther && one !== other
        ? pairsOfPoints(rowOne, rowOther)
        : [];
  const pairs = all.filter((pair) => sizeAt(pair.one) !== '' || sizeAt(pair.other) !== '');
  const onKeyDown = useEnterTakes(strip, () => pairs.length > 0 && onSwap(pairs), onLeave);
  return (
    <section ref={strip} className="desk-strip" aria-label={words.swap} onKeyDownCapture={onKeyDown}>
      <h2>{words.swap}</h2>
      <div className="desk-fields">
        {ends && <Choice label={words.swapWhat} options={WHATS} value={what} onChange={setWhat} />}
        {what === 'points' ? (
          <>
            <Pick
              label={words.swapOne}
              options={rows.map((row) => [String(row.pointId), `${row.item} ${rowName(row, rows)}`])}
              value={String(one)}
              onChange={(pointId) => {
                setOne(Number(pointId));
                const row = rowOf(Number(pointId));
                const partner = row && partnerOf(rows, row);
                if (partner) setOther(partner.pointId);
              }}
            />
            <Pick
              label={words.swapOther}
              options={rows.map((row) => [String(row.pointId), `${row.item} ${rowName(row, rows)}`])}
              value={String(other)}
              onChange={(pointId) => setOther(Number(pointId))}
            />
          </>
        ) : (
          <>
            <Pick
              label={words.swapOne}
              options={stationNames(rows).map((name) => [name, name])}
              value={stations[0]}
              onChange={(name) => setStations([name, stations[1]])}
            />
            <Pick
              label={words.swapOther}
              options={stationNames(rows).map((name) => [name, name])}
              value={stations[1]}
              onChange={(name) => setStations([stations[0], name])}
            />
            <Pick
              label={words.swapOf}
              options={[
                [ALL, words.swapAll],
                ...rows.map((row): [string, string] => [String(row.pointId), `${row.item} ${rowName(row, rows)}`]),
              ]}
              value={scope}
              onChange={setScope}
            />
          </>
        )}
      </div>
      <ul className="swap-moves" aria-live="polite">
        {pairs.length === 0 && <li className="second">{words.swapNothing}</li>}
        {pairs.map((pair) => (
          <li key={nameOf(pair.one)}>
            <span>{nameOf(pair.one)}</span>
            <b className="figures">{sizeAt(pair.one) || '\u2013'}</b>
            <svg width="26" height="12" aria-hidden="true">
              <path d="M1 6H25M6 1L1 6L6 11M20 1L25 6L20 11" fill="none" stroke="currentColor" strokeWidth="1.5" />
            </svg>
            <b className="figures">{sizeAt(pair.other) || '\u2013'}</b>
            <span>{nameOf(pair.other)}</span>
          </li>
        ))}
      </ul>
      <div className="keys">
        <Key first letter="Enter" disabled={pairs.length === 0} onPress={() => onSwap(pairs)}>
          {words.swapDo}
        </Key>
        <Key letter="Escape" onPress={onLeave}>
          {words.leave}
        </Key>
      </div>
    </section>
  );
}

const stationNames = (rows: readonly SheetRow[]): string[] => [
  ...new Set(rows.flatMap(({ stations }) => stations.map(({ station }) => station)).filter((name) => name !== '')),
];

function Pick({
  label,
  options,
  value,
  onChange,
}: {
  label: string;
  options: readonly (readonly [value: string, text: string])[];
  value: string;
  onChange: (value: string) => void;
}) {
  return (
    <label className="field swap-pick">
      <span>{label}</span>
      <select value={value} onChange={(event) => onChange(event.target.value)}>
        {options.map(([id, text]) => (
          <option key={id} value={id}>
            {text}
          </option>
        ))}
      </select>
    </label>
  );
}
