import { useState } from 'react';
import { type Rebuild, rebuildLineStrike, rebuildTakeChosen } from '#core/contract/rebuild.ts';
import { day } from '#core/units/day.ts';
import { pressingLines } from '#core/words/pressingText.ts';
import { dayText, decimalFigure, NO_BREAK_SPACE } from '#core/words/quantityText.ts';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { FaultBox, Question } from '#renderer/controls/Notice.tsx';
import { RingSign } from '#renderer/marks/ItemRing.tsx';
import { useWriting } from '#renderer/record.tsx';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { jobWords as words } from '#renderer/words/jobWords.ts';
import { BentPart } from './BentPart.tsx';
import { WorkForm } from './WorkForm.tsx';

type Line = Rebuild['lines'][number];

/** The lines of work, what each needs and how it stands with the customer. */
export function Work({ job, isOpen }: { job: Rebuild; isOpen: boolean }) {
  const writing = useWriting();
  const [onForm, setOnForm] = useState<Line | 'new' | 'bent' | null>(null);
  const takeChosen = useDo(rebuildTakeChosen);
  const [by] = useBy();
  const [striking, setStriking] = useState<Line | null>(null);
  const hours = (figure: number) => `${decimalFigure(figure, 1, writing)}${NO_BREAK_SPACE}h`;
  return (
    <section>
      <h2>{words.work}</h2>
      {job.lines.length === 0 && <p className="second">{words.noWork}</p>}
      {job.lines.length > 0 && (
        <table className="table">
          <thead>
            <tr>
              <th>{words.heads.item}</th>
              <th>{words.heads.work}</th>
              <th className="figures">{words.heads.hours}</th>
              <th className="after-figures">{words.heads.parts}</th>
              <th>{words.heads.stands}</th>
              {isOpen && <th>{words.heads.change}</th>}
            </tr>
          </thead>
          <tbody>
            {job.lines.map((line) => (
              <tr key={line.lineId}>
                <td>{line.item !== null && <RingSign item={line.item} state={line.safety ? 'stop' : 'leave'} />}</td>
                <td>
                  {[line.position, line.what].filter(Boolean).join(': ')}
                  {line.pressing &&
                    pressingLines(line.pressing, writing).map((sentence) => (
                      <p key={sentence} className="second">
                        {sentence}
                      </p>
                    ))}
                </td>
                <td className="figures">{decimalFigure(line.ownHours, 1, writing)}</td>
                <td className="after-figures">{line.makes.map((make) => words.makeLine(make)).join('; ')}</td>
                <td>
                  {words.stands[line.stands]}
                  {line.declinedWords !== '' && <q>{line.declinedWords}</q>}
                </td>
                {isOpen && (
                  <td className="nw">
                    <button
                      type="button"
                      className="text-key"
                      aria-label={`${words.putRight}: ${line.what}`}
                      onClick={() => setOnForm(line)}
                    >
                      {words.putRight}
                    </button>
                    <button
                      type="button"
                      className="text-key"
                      aria-label={`${words.strike}: ${line.what}`}
                      onClick={() => setStriking(line)}
                    >
                      {words.strike}
                    </button>
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {job.lines.length > 0 && (
        <p>
          {words.hoursLine(
            hours(job.hours.stripDown),
            hours(job.hours.own),
            hours(job.hours.stripDown + job.hours.own),
          )}
          {job.partsOn !== null && ` ${words.partsOn(dayText(day(job.partsOn)))}`}
        </p>
      )}
      {striking && <AskStrike line={striking} onDone={() => setStriking(null)} />}
      {isOpen && onForm === null && (
        <Keys>
          <Key letter="A" onPress={() => setOnForm('new')}>
            {words.addWork}
          </Key>
          <Key letter="B" onPress={() => setOnForm('bent')}>
            {words.bent}
          </Key>
          <Key
            letter="R"
            disabled={takeChosen.busy}
            onPress={() => void takeChosen.run({ rebuildId: job.rebuildId, by })}
          >
            {words.takeChosen}
          </Key>
        </Keys>
      )}
      {takeChosen.fault && <FaultBox fault={takeChosen.fault} />}
      {onForm === 'bent' && <BentPart job={job} onDone={() => setOnForm(null)} />}
      {onForm !== null && onForm !== 'bent' && (
        <WorkForm
          key={onForm === 'new' ? 'new' : onForm.lineId}
          job={job}
          line={onForm === 'new' ? null : onForm}
          onDone={() => setOnForm(null)}
        />
      )}
    </section>
  );
}

function AskStrike({ line, onDone }: { line: Line; onDone: () => void }) {
  const strike = useDo(rebuildLineStrike);
  const [by, setBy] = useBy();
  return (
    <>
      <Question
        fact={words.strikeFact(line.what)}
        then={words.strikeThen}
        keys={
          <>
            <ByField label={words.by} value={by} onChange={setBy} />
            <Key
              red
              disabled={strike.busy}
              onPress={async () => {
                if (await strike.run({ lineId: line.lineId, reason: '', by })) onDone();
              }}
            >
              {words.strike}
            </Key>
            <Key letter="Escape" onPress={onDone}>
              {words.leave}
            </Key>
          </>
        }
      />
      {strike.fault && <FaultBox fault={strike.fault} />}
    </>
  );
}
