import type { fitPress } from '#core/contract/fits.ts';
import type { ReplyOf } from '#core/contract/operation.ts';
import { decimalFigure, type Writing } from '#core/words/quantityText.ts';
import { Notice } from '#renderer/controls/Notice.tsx';
import { useWriting } from '#renderer/record.tsx';
import {
  celsius,
  kiloNewtons,
  megapascals,
  newtonMetres,
  tonneForce,
  fitsWords as words,
} from '#renderer/words/fitsWords.ts';
import { knownText } from '#renderer/words/shopFigureWords.ts';
import { Cautions } from './Cautions.tsx';

type Pressed = ReplyOf<typeof fitPress>;

/** What pressing, heating or gluing comes to, and what the figures rest on. */
export function PressAnswer({ of }: { of: Pressed }) {
  return (
    <>
      <PressTable of={of} />
      {of.mayBeLoose && <Notice head={words.mayBeLoose} kind="waiting" />}
      {of.tightest.bossYields && <Notice head={words.yieldsNote('boss')} kind="waiting" />}
      {of.tightest.bushYields && <Notice head={words.yieldsNote('bush')} kind="waiting" />}
      <BoreOnceIn of={of} />
      <WithoutAPress of={of} />
      <RestsOn of={of} />
      <Cautions {...of} />
    </>
  );
}

function PressTable({ of }: { of: Pressed }) {
  const writing = useWriting();
  const { loosest, tightest, boss, bush } = of;
  const mm = (value: number) => decimalFigure(value, 3, writing);
  const ends: [string, string, string, boolean?][] = [
    [words.rows.interference, mm(Math.max(0, of.leastInterferenceMm)), mm(of.mostInterferenceMm)],
    [words.rows.pressure, loosest ? megapascals(loosest.pressureMpa) : '0', megapascals(tightest.pressureMpa)],
    [
      words.rows.boss,
      loosest ? megapascals(loosest.bossVonMisesMpa) : '0',
      stress(tightest.bossVonMisesMpa, tightest.bossYields, boss.yieldMpa),
      tightest.bossYields,
    ],
    [
      words.rows.bush,
      loosest ? megapascals(loosest.bushVonMisesMpa) : '0',
      stress(tightest.bushVonMisesMpa, tightest.bushYields, bush.yieldMpa),
      tightest.bushYields,
    ],
    [words.rows.growth, mm(loosest?.bossGrowthMm ?? 0), mm(tightest.bossGrowthMm)],
    [words.rows.closeIn, mm(loosest?.bushCloseInMm ?? 0), mm(tightest.bushCloseInMm)],
    [words.rows.force, kiloNewtons(of.pressForceN.low, writing), kiloNewtons(of.pressForceN.high, writing)],
    [words.rows.forceTonnes, tonneForce(of.pressForceN.low, writing), tonneForce(of.pressForceN.high, writing)],
    [words.rows.torque, newtonMetres(of.slipTorqueNmm.low), newtonMetres(of.slipTorqueNmm.high)],
  ];
  return (
    <table className="table press-table">
      <caption>{words.pressCaption}</caption>
      <thead>
        <tr>
          <td />
          <th className="figures">{words.ends.loosest}</th>
          <th className="figures">{words.ends.tightest}</th>
        </tr>
      </thead>
      <tbody>
        {ends.map(([row, low, high, past]) => (
          <tr key={row}>
            <th scope="row">{row}</th>
            <td className="figures">{low}</td>
            <td className={past ? 'figures past' : 'figures'}>{high}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const stress = (mpa: number, past: boolean, yieldMpa: number): string =>
  past ? `${megapascals(mpa)}, ${words.yields(megapascals(yieldMpa))}` : megapascals(mpa);

function BoreOnceIn({ of: { boreAfter } }: { of: Pressed }) {
  const writing = useWriting();
  if (!boreAfter) return null;
  const { smallestMm, largestMm, wanted, withinWanted } = boreAfter;
  const mm = (value: number) => decimalFigure(value, 3, writing);
  return (
    <p>
      <b>{words.boreOnceIn}</b> {words.boreRange(mm(smallestMm), mm(largestMm))}
      {wanted && <>, {words.boreWithin(wanted.toleranceClass, withinWanted === true)}</>}.
    </p>
  );
}

function WithoutAPress({ of: { shrink, adhesive, boss } }: { of: Pressed }) {
  const writing = useWriting();
  const mm = (value: number) => decimalFigure(value, 2, writing);
  return (
    <section>
      <h3>{words.heatHead}</h3>
      <ul>
        <li>{words.heatBoss(celsius(shrink.heatToC), shrink.heatTooHot, celsius(boss.heatUpToC))}</li>
        {shrink.both.map(({ cold, heatToC, heatNeeded, heatTooHot, coldC }) => (
          <li key={cold}>{bothText(words.colds[cold], coldC, heatToC, heatNeeded, heatTooHot)}</li>
        ))}
        <li>
          {shrink.freezeWith && shrink.freezeToC !== null
            ? words.freezeAlone(words.colds[shrink.freezeWith], celsius(shrink.freezeToC))
            : words.freezeNot}
        </li>
        <li>{adhesive ? glueText(adhesive, writing) : words.glueNot}</li>
      </ul>
      <p className="second">{words.entryRoom(mm(shrink.entryClearanceMm))}</p>
    </section>
  );
}

function bothText(cold: string, coldC: number, heatToC: number, heatNeeded: boolean, tooHot: boolean): string {
  const from = `${cold} (${celsius(coldC)})`;
  return heatNeeded ? words.both(from, celsius(heatToC), tooHot) : words.bothNoHeat(from);
}

function glueText(adhesive: NonNullable<Pressed['adhesive']>, writing: Writing): string {
  const mm = (value: number) => decimalFigure(value, 3, writing);
  const { bushOutsideLargestMm, bushOutsideSmallestMm, holdsN } = adhesive;
  return words.glue(
    mm(bushOutsideSmallestMm),
    mm(bushOutsideLargestMm),
    kiloNewtons(holdsN.low, writing),
    kiloNewtons(holdsN.high, writing),
  );
}

/** Friction and materials are defaults: each with how it is known. */
function RestsOn({ of: { friction, boss, bush, adhesive } }: { of: Pressed }) {
  const writing = useWriting();
  const share = (value: number) => decimalFigure(value, 2, writing);
  const rests = [
    { text: words.frictionIs(share(friction.low), share(friction.high)), ...friction },
    { text: materialText('boss', boss), ...boss },
    { text: materialText('bush', bush), ...bush },
    ...(adhesive ? [{ text: words.adhesiveIs, ...adhesive }] : []),
  ];
  return (
    <section>
      <h3>{words.restsHead}</h3>
      <ul>
        {rests.map(({ text, howKnown, source }) => (
          <li key={text}>
            {text} <small className="second">{knownText({ source, howKnown })}</small>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Where the shop said the yield itself, what follows is said of the other figures. */
const materialText = (part: 'boss' | 'bush', of: Pressed['boss']): string =>
  [
    words.materialIs(words.bushParts[part], words.materials[of.name], megapascals(of.yieldMpa), of.yieldIsOwn),
    ...(of.yieldIsOwn ? [words.otherwise] : []),
  ].join('; ');
