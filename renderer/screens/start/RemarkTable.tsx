import type { ImportRemark } from '#core/contract/record.ts';
import { startWords as words } from '#renderer/words/startWords.ts';

/** So many rows of one list are shown; a file with thousands of faults has the same one over and over. */
const MOST_SHOWN = 200;

/** Rows of the files with what stands there and what was expected, one by one. */
export function RemarkTable({ remarks, caption }: { remarks: readonly ImportRemark[]; caption: string }) {
  return (
    <table className="table remark-table">
      <caption className="said">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{words.file}</th>
          <th scope="col" className="figures">
            {words.row}
          </th>
          <th scope="col">{words.column}</th>
          <th scope="col">{words.value}</th>
          <th scope="col">{words.expected}</th>
        </tr>
      </thead>
      <tbody>
        {remarks.slice(0, MOST_SHOWN).map((remark, i) => (
          <tr key={i}>
            <td>{remark.file}</td>
            <td className="figures">{remark.row ?? words.wholeFile}</td>
            <td>{remark.column}</td>
            <td className="as-typed">{remark.value}</td>
            <td>{remark.expected}</td>
          </tr>
        ))}
        {remarks.length > MOST_SHOWN && (
          <tr>
            <td colSpan={5}>{words.more(remarks.length - MOST_SHOWN)}</td>
          </tr>
        )}
      </tbody>
    </table>
  );
}
