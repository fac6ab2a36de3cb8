import { useLocation } from 'wouter';
import { type Finding, machinesStopped } from '#core/contract/machine.ts';
import { DoNotUseBanner } from '#renderer/controls/Sheet.tsx';
import { StruckBox } from '#renderer/marks/DoNotUseBox.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { shared } from '#renderer/words/english.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { machineWords } from '#renderer/words/machineWords.ts';
import './stop.css';

/** Open findings that forbid the use of a machine; empty while they are asked for, and for no machine. */
export function useStops(machineId: number | null | undefined): readonly Finding[] {
  const stopped = useAsk(machinesStopped, {}).value?.findings ?? [];
  return stopped.filter((finding) => finding.machineId === machineId);
}

/** Stands over every screen of a machine that must not be used. Nothing for any other. */
export function StopBanner({ machineId, since }: { machineId: number | null | undefined; since?: string }) {
  const [here, goTo] = useLocation();
  const stops = useStops(machineId);
  if (stops.length === 0) return null;
  const page = `/machine/${machineId}`;
  return (
    <DoNotUseBanner
      aside={
        here !== page && (
          <button type="button" className="text-key" onClick={() => goTo(page)}>
            {machineWords.toThisMachine}
          </button>
        )
      }
    >
      {since && <div>{since}</div>}
      {stops.map((finding) => (
        <div key={finding.findingId}>
          <Figures>{machineWords.stopWords(finding)}</Figures>
        </div>
      ))}
    </DoNotUseBanner>
  );
}

/** The same in a line of a list, beside the machine's name. */
export function StopMark({ machineId }: { machineId: number | null | undefined }) {
  return useStops(machineId).length === 0 ? null : (
    <span className="stop-mark">
      <StruckBox width={24} height={16} />
      <b>{shared.doNotUse}</b>
    </span>
  );
}
