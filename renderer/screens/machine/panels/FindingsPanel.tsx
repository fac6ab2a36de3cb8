import { Fragment, useState } from 'react';
import type { FindingWhole, MachineSheet } from '#core/contract/machine.ts';
import { day } from '#core/units/day.ts';
import { dayText } from '#core/words/quantityText.ts';
import { Empty } from '#renderer/controls/Notice.tsx';
import { StruckBox } from '#renderer/marks/DoNotUseBox.tsx';
import { RingSign } from '#renderer/marks/ItemRing.tsx';
import { Thumbs } from '#renderer/photos/Thumbs.tsx';
import { shared } from '#renderer/words/english.ts';
import { findingText } from '#renderer/words/findingText.ts';
import { panelWords } from '#renderer/words/machineWords.ts';
import { photoWords } from '#renderer/words/photoWords.ts';
import { severityWords } from '#renderer/words/stripDownWords.ts';
import { CloseForm } from './CloseForm.tsx';
import { AddFindingPhotos, ShownFindingPhoto } from './FindingPhotos.tsx';
import { RefuseForm, StrikeRefusal } from './RefuseForm.tsx';

/** What is open under a finding: a form, or a photo shown large. */
type Under =
  | { findingId: number; is: 'close' | 'refuse' | 'photos' }
  | { findingId: number; is: 'photo'; photoId: number }
  | { findingId: number; is: 'strike-refusal'; declineId: number };

/** What was seen on this machine: open ones first. An open one is closed with what became of it. */
export function FindingsPanel({ sheet }: { sheet: MachineSheet }) {
  const [under, setUnder] = useState<Under | null>(null);
  if (sheet.findings.length === 0) return <Empty head={panelWords.noFindings} keys={null} />;
  return (
    <table className="table findings-table">
      <thead>
        <tr>
          <th>{panelWords.finding}</th>
          <th>{panelWords.severity}</th>
          <th>{panelWords.found}</th>
          <th>{panelWords.state}</th>
        </tr>
      </thead>
      <tbody>
        {sheet.findings.map((finding) => (
          <Fragment key={finding.findingId}>
            <FindingLine finding={finding} under={under} onOpen={setUnder} />
            {under?.findingId === finding.findingId && (
              <tr className="form-row">
                <td colSpan={4}>
                  <UnderFinding finding={finding} under={under} onOpen={setUnder} />
                </td>
              </tr>
            )}
          </Fragment>
        ))}
      </tbody>
    </table>
  );
}

type LineProps = { finding: FindingWhole; under: Under | null; onOpen: (under: Under | null) => void };

function UnderFinding({ finding, under, onOpen }: LineProps & { under: Under }) {
  const done = () => onOpen(null);
  switch (under.is) {
    case 'close':
      return finding.closedOn === null && <CloseForm finding={finding} onDone={done} />;
    case 'refuse':
      return finding.closedOn === null && <RefuseForm finding={finding} onDone={done} />;
    case 'strike-refusal':
      return <StrikeRefusal declineId={under.declineId} onDone={done} />;
    case 'photos':
      return <AddFindingPhotos finding={finding} onDone={done} />;
    case 'photo':
      return (
        <ShownFindingPhoto
          key={under.photoId}
          finding={finding}
          photoId={under.photoId}
          onShow={(photoId) => onOpen({ ...under, photoId })}
          onClose={done}
        />
      );
  }
}

function FindingLine({ finding, under, onOpen }: LineProps) {
  const { findingId } = finding;
  const stops = finding.severity === 'do-not-use' && finding.closedOn === null;
  const shown = under?.findingId === findingId && under.is === 'photo' ? under.photoId : null;
  return (
    <tr className={finding.closedOn === null ? undefined : 'second'}>
      <td>
        <div className="finding-name">
          {finding.item !== null && <RingSign item={finding.item} state={stops ? 'stop' : 'leave'} />}
          <span>
            {finding.position ?? panelWords.wholeAssembly}: {findingText(finding)}
          </span>
        </div>
        <Refusals finding={finding} onStrike={(declineId) => onOpen({ findingId, is: 'strike-refusal', declineId })} />
        {finding.photos.length > 0 && (
          <Thumbs
            photos={finding.photos}
            of={findingText(finding)}
            shown={shown}
            onShow={(photoId) => onOpen(photoId === shown ? null : { findingId, is: 'photo', photoId })}
          />
        )}
      </td>
      <td className="nw">
        {stops ? (
          <span className="stop-sign">
            <StruckBox width={24} height={16} />
            <b>{shared.doNotUse}</b>
          </span>
        ) : (
          severityWords[finding.severity]
        )}
      </td>
      <td className="nw">{dayText(day(finding.takenOn))}</td>
      <td>
        {finding.closedOn === null
          ? panelWords.open
          : panelWords.closed(dayText(day(finding.closedOn)), finding.outcome ?? '')}
        <div className="finding-keys">
          {finding.closedOn === null && (
            <>
              <TextKey
                label={panelWords.closeLabel(findingText(finding))}
                onPress={() => onOpen({ findingId, is: 'close' })}
              >
                {panelWords.close}
              </TextKey>
              <TextKey
                label={panelWords.refuseLabel(findingText(finding))}
                onPress={() => onOpen({ findingId, is: 'refuse' })}
              >
                {panelWords.refuse}
              </TextKey>
            </>
          )}
          <TextKey label={photoWords.takeOf(findingText(finding))} onPress={() => onOpen({ findingId, is: 'photos' })}>
            {photoWords.take}
          </TextKey>
        </div>
      </td>
    </tr>
  );
}

const TextKey = ({ label, onPress, children }: { label: string; onPress: () => void; children: string }) => (
  <button type="button" className="text-key" aria-label={label} onClick={onPress}>
    {children}
  </button>
);

/** What customers said who do not want it made good, struck sayings too. */
function Refusals({ finding, onStrike }: { finding: FindingWhole; onStrike: (declineId: number) => void }) {
  return finding.declines.map(({ declineId, saidBy, saidOn, words, struck, reason }) => {
    const said = `${panelWords.refused(saidBy, dayText(day(saidOn)))} “${words}”`;
    return (
      <p key={declineId} className="refusal">
        {struck ? (
          <>
            <s>{said}</s> {panelWords.struckFor(reason)}
          </>
        ) : (
          <>
            {said}{' '}
            <TextKey label={panelWords.strikeRefusalLabel(saidBy)} onPress={() => onStrike(declineId)}>
              {panelWords.strikeRefusal}
            </TextKey>
          </>
        )}
      </p>
    );
  });
}
