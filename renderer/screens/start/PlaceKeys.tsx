import { recordConfirmPlace } from '#core/contract/record.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { backupWords as words } from '#renderer/words/backupWords.ts';

/** A person's word on a folder that looks as if another program copied it; it is not asked again. */
export function PlaceKeys() {
  const confirm = useDo(recordConfirmPlace);
  return (
    <>
      <Key disabled={confirm.busy} onPress={() => void confirm.run({ synced: false })}>
        {words.notSynced}
      </Key>
      <Key disabled={confirm.busy} onPress={() => void confirm.run({ synced: true })}>
        {words.synced}
      </Key>
    </>
  );
}
