import type { AssemblyKind } from '#core/contract/shop.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { takeInWords as words } from '#renderer/words/takeInWords.ts';

/** The shop's assembly kinds as keys, numbered; nought lays one out by hand. */
export function KindKeys({
  kinds,
  another,
  onKind,
  onByHand,
}: {
  kinds: readonly AssemblyKind[];
  /** the machine has one already */
  another: boolean;
  onKind: (kind: AssemblyKind) => void;
  onByHand: () => void;
}) {
  return (
    <div className="kind-keys">
      <p>{kinds.length === 0 ? words.noKinds : another ? words.anotherKind : words.chooseKind}</p>
      <div className="keys">
        {kinds.map((kind, i) => (
          <Key key={kind.name} {...(i < 9 && { letter: String(i + 1) })} onPress={() => onKind(kind)}>
            {kind.name}
          </Key>
        ))}
        <Key letter="0" onPress={onByHand}>
          {words.byHand}
        </Key>
      </div>
    </div>
  );
}
