import { useEffect, useRef, useState } from 'react';
import { PHOTO } from '#core/contract/photo.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { dropPhotos } from '#renderer/photos/dropPhotos.ts';
import { LargePhoto } from '#renderer/photos/LargePhoto.tsx';
import { TakePhotos } from '#renderer/photos/TakePhotos.tsx';
import { Thumbs } from '#renderer/photos/Thumbs.tsx';
import { useTakePhotos } from '#renderer/photos/useTakePhotos.ts';
import { photoWords } from '#renderer/words/photoWords.ts';
import { findingWords, severityWords, stripDownWords as words } from '#renderer/words/stripDownWords.ts';
import type { FindingEntry } from './sheet.ts';

const KIND_LETTERS = { crack: 'C', bent: 'B', broken: 'K', seized: 'Z', missing: 'L', other: 'O' } as const;
const SEVERITY_LETTERS = { watch: 'W', repair: 'R', 'do-not-use': 'D' } as const;

const kinds = Object.entries(KIND_LETTERS).map(([value, letter]) => ({
  value: value as FindingEntry['kind'],
  letter,
  text: findingWords[value as FindingEntry['kind']],
}));
const severities = Object.entries(SEVERITY_LETTERS).map(([value, letter]) => ({
  value: value as FindingEntry['severity'],
  letter,
  text: severityWords[value as FindingEntry['severity']],
}));

/** A box or a choice; on a key, Enter presses the key. */
const isBox = (target: EventTarget): boolean => target instanceof HTMLInputElement;

/** What was seen at a position, entered under its row: two letters, a note, Enter. */
export function FindingStrip({
  assemblyId,
  positionId,
  position,
  onAdd,
  onLeave,
}: {
  assemblyId: number;
  positionId: number;
  position: string;
  onAdd: (finding: FindingEntry) => void;
  onLeave: () => void;
}) {
  const [kind, setKind] = useState<FindingEntry['kind']>('crack');
  const [severity, setSeverity] = useState<FindingEntry['severity']>('repair');
  const [note, setNote] = useState('');
  const [photoIds, setPhotoIds] = useState<number[]>([]);
  const taking = useTakePhotos((photoId) => setPhotoIds((ids) => [...ids, photoId].slice(0, PHOTO.mostAtFinding)));
  const [large, setLarge] = useState<number | null>(null);
  const strip = useRef<HTMLElement>(null);
  useEffect(() => {
    strip.current?.querySelector<HTMLElement>('input[type=radio]:checked')?.focus();
    strip.current?.scrollIntoView({ block: 'nearest' });
  }, []);
  const add = () => onAdd({ assemblyId, positionId, kind, severity, note: note.trim(), photoIds });
  const leave = () => {
    dropPhotos(photoIds);
    onLeave();
  };
  return (
    <section
      ref={strip}
      className="finding-strip"
      aria-label={words.addSeenAt(position)}
      // before the choices see it: they would take Enter as choosing the one that has the focus
      onKeyDownCapture={(event) => {
        const does =
          event.key === 'Escape'
            ? leave
            : event.key === 'Enter' && isBox(event.target) && taking.busy === 0
              ? add
              : null;
        if (!does) return;
        event.preventDefault();
        event.stopPropagation();
        does();
      }}
    >
      <Choice label={words.kind} options={kinds} value={kind} onChange={setKind} />
      <Choice label={words.severity} options={severities} value={severity} onChange={setSeverity} />
      <div className="finding-note">
        <TextField label={words.findingNote} value={note} onChange={setNote} maxLength={2000} />
      </div>
      <div className="finding-photos">
        <TakePhotos taking={taking} letter="P">
          {photoIds.length > 0 && (
            <Thumbs
              photos={photoIds.map((photoId) => ({ photoId }))}
              of={position}
              shown={large}
              onShow={(photoId) => setLarge(photoId === large ? null : photoId)}
            />
          )}
        </TakePhotos>
        {large !== null && (
          <LargePhoto
            photos={photoIds.map((photoId) => ({ photoId }))}
            photoId={large}
            of={position}
            onShow={setLarge}
            onClose={() => setLarge(null)}
            keys={
              <Key
                onPress={() => {
                  dropPhotos([large]);
                  setPhotoIds((ids) => ids.filter((photoId) => photoId !== large));
                  setLarge(null);
                }}
              >
                {photoWords.takeOut}
              </Key>
            }
          />
        )}
      </div>
      <div className="keys">
        <Key first letter="Enter" disabled={taking.busy > 0} onPress={add}>
          {words.addFinding}
        </Key>
        <Key letter="Escape" onPress={leave}>
          {words.leaveFinding}
        </Key>
      </div>
    </section>
  );
}
