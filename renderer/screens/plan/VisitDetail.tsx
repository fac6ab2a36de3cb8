import type { ReactNode } from 'react';
import { Link } from 'wouter';
import type { VisitLine } from '#core/contract/plan.ts';
import { day } from '#core/units/day.ts';
import { decimalFigure } from '#core/words/quantityText.ts';
import { RingSign } from '#renderer/marks/ItemRing.tsx';
import { useWriting } from '#renderer/record.tsx';
import { Figures } from '#renderer/words/Figures.tsx';
import { becauseText, planWords as words } from '#renderer/words/planWords.ts';

/** One visit: what is opened once, what is renewed and why, what it costs, and what can be done with it. */
export function VisitDetail({ visit, keys, children }: { visit: VisitLine; keys: ReactNode; children?: ReactNode }) {
  const writing = useWriting();
  const figure = (hours: number) => `${decimalFigure(hours, 1, writing)}\u00A0h`;
  const assemblies = new Set(visit.positions.map(({ assembly }) => assembly));
  return (
    <section className="visit-detail" aria-label={visit.machine}>
      <h2>
        {visit.machine}
        {visit.customer && `, ${visit.customer}`}
      </h2>
      <p className="second">
        {words.detailWhen(visit, writing)}
        {visit.promisedOn && `, ${words.promised(day(visit.promisedOn))}`}
      </p>
      {visit.note && <p>{visit.note}</p>}
      {visit.customerAway && <p className="remark">{words.away}</p>}
      {visit.farm && <p>{words.farmCall(visit.farm.callHours, writing)}</p>}
      {visit.farm && !visit.farm.isWayKnown && <p className="remark">{words.wayUnknown}</p>}
      {visit.waitsForParts && <p className="remark">{words.waits}</p>}
      <div className="keys">{keys}</div>
      {children}
      <ul className="visit-work">
        {[...visit.takeOffs, { name: words.visitItself, hours: visit.visitHours }].map(({ name, hours }, place) => (
          <li key={`${place} ${name}`} className="shared">
            <span>{name || words.opening}</span>
            <span className="figures">{figure(hours)}</span>
          </li>
        ))}
        {visit.positions.map((place) => (
          <li key={place.positionId}>
            <RingSign item={place.item} state={ringOf(place.reason)} />
            <span className="work-words">
              <b>{place.position}</b>
              {assemblies.size > 1 && <span className="second">{place.assembly}</span>}
              <span className="second">
                <Figures>{becauseText(place, writing)}</Figures>
              </span>
            </span>
            <span className="figures">{figure(place.ownHours)}</span>
          </li>
        ))}
        {visit.extras.map(({ what, hours }) => (
          <li key={what}>
            <span className="work-words">{what}</span>
            <span className="figures">{figure(hours)}</span>
          </li>
        ))}
        <li className="sum">
          <b>{words.together}</b>
          <b className="figures">{figure(visit.hours)}</b>
        </li>
        {visit.positions.length > 1 && (
          <li className="second">
            <span>{words.apart}</span>
            <span className="figures">{figure(visit.apartHours)}</span>
          </li>
        )}
        <li className="second">
          <span>{words.parts}</span>
          <span className="figures">{figure(visit.partsHours)}</span>
        </li>
        {visit.risk > 0 && (
          <li className="second">
            <span>{words.risk}</span>
            <span className="figures">{figure(visit.risk)}</span>
          </li>
        )}
      </ul>
      <p className="second">{words.bracket}</p>
      <p>
        <Link href={`/machine/${visit.machineId}`}>{words.toMachine}</Link>
        {visit.rebuildId !== null && (
          <>
            {', '}
            <Link href={`/job/${visit.rebuildId}`}>{words.toJob}</Link>
          </>
        )}
      </p>
    </section>
  );
}

const ringOf = (reason: VisitLine['positions'][number]['reason']) =>
  reason === 'finding' ? 'stop' : reason === 'with-it' ? 'with-it' : 'now';
