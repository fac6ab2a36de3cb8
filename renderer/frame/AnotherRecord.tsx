import { recordOpen } from '#core/contract/record.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox, Question } from '#renderer/controls/Notice.tsx';
import { useRecord } from '#renderer/record.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { meantFor, useElsewhere } from '#renderer/whichRecord.ts';
import { frameWords as words } from '#renderer/words/frameWords.ts';

/**
 * Over every screen once another window has opened another record: nothing here is asked or saved any more until one of the two
 * is chosen. The screen stays as it is, with what was typed on it.
 */
export function AnotherRecord() {
  const { path } = useRecord();
  const elsewhere = useElsewhere();
  const open = useDo(recordOpen);
  if (!elsewhere) return null;
  const back = async (own: string) => {
    const before = meantFor();
    // another file stands in its place: the numbers on this screen are not of it
    if ((await open.run({ path: own })) && meantFor() !== before) loadAnew();
  };
  const isSameFile = elsewhere.file === path;
  return (
    <>
      <Question
        fact={isSameFile ? words.putInItsPlace : words.anotherRecord(elsewhere.file)}
        then={words.anotherRecordThen(isSameFile)}
        keys={
          <>
            {path !== null && !isSameFile && (
              <Key first disabled={open.busy} onPress={() => void back(path)}>
                {words.openOwnAgain(fileName(path))}
              </Key>
            )}
            <Key disabled={open.busy} onPress={loadAnew}>
              {words.loadOther(elsewhere.file && fileName(elsewhere.file))}
            </Key>
          </>
        }
      />
      {open.fault && <FaultBox fault={open.fault} />}
    </>
  );
}

const fileName = (path: string): string => path.split(/[\\/]/).at(-1) ?? path;

/** From its first screen: the address names things of the other record. What is typed is kept for the record it was typed in. */
function loadAnew(): void {
  window.history.replaceState(null, '', window.location.pathname);
  window.location.reload();
}
