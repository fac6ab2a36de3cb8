import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import type { MachineSheet, PointSheet } from '#core/contract/machine.ts';
import { ownerWords } from '#renderer/words/customersWords.ts';
import { machineWords } from '#renderer/words/machineWords.ts';
import { questionedIn } from '../pictureOf.ts';
import { AssembliesPanel } from './AssembliesPanel.tsx';
import { FindingsPanel } from './FindingsPanel.tsx';
import { HoursPanel } from './HoursPanel.tsx';
import { LimitsPanel } from './LimitsPanel.tsx';
import { OwnersPanel } from './OwnersPanel.tsx';
import { SizesPanel } from './SizesPanel.tsx';
import { type OpenPanels, PANELS, type PanelName } from './usePanels.ts';
import { VisitsPanel } from './VisitsPanel.tsx';
import { WhyPanel } from './WhyPanel.tsx';

type PanelsProps = { sheet: MachineSheet; point: PointSheet | null; panels: OpenPanels };

/** What stands behind the picture, as tables: of the chosen point, then of the machine. */
export function Panels({ sheet, point, panels }: PanelsProps) {
  const open = sheet.findings.filter((finding) => finding.closedOn === null).length;
  const questioned = point ? questionedIn(point) : 0;
  const asides: Partial<Record<PanelName, { text: string; className: string }>> = {
    ...(questioned > 0 && { sizes: { text: machineWords.questionedSizes(questioned), className: 'asks' } }),
    ...(open > 0 && { findings: { text: machineWords.openFindings(open), className: 'second' } }),
  };
  return (
    <Tabs
      className="panels"
      selectedKey={panels.shown}
      onSelectionChange={(key) => panels.turnTo(key as PanelName)}
      ref={panels.panels}
    >
      <TabList className="panel-tabs" aria-label={machineWords.panels}>
        {PANELS.map((panel) => (
          <Tab key={panel} id={panel} className="panel-tab" onPress={() => panels.show(panel)}>
            {tabText(panel)}
            {asides[panel] && <span className={asides[panel].className}>{asides[panel].text}</span>}
          </Tab>
        ))}
      </TabList>
      <TabPanel key={panels.shown} id={panels.shown} className="panel">
        <Panel name={panels.shown} sheet={sheet} point={point} />
      </TabPanel>
    </Tabs>
  );
}

/** Of another point, or another panel, nothing that was opened or typed in it stays. */
function Panel({ name, sheet, point }: { name: PanelName; sheet: MachineSheet; point: PointSheet | null }) {
  switch (name) {
    case 'sizes':
      return point && <SizesPanel key={point.pointId} point={point} machineId={sheet.machineId} />;
    case 'limits':
      return point && <LimitsPanel key={point.pointId} point={point} />;
    case 'why':
      return point && <WhyPanel key={point.pointId} point={point} />;
    case 'hours':
      return <HoursPanel sheet={sheet} />;
    case 'findings':
      return <FindingsPanel sheet={sheet} />;
    case 'assemblies':
      return <AssembliesPanel sheet={sheet} />;
    case 'visits':
      return <VisitsPanel sheet={sheet} />;
    case 'owners':
      return <OwnersPanel sheet={sheet} />;
  }
}

const tabText = (panel: PanelName): string =>
  ({
    sizes: machineWords.sizes,
    limits: machineWords.limits,
    why: machineWords.whyTab,
    hours: machineWords.hoursHistory,
    findings: machineWords.findings,
    assemblies: machineWords.assemblies,
    visits: machineWords.visits,
    owners: ownerWords.tab,
  })[panel];
