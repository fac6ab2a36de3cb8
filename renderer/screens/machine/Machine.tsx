import { useState } from 'react';
import { useLocation, useParams } from 'wouter';
import { type MachineSheet, machineRead } from '#core/contract/machine.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { Later } from '#renderer/controls/Later.tsx';
import { Empty } from '#renderer/controls/Notice.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { DoNotUseBanner, planningAidCell, Sheet, type TitleCell } from '#renderer/controls/Sheet.tsx';
import { HelpMark } from '#renderer/help/HelpMark.tsx';
import { BarKey } from '#renderer/marks/BarKey.tsx';
import { useWriting } from '#renderer/record.tsx';
import { openHours } from '#renderer/screens/hours/openHours.ts';
import { useListKeys } from '#renderer/screens/machines/useListKeys.ts';
import { MeasuringSheetKey } from '#renderer/screens/old-sheets/MeasuringSheetKey.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { useIdInAddress } from '#renderer/useIdInAddress.ts';
import { shared } from '#renderer/words/english.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { jobWords } from '#renderer/words/jobWords.ts';
import { machineWords, ownerLine } from '#renderer/words/machineWords.ts';
import { Hint } from './Hint.tsx';
import { MachinePicture } from './MachinePicture.tsx';
import { HoursPanel } from './panels/HoursPanel.tsx';
import { Panels } from './panels/Panels.tsx';
import { PANELS, usePanels } from './panels/usePanels.ts';
import { type Earlier, firstChosen, pictureOf, pointsInOrder, restsOn } from './pictureOf.ts';
import './machine.css';

/** All parts of one machine on one hours axis, the chosen one's wear under it, and what both rest on. */
export default function Machine() {
  const machineId = useIdInAddress('machineId');
  const asked = useAsk(machineRead, machineId === null ? null : { machineId });
  // asked anew for another machine the old one is still in hand: a machine is never shown under another's address
  if (asked.value?.machineId === machineId) return <OnMachine key={machineId} sheet={asked.value} />;
  return <NotYetSheet title={machineWords.machine} of={asked} words={machineWords.loading} noSuch="unknown-machine" />;
}

function OnMachine({ sheet }: { sheet: MachineSheet }) {
  const [, goTo] = useLocation();
  const writing = useWriting();
  const opened = useParams<{ pointId?: string; panel?: string }>();
  const [asked, setChosenId] = useState(() => Number(opened.pointId) || firstChosen(sheet));
  const [earlier] = useState<Earlier>(
    () => new Map(sheet.points.map((point) => [point.pointId, point.forecast.machineHoursAtLimit])),
  );
  const points = pointsInOrder(sheet);
  const chosenId = points.some((point) => point.pointId === asked) ? asked : firstChosen(sheet);
  const at = points.findIndex((point) => point.pointId === chosenId);
  // name and keys stand at once, then the rows, the chart under them, and last the tables
  const inTurn = opened.panel === undefined;
  const panels = usePanels(PANELS.find((panel) => panel === opened.panel));
  useListKeys({
    count: points.length,
    at,
    page: 0,
    goTo: (to) => setChosenId(points[to]?.pointId ?? null),
    open: () => panels.show('sizes'),
  });
  const { machineId } = sheet;
  return (
    <Sheet
      title={sheet.name}
      sub={
        <span className="owner-line" title={ownerLine(sheet)}>
          {ownerLine(sheet)}
        </span>
      }
      actions={
        <>
          <Key letter="W" onPress={() => panels.show('why')} disabled={points.length === 0}>
            {machineWords.why}
          </Key>
          <Key letter="H" onPress={() => openHours({ machineId })}>
            {machineWords.hours}
          </Key>
          <MeasuringSheetKey machineId={machineId} letter="M" />
          <Key letter="J" onPress={() => goTo(`/job/take-in/${machineId}`)}>
            {jobWords.key}
          </Key>
          <Key
            letter="R"
            disabled={repairPlace(points[at]) === null}
            onPress={() => goTo(repairPlace(points[at]) ?? `/machine/${machineId}`)}
          >
            {machineWords.repair}
          </Key>
          <Key letter="P" onPress={() => goTo(`/slip/${machineId}`)}>
            {machineWords.slip}
          </Key>
          <Key first letter="S" onPress={() => goTo(`/strip-down/${machineId}`)}>
            {machineWords.stripDown}
          </Key>
        </>
      }
      banner={<Stops sheet={sheet} onFindings={() => panels.show('findings')} />}
      block={blockOf(sheet)}
      bleed
    >
      {points.length === 0 ? (
        <div className="machine-word">
          <Empty
            head={machineWords.noAssembly}
            keys={
              <Key first onPress={() => goTo(`/take-in/${machineId}`)}>
                {machineWords.layOut}
              </Key>
            }
          >
            {machineWords.noAssemblyNext}
          </Empty>
          <div className="panel">
            <HoursPanel sheet={sheet} />
          </div>
        </div>
      ) : (
        <div className="machine-body" ref={panels.body}>
          <div className="machine-first">
            <div className="machine-picture-room">
              <Later turns={inTurn ? 1 : 0}>
                <MachinePicture
                  {...pictureOf(sheet, chosenId, writing, earlier)}
                  onChoose={setChosenId}
                  onOpen={() => panels.show('sizes')}
                />
              </Later>
            </div>
            <Hint
              sheet={sheet}
              chosenId={chosenId}
              onAnswer={(pointId) => {
                setChosenId(pointId);
                panels.show('sizes');
              }}
            />
          </div>
          <Later turns={inTurn ? 3 : 0}>
            <Panels sheet={sheet} point={points[at] ?? null} panels={panels} />
          </Later>
        </div>
      )}
    </Sheet>
  );
}

