import { Fragment, type ReactNode, useState } from 'react';
import type { Fault } from '#core/contract/operation.ts';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { Figures } from '#renderer/words/Figures.tsx';
import { fromText, hoursFactsWords as words } from '#renderer/words/hoursFactsWords.ts';
import { momentText } from '../../history/momentText.ts';

/** Something that holds from a day on until the next such row; who said it, when, and what became of it. */
export type SaidRow = {
  id: number;
  from: string | null;
  text: string;
  madeAt: string;
  madeBy: string;
  reason: string;
  superseded: boolean;
  struck: boolean;
};

export type SaidRowsProps = {
  head: string;
  /** said while there is no row */
  none: string;
  note?: string;
  rows: readonly SaidRow[];
  addKey: string;
  /** the form of a new row, or of one to be put right */
  form: (id: number | null, onClose: () => void) => ReactNode;
};

/** What was said of a machine from day to day, those put right struck; a row is pressed to put it right. */
export function SaidRows({ head, none, note, rows, addKey, form }: SaidRowsProps) {
  const [open, setOpen] = useState<number | 'new' | null>(null);
  const close = () => setOpen(null);
  return (
    <section className="said-rows" aria-label={head}>
      <h2 className="panel-head">{head}</h2>
      {rows.length === 0 ? (
        <p className="second">{none}</p>
      ) : (
        <table className="table said-table">
          <thead>
            <tr>
              <th>{words.from}</th>
              <th>{words.what}</th>
              <th>{words.entered}</th>
              <th>{words.by}</th>
              <th>{words.why}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <Fragment key={row.id}>
                <tr className={row.superseded ? 'superseded' : undefined}>
                  <td className="nw">
                    {row.superseded ? (
                      <s>{fromText(row.from)}</s>
                    ) : (
                      <button
                        type="button"
                        className="size-key"
                        aria-expanded={open === row.id}
                        aria-label={words.putRightLabel(fromText(row.from))}
                        onClick={() => setOpen(open === row.id ? null : row.id)}
                      >
                        {fromText(row.from)}
                      </button>
                    )}
                  </td>
                  <td>
                    <Figures>{row.struck ? words.struckOut : row.text}</Figures>
                    {row.superseded && !row.struck && `, ${words.struck}`}
                  </td>
                  <td className="nw second">{momentText(row.madeAt)}</td>
                  <td>{row.madeBy || <span className="second">{words.notSaid}</span>}</td>
                  <td className="second">{row.reason}</td>
                </tr>
                {open === row.id && (
                  <tr className="form-row">
                    <td colSpan={5}>{form(row.id, close)}</td>
                  </tr>
                )}
              </Fragment>
            ))}
          </tbody>
        </table>
      )}
      {open === 'new' ? (
        form(null, close)
      ) : (
        <Keys>
          <Key onPress={() => setOpen('new')}>{addKey}</Key>
        </Keys>
      )}
      {note && <p className="second">{note}</p>}
    </section>
  );
}

/** Frame of such a form: what it says, who and why, and its keys; an incomplete one says what is missing once it is sent. */
export function SaidForm({
  isNew,
  doing,
  onSend,
  onStrike,
  onClose,
  above,
  below,
  children,
}: {
  isNew: boolean;
  doing: { fault: Fault | null; busy: boolean };
  onSend: () => void;
  onStrike?: (() => void) | undefined;
  onClose: () => void;
  above?: ReactNode;
  below?: ReactNode;
  children: ReactNode;
}) {
  return (
    <RowForm
      complete
      doing={doing}
      send={isNew ? words.add : words.putRight}
      onSend={onSend}
      keys={
        onStrike && (
          <Key red disabled={doing.busy} onPress={onStrike}>
            {words.strike}
          </Key>
        )
      }
      onLeave={onClose}
      above={above}
      below={below}
    >
      {children}
    </RowForm>
  );
}
