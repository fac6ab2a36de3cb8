import { useState } from 'react';
import { type CustomerSheet, customerErase, customerErasePreview } from '#core/contract/customer.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox, Notice } from '#renderer/controls/Notice.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { momentText } from '#renderer/screens/history/momentText.ts';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { customersWords as words } from '#renderer/words/customersWords.ts';

/** Erasing on request: what would go, what stays, where it is still held; then the name typed, and it is gone. */
export function EraseCustomer({ customer, onDone }: { customer: CustomerSheet; onDone: () => void }) {
  const { customerId, name } = customer;
  const erase = useDo(customerErase);
  const [wordsText, setWordsText] = useState('');
  const [typedName, setTypedName] = useState('');
  const [by, setBy] = useBy();
  const further = wordsOf(wordsText);
  const preview = useAsk(customerErasePreview, { customerId, words: further });
  const complete = typedName.trim() === name.trim() && by.trim() !== '';
  const [notAnew, setNotAnew] = useState(false);
  const send = async () => {
    const done = complete && (await erase.run({ customerId, words: further, typedName, by }));
    if (!done) return;
    if (done.writtenAnew) onDone();
    else setNotAnew(true);
  };
  if (notAnew) {
    return (
      <Notice
        kind="waiting"
        head={words.erasedNotAnew}
        keys={
          <Key first letter="Escape" onPress={onDone}>
            {words.close}
          </Key>
        }
      />
    );
  }
  return (
    <RowForm
      className="erase-form"
      fact={<b>{words.eraseFact(name)}</b>}
      complete={complete}
      doing={erase}
      send={words.eraseIt}
      onSend={send}
      red
      meant="leave"
      onLeave={onDone}
      above={
        <>
          {!preview.value && !preview.fault && <FillingRule words={words.loading} />}
          {preview.fault && <FaultBox fault={preview.fault} />}
          {preview.value && (
            <>
              <p>{words.eraseStays(new Set(customer.owned.map((one) => one.machineId)).size, preview.value.slips)}</p>
              <p>{words.eraseBackups(preview.value.backups.length)}</p>
              <ul className="backup-days">
                {preview.value.backups.map(({ file, madeAt }) => (
                  <li key={file}>{momentText(madeAt)}</li>
                ))}
              </ul>
              <p>{words.eraseElsewhere}</p>
              <TextField
                label={words.eraseWords}
                hint={words.eraseWordsHint}
                value={wordsText}
                onChange={setWordsText}
                maxLength={500}
              />
              {preview.value.alone.length > 0 && (
                <p>
                  {words.eraseAlone}{' '}
                  {preview.value.alone.map((word) => (
                    <button
                      key={word}
                      type="button"
                      className="text-key"
                      onClick={() => setWordsText([...further, word].join(', '))}
                    >
                      {words.addWord(word)}
                    </button>
                  ))}
                </p>
              )}
              <ChangedTexts texts={preview.value.texts} />
            </>
          )}
        </>
      }
    >
      <TextField
        label={words.typeName(name)}
        hint={words.typeNameHint}
        value={typedName}
        onChange={setTypedName}
        maxLength={120}
      />
      <ByField label={words.eraseWho} value={by} onChange={setBy} />
    </RowForm>
  );
}

/** "Jo, old Tveit" as single words or phrases; one letter names nobody. */
const wordsOf = (text: string): string[] =>
  text
    .split(',')
    .map((word) => word.trim())
    .filter((word) => word.length > 1 && word.length <= 60)
    .slice(0, 20);

function ChangedTexts({
  texts,
}: {
  texts: readonly { table: string; column: string; before: string; after: string }[];
}) {
  if (texts.length === 0) return <p>{words.eraseNoTexts}</p>;
  return (
    <table className="table changed-texts">
      <caption>{words.eraseTexts(texts.length)}</caption>
      <thead>
        <tr>
          <th scope="col">{words.before}</th>
          <th scope="col">{words.after}</th>
        </tr>
      </thead>
      <tbody>
        {texts.map(({ table, column, before, after }, place) => (
          <tr key={`${table} ${column} ${place}`}>
            <td>{before}</td>
            <td>{after}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
