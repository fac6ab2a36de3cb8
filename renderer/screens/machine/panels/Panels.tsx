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
      <TabPanel id="sizes" className="panel">
        {point && <SizesPanel key={point.pointId} point={point} machineId={sheet.machineId} />}
      </TabPanel>
      <TabPanel id="limits" className="panel">
        {point && <LimitsPanel key={point.pointId} point={point} />}
      </TabPanel>
      <TabPanel id="why" className="panel">
        {point && <WhyPanel key={point.pointId} point={point} />}
      </TabPanel>
      <TabPanel id="hours" className="panel">
        <HoursPanel sheet={sheet} />
      </TabPanel>
      <TabPanel id="findings" className="panel">
        <FindingsPanel sheet={sheet} />
      </TabPanel>
      <TabPanel id="assemblies" className="panel">
        <AssembliesPanel sheet={sheet} />
      </TabPanel>
      <TabPanel id="visits" className="panel">
        <VisitsPanel sheet={sheet} />
      </TabPanel>
      <TabPanel id="owners" className="panel">
        <OwnersPanel sheet={sheet} />
      </TabPanel>
    </Tabs>
  );
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
