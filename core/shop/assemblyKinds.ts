import { drawbarAndRing } from './assembly-kinds/drawbarAndRing.ts';
import { frontLoader } from './assembly-kinds/frontLoader.ts';
import { pickUpHitch } from './assembly-kinds/pickUpHitch.ts';
import { rearLinkage } from './assembly-kinds/rearLinkage.ts';
import type { WearsWay } from './measuringPoint.ts';
import type { StripDownTree } from './stripDownTree.ts';

/** What a size is the size of; it chooses the gauge and the word before the figure. */
export type Measures = 'thickness' | 'diameter' | 'bore' | 'slack' | 'section' | 'depth';

/** A measuring point as a kind offers it; the shop may change every figure before it is laid out on a machine. */
export type KindPoint = {
  name: string;
  measures: Measures;
  wears: WearsWay;
  partClass: string;
  newSizeMm: number;
  /** whole width: 12.0 +-0.1 is 0.2; null: not known */
  newSizeTolMm: number | null;
  /** null: no figure that fits every make; the shop enters the maker's, with its source */
  renewAtMm: number | null;
  rejectAtMm: number | null;
  limitSource: string | null;
  /** 1 sd [mm] of the gauge a shop would usually take */
  gaugeErrorMm: number;
  /** where along or across the part it is read; empty: one reading */
  stations: readonly string[];
};

export type KindPosition = {
  /** ring number: the same on drawing, row, slip and job card */
  item: number;
  name: string;
  /** towing or lifting: the low figure decides */
  safety: boolean;
  /** what it goes with when half of the assembly is swapped: "carrier"; absent or null: stays with the rest */
  group?: string | null;
  /** it interchanges with others: no oversize here. Absent: it may be bored and fitted oversize */
  mustStayStandard?: boolean;
  points: readonly KindPoint[];
};

type PointOfKind = { item: number; point: string };

/** A pin and the bores it runs in, and the point where their slack stands; each by item and name of the point. */
export type KindJoint = { slack: PointOfKind; pin: PointOfKind; bores: readonly PointOfKind[] };

/**
 * How a stroke or face is drawn:
 *  outline: thick, visible edge; thin: thin edge, bend or thread line; hidden: thin dashed; centre: thin chain;
 *  section: cut metal, hatched at 45 degrees; section-other: the part it runs against, hatched the other way;
 *  nylon: cut plastic
 */
export type SketchStyle = 'outline' | 'thin' | 'hidden' | 'centre' | 'section' | 'section-other' | 'nylon';

/** A side view seen from the left of the machine, front to the left; SVG path data in the sketch's own units. */
export type Sketch = {
  width: number;
  height: number;
  shapes: readonly { d: string; style: SketchStyle }[];
  /** ring at `ring`, its leader ends on the part at `at` */
  items: readonly { item: number; at: { x: number; y: number }; ring: { x: number; y: number } }[];
};

/** A sort of assembly the shop meets again and again: its positions, what is measured at each, and its drawing. */
export type AssemblyKind = {
  name: string;
  positions: readonly KindPosition[];
  /** absent: none */
  joints?: readonly KindJoint[];
  sketch: Sketch | null;
  /** what comes off to reach what; none: the shop has not said */
  stripDown?: StripDownTree | undefined;
};

/** The kinds a new record starts with. The shop changes them, or adds its own. */
export const builtInAssemblyKinds: readonly AssemblyKind[] = [frontLoader, drawbarAndRing, pickUpHitch, rearLinkage];
