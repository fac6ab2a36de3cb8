import type { StripDownTree } from '../../shop/stripDownTree.ts';
import type { CautionWork } from '../cautions/cautionsFor.ts';
import type { WorkedPart } from '../cautions/closedWork.ts';
import type { CleanUpAsked } from '../clean-up/cleanUpBore.ts';
import type { Toward } from '../clean-up/wayRound.ts';
import type { RepairUse } from '../fit-for-repair/fitForRepair.ts';
import type { PinJoint } from '../pin-joint/pinJoint.ts';
import type { MaterialName } from '../press-fit/material.ts';
import type { Lubrication } from '../press-fit/pressForce.ts';
import type { ShopFigures } from '../shopFigures.ts';
import type { PositionWork, WorkHours } from '../strip-down-tree/jobHours.ts';

/** The boss about the worn hole, and what the shop knows of it. */
export type Boss = {
  outsideMm: number;
  /** along the pin: the length a bush would have [mm] */
  lengthMm: number;
  /** how far the hole stands off the boss's middle [mm] */
  offMiddleMm: number;
  /** from the hole's middle to the end or edge it pulls against; null: a round boss all about [mm] */
  centreToEdgeMm: number | null;
  /** null: nobody knows the steel */
  material: MaterialName | null;
  /** its own yield stress where known [MPa]; null: the material's default */
  yieldMpa: number | null;
  /** split, or turned in its plate */
  split: boolean;
  weldsNear: boolean;
  /** the plate it stands in is thin, or of unknown steel; null: nobody has looked */
  plateThinOrUnknown: boolean | null;
};

/** The pin that runs in the hole. */
export type JointPin = {
  /** as measured; null: not measured [mm] */
  measuredMm: number | null;
  /** null: not known, so no bar can be cut for it [mm] */
  lengthMm: number | null;
  material: string;
  /** it is renewed along with the hole */
  renewed: boolean;
  /** sizes the shop can get; null: it makes its own */
  sizesToHadMm: readonly number[] | null;
};

/** What the shop has and goes by. */
export type ShopMeans = {
  workHours: WorkHours;
  /** force of its press; null: not said [N] */
  pressN: number | null;
  lubrication: Lubrication;
  /** a bar that lines up two bosses */
  alignmentBar: boolean;
  figures: ShopFigures;
  /** diameters of round bar it can get [mm] */
  roundBarsMm: readonly number[];
};

/** What comes off to reach the hole, and what is done in the same visit anyway. */
export type OpenedFor = {
  tree: StripDownTree;
  item: number;
  already: readonly PositionWork[];
  works: readonly CautionWork[];
};

/** A worn hole with its pin: all that the options are worked out from. */
export type WornJoint = {
  name: string;
  use: RepairUse;
  /** size of pin and hole as drawn [mm] */
  standardMm: number;
  cleanUp: CleanUpAsked;
  boss: Boss;
  pin: JointPin;
  /** the joint as drawn, and which half wore; null: the other half's sizes are not known */
  asDrawn: { joint: PinJoint; worn: 'eye' | 'fork' } | null;
  /** something that interchanges runs here, or this part itself does */
  mustStayStandard: boolean;
  /** times the hole was opened before */
  oversizes: number;
  /** slack beyond which it must not be used; null: no limit is known [mm] */
  rejectSlackMm: number | null;
  /** an open finding says that it must not be used */
  doNotUse: boolean;
  part: WorkedPart;
  /** nylon stays near the heat */
  nylonNear: boolean;
  opened: OpenedFor;
  shop: ShopMeans;
};

/** Where a hole is bored, and to what. */
export type BoredTo = {
  nominalMm: number;
  /** the class it is bored to, with its limits [mm] */
  toleranceClass: string;
  largestMm: number;
  smallestMm: number;
  centre: 'old' | 'shifted';
  shiftMm: number;
  toward: Toward[];
};
