import { Link } from 'wouter';
import type { SizeAgainst } from '#core/contract/check.ts';
import { day } from '#core/units/day.ts';
import { dayText } from '#core/words/quantityText.ts';
import { Across } from '#renderer/controls/Across.tsx';
import { useWriting } from '#renderer/record.tsx';
import { checkWords as words } from '#renderer/words/checkWords.ts';

/** Sizes that came out beyond their range, newest first; each a step from what would explain it. */
export function Beyond({ sizes }: { sizes: readonly SizeAgainst[] }) {
  const writing = useWriting();
  return (
    <section>
      <h2>{words.beyondHead}</h2>
      <p className="second">{sizes.length === 0 ? words.noneBeyond : words.beyondNote}</p>
      {sizes.length > 0 && (
        <Across>
          <table className="check-beyond wide-table">
            <caption className="said">{words.beyondHead}</caption>
            <thead>
              <tr>
                <th scope="col">{words.measuredOn}</th>
                <th scope="col">{words.where}</th>
                <th scope="col" className="figures">
                  {words.size}
                </th>
                <th scope="col" className="figures">
                  {words.foretoldRange}
                </th>
                <th scope="col">{words.origin}</th>
                <th scope="col">
                  <span className="said">{words.explain}</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {sizes.map((one) => (
                <tr key={`${one.pointId} ${one.takenOn}`}>
                  <td>{dayText(day(one.takenOn))}</td>
                  <th scope="row">
                    {one.machine}
                    <small>{`${one.item} ${one.position}, ${one.point}`}</small>
                  </th>
                  <td className="figures main">{words.sizeText(one.sizeMm, writing)}</td>
                  <td className="figures">{words.rangeText(one, writing)}</td>
                  <td>{words.origins[one.origin]}</td>
                  <td>
                    <Link href={`/forecast-check/${one.pointId}/${one.takenOn}`} aria-label={words.explainOf(one)}>
                      {words.explain}
                    </Link>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </Across>
      )}
    </section>
  );
}
