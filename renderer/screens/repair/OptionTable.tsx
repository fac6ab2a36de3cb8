import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';
import { useLocation } from 'wouter';
import type { RepairChoiceName, RepairOptionShown, RepairSheet } from '#core/contract/repair.ts';
import type { Writing } from '#core/words/quantityText.ts';
import { Key, Keys, Letter } from '#renderer/controls/Key.tsx';
import { useAccelerator } from '#renderer/controls/useAccelerator.ts';
import { HelpMark } from '#renderer/help/HelpMark.tsx';
import { carriedFrom } from '#renderer/screens/fits/carried.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import type { HelpTopicId } from '#renderer/words/helpWords.ts';
import { cautionSaid, closedBecause, reasonText } from '#renderer/words/repairReasons.ts';
import { repairWords } from '#renderer/words/repairWords.ts';
import { LIFE_HIGH, LifeBar, LifeScaleFigures, lifeScaleTo } from './LifeScale.tsx';
import { OptionPicture } from './OptionPicture.tsx';

type Row = { label: string; help?: HelpTopicId; value: (option: RepairOptionShown) => ReactNode; heavy?: boolean };

const NOT_REPAIRED: ReadonlySet<RepairChoiceName> = new Set(['leave', 'reject']);

/** Fitting a bought part takes what that part takes: not known here. */
const hoursOr = (of: 'hoursHere' | 'hoursAdded', writing: Writing) => (option: RepairOptionShown) => {
  const hours = option[of];
  return hours === null ? repairWords.notKnown : repairWords.hours(hours.typical, writing);
};

/** What differs, one row each; the rest stands under the picked column. */
const rowsOf = (writing: Writing): Row[] => [
  {
    label: repairWords.rows.boreTo(writing),
    help: 'clean-up',
    value: (option) =>
      option.bore
        ? [repairWords.bore(option, writing), repairWords.boreLimits(option, writing)]
        : option.choice === 'reject'
          ? repairWords.asBought
          : repairWords.asFound,
  },
  {
    label: repairWords.rows.fit(writing),
    value: (option) =>
      option.choice === 'leave'
        ? repairWords.asFound
        : option.choice === 'reject'
          ? repairWords.asBought
          : repairWords.fit(option, writing),
  },
  { label: repairWords.rows.slack(writing), value: ({ slackMm }) => repairWords.slack(slackMm, writing) },
  {
    label: repairWords.rows.wall,
    help: 'wall',
    value: (option) => [repairWords.wall(option, writing), repairWords.wallWanted(option, writing)],
    heavy: true,
  },
  {
    label: repairWords.rows.drawn,
    help: 'drawn',
    value: (option) => (NOT_REPAIRED.has(option.choice) ? '' : repairWords.drawn(option)),
  },
  { label: repairWords.rows.hours, value: hoursOr('hoursHere', writing), heavy: true },
  { label: repairWords.rows.added, value: hoursOr('hoursAdded', writing) },
  { label: repairWords.rows.make, value: repairWords.make },
];

/** The choices side by side; a closed one shows why in place of its figures. */
export function OptionTable({
  sheet,
  writing,
  picked,
  onPick,
}: {
  sheet: RepairSheet;
  writing: Writing;
  picked: RepairChoiceName;
  onPick: (choice: RepairChoiceName) => void;
}) {
  const rows = rowsOf(writing);
  const toHours = lifeScaleTo(sheet.options);
  return (
    <div className="options" style={{ gridTemplateRows: `92px auto repeat(${rows.length}, auto) ${LIFE_HIGH + 8}px` }}>
      <div className="option labels">
        <div />
        <div />
        {rows.map(({ label, help }) => (
          <div key={label} className="row">
            <span>
              {label}
              {help && <HelpMark about={help} />}
            </span>
          </div>
        ))}
        <div className="row life">
          <span>
            {repairWords.rows.lasts}
            <HelpMark about="lasts" />
          </span>
          <LifeScaleFigures toHours={toHours} />
        </div>
      </div>
      {sheet.options.map((option, i) => (
        <Column
          key={option.choice}
          option={option}
          rows={rows}
          letter={String(i + 1)}
          picked={picked === option.choice}
          chosen={sheet.chosen?.choice === option.choice}
          onPick={onPick}
          life={<LifeBar option={option} toHours={toHours} width={118} own={ownAfter(option, sheet)} />}
        />
      ))}
    </div>
  );
}

