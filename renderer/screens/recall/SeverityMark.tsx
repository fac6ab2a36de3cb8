import type { Finding } from '#core/contract/machine.ts';
import { StruckBox } from '#renderer/marks/DoNotUseBox.tsx';
import { severityWords } from '#renderer/words/recallWords.ts';

/** How grave a finding is: the struck box where it forbids use, else in words. */
export function SeverityMark({ severity }: Pick<Finding, 'severity'>) {
  if (severity !== 'do-not-use') return <b>{severityWords[severity]}</b>;
  return (
    <span className="severity-stop">
      <StruckBox width={24} height={16} />
      <b>{severityWords[severity]}</b>
    </span>
  );
}
