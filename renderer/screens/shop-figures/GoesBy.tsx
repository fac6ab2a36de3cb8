import { useLocation } from 'wouter';
import { shopFiguresRead } from '#core/contract/shopFigures.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { useWriting } from '#renderer/record.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { shopFigureWords as words } from '#renderer/words/shopFigureWords.ts';
import './goes-by.css';

/** The shop's figures that a sheet goes by, each with how it is known, and the way to set them otherwise. */
export function GoesBy({ names }: { names: readonly string[] }) {
  const [, goTo] = useLocation();
  const writing = useWriting();
  const read = useAsk(shopFiguresRead, {});
  if (!read.value) return null;
  const figures = names.flatMap((name) => read.value?.figures.find((one) => one.name === name) ?? []);
  return (
    <p className="second goes-by">
      <span>
        <Figures>{`${words.goesByHead}: ${words.goesBy(figures, writing)}.`}</Figures>
      </span>
      <Key onPress={() => goTo('/shop-figures')}>{words.key}</Key>
    </p>
  );
}
