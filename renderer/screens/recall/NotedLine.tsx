import { useState } from 'react';
import { Link } from 'wouter';
import { planBook } from '#core/contract/plan.ts';
import { contactStrike } from '#core/contract/recall.ts';
import type { Day } from '#core/units/day.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { recallWords as words } from '#renderer/words/recallWords.ts';

/** What was just noted, with the key that takes it back and, of a day agreed, the one that puts it on the winter plan. */
export type Noted = {
  text: string;
  contactIds: readonly number[];
  /** a machine that comes in on a day; null: none does */
  booked: { machineId: number; on: Day; saidBy: string; note: string } | null;
};

export function NotedLine({ noted }: { noted: Noted }) {
  const strike = useDo(contactStrike);
  const [by] = useBy();
  const [takenBack, setTakenBack] = useState(false);
  const takeBack = async () => {
    for (const contactId of noted.contactIds)
      if (!(await strike.run({ contactId, reason: words.takenBackWhy, by }))) return;
    setTakenBack(true);
  };
  return (
    <div className="noted-line">
      <p role="status">{takenBack ? words.takenBack : noted.text}</p>
      {!takenBack && noted.contactIds.length > 0 && (
        <Key letter="U" disabled={strike.busy} onPress={() => void takeBack()}>
          {words.takeBack}
        </Key>
      )}
      {strike.fault && <FaultBox fault={strike.fault} />}
      {!takenBack && noted.booked && <OnPlan booked={noted.booked} by={by} />}
    </div>
  );
}

/** A day agreed is of use to the shop only once its week knows of it. */
function OnPlan({ booked, by }: { booked: NonNullable<Noted['booked']>; by: string }) {
  const book = useDo(planBook);
  const [stands, setStands] = useState(false);
  const put = async () => {
    if (await book.run({ ...booked, by })) setStands(true);
  };
  if (stands)
    return (
      <p role="status">
        {words.onPlan(booked.on)} <Link href="/winter">{words.toPlan}</Link>
      </p>
    );
  return (
    <>
      <Key first letter="W" disabled={book.busy} onPress={() => void put()}>
        {words.putOnPlan}
      </Key>
      {book.fault && <FaultBox fault={book.fault} />}
    </>
  );
}
