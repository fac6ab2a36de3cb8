import { useState } from 'react';
import { detailsWords } from '#renderer/words/detailsWords.ts';
import { Key } from './Key.tsx';

/** Puts the details of a defect on the clipboard, for whoever helps with it. */
export function CopyDetails({ details }: { details: string }) {
  const [copied, setCopied] = useState<boolean | null>(null);
  return (
    <>
      <Key onPress={() => setCopied(copyText(details))}>{copied ? detailsWords.copied : detailsWords.copy}</Key>
      {copied === false && <pre className="details">{details}</pre>}
    </>
  );
}

/**
 * Copies by the document's own command: unlike the clipboard's programming interface it asks for no permission, and the
 * desktop window grants none.
 * @returns false where it was refused
 */
export function copyText(text: string): boolean {
  const box = document.createElement('textarea');
  box.value = text;
  box.readOnly = true;
  document.body.append(box);
  box.select();
  const copied = document.execCommand('copy');
  box.remove();
  return copied;
}
