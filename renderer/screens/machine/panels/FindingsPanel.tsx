import { Fragment, useState } from 'react';
import type { Finding, MachineSheet } from '#core/contract/machine.ts';
import { findingClose } from '#core/contract/stripDown.ts';
import { type Day, day } from '#core/units/day.ts';
import { dayText } from '#core/words/quantityText.ts';
import { DayField } from '#renderer/controls/DayField.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { Empty, FaultBox } from '#renderer/controls/Notice.tsx';
import { StruckBox } from '#renderer/marks/DoNotUseBox.tsx';
import { RingSign } from '#renderer/marks/ItemRing.tsx';
import { useToday } from '#renderer/record.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { shared } from '#renderer/words/english.ts';
import { findingText } from '#renderer/words/findingText.ts';
import { panelWords } from '#renderer/words/machineWords.ts';
import { severityWords } from '#renderer/words/stripDownWords.ts';
import { ByField, useBy } from './ByField.tsx';

/** What was seen on this machine: open ones first. An open one is closed with what became of it. */
export function FindingsPanel({ sheet }: { sheet: MachineSheet }) {
  const [closing, setClosing] = useState<number | null>(null);
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
            <FindingLine finding={finding} onClose={() => setClosing(finding.findingId)} />
            {closing === finding.findingId && finding.closedOn === null && (
              <tr className="form-row">
                <td colSpan={4}>
                  <CloseForm finding={finding} onDone={() => setClosing(null)} />
                </td>
              </tr>
            )}
          </Fragment>
        ))}
      </tbody>
    </table>
  );
}

function FindingLine({ finding, onClose }: { finding: Finding; onClose: () => void }) {
  const stops = finding.severity === 'do-not-use' && finding.closedOn === null;
  return (
    <tr className={finding.closedOn === null ? undefined : 'second'}>
      <td>
        <div className="finding-name">
          {finding.item !== null && <RingSign item={finding.item} state={stops ? 'stop' : 'leave'} />}
          <span>
            {finding.position ?? panelWords.wholeAssembly}: {findingText(finding)}
          </span>
        </div>
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
        {finding.closedOn === null ? (
          <>
            {panelWords.open}{' '}
            <button
              type="button"
              className="text-key"
              aria-label={panelWords.closeLabel(findingText(finding))}
              onClick={onClose}
            >
              {panelWords.close}
            </button>
          </>
        ) : (
          panelWords.closed(dayText(day(finding.closedOn)), finding.outcome ?? '')
        )}
      </td>
    </tr>
  );
}

function CloseForm({ finding, onDone }: { finding: Finding; onDone: () => void }) {
  const today = useToday();
  const close = useDo(findingClose);
  const [closedOn, setClosedOn] = useState<Day | null>(today);
  const [outcome, setOutcome] = useState('');
  const [by, setBy] = useBy();
  const complete = closedOn !== null && outcome.trim() !== '';
  const send = async () => {
    if (!complete) return;
    if (await close.run({ findingId: finding.findingId, closedOn, outcome, by })) onDone();
  };
  return (
    <form
      className="row-form"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <p>{panelWords.closeFact(findingText(finding))}</p>
      <div className="fields">
        <TextField
          label={panelWords.outcome}
          hint={panelWords.outcomeHint}
          value={outcome}
          onChange={setOutcome}
          autoFocus
        />
        <DayField label={panelWords.closedOn} value={closedOn} onChange={setClosedOn} today={today} />
        <ByField value={by} onChange={setBy} />
      </div>
      {close.fault && <FaultBox fault={close.fault} />}
      <Keys>
        <Key first type="submit" disabled={!complete || close.busy} onPress={() => {}}>
          {panelWords.closeFinding}
        </Key>
        <Key letter="Escape" onPress={onDone}>
          {panelWords.leave}
        </Key>
      </Keys>
    </form>
  );
}
