import { useLocation } from 'wouter';
import { Key } from '#renderer/controls/Key.tsx';
import { measuringSheetWords as words } from '#renderer/words/measuringSheetWords.ts';

/** Goes to the blank measuring sheet of a machine, to be printed. */
export function MeasuringSheetKey({ machineId, letter }: { machineId: number; letter?: string }) {
  const [, goTo] = useLocation();
  return (
    <Key onPress={() => goTo(`/measuring-sheet/${machineId}`)} {...(letter && { letter })}>
      {words.key}
    </Key>
  );
}
