import { useState } from 'react';
import { exchangeExportFolder, exchangeExportWorkbook } from '#core/contract/exchange.ts';
import type { Fault } from '#core/contract/operation.ts';
import { answerTo } from '#renderer/ask.ts';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { StaysInMm } from '#renderer/controls/StaysInMm.tsx';
import { exchangeWords as words } from '#renderer/words/exchangeWords.ts';
import { saveBytes } from './saveBytes.ts';

type State = { busy: 'folder' | 'workbook' | null; saved: string | null; fault: Fault | null };
const IDLE: State = { busy: null, saved: null, fault: null };

/** The record as files: everything in it, or what people read. */
export function TakeOut() {
  const [state, setState] = useState<State>(IDLE);
  const folder = async () => {
    setState({ ...IDLE, busy: 'folder' });
    const answer = await answerTo(exchangeExportFolder, { toFolder: null });
    if (!answer.ok) return setState({ ...IDLE, fault: answer.fault });
    saveBytes(answer.value.fileName, answer.value.zipBase64 ?? '', 'application/zip');
    setState({ ...IDLE, saved: answer.value.fileName });
  };
  const workbook = async () => {
    setState({ ...IDLE, busy: 'workbook' });
    const answer = await answerTo(exchangeExportWorkbook, { toFile: null });
    if (!answer.ok) return setState({ ...IDLE, fault: answer.fault });
    saveBytes(answer.value.fileName, answer.value.xlsxBase64 ?? '', XLSX);
    setState({ ...IDLE, saved: answer.value.fileName });
  };
  return (
    <section className="exchange-part" aria-label={words.out}>
      <h2>{words.out}</h2>
      <StaysInMm why={words.outInMm} />
      <div className="out-row">
        <Key letter="Z" disabled={state.busy !== null} onPress={() => void folder()}>
          {words.folder}
        </Key>
        <p className="second">{words.folderWhat}</p>
      </div>
      <div className="out-row">
        <Key letter="W" disabled={state.busy !== null} onPress={() => void workbook()}>
          {words.workbook}
        </Key>
        <p className="second">{words.workbookWhat}</p>
      </div>
      {state.busy && <FillingRule words={words.takingOut} />}
      {state.saved && <p role="status">{words.takenOut(state.saved)}</p>}
      {state.fault && <FaultBox fault={state.fault} />}
    </section>
  );
}

const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
