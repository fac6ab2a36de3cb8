import type { ReactNode } from 'react';
import { useLocation } from 'wouter';
import type { Asked } from '#renderer/useAsk.ts';
import { faultText, isNotOnRecord } from '#renderer/words/faultText.ts';
import { frameWords } from '#renderer/words/frameWords.ts';
import { FillingRule } from './FillingRule.tsx';
import { Key } from './Key.tsx';
import { FaultBox } from './Notice.tsx';
import { Sheet, type SheetProps } from './Sheet.tsx';

export type NotYetProps = {
  /** what was asked for; of several that are needed together the first that did not come counts */
  of: Asked<unknown> | readonly Asked<unknown>[];
  /** what is waited for; absent: the record is opened */
  words?: string;
  /** code of the fault to tell where the address names nothing that could be asked for */
  noSuch?: string;
  /** ways on from here, besides another try */
  keys?: ReactNode;
};

/** What a screen asked for and does not have: still on its way, or refused, with what to do next. Nothing once it is there. */
export function NotYet({ of, words = frameWords.opening, noSuch, keys }: NotYetProps) {
  const all = [of].flat() as Asked<unknown>[];
  const missing = all.filter(({ value }) => value === undefined);
  if (missing.length === 0) return null;
  const refused = missing.find(({ fault }) => fault !== null);
  const asksNothing = noSuch !== undefined && missing.every(({ waiting }) => !waiting);
  const fault = refused?.fault ?? (asksNothing ? { code: noSuch, facts: {} } : null);
  if (!fault) return <FillingRule words={words} />;
  return (
    <FaultBox
      fault={fault}
      said={faultText(fault, { onlyRead: true })}
      keys={
        <>
          {/* what is not on record is not there at a second try either */}
          {refused && !isNotOnRecord(fault) && <Key onPress={refused.again}>{frameWords.tryAgain}</Key>}
          {keys}
        </>
      }
    />
  );
}

/** The same as a whole screen: it has its heading from the start, and a way on where nothing will come. */
export function NotYetSheet({
  of,
  words,
  noSuch,
  list = { at: '/machines', words: frameWords.toMachines },
  ...sheet
}: Omit<NotYetProps, 'keys'> &
  Omit<SheetProps, 'children' | 'bleed'> & {
    /** the list to choose another one from */
    list?: { at: string; words: string };
  }) {
  const [, goTo] = useLocation();
  return (
    <Sheet {...sheet}>
      <NotYet
        of={of}
        {...(words !== undefined && { words })}
        {...(noSuch !== undefined && { noSuch })}
        keys={
          <Key first onPress={() => goTo(list.at)}>
            {list.words}
          </Key>
        }
      />
    </Sheet>
  );
}
