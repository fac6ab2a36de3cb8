import type { RenewalHours } from '#core/axis/historyLine.ts';
import type { RingState } from '#core/axis/itemRing.ts';
import type { HoursAtLimit } from '#core/axis/pictureRange.ts';
import type { Winter } from '#core/axis/winterBands.ts';
import type { Sketch } from '#core/contract/shop.ts';
import type { Writing } from '#core/words/quantityText.ts';
import type { ChartedPoint } from '#renderer/charts/wearChartData.ts';

/** One measuring point on the machine's hours axis. */
export type PictureRow = {
  pointId: number;
  item: number;
  position: string;
  /** named too where a position has more than one point */
  point: string;
  state: RingState;
  /** first of its assembly: a rule stands over it */
  opensGroup: boolean;
  /** name of its assembly, over its first row where the machine carries several */
  assemblyHead?: string;
  /** its ring stands on another assembly's drawing, not on the one shown */
  elsewhere?: boolean;
  /** machine hours at limit */
  atLimit: HoursAtLimit;
  /** where the bar stood before the last change; null: it did not move */
  before: HoursAtLimit | null;
  /** machine hours from now; negative when probably passed */
  hoursLeft: HoursAtLimit;
  decides: 'low' | 'middle';
  ownReadings: number;
  likeParts: number;
  /** past at its own last size by so much [mm], read at these machine hours */
  pastLimit: { mm: number; readAtHours: number } | null;
  /** the finding that stands in the forecast's place, in words; null: none */
  doNotUse: string | null;
  renewals: readonly RenewalHours[];
  readings: readonly number[];
};

/** Everything the picture draws, as plain values. */
export type PictureProps = {
  /** null: no hours on record; bars cannot be placed, the rows say so */
  nowHours: number | null;
  estimated: boolean;
  hoursPerYear: number | null;
  winters: readonly Winter[];
  /** start of the winter after the one being planned [machine h] */
  planLineHours: number | null;
  /** machine hours at which the meter was changed */
  meterChanges: readonly number[];
  rows: readonly PictureRow[];
  chosenId: number | null;
  onChoose: (pointId: number) => void;
  /** Enter on the chosen row */
  onOpen?: (pointId: number) => void;
  /** the chosen point's readings and curves; null while none is chosen */
  chosen: (ChartedPoint & ChosenSaid) | null;
  sketch: Sketch | null;
  writing: Writing;
};

/** What the note beside the chart says of the chosen point, beyond what the chart itself shows. */
export type ChosenSaid = {
  /** lines of the note, in order of weight; those that do not fit are left out from the end */
  note: readonly string[];
};
