import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useMemo, useState } from 'react';
import type { Fault } from '#core/contract/operation.ts';
import { type StripDownDraft, stripDownDiscard, stripDownKeep, stripDownSheet } from '#core/contract/stripDown.ts';
import { answerTo } from '#renderer/ask.ts';

/** How long the fingers must rest before what was typed goes to the record [ms]. */
const REST_MS = 400;

export type Kept = {
  /** ISO instant at which the record had all of it; null: nothing yet */
  keptAt: string | null;
  /** something typed is not in the record yet */
  pending: boolean;
  fault: Fault | null;
};

/** @param lastStripDownId the strip-down it has become */
type OnKept = (draft: StripDownDraft | null, lastStripDownId?: number) => void;

/**
 * Keeps a draft in the record while it is typed: a little after the last key, and at once when the screen is left.
 * One write at a time, always of the newest draft.
 */
class Keeper {
  #waiting: StripDownDraft | null = null;
  #timer: ReturnType<typeof setTimeout> | null = null;
  #writing: Promise<void> = Promise.resolve();
  #shut = false;
  readonly #tell: (kept: Partial<Kept>) => void;
  readonly #onKept: OnKept;

  constructor(tell: (kept: Partial<Kept>) => void, onKept: OnKept) {
    this.#tell = tell;
    this.#onKept = onKept;
  }

  keep(draft: StripDownDraft): void {
    if (this.#shut) return;
    this.#waiting = draft;
    this.#tell({ pending: true });
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.flush(), REST_MS);
  }

  flush(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
    this.#writing = this.#writing.then(() => this.#write());
  }

  async #write(): Promise<void> {
    const draft = this.#waiting;
    if (draft === null || this.#shut) return;
    this.#waiting = null;
    const answer = await answerTo(stripDownKeep, draft);
    if (answer.ok) {
      this.#onKept(draft);
      this.#tell({ keptAt: answer.value.keptAt, pending: this.#waiting !== null, fault: null });
    } else this.#tell({ pending: true, fault: answer.fault });
  }

  /** Nothing more is kept; resolves once what was on its way has arrived. For saving and throwing away. */
  async shut(): Promise<void> {
    this.#shut = true;
    if (this.#timer !== null) clearTimeout(this.#timer);
    await this.#writing;
  }

  /** Saving was refused: typing goes on, and so does keeping. */
  reopen(): void {
    this.#shut = false;
  }

  /** It stands in the record as a strip-down: what is kept of it as a draft is none any more. */
  saved(stripDownId: number): void {
    this.#onKept(null, stripDownId);
  }

  /** What was typed is saved, or thrown away: nothing of it is kept again, and the next sheet may be. */
  beginAnew(): void {
    this.#waiting = null;
    this.#shut = false;
    this.#tell({ keptAt: null, pending: false, fault: null });
  }

  async discard(machineId: number): Promise<Fault | null> {
    await this.shut();
    const answer = await answerTo(stripDownDiscard, { machineId });
    if (answer.ok) this.#onKept(null);
    return answer.ok ? null : answer.fault;
  }
}

/** @param machineId the machine on the bench; another one is another screen (key it) */
export function useKept(machineId: number): { kept: Kept; keeper: Keeper } {
  const queries = useQueryClient();
  const [kept, setKept] = useState<Kept>({ keptAt: null, pending: false, fault: null });
  const keeper = useMemo(
    () =>
      new Keeper(
        (news) => setKept((was) => ({ ...was, ...news })),
        (draft, lastStripDownId) =>
          // the sheet as asked before knows an older draft: coming back to this screen must find the newest
          queries.setQueryData([stripDownSheet.name, { machineId }], (was: object | undefined) =>
            was ? { ...was, draft, ...(lastStripDownId !== undefined && { lastStripDownId }) } : was,
          ),
      ),
    [queries, machineId],
  );
  useEffect(() => {
    const hidden = () => keeper.flush();
    document.addEventListener('visibilitychange', hidden);
    return () => {
      document.removeEventListener('visibilitychange', hidden);
      keeper.flush();
    };
  }, [keeper]);
  return { kept, keeper };
}
