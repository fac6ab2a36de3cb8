import { useLocation } from 'wouter';
import { Key } from '#renderer/controls/Key.tsx';
import { oldSheetsWords as words } from '#renderer/words/oldSheetsWords.ts';

/** Goes to the desk where old sheets are typed. */
export function OldSheetsKey() {
  const [, goTo] = useLocation();
  return (
    <Key letter="O" onPress={() => goTo('/old-sheets')}>
      {words.openOldSheets}
    </Key>
  );
}
