import { useQueryClient } from '@tanstack/react-query';
import type { PointSheet } from '#core/contract/machine.ts';
import { sizesQuestioned } from '#core/contract/oldSheets.ts';
import { NotYet } from '#renderer/controls/NotYet.tsx';
import { useWriting } from '#renderer/record.tsx';
import { Waiting } from '#renderer/screens/old-sheets/Waiting.tsx';
import { askAllAnew, useAsk } from '#renderer/useAsk.ts';
import { panelWords } from '#renderer/words/machineWords.ts';
import { ByField, useBy } from './ByField.tsx';

/** Sizes of parts put in at a point that were questioned, each with its answers; nothing where none waits. */
export function PutInAsked({ point, machineId }: { point: PointSheet; machineId: number }) {
  const { renewalsQuestioned } = point;
  const asked = useAsk(sizesQuestioned, renewalsQuestioned.length > 0 ? { machineId } : null);
  const queries = useQueryClient();
  const writing = useWriting();
  const [by, setBy] = useBy();
  if (renewalsQuestioned.length === 0) return null;
  const sizes = asked.value?.sizes.filter(
    ({ renewalId }) => renewalId !== null && renewalsQuestioned.includes(renewalId),
  );
  return (
    <section className="put-in-asked" aria-label={panelWords.putInAsked}>
      <h2>{panelWords.putInAsked}</h2>
      <NotYet of={asked} />
      {sizes && (
        <Waiting
          sizes={sizes}
          writing={writing}
          by={by}
          machineNamed={false}
          startOpen
          onAnswered={() => void askAllAnew(queries)}
        />
      )}
      <ByField value={by} onChange={setBy} />
    </section>
  );
}
