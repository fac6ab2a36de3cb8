import type { Finding } from '../../shop/finding.ts';
import type { SizeEvent } from '../../shop/measuringPoint.ts';

/** A size of one place, of the strip-downs that go with a job. */
export type JobSize = {
  point: string;
  station: string;
  event: SizeEvent;
  sizeMm: number;
  /** of the gauge it was read with [mm] */
  stepMm: number;
  /** questioned and not answered */
  parked: boolean;
};

/** What the strip-downs of a job say of one position, or of an assembly as a whole. */
export type FoundAtPlace = {
  /** null: the assembly as a whole */
  positionId: number | null;
  item: number | null;
  place: string;
  sizes: JobSize[];
  findings: Pick<Finding, 'kind' | 'severity' | 'note'>[];
};
