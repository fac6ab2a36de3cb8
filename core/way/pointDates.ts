import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { chanceByHours } from '../forecast/chanceByHours.ts';
import { type DateAtLimit, type DateQuestion, dateAtLimit } from '../forecast/dateAtLimit.ts';
import type { PartAtLimit } from '../forecast/forecastPart.ts';
import { type JointLaw, slackPastBy } from '../forecast/slackOfJoint.ts';
import type { PartSeries } from '../series/partSeries.ts';
import { dayOfPastHours } from './dayOfHours.ts';
import type { MachineHoursAndUse } from './shopHours.ts';

export type DatesFrom = {
  law: PartLaw;
  /** a slack forecast from pin and bore together; absent: from its own law */
  joint?: JointLaw | null;
  part: PartAtLimit;
  series: PartSeries;
  machine: MachineHoursAndUse;
  /** worked hours in one machine hour at present, > 0 */
  share: number;
  settings: ModelSettings;
  /** true: also how much of the width is use */
  withUseShare?: boolean;
};

/**
 * The days a part reaches its limit, at its machine's own use. Counted from the day the machine's hours were last known:
 *   worked hours there = worked hours now - share x (machine hours now - machine hours there)
 * Past at its last size: the day of that size.
 * @returns null where there is no limit, or no hours
 */
export function pointDates({
  law,
  joint = null,
  part,
  series,
  machine,
  share,
  settings,
  withUseShare = false,
}: DatesFrom): DateAtLimit | null {
  const { line, use } = machine;
  const node = line.nodes.at(-1);
  const { renewAtWearMm, workedHoursNow, machineHoursNow, lastSize } = series;
  if (!part.hoursAtLimit || renewAtWearMm === null || !node || workedHoursNow === null || machineHoursNow === null) {
    return null;
  }
  if (part.hoursAtLimit.pastAtLastSize && lastSize) {
    const on = lastSize.takenOn;
    return { low: on, middle: on, high: on, useShare: null, cautions: [] };
  }
  const workedAtNode = workedHoursNow - share * (machineHoursNow - node.machineHours);
  const ofJoint = joint && slackPastBy(joint, renewAtWearMm, settings);
  const chanceAt = ofJoint
    ? (hours: number) => ofJoint.chanceAt(hours - workedHoursNow)
    : chanceByHours(law, renewAtWearMm, settings);
  const lastHours = ofJoint ? workedHoursNow + ofJoint.from : (law.lastHours ?? 0);
  const question: DateQuestion = {
    chancePastBy: (ahead) => chanceAt(Math.max(0, workedAtNode + share * ahead)),
    leastHoursAhead: Math.min(0, (lastHours - workedAtNode) / share),
    use,
    from: node.takenOn,
    dayOf: (ahead) => dayOfPastHours(line, node.machineHours + ahead),
  };
  return dateAtLimit(question, withUseShare);
}
