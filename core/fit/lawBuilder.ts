import type { ClassLearning, ClassNode } from './learnShop.ts';
import { type MachineBlock, nodesOfPart, nodesOverBell, partLaws, type RateNodes } from './machineBlock.ts';
import type { ModelSettings } from './modelSettings.ts';
import type { PartLaw, PartShape } from './partLaw.ts';
import type { PartSite } from './partSite.ts';
import { lnWeightOf, makeTilt, type PartLaws, type TiltNodes } from './partTilt.ts';
import { nodesForSlices, type SlicedNodes, slicedNodes } from './slicedNodes.ts';
import { MOST_NODES } from './tiltRoom.ts';

/** Nodes lighter than this share of a mean node of their class change no figure that is shown. */
const LIGHTEST = 1.5e-6;

/** Mean and variance of a mixture, summed up piece by piece. */
function mixtureVariance() {
  let sum0 = 0;
  let sum1 = 0;
  let sum2 = 0;
  return {
    add(weight: number, mean: number, variance: number): void {
      sum0 += weight;
      sum1 += weight * mean;
      sum2 += weight * (variance + mean * mean);
    },
    mean: () => sum1 / sum0,
    variance: () => Math.max(0, sum2 / sum0 - (sum1 / sum0) ** 2),
  };
}

/** Where the laws of one class on a machine are gathered, each in its place; kept and grown to the largest met. */
type LawRoom = Pick<PartLaw, 'weight' | 'rate' | 'wearMm' | 'wearVar' | 'shapeOf'> & {
  sliced: SlicedNodes;
};
const lawRooms: LawRoom[] = [];

const tilt = makeTilt();

/** What is held of a class's mean ln rate without the machine's own word. */
type MuHeld = { mean: number; variance: number };

function lawRoom(place: number, most: number): LawRoom {
  const kept = lawRooms[place];
  if (kept && kept.weight.length >= most) return kept;
  const room = {
    weight: new Float64Array(most),
    rate: new Float64Array(most),
    wearMm: new Float64Array(most),
    wearVar: new Float64Array(most),
    shapeOf: new Uint16Array(most),
    sliced: slicedNodes(),
  };
  lawRooms[place] = room;
  return room;
}

/**
 * Gathers a part's law node by node of its class: `add` at each, or, where one of the machine's unknowns is sliced, `openSlices`, a `slice` along
 * each and `closeSlices`; at the end `finish`.
 * @param place among the class's parts on the machine
 */
export function lawBuilder(part: PartSite, learning: ClassLearning, place: number) {
  const room = lawRoom(place, learning.nodes.length * MOST_NODES);
  const { weight, rate, wearMm, wearVar, shapeOf } = room;
  const lightest = LIGHTEST / learning.nodes.length;
  const shapes: PartShape[] = [];
  let length = 0;
  let laws: PartLaws;
  let whole: RateNodes;
  let laid: RateNodes | null = null;
  const held = mixtureVariance();
  const withMachine = mixtureVariance();
  const classOnly = mixtureVariance();

  const look = (block: MachineBlock, node: ClassNode, mu: MuHeld, settings: ModelSettings) => {
    laws = partLaws(node.partScatter, settings);
    const partVar = laws.share.reduce((total, share, r) => total + share * laws.sd[r]! ** 2, 0);
    const known = nodesOfPart(block, part, node, laws, tilt);
    classOnly.add(node.weight, mu.mean, mu.variance + node.machineScatter ** 2 + partVar);
    withMachine.add(node.weight, known.cavityMean, known.cavityVar + partVar);
    shapes.push({
      pathScatter: node.pathScatter,
      power: node.power,
      lastTime: part.n > 0 ? part.t[part.n - 1]! : 0,
      visitErrorMm: node.visitErrorMm,
    });
  };
  const keep = (nodes: TiltNodes, node: ClassNode, index: number) => {
    const lnAll = lnWeightOf(nodes);
    for (let i = 0; i < nodes.count; i++) {
      const chance = node.weight * Math.exp(nodes.lnWeight[i]! - lnAll);
      if (!(chance > lightest)) continue;
      weight[length] = chance;
      rate[length] = Math.exp(nodes.beta[i]!);
      wearMm[length] = nodes.wearMm[i]!;
      wearVar[length] = nodes.wearVar[i]!;
      shapeOf[length] = index;
      length++;
      held.add(chance, nodes.beta[i]!, 0);
    }
  };

  return {
    /** the part at a node of its class, after a sweep there */
    add(block: MachineBlock, node: ClassNode, mu: MuHeld, index: number, settings: ModelSettings) {
      look(block, node, mu, settings);
      keep(tilt.nodes, node, index);
    },
    /** the same where slices are to follow: what they are laid out by, and what stands if there is none */
    openSlices(block: MachineBlock, node: ClassNode, mu: MuHeld, settings: ModelSettings) {
      look(block, node, mu, settings);
      whole = nodesOverBell(block, part, node);
      laid = null;
      room.sliced.clear();
      room.sliced.add(0, tilt.nodes);
    },
    /** the part along one slice, after a sweep along it */
    slice(block: MachineBlock, node: ClassNode, lnChance: number) {
      if (laid === null) {
        laid = nodesForSlices(whole, part.bellSd);
        room.sliced.clear();
      }
      nodesOfPart(block, part, node, laws, tilt, laid);
      room.sliced.add(lnChance, tilt.nodes);
    },
    closeSlices(node: ClassNode, index: number) {
      keep(room.sliced.joined(), node, index);
    },
    finish(): PartLaw {
      const { series } = part;
      let total = 0;
      for (let i = 0; i < length; i++) total += weight[i]!;
      for (let i = 0; i < length; i++) weight[i] = weight[i]! / total;
      return {
        pointId: series.pointId,
        ordinal: series.ordinal,
        machineId: series.machineId,
        partClass: series.partClass,
        hRefHours: learning.prior.hRefHours,
        readings: part.n,
        lastHours: part.n > 0 ? part.hours[part.n - 1]! : null,
        weight: weight.slice(0, length),
        rate: rate.slice(0, length),
        wearMm: wearMm.slice(0, length),
        wearVar: wearVar.slice(0, length),
        shapeOf: shapeOf.slice(0, length),
        shapes,
        basis: {
          own: part.n === 0 ? 0 : explained(held.variance(), withMachine.variance()),
          machine: explained(withMachine.variance(), classOnly.variance()),
          lnRateMean: held.mean(),
          lnRateVar: held.variance(),
          lnRateVarClassAndMachine: withMachine.variance(),
          lnRateVarClass: classOnly.variance(),
        },
      };
    },
  };
}

/** Share of a variance that is gone. */
const explained = (after: number, before: number): number =>
  before > 0 ? Math.min(1, Math.max(0, 1 - after / before)) : 0;
