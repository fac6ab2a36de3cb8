import type { ClassCheck } from '#core/contract/check.ts';
import { Across } from '#renderer/controls/Across.tsx';
import { Picture, useHatch } from '#renderer/marks/Picture.tsx';
import { useWriting } from '#renderer/record.tsx';
import { checkWords as words } from '#renderer/words/checkWords.ts';
import { tenthsPicture } from './tenthsPicture.ts';

const FELL = { width: 168, height: 34 } as const;

/** A row a class: where its sizes fell, and its figures. Classes with most sizes first. */
export function ClassTable({ classes }: { classes: readonly ClassCheck[] }) {
  const writing = useWriting();
  const ordered = [...classes].sort((a, b) => b.sizes - a.sizes);
  return (
    <Across>
      <table className="check-classes wide-table">
        <caption className="said">{words.caption}</caption>
        <thead>
          <tr>
            <th scope="col">{words.class}</th>
            <th scope="col">
              {words.fell}
              <small>{words.fellNote}</small>
            </th>
            <th scope="col" className="figures">
              {words.inside}
              <small>{words.insideNote}</small>
            </th>
            <th scope="col">{words.bias}</th>
            <th scope="col" className="figures">
              {words.width}
              <small>mm</small>
            </th>
            <th scope="col" className="figures">
              {words.score}
              <small>mm</small>
            </th>
            <th scope="col" className="figures">
              {words.line}
              <small>mm</small>
            </th>
            <th scope="col">
              {words.rate}
              <small>{words.rateNote}</small>
            </th>
            <th scope="col">{words.verdict}</th>
          </tr>
        </thead>
        <tbody>
          {ordered.map((one) => (
            <tr key={one.partClass} data-off={one.verdict === 'too-narrow' || undefined}>
              <th scope="row">
                {one.partClass}
                <small>{words.sizes(one)}</small>
              </th>
              <td>
                {one.sizes > 0 && (
                  <Picture width={FELL.width} height={FELL.height + 2} label={words.fellSentence(one)}>
                    <Fell tenths={one.tenths} />
                  </Picture>
                )}
              </td>
              <td className="figures main">
                {one.sizes > 0 && (
                  <>
                    {words.insideShare(one)}
                    <small>{words.insideOf(one)}</small>
                  </>
                )}
              </td>
              <td>{one.sizes > 0 && words.biasText(one, writing)}</td>
              <td className="figures">{words.millimetres(one.widthMm, writing)}</td>
              <td className="figures">{words.millimetres(one.lined?.crpsMm ?? one.crpsMm, writing)}</td>
              <td className="figures">{words.millimetres(one.lined?.lineMm ?? null, writing)}</td>
              <td>
                {words.rateText(one.ratePer1000hBeforeMm, writing)}
                <small className="now">{words.rateText(one.ratePer1000hNowMm, writing)}</small>
              </td>
              <td>{words.verdicts(one, writing)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Across>
  );
}

/** Tenths as columns: within the range in ink, beyond it crossed in red; the chain is where even columns would end. */
function Fell({ tenths }: { tenths: readonly number[] }) {
  const past = useHatch('past');
  const { columns, evenY, edges } = tenthsPicture(tenths, FELL.width, FELL.height);
  return (
    <>
      {past.pattern}
      {columns.map(({ x, width, height, outer }) =>
        outer ? (
          <rect
            key={x}
            className="bar-past"
            style={{ fill: past.fill }}
            x={x}
            y={FELL.height - height}
            width={width}
            height={height}
          />
        ) : (
          <rect key={x} className="tenth" x={x} y={FELL.height - height} width={width} height={height} />
        ),
      )}
      <path className="l-rule" d={`M0 ${FELL.height}H${FELL.width}`} />
      {edges.map((x) => (
        <path key={x} className="l-thin" d={`M${x} 0V${FELL.height}`} />
      ))}
      <path className="l-centre" d={`M0 ${evenY}H${FELL.width}`} />
    </>
  );
}