/** Where the repair of a point is thought about: its joint, or the slide its strip belongs to; null: neither. */
function repairPlace(point: MachineSheet['points'][number] | undefined): string | null {
  if (point === undefined) return null;
  if (['bore', 'diameter', 'slack'].includes(point.measures)) return `/repair/${point.positionId}`;
  return point.measures === 'thickness' ? `/slide/${point.assemblyId}` : null;
}

/** Findings that forbid use stay over everything, one line each. */
function Stops({ sheet, onFindings }: { sheet: MachineSheet; onFindings: () => void }) {
  const stops = sheet.findings.filter((finding) => finding.closedOn === null && finding.severity === 'do-not-use');
  if (stops.length === 0) return null;
  return (
    <DoNotUseBanner
      aside={
        <button type="button" className="text-key" onClick={onFindings}>
          {machineWords.findings}
        </button>
      }
    >
      {stops.map((finding) => (
        <div key={finding.findingId}>
          <Figures>{machineWords.stopWords(finding)}</Figures>
        </div>
      ))}
    </DoNotUseBanner>
  );
}

function blockOf(sheet: MachineSheet): TitleCell[] {
  const { hours, hoursPerYear, useBorrowed, points } = sheet;
  const { own, like } = restsOn(points);
  return [
    hoursCell(hours),
    {
      label: useBorrowed ? machineWords.useBorrowed : machineWords.use,
      value: (
        <Figures>
          {hoursPerYear.middle === null ? shared.notKnown : machineWords.useAYear(hoursPerYear.middle, useBorrowed)}
        </Figures>
      ),
    },
    { label: shared.asOf, value: sheet.asOf },
    planningAidCell,
    {
      label: machineWords.restsOn,
      value: (
        <>
          {machineWords.readings(own, like)}
          <HelpMark about="basis" />
        </>
      ),
    },
    { label: machineWords.bars, value: <BarKey />, grow: true },
  ];
}

/** Read: the figure with its day. Estimated: the estimate, and over it what it was counted on from. */
function hoursCell({
  machineHours,
  estimated,
  machineHoursRead,
  readOn,
  dialMachine,
}: MachineSheet['hours']): TitleCell {
  const label = machineWords.machineHoursCell;
  if (machineHours === null) return { label, value: machineWords.notRead };
  const read = machineHoursRead !== null && readOn !== null;
  if (!estimated && read)
    return {
      label,
      value: (
        <>
          <Figures>{machineWords.hoursRead(machineHoursRead, readOn)}</Figures>
          <HelpMark about="machine-hours" />
        </>
      ),
    };
  return {
    label: dialMachine
      ? `${label}, ${machineWords.goesBy(dialMachine.name)}`
      : read
        ? `${label}, ${machineWords.lastRead(machineHoursRead, readOn)}`
        : label,
    value: (
      <>
        <Figures>{machineWords.hoursEstimated(machineHours)}</Figures>
        <HelpMark about="machine-hours" />
      </>
    ),
  };
}
