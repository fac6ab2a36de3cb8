import type { ReactNode } from 'react';
import { StruckBox } from '#renderer/marks/DoNotUseBox.tsx';
import { shared } from '#renderer/words/english.ts';

export type SheetProps = {
  title: string;
  /** beside the title, in second ink */
  sub?: ReactNode;
  /** keys at the right of the head */
  actions?: ReactNode;
  /** under the head, over the whole width; stays while the body scrolls */
  banner?: ReactNode;
  /** cells of the title block along the bottom */
  block?: readonly TitleCell[];
  /** greasy hands: larger figures and keys, always light */
  bench?: boolean;
  /** body goes edge to edge, for pictures that set their own margins */
  bleed?: boolean;
  children: ReactNode;
};

export type TitleCell = { label: string; value: ReactNode; grow?: boolean };

/** A drawing sheet: head, body that scrolls, and the title block along the bottom. One to a screen. */
export function Sheet({ title, sub, actions, banner, block, bench = false, bleed = false, children }: SheetProps) {
  return (
    <main className="sheet" data-bench={bench || undefined} {...(bench && { 'data-theme': 'light' })}>
      <header className="sheet-head">
        <h1>{title}</h1>
        {sub !== undefined && <div className="sub">{sub}</div>}
        {actions && <div className="actions">{actions}</div>}
      </header>
      {banner}
      <div className={bleed ? 'sheet-body bleed' : 'sheet-body'}>{children}</div>
      {block && <TitleBlock cells={block} />}
    </main>
  );
}

/** As-of and basis are part of the sheet. */
export function TitleBlock({ cells }: { cells: readonly TitleCell[] }) {
  return (
    <footer className="title-block">
      {cells.map((cell) => (
        <div key={cell.label} className={cell.grow ? 'grow' : undefined}>
          <small>{cell.label}</small>
          <div className="value">{cell.value}</div>
        </div>
      ))}
    </footer>
  );
}

/** The cell every forecast's sheet has. */
export const planningAidCell: TitleCell = { label: shared.planningAid, value: shared.notACertificate };

/** A finding that forbids use: the banner that stays. */
export function DoNotUseBanner({ children, aside }: { children: ReactNode; aside?: ReactNode }) {
  return (
    <div className="stop-banner">
      <StruckBox />
      <b>{shared.doNotUse}</b>
      <div className="stop-words">{children}</div>
      {aside}
    </div>
  );
}
