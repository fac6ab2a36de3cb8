import type { ReactNode } from 'react';
import { day } from '#core/units/day.ts';
import { dayOfYearText } from '#core/words/quantityText.ts';
import { StruckBox } from '#renderer/marks/DoNotUseBox.tsx';
import { photoWords } from '#renderer/words/photoWords.ts';
import { stripDownWords as words } from '#renderer/words/stripDownWords.ts';
import { judgedText, type SeenAt, wholeText } from './seen.ts';
import type { FindingEntry, Renewed } from './sheet.ts';

/** The Seen column of a position: findings, renewals, and the key that adds one. */
export function Seen({
  position,
  seen,
  renewed,
  onAdd,
  onDrop,
}: {
  position: string;
  seen: SeenAt | null;
  renewed: Renewed;
  onAdd: () => void;
  onDrop: (at: number) => void;
}) {
  return (
    <div className="seen">
      <ul>
        {renewed.sinceLast && <li className="renewed">{words.renewedSince}</li>}
        {renewed.now && <li className="renewed">{words.renewedNow}</li>}
        {seen?.before.map((finding) => (
          <SeenLine
            key={finding.findingId}
            finding={finding}
            since={`${words.openBefore} ${dayOfYearText(day(finding.takenOn))}`}
          />
        ))}
        {seen?.now.map(({ finding, at }) => (
          <SeenLine key={at} finding={finding}>
            <button
              type="button"
              className="take-out"
              aria-label={words.dropFinding(wholeText(finding))}
              onClick={() => onDrop(at)}
            >
              <svg width="12" height="12" aria-hidden="true">
                <path d="M1.5 1.5l9 9M10.5 1.5l-9 9" stroke="currentColor" strokeWidth="1.8" />
              </svg>
            </button>
          </SeenLine>
        ))}
      </ul>
      {seen && (
        <button type="button" className="add-seen" aria-label={words.addSeenAt(position)} onClick={onAdd} tabIndex={-1}>
          +
        </button>
      )}
    </div>
  );
}

function SeenLine({
  finding,
  since = '',
  children,
}: {
  finding: Pick<FindingEntry, 'kind' | 'severity' | 'note'> & { photoIds?: readonly number[] };
  /** "open since 20 Oct" */
  since?: string;
  children?: ReactNode;
}) {
  const stop = finding.severity === 'do-not-use';
  const photos = finding.photoIds?.length ? photoWords.count(finding.photoIds.length) : '';
  const small = [finding.note, photos, since].filter(Boolean).join(', ');
  return (
    <li className={stop ? 'stop' : undefined}>
      {stop && <StruckBox width={24} height={16} />}
      <span className="seen-words" title={[wholeText(finding), since].filter(Boolean).join(', ')}>
        <b>{judgedText(finding)}</b>
        {small && <small>{small}</small>}
      </span>
      {children}
    </li>
  );
}
