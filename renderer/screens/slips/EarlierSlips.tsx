import { Link } from 'wouter';
import { slipsList } from '#core/contract/slip.ts';
import { day } from '#core/units/day.ts';
import { dayText } from '#core/words/quantityText.ts';
import { useAsk } from '#renderer/useAsk.ts';
import { slipsWords } from '#renderer/words/slipsWords.ts';

/** Other slips made of this machine. */
export function EarlierSlips({ machineId, except }: { machineId: number; except?: number }) {
  const slips = useAsk(slipsList, {});
  const its = slips.value?.slips.filter((slip) => slip.machineId === machineId && slip.slipId !== except) ?? [];
  if (its.length === 0) return null;
  return (
    <section>
      <h2>{slipsWords.others}</h2>
      <ul className="slip-list">
        {its.map((slip) => (
          <li key={slip.slipId}>
            <Link href={`/slips/${slip.slipId}`}>{slip.number}</Link> {dayText(day(slip.madeOn))}
          </li>
        ))}
      </ul>
    </section>
  );
}