/** What a new part's life rests on is borrowed; one left as it is has its own readings. */
const ownAfter = ({ choice }: RepairOptionShown, { rests }: RepairSheet): number =>
  choice === 'leave' ? rests.ownReadings : 0;

function Column({
  option,
  rows,
  letter,
  picked,
  chosen,
  onPick,
  life,
}: {
  option: RepairOptionShown;
  rows: readonly Row[];
  letter: string;
  picked: boolean;
  chosen: boolean;
  onPick: (choice: RepairChoiceName) => void;
  life: ReactNode;
}) {
  const { choice, closed } = option;
  const shut = closed.length > 0;
  const pick = () => onPick(choice);
  useAccelerator(letter, pick);
  const className = ['option', picked && 'picked', shut && 'shut', chosen && 'chosen'].filter(Boolean).join(' ');
  return (
    <div className={className}>
      <OptionPicture choice={choice} closed={shut} />
      <Button className="option-name" onPress={pick} aria-pressed={picked} aria-keyshortcuts={letter}>
        {repairWords.choice(choice)}
        <Letter>{letter}</Letter>
      </Button>
      {shut ? (
        <div className="why" style={{ gridRow: `span ${rows.length + 1}` }}>
          <b>{repairWords.closed}</b>
          {closed.map((reason) => (
            <p key={reason.code}>
              <Figures>{reasonText(closedBecause, reason)}</Figures>
            </p>
          ))}
        </div>
      ) : (
        <>
          {rows.map(({ label, value, heavy }) => (
            <Cell key={label} heavy={heavy === true} value={value(option)} label={label} />
          ))}
          <div className="row life">{life}</div>
        </>
      )}
    </div>
  );
}

function Cell({ label, value, heavy }: { label: string; value: ReactNode; heavy: boolean }) {
  const [first, second] = Array.isArray(value) ? (value as [ReactNode, ReactNode]) : [value, ''];
  return (
    <div className={heavy ? 'row heavy' : 'row'}>
      <span className="said">{label}: </span>
      {typeof first === 'string' ? <Figures>{first}</Figures> : first}
      {second && <small>{second}</small>}
    </div>
  );
}

/** What else is to be said of the picked choice: pressing, cautions of the reckoning, cautions to people. */
export function PickedOption({
  option,
  sheet,
  writing,
}: {
  option: RepairOptionShown;
  sheet: RepairSheet;
  writing: Writing;
}) {
  const [, goTo] = useLocation();
  const press = option.closed.length === 0 ? repairWords.press(option, writing) : '';
  return (
    <section className="picked-option" aria-live="polite">
      <h2>{repairWords.choice(option.choice)}</h2>
      {sheet.chosen?.choice === option.choice && <p className="heavy">{repairWords.chosenBy(sheet.chosen)}</p>}
      {press && (
        <p>
          <Figures>{press}</Figures>
        </p>
      )}
      {carriedFrom(sheet, option.choice) && (
        <Keys>
          <Key letter="F" onPress={() => goTo(`/fits/${sheet.positionId}/${option.choice}`)}>
            {repairWords.toFits}
          </Key>
        </Keys>
      )}
      <ul>
        {option.cautions.map((caution) => (
          <li key={caution.code}>
            <Figures>{reasonText(cautionSaid, caution)}</Figures>
          </li>
        ))}
      </ul>
      {option.safety.length > 0 && (
        <>
          <h3>{repairWords.cautionsOf(option.choice)}</h3>
          <ul className="safety">
            {option.safety.map(({ id, text }) => (
              <li key={id}>{text}</li>
            ))}
          </ul>
        </>
      )}
      <p className="second">
        {repairWords.fitterDecides} {sheet.prevail}
      </p>
    </section>
  );
}
