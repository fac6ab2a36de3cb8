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

/** What is kept on the machine now. @param lastStripDownId the strip-down it has become */
type OnKept = (now: { draft: StripDownDraft | null; draftKeptAt: string | null }, lastStripDownId?: number) => void;

const TYPED_MEANWHILE = 'typed-meanwhile';
/** The refusal among them, if any, that says that another window has typed on the same sheet. */
export const typedMeanwhile = (faults: readonly (Fault | null)[]): Fault | null =>
  faults.find((fault) => fault?.code === TYPED_MEANWHILE) ?? null;

/** Instants at which this window kept something: what was kept then is no other window's. */
const keptHere = new Set<string>();

/**
 * Keeps a draft in the record while it is typed: a little after the last key, and at once when the screen is left.
 * One write at a time, always of the newest draft, and never over one that another window has kept meanwhile.
 */
class Keeper {
  #waiting: StripDownDraft | null = null;
  #timer: ReturnType<typeof setTimeout> | null = null;
  #writing: Promise<void> = Promise.resolve();
  #shut = false;
  #knows: string | null;
  readonly #tell: (kept: Partial<Kept>) => void;
  readonly #onKept: OnKept;

  constructor(knows: string | null, tell: (kept: Partial<Kept>) => void, onKept: OnKept) {
    this.#knows = knows;
    this.#tell = tell;
    this.#onKept = onKept;
  }

  /** When what this screen knows to be typed on the machine was kept: said to the record with all that would put it aside. */
  get knows(): string | null {
    return this.#knows;
  }

  /** What was kept then was read, or is to give way to what stands here. */
  know(keptAt: string | null): void {
    this.#knows = keptAt;
    this.#tell({ fault: null });
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
    const answer = await answerTo(stripDownKeep, { ...draft, typedSince: this.#knows });
    if (answer.ok) {
      const { keptAt } = answer.value;
      this.#knows = keptAt;
      keptHere.add(keptAt);
      this.#onKept({ draft, draftKeptAt: keptAt });
      this.#tell({ keptAt, pending: this.#waiting !== null, fault: null });
      return;
    }
    this.#waiting ??= draft; // it goes with the next key, or when the window is next looked away from
    const { facts } = answer.fault;
    if (typedMeanwhile([answer.fault]) && keptHere.has(String(facts.keptAt))) {
      this.#knows = String(facts.keptAt);
      return this.#write();
    }
    this.#tell({ pending: true, fault: answer.fault });
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
    this.#onKept({ draft: null, draftKeptAt: null }, stripDownId);
  }

  /** What was typed is saved, or thrown away: nothing of it is kept again, and the next sheet may be. */
  beginAnew(): void {
    this.#waiting = null;
    this.#shut = false;
    this.#knows = null;
    this.#tell({ keptAt: null, pending: false, fault: null });
  }

  async discard(machineId: number): Promise<Fault | null> {
    await this.shut();
    const answer = await answerTo(stripDownDiscard, { machineId, typedSince: this.#knows });
    if (answer.ok) this.#onKept({ draft: null, draftKeptAt: null });
    else this.#tell({ fault: answer.fault });
    return answer.ok ? null : answer.fault;
  }
}

/**
 * @param machineId the machine on the bench; another one is another screen (key it)
 * @param draftKeptAt when what the screen begins with was kept; null: nothing was, or it is told later
 */
export function useKept(machineId: number, draftKeptAt: string | null = null): { kept: Kept; keeper: Keeper } {
  const queries = useQueryClient();
  const [kept, setKept] = useState<Kept>({ keptAt: null, pending: false, fault: null });
  const keeper = useMemo(
    () =>
      new Keeper(
        draftKeptAt,
        (news) => setKept((was) => ({ ...was, ...news })),
        (now, lastStripDownId) =>
          // the sheet as asked before knows an older draft: coming back to this screen must find the newest
          queries.setQueryData([stripDownSheet.name, { machineId }], (was: object | undefined) =>
            was ? { ...was, ...now, ...(lastStripDownId !== undefined && { lastStripDownId }) } : was,
          ),
      ),
    // when it began is said once: what is kept from then on the keeper knows itself
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
