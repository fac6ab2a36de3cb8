import { Link, useLocation } from 'wouter';
import { checkRead } from '#core/contract/check.ts';
import type { ReplyOf } from '#core/contract/operation.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { Empty, Notice } from '#renderer/controls/Notice.tsx';
import { NotYet } from '#renderer/controls/NotYet.tsx';
import { planningAidCell, Sheet } from '#renderer/controls/Sheet.tsx';
import { StaysInMm } from '#renderer/controls/StaysInMm.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { checkWords as words } from '#renderer/words/checkWords.ts';
import { shared } from '#renderer/words/english.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { fieldWords } from '#renderer/words/fieldWords.ts';
import { Beyond } from './Beyond.tsx';
import { ClassTable } from './ClassTable.tsx';
import { Worth } from './Worth.tsx';
import './check.css';

/** How good the forecasts were: class by class, what came out beyond its range, and what is worth measuring next. */
export default function Check() {
  const [, goTo] = useLocation();
  const read = useAsk(checkRead, {});
  return (
    <Sheet title={words.title} sub={words.sub} {...(read.value && { block: blockOf(read.value) })}>
      <NotYet of={read} words={words.loading} />
      {read.value?.heardMachines != null && (
        <Notice kind="waiting" head={shared.heardMachines(read.value.heardMachines)} />
      )}
      {read.value?.classes.every(({ sizes }) => sizes === 0) ? (
        <Empty
          head={words.emptyHead}
          keys={
            <Key first letter="S" onPress={() => goTo('/strip-down')}>
              {words.toStripDown}
            </Key>
          }
        >
          {words.emptyNext}
        </Empty>
      ) : (
        read.value && <Checked read={read.value} />
      )}
    </Sheet>
  );
}

type Read = ReplyOf<typeof checkRead>;

function Checked({ read }: { read: Read }) {
  const limits = words.limitsSentence(read.limits);
  return (
    <div className="check">
      <p className="check-kept">
        <Figures>{words.keptSentence(read.kept)}</Figures>
        {limits && (
          <>
            {' '}
            <Figures>{limits}</Figures>
          </>
        )}
      </p>
      <StaysInMm why={fieldWords.recordInMm} />
      <ClassTable classes={read.classes} />
      <p className="second">
        <Figures>{words.classNote(read.leastSizes)}</Figures>
      </p>
      <p className="second">
        {words.rebuiltNote} <Link href="/forecast-settings">{words.settingsKey}</Link>
      </p>
      <Worth />
      <Beyond sizes={read.beyond} />
    </div>
  );
}

const blockOf = ({ asOf, classes }: Read) => [
  { label: words.block.asOf, value: asOf },
  planningAidCell,
  { label: words.block.sizes, value: String(classes.reduce((sum, one) => sum + one.sizes, 0)) },
  { label: words.block.range, value: words.block.rangeIs, grow: true },
];
