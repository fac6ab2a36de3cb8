import { inInches } from '#core/words/quantityText.ts';
import { useWriting } from '#renderer/record.tsx';
import { fieldWords } from '#renderer/words/fieldWords.ts';

/** In a shop that writes inches: said where figures stand in millimetres all the same, and why. */
export function StaysInMm({ why = fieldWords.staysInMm }: { why?: string }) {
  return inInches(useWriting()) ? <p className="second">{why}</p> : null;
}
