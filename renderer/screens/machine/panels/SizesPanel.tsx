import { Fragment, useState } from 'react';
import { useLocation } from 'wouter';
import type { PointSheet } from '#core/contract/machine.ts';
import { day } from '#core/units/day.ts';
import { dayText, gaugeErrorFigure, hoursFigure, hoursText, lengthUnit } from '#core/words/quantityText.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { Empty } from '#renderer/controls/Notice.tsx';
import { useWriting } from '#renderer/record.tsx';
import { Figures } from '#renderer/words/Figures.tsx';
import { pointName } from '#renderer/words/machinesWords.ts';
import { basisSentence, panelWords, sizeText } from '#renderer/words/machineWords.ts';
import { renewalKindText } from '#renderer/words/renewalWords.ts';
import { PutInAsked } from './PutInAsked.tsx';
import { SizeForm } from './SizeForm.tsx';
import { readBefore, type SizeLine, sizeLines, stationColumns, struckAlone } from './sizeRows.ts';

type Visit = PointSheet['visits'][number];
type Station = Visit['stations'][number];

/** Every size of the chosen point, newest first, with what was put right struck beside it. A size is pressed to mend it. */
export function SizesPanel({ point, machineId }: { point: PointSheet; machineId: number }) {
  const writing = useWriting();
  const [, goTo] = useLocation();
  const [mending, setMending] = useState<number | null>(firstQuestioned(point));
  const name = `${point.item} ${pointName(point)}`;
  if (point.visits.length === 0 && point.putRight.length === 0) {
    return (
      <>
        <PutInAsked point={point} machineId={machineId} />
        <Empty
          head={`${name}: ${panelWords.noSizes.toLowerCase()}`}
          keys={<Key onPress={() => goTo(`/strip-down/${machineId}`)}>{panelWords.startStripDown}</Key>}
        >
          <Figures>{panelWords.noSizesNext(basisSentence(point.forecast))}</Figures>
        </Empty>
      </>
    );
  }
  const columns = stationColumns(point);
  const signed = point.visits.some((visit) => visit.by !== '');
  const across = columns.length + (signed ? 6 : 5);
  return (
    <>
      <PutInAsked point={point} machineId={machineId} />
      <table className="table sizes-table">
        <caption>{panelWords.sizesOf(name, lengthUnit(writing))}</caption>
        <thead>
          <tr>
            <th>{panelWords.day}</th>
            <th className="figures">{panelWords.machineHours}</th>
            <th className="figures">{panelWords.partHours}</th>
            {columns.map((station) => (
              <th key={station} className="figures">
                {station || panelWords.size}
              </th>
            ))}
            <th className="after-figures">{panelWords.event}</th>
            <th>{panelWords.gauge}</th>
            {signed && <th>{panelWords.by}</th>}
          </tr>
        </thead>
        <tbody>
          {sizeLines(point).map((line) =>
            line.kind === 'visit' ? (
              <Fragment key={`${line.visit.takenOn} ${line.visit.event}`}>
                <VisitRow
                  visit={line.visit}
                  struck={line.struck}
                  columns={columns}
                  signed={signed}
                  mending={mending}
                  onMend={setMending}
                />
                {mendingIn(line.visit, mending) && (
                  <MendRow
                    point={point}
                    visit={line.visit}
                    sizeId={mending}
                    across={across}
                    onAsked={setMending}
                    onClose={() => setMending(null)}
                  />
                )}
              </Fragment>
            ) : (
              <RenewalRow
                key={`renewal ${line.renewal.takenOn}`}
                renewal={line.renewal}
                measures={point.measures}
                across={across}
              />
            ),
          )}
          {struckAlone(point).map((old) => (
            <tr key={`${old.takenOn} ${old.sizeMm}`}>
              <td className="nw">{dayText(day(old.takenOn))}</td>
              <td className="figures">{hoursFigure(old.machineHours)}</td>
              <td colSpan={across - 2}>
                <Struck old={old} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="table-note">{panelWords.worst}</p>
    </>
  );
}

const firstQuestioned = (point: PointSheet): number | null =>
  point.visits.flatMap((visit) => visit.stations).find((station) => station.parked)?.sizeId ?? null;

const mendingIn = (visit: Visit, mending: number | null): mending is number =>
  mending !== null && visit.stations.some((station) => station.sizeId === mending);

type VisitRowProps = {
  visit: Visit;
  struck: Extract<SizeLine, { kind: 'visit' }>['struck'];
  columns: readonly string[];
  /** somebody's name stands beside a visit */
  signed: boolean;
  mending: number | null;
  onMend: (sizeId: number | null) => void;
};

function VisitRow({ visit, struck, columns, signed, mending, onMend }: VisitRowProps) {
  const writing = useWriting();
  return (
    <>
      <tr className={struck.length > 0 ? 'continues' : undefined}>
        <td className="nw">{dayText(day(visit.takenOn))}</td>
        <td className="figures">{hoursFigure(visit.machineHours)}</td>
        <td className="figures">{hoursFigure(visit.partHours)}</td>
        {columns.map((column, i) => (
          <td key={column} className="figures">
            {i === 0 && visit.stations.length === 0 && visit.governingSizeMm !== null && (
              <b>{sizeText(visit.governingSizeMm, writing)}</b>
            )}
            {visit.stations
              .filter(({ station }) => station === column)
              .map((station) => (
                <SizeKey
                  key={station.sizeId}
                  station={station}
                  on={visit.takenOn}
                  pressed={station.sizeId === mending}
                  onPress={() => onMend(station.sizeId === mending ? null : station.sizeId)}
                />
              ))}
          </td>
        ))}
        <td className="after-figures">{panelWords.events[visit.event]}</td>
        <td className="nw">{[visit.gauge, gaugeErrorFigure(visit.errorSdMm, writing)].filter(Boolean).join(' ')}</td>
        {signed && <td>{visit.by}</td>}
      </tr>
      {struck.length > 0 && (
        <tr>
          <td />
          <td colSpan={columns.length + (signed ? 5 : 4)}>
            {struck.map((old) => (
              <Struck key={`${old.sizeMm} ${old.putRightOn}`} old={old} />
            ))}
          </td>
        </tr>
      )}
    </>
  );
}

/** A size as a key: underlined when it governs, in a dashed box while it is questioned. */
function SizeKey({
  station,
  on,
  pressed,
  onPress,
}: {
  station: Station;
  on: string;
  pressed: boolean;
  onPress: () => void;
}) {
  const writing = useWriting();
  const size = sizeText(station.sizeMm, writing);
  const kind = station.parked ? 'parked' : station.governs ? 'governs' : '';
  return (
    <button
      type="button"
      className={`size-key ${kind}`}
      aria-expanded={pressed}
      aria-label={[
        panelWords.putRightLabel(size, station.station, dayText(day(on))),
        station.parked ? panelWords.questioned : '',
      ]
        .filter(Boolean)
        .join(', ')}
      onClick={onPress}
    >
      {size}
      {station.parked && ' ?'}
    </button>
  );
}

function MendRow({
  point,
  visit,
  sizeId,
  across,
  onAsked,
  onClose,
}: {
  point: PointSheet;
  visit: Visit;
  sizeId: number;
  across: number;
  onAsked: (sizeId: number) => void;
  onClose: () => void;
}) {
  const station = visit.stations.find((size) => size.sizeId === sizeId);
  if (!station) return null;
  return (
    <tr className="form-row">
      <td colSpan={across}>
        <SizeForm
          key={sizeId}
          station={station}
          takenOn={visit.takenOn}
          before={readBefore(point, visit, station.station)}
          onAsked={onAsked}
          onClose={onClose}
        />
      </td>
    </tr>
  );
}

function RenewalRow({
  renewal,
  measures,
  across,
}: {
  renewal: PointSheet['renewals'][number];
  measures: PointSheet['measures'];
  across: number;
}) {
  const writing = useWriting();
  const asBuilt = renewal.known && renewal.machineHours < AS_BUILT_HOURS;
  const words = asBuilt
    ? panelWords.fittedAsBuilt
    : panelWords.fitted(
        renewal.known,
        hoursText(renewal.fromMachineHours),
        hoursText(renewal.toMachineHours),
        hoursText(renewal.machineHours),
      );
  const size =
    renewal.sizeMm === null ? '' : panelWords.newSize(sizeText(renewal.sizeMm, writing), lengthUnit(writing));
  const what =
    renewal.kind === null || renewal.kind === 'new-part' ? '' : `, ${renewalKindText(renewal.kind, measures)}`;
  return (
    <tr className="renewal-row">
      <td className="nw">{asBuilt ? '' : dayText(day(renewal.takenOn))}</td>
      <td className="figures">{hoursFigure(renewal.machineHours)}</td>
      <td colSpan={across - 2}>
        <svg width="14" height="10" aria-hidden="true" className="picture datum">
          <path className={renewal.known ? 'ink' : 'datum-open'} d="M1.5 9L7 1L12.5 9Z" />
        </svg>
        <Figures>{`${words}${size}${what}`}</Figures>
      </td>
    </tr>
  );
}

/** Fitted before the machine had run this long: it came with it, and no day is known [h]. */
const AS_BUILT_HOURS = 1;

function Struck({ old }: { old: PointSheet['putRight'][number] }) {
  const writing = useWriting();
  const size = sizeText(old.sizeMm, writing);
  const words = panelWords.struck(
    size,
    dayText(day(old.putRightOn)),
    old.newSizeMm === null ? null : sizeText(old.newSizeMm, writing),
  );
  return (
    <div className="struck-line">
      <s>{size}</s>
      {words.slice(size.length)}
    </div>
  );
}
