import { useRef, useState } from 'react';
import type { RingState } from '#core/axis/itemRing.ts';
import { type AssemblyKind, kindSave } from '#core/contract/shop.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { Sketch } from '#renderer/marks/Sketch.tsx';
import { useWriting } from '#renderer/record.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { shopWords as words } from '#renderer/words/shopWords.ts';
import { takeInWords } from '#renderer/words/takeInWords.ts';
import { assemblyByHand, assemblyOfKind, type PositionForm } from '../take-in/form.ts';
import { PositionTable } from '../take-in/PositionTable.tsx';
import { RemarksBox } from '../take-in/RemarksBox.tsx';
import { kindPositions } from '../take-in/request.ts';
import { goToFirstRemark } from '../take-in/useFormKeys.ts';
import { StripDownTree } from './StripDownTree.tsx';
import { treeForm, treeOf } from './stripDownForm.ts';

type KindOnRecord = AssemblyKind & { kindId: number };
const NEW = -1;

/** Assembly kinds: what taking a machine in lays out. One at a time is open to change. */
export function Kinds({ kinds, partClasses }: { kinds: readonly KindOnRecord[]; partClasses: readonly string[] }) {
  const [opened, setOpened] = useState<number | null>(null);
  return (
    <>
      <ul className="kinds">
        {kinds.map((kind) => (
          <li key={kind.kindId}>
            <div className="kind-line">
              <b>{kind.name}</b>
              <span className="second">
                {`${words.kindCounts(
                  kind.positions.length,
                  kind.positions.reduce((sum, { points }) => sum + points.length, 0),
                )}, ${words.kindDrawing(kind.sketch !== null)}`}
              </span>
              {opened !== kind.kindId && (
                <Key onPress={() => setOpened(kind.kindId)}>
                  {words.kindOpen}
                  <span className="said">{kind.name}</span>
                </Key>
              )}
            </div>
            {opened === kind.kindId && (
              <KindEditor kindId={kind.kindId} kind={kind} partClasses={partClasses} onLeave={() => setOpened(null)} />
            )}
          </li>
        ))}
      </ul>
      {opened === NEW ? (
        <KindEditor kindId={null} kind={null} partClasses={partClasses} onLeave={() => setOpened(null)} />
      ) : (
        <div className="keys">
          <Key onPress={() => setOpened(NEW)}>{words.kindAdd}</Key>
        </div>
      )}
    </>
  );
}

function KindEditor({
  kindId,
  kind,
  partClasses,
  onLeave,
}: {
  kindId: number | null;
  kind: AssemblyKind | null;
  partClasses: readonly string[];
  onLeave: () => void;
}) {
  const writing = useWriting();
  const save = useDo(kindSave);
  const [name, setName] = useState(kind?.name ?? '');
  const [positions, setPositions] = useState<PositionForm[]>(
    () => (kind ? assemblyOfKind(kind, writing) : assemblyByHand(writing)).positions,
  );
  const [item, setItem] = useState<string | null>(null);
  const [tried, setTried] = useState(false);
  const body = useRef<HTMLDivElement>(null);
  const read = kindPositions(positions, writing);
  const remarks = tried ? read.remarks : [];
  const sketch = kind?.sketch ?? null;
  const [tree, setTree] = useState(() => treeForm(kind?.stripDown));
  const items = (read.laidOut?.positions ?? []).map(({ item, name }) => ({ item, name }));
  const readTree = treeOf(
    tree,
    items.map((one) => one.item),
  );
  const send = async () => {
    setTried(true);
    if (!read.laidOut || name.trim() === '') return goToFirstRemark(body);
    if ('odd' in readTree) return;
    const stripDown = tree.steps.length === 0 ? {} : { stripDown: readTree.tree };
    if (await save.run({ kindId, kind: { name: name.trim(), ...read.laidOut, sketch, ...stripDown } })) onLeave();
  };
  const states = new Map<number, RingState>(
    positions.map(({ itemText, leftOut }) => [Number(itemText), leftOut ? 'none' : 'leave']),
  );
  return (
    <div className="kind-editor" ref={body}>
      <div className="kind-head">
        <div className="one-line">
          <TextField
            label={words.kindName}
            value={name}
            onChange={setName}
            fault={tried && name.trim() === '' ? words.kindName : null}
            autoFocus
            maxLength={120}
          />
          <Key first disabled={save.busy} onPress={() => void send()}>
            {words.kindSave}
          </Key>
          <Key onPress={onLeave}>{words.kindLeave}</Key>
          <p className="second">{words.kindNote}</p>
        </div>
        {sketch && (
          <Sketch
            sketch={sketch}
            states={states}
            chosen={item === null ? null : Number(item)}
            width={360}
            label={takeInWords.sketchOf(name)}
          />
        )}
      </div>
      <RemarksBox count={remarks.length} onFirst={() => goToFirstRemark(body)} />
      {save.fault && <FaultBox fault={save.fault} />}
      <PositionTable
        name={name || words.kindNew}
        path="kind"
        groups
        positions={positions}
        partClasses={partClasses}
        remarks={remarks}
        onChange={setPositions}
        onItem={setItem}
      />
      <StripDownTree
        form={tree}
        positions={items}
        odd={tried && 'odd' in readTree ? readTree.odd : null}
        onChange={setTree}
      />
    </div>
  );
}
