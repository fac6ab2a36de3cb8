import { AXES_DEG, type RepairFacts } from '../../contract/repair.ts';
import { angleOfWay } from '../../repair/clean-up/wayRound.ts';
import type { WornBore } from '../../repair/clean-up/wornOutline.ts';
import type { WornJoint } from '../../repair/options/wornJoint.ts';
import type { PinJoint } from '../../repair/pin-joint/pinJoint.ts';
import { workHoursOf } from '../../repair/shopFigures.ts';
import type { shopGoesBy } from './shopFigures.ts';

/** What the record knows of a joint besides what the bench says. */
export type FromRecord = Pick<WornJoint, 'name' | 'doNotUse' | 'rejectSlackMm' | 'opened' | 'mustStayStandard'> & {
  safety: boolean;
  crack: boolean;
  /** holes bored on the same bar: what the bench says of each */
  partners: readonly RepairFacts[];
};

/** Facts with everything known that nothing can be worked out without. */
export type KnownFacts = RepairFacts & Record<'standardMm' | 'newBoreMm' | 'bossOutsideMm' | 'bossLengthMm', number>;

/** The worn joint as the options ask for it. */
export function wornJointOf(facts: KnownFacts, from: FromRecord, goesBy: ReturnType<typeof shopGoesBy>): WornJoint {
  const { name, doNotUse, rejectSlackMm, opened } = from;
  return {
    ...{ name, doNotUse, rejectSlackMm, opened, use: facts.use, standardMm: facts.standardMm },
    cleanUp: {
      run: facts.run,
      bosses: [facts, ...from.partners].map(wornBoreOf),
      ...{ aSideMm: facts.aSideMm, mayMoveMm: facts.mayMoveMm, datum: facts.datum },
    },
    boss: {
      ...{ outsideMm: facts.bossOutsideMm, lengthMm: facts.bossLengthMm, offMiddleMm: facts.offMiddleMm },
      ...{ centreToEdgeMm: facts.centreToEdgeMm, material: facts.material, yieldMpa: facts.yieldMpa },
      ...{ split: facts.split, weldsNear: facts.weldsNear },
      plateThinOrUnknown: facts.plate === 'not-looked-at' ? null : facts.plate === 'thin-or-unknown',
    },
    pin: {
      ...{ measuredMm: facts.pinMm, lengthMm: facts.pinLengthMm, material: 'steel' },
      ...{ renewed: facts.pinRenewed, sizesToHadMm: null },
    },
    asDrawn: asDrawn(facts),
    mustStayStandard: facts.mustStayStandard || from.mustStayStandard,
    oversizes: facts.oversizes,
    part: {
      ...{ kind: facts.partKind, towingOrLifting: from.safety, crack: from.crack },
      ...{ forgedOrHeatTreated: facts.forgedOrHeatTreated, straightenedBefore: false, procedure: facts.procedure },
    },
    nylonNear: facts.nylonNear,
    shop: {
      ...{ workHours: workHoursOf(goesBy.figures), pressN: facts.pressKn === null ? null : facts.pressKn * 1000 },
      ...{ lubrication: 'oiled', alignmentBar: facts.alignmentBar },
      ...{ figures: goesBy.figures, roundBarsMm: goesBy.roundBarsMm },
    },
  };
}

function wornBoreOf(facts: RepairFacts): WornBore {
  const readings = facts.axesMm.flatMap((diameterMm, i) =>
    diameterMm === null ? [] : [{ axisDeg: AXES_DEG[i] ?? 0, diameterMm }],
  );
  return {
    ...{ by: 'axes', newBoreMm: facts.newBoreMm ?? facts.standardMm ?? 0, gauge: facts.gauge, stations: [readings] },
    wornTowardsDeg: facts.wornTowards && angleOfWay(facts.run, facts.wornTowards),
  };
}

/** The joint as drawn, this half from its boss, the other as the bench says. */
function asDrawn(facts: KnownFacts): WornJoint['asDrawn'] {
  const { otherHalf, standardMm, bossOutsideMm, bossLengthMm, centreToEdgeMm } = facts;
  if (!otherHalf) return null;
  const { worn, thicknessMm, widthMm, endMm, gapEachSideMm } = otherHalf;
  const here = {
    ...{ boreMm: standardMm, thicknessMm: bossLengthMm, widthMm: bossOutsideMm },
    endMm: centreToEdgeMm ?? bossOutsideMm / 2,
  };
  const there = { boreMm: standardMm, thicknessMm, widthMm, endMm };
  const joint: PinJoint = {
    ...{ pinMm: standardMm, gapEachSideMm },
    ...(worn === 'eye' ? { eye: here, fork: there } : { eye: there, fork: here }),
  };
  return { joint, worn };
}
