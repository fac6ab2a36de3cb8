import { useState } from 'react';
import { assemblyJoints, assemblySaveJoints } from '#core/contract/machine.ts';
import type { ReplyOf } from '#core/contract/operation.ts';
import { NotYet } from '#renderer/controls/NotYet.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { jointWords as words } from '#renderer/words/jointWords.ts';
import { ByField, useBy } from './ByField.tsx';

type Joints = ReplyOf<typeof assemblyJoints>;
type Point = Joints['points'][number];
/** Pin and bores said of a slack; a joint once both are. */
type Said = { pinPointId: number | null; borePointIds: readonly number[] };

/** Which pin runs in which bores, of an assembly that stands. */
export function JointsForm({ assemblyId, onClose }: { assemblyId: number; onClose: () => void }) {
  const asked = useAsk(assemblyJoints, { assemblyId });
  if (!asked.value) return <NotYet of={asked} words={words.loading} />;
  return <OfSlacks asked={asked.value} assemblyId={assemblyId} onClose={onClose} />;
}

const NOTHING: Said = { pinPointId: null, borePointIds: [] };
const isHalf = ({ pinPointId, borePointIds }: Said): boolean => (pinPointId === null) !== (borePointIds.length === 0);

function OfSlacks({ asked, assemblyId, onClose }: { asked: Joints; assemblyId: number; onClose: () => void }) {
  const [said, setSaid] = useState<ReadonlyMap<number, Said>>(
    () => new Map(asked.joints.map((joint) => [joint.slackPointId, joint])),
  );
  const [by, setBy] = useBy();
  const save = useDo(assemblySaveJoints);
  const of = (part: Point['part']) => asked.points.filter((point) => point.part === part);
  const slacks = of('slack');
  const half = [...said.values()].some(isHalf);
  const send = async () => {
    const joints = [...said].flatMap(([slackPointId, { pinPointId, borePointIds }]) =>
      pinPointId === null ? [] : [{ slackPointId, pinPointId, borePointIds: [...borePointIds] }],
    );
    if (await save.run({ assemblyId, joints, by })) onClose();
  };
  return (
    <RowForm
      className="joints-form"
      fact={
        <>
          <b>{words.head}</b> {slacks.length === 0 ? words.none : words.what}
        </>
      }
      complete={!half && slacks.length > 0}
      doing={save}
      send={words.save}
      onSend={send}
      onLeave={onClose}
    >
      {slacks.map((slack) => (
        <OneSlack
          key={slack.pointId}
          slack={slack}
          pins={of('pin')}
          bores={of('bore')}
          said={said.get(slack.pointId) ?? NOTHING}
          onSay={(next) => setSaid(new Map(said).set(slack.pointId, next))}
        />
      ))}
      <ByField value={by} onChange={setBy} />
    </RowForm>
  );
}

function OneSlack({
  slack,
  pins,
  bores,
  said,
  onSay,
}: {
  slack: Point;
  pins: readonly Point[];
  bores: readonly Point[];
  said: Said;
  onSay: (said: Said) => void;
}) {
  const name = nameOf(slack);
  return (
    <fieldset>
      <legend>{name}</legend>
      <label>
        <span className="joint-part">{words.pin}</span>
        <select
          value={said.pinPointId ?? ''}
          onChange={({ target }) => onSay({ ...said, pinPointId: target.value === '' ? null : Number(target.value) })}
        >
          <option value="">{words.noPin}</option>
          {pins.map((pin) => (
            <option key={pin.pointId} value={pin.pointId}>
              {nameOf(pin)}
            </option>
          ))}
        </select>
      </label>
      <fieldset className="joint-bores" aria-label={`${name}: ${words.bores}`}>
        <span className="joint-part">{words.bores}</span>
        {bores.map((bore) => (
          <label key={bore.pointId}>
            <input
              type="checkbox"
              className="tick-box"
              checked={said.borePointIds.includes(bore.pointId)}
              onChange={({ target }) =>
                onSay({
                  ...said,
                  borePointIds: target.checked
                    ? [...said.borePointIds, bore.pointId]
                    : said.borePointIds.filter((id) => id !== bore.pointId),
                })
              }
            />{' '}
            {nameOf(bore)}
          </label>
        ))}
      </fieldset>
      {isHalf(said) && (
        <p className="remark" role="alert">
          {words.half}
        </p>
      )}
    </fieldset>
  );
}

const nameOf = ({ item, position, point }: Point): string => words.of(item, position, point);
