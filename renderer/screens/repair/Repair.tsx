import { useState } from 'react';
import { useLocation } from 'wouter';
import { type RepairChoiceName, type RepairSheet, repairChoose, repairRead } from '#core/contract/repair.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { Empty, FaultBox } from '#renderer/controls/Notice.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { planningAidCell, Sheet, type TitleCell } from '#renderer/controls/Sheet.tsx';
import { useWriting } from '#renderer/record.tsx';
import { useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { GoesBy } from '#renderer/screens/shop-figures/GoesBy.tsx';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { useIdInAddress } from '#renderer/useIdInAddress.ts';
import { shared } from '#renderer/words/english.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { cautionSaid, reasonText } from '#renderer/words/repairReasons.ts';
import { repairForm, repairWords } from '#renderer/words/repairWords.ts';
import { CutList } from './CutList.tsx';
import { FactsForm } from './FactsForm.tsx';
import { JointDrawing } from './JointDrawing.tsx';
import { OptionTable, PickedOption } from './OptionTable.tsx';
import './repair.css';

/** One joint at a time: the worn hole to scale, what can be done with it side by side, and what the bench says of it. */
export default function Repair() {
  const positionId = useIdInAddress('positionId');
  const asked = useAsk(repairRead, positionId === null ? null : { positionId });
  if (asked.value?.positionId === positionId) return <OnJoint key={positionId} sheet={asked.value} />;
  return <NotYetSheet title={repairWords.tab} of={asked} words={repairWords.loading} noSuch="unknown-position" />;
}

/** Figures of the shop that the choices rest on. */
const GOES_BY = [
  ...['oversizeStepMm', 'oversizesAtMost', 'bushStepMm', 'bushWallLeastMm', 'bushWallShareOfBore', 'bossWallLeastMm'],
  ...['bossWallShareOfBore', 'endLigamentShareOfBore', 'roomC'],
];

/** The chosen one, else the first that is open and does something, else the first. */
function firstPicked({ chosen, options }: RepairSheet): RepairChoiceName {
  if (chosen) return chosen.choice;
  const open = options.filter(({ closed, choice }) => closed.length === 0 && choice !== 'leave');
  return (open.find(({ choice }) => choice === 'bush') ?? open[0])?.choice ?? 'leave';
}

function OnJoint({ sheet }: { sheet: RepairSheet }) {
  const [, goTo] = useLocation();
  const writing = useWriting();
  const [asked, setPicked] = useState<RepairChoiceName | null>(null);
  const [by] = useBy();
  const choose = useDo(repairChoose);
  const picked = asked ?? firstPicked(sheet);
  const option = sheet.options.find(({ choice }) => choice === picked);
  const isChosen = sheet.chosen?.choice === picked;
  const decide = (choice: RepairChoiceName | null) =>
    void choose.run({ positionId: sheet.positionId, choice, by: by.trim() || shared.program });
  return (
    <Sheet
      title={repairWords.title(sheet)}
      sub={<Figures>{repairWords.sub(sheet, writing)}</Figures>}
      actions={
        <>
          <Key letter="M" onPress={() => goTo(`/machine/${sheet.machineId}`)}>
            {repairWords.toMachine}
          </Key>
          {isChosen ? (
            <Key letter="T" disabled={choose.busy} onPress={() => decide(null)}>
              {repairWords.takeBack}
            </Key>
          ) : (
            <Key
              first
              letter="Enter"
              disabled={choose.busy || !option || option.closed.length > 0}
              onPress={() => decide(picked)}
            >
              {option ? repairWords.chooseThis(picked) : repairWords.choose}
            </Key>
          )}
        </>
      }
      block={blockOf(sheet)}
      bleed
    >
      {choose.fault && <FaultBox fault={choose.fault} />}
      {sheet.cleanUp ? (
        <div className="joint">
          <div className="joint-left">
            <JointDrawing sheet={{ ...sheet, cleanUp: sheet.cleanUp }} writing={writing} />
            <CentreSaid sheet={sheet} />
          </div>
          <div className="joint-right">
            <OptionTable sheet={sheet} writing={writing} picked={picked} onPick={setPicked} />
            {option && <PickedOption option={option} sheet={sheet} writing={writing} />}
          </div>
        </div>
      ) : (
        <div className="joint-empty">
          <Empty head={repairWords.missing.head} keys={null}>
            {repairWords.missing.said}{' '}
            {repairWords.missing.list(sheet.missing.map((name) => repairWords.missing[name]))}
          </Empty>
        </div>
      )}
      {sheet.cleanUp && <GoesBy names={GOES_BY} />}
      <CutList machineId={sheet.machineId} writing={writing} />
      <FactsForm sheet={sheet} writing={writing} />
      <Others sheet={sheet} />
    </Sheet>
  );
}

/** Old centre against the best one, whether it may be used, and how far the readings can be trusted. */
function CentreSaid({ sheet }: { sheet: RepairSheet }) {
  const writing = useWriting();
  const { cleanUp, facts } = sheet;
  if (!cleanUp) return null;
  const { onOldCentre, onBestCentre, allowed } = cleanUp;
  const against = facts.datum === null ? '' : repairForm.datums[facts.datum];
  return (
    <div className="centre-said">
      <p>
        <Figures>
          {onBestCentre
            ? repairWords.bothCentres(onOldCentre.boreMm, onBestCentre.boreMm, onBestCentre.toward, writing)
            : repairWords.oldOnly(onOldCentre.boreMm, writing)}
        </Figures>
      </p>
      {allowed && <p>{repairWords.centre[allowed](against)}</p>}
      {allowed === 'yes' && <p className="second">{repairWords.movesTiming}</p>}
      {cleanUp.cautions.map((caution) => (
        <p key={caution.code} className="caution">
          <Figures>{reasonText(cautionSaid, caution)}</Figures>
        </p>
      ))}
    </div>
  );
}

/** The machine's other joints, one press away. */
function Others({ sheet }: { sheet: RepairSheet }) {
  const [, goTo] = useLocation();
  const others = sheet.joints.filter(({ positionId }) => positionId !== sheet.positionId);
  if (others.length === 0) return null;
  return (
    <nav className="other-joints" aria-label={repairWords.joints}>
      <h2>{repairWords.joints}</h2>
      <div className="keys">
        {others.map(({ positionId, item, position }) => (
          <Key key={positionId} onPress={() => goTo(`/repair/${positionId}`)}>
            {`${item} ${position}`}
          </Key>
        ))}
      </div>
    </nav>
  );
}

const blockOf = (sheet: RepairSheet): TitleCell[] => [
  { label: repairWords.block.opened, value: repairWords.block.openedBy(sheet.openedBy) },
  { label: repairWords.block.fits, value: repairWords.block.fitsBy },
  { label: shared.asOf, value: sheet.asOf },
  planningAidCell,
  { label: repairWords.block.restsOn, value: repairWords.block.rests(sheet.rests), grow: true },
];
