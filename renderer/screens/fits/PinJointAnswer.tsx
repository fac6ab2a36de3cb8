import type { ReplyOf } from '#core/contract/operation.ts';
import type { jointCompare, RulesShown } from '#core/contract/pinJoint.ts';
import { decimalFigure, type Writing } from '#core/words/quantityText.ts';
import { useWriting } from '#renderer/record.tsx';
import { megapascals } from '#renderer/words/fitsWords.ts';
import { pinJointWords as words } from '#renderer/words/pinJointWords.ts';

type Compared = ReplyOf<typeof jointCompare>;

/** Figure by figure, and the published rules beside them when the pull is known. */
export function PinJointAnswer({ of }: { of: Compared }) {
  return (
    <>
      <p className="fit-answer">
        <b>{of.notWorse ? words.notWorse : words.worse(words.figures[of.worst])}</b>
      </p>
      <p className="second">{words.saysNothing}</p>
      <Figures of={of} />
      {of.published && <Rules of={of.published} />}
    </>
  );
}

function Figures({ of: { figures, published } }: { of: Compared }) {
  const writing = useWriting();
  const mpa = (value: number | null) => (value === null ? '' : decimalFigure(value, 1, writing));
  return (
    <table className="table joint-figures">
      <caption>{words.figuresCaption}</caption>
      <thead>
        <tr>
          <td />
          {published && <th className="figures">{words.figureHeads.asDrawn}</th>}
          {published && <th className="figures">{words.figureHeads.repaired}</th>}
          <th className="figures">{words.figureHeads.change}</th>
        </tr>
      </thead>
      <tbody>
        {figures.map(({ figure, asDrawnMpa, repairedMpa, ratio, word }) => (
          <tr key={figure}>
            <th scope="row">{words.figures[figure]}</th>
            {published && <td className="figures">{mpa(asDrawnMpa)}</td>}
            {published && <td className="figures">{mpa(repairedMpa)}</td>}
            <td className={word === 'worse' ? 'figures past' : 'figures'}>{words.change(ratio, word, writing)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Rules({ of: { asDrawn, repaired, factors } }: { of: NonNullable<Compared['published']> }) {
  const writing = useWriting();
  const [before, after] = [cellsOf(asDrawn, writing), cellsOf(repaired, writing)];
  return (
    <>
      <table className="table joint-figures">
        <caption>{words.rulesCaption}</caption>
        <thead>
          <tr>
            <td />
            <th className="figures">{words.rulesHeads.asDrawn}</th>
            <th className="figures">{words.rulesHeads.repaired}</th>
            <th className="figures">{words.rulesHeads.limit}</th>
          </tr>
        </thead>
        <tbody>
          {after.map(({ row, text, over, limit }, at) => (
            <tr key={row}>
              <th scope="row">{row}</th>
              <td className={before[at]?.over ? 'figures past' : 'figures'}>{before[at]?.text}</td>
              <td className={over ? 'figures past' : 'figures'}>{text}</td>
              <td className="figures">{limit}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="second">
        {words.rulesSource} {words.factors(factors.source)}
      </p>
    </>
  );
}

type Cell = { row: string; text: string; over: boolean; limit: string };

function cellsOf(rules: RulesShown, writing: Writing): Cell[] {
  const share = (row: string, use: number): Cell => ({
    ...{ row, text: decimalFigure(use, 2, writing), over: use > 1, limit: '1' },
  });
  const metal = (row: string, thereMm: number, wantedMm: number): Cell => {
    const mm = (value: number) => decimalFigure(value, 1, writing);
    return { row, text: words.ligament(mm(thereMm), mm(wantedMm)), over: thereMm < wantedMm, limit: '' };
  };
  const { eye, fork } = rules;
  return [
    share(words.rules.shear, rules.shearUse),
    share(words.rules.bearing, rules.bearingUse),
    share(words.rules.moment, rules.momentUse),
    share(words.rules.combined, rules.combinedUse),
    {
      ...{
        row: words.rules.contact,
        text: megapascals(rules.contactMpa),
        over: rules.contactMpa > rules.contactUpToMpa,
      },
      limit: megapascals(rules.contactUpToMpa),
    },
    { row: words.rules.stiffLugs, text: megapascals(rules.bendingStiffLugsMpa), over: false, limit: '' },
    metal(words.rules.eyeEnd, eye.endMm, eye.endWantedMm),
    metal(words.rules.eyeSide, eye.sideMm, eye.sideWantedMm),
    metal(words.rules.forkEnd, fork.endMm, fork.endWantedMm),
    metal(words.rules.forkSide, fork.sideMm, fork.sideWantedMm),
    shaped(words.rules.eyeShaped, eye.shaped, writing),
    shaped(words.rules.forkShaped, fork.shaped, writing),
  ];
}

function shaped(row: string, of: RulesShown['eye']['shaped'], writing: Writing): Cell {
  const pairs = [
    [of.thicknessMm, of.thicknessWantedMm],
    [of.widthMm, of.widthWantedMm],
    [of.endMm, of.endWantedMm],
  ] as const;
  const mm = (value: number) => decimalFigure(value, 0, writing);
  const text = pairs.map(([there, wanted]) => words.ligament(mm(there), mm(wanted))).join('; ');
  return { row, text, over: pairs.some(([there, wanted]) => there < wanted), limit: '' };
}
