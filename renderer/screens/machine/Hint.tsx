import { useLocation } from 'wouter';
import type { MachineSheet } from '#core/contract/machine.ts';
import { Picture } from '#renderer/marks/Picture.tsx';
import { QuestionRing } from '#renderer/marks/Questioned.tsx';
import { openHours } from '#renderer/screens/hours/openHours.ts';
import { machineWords, panelWords } from '#renderer/words/machineWords.ts';
import { questionedPoints } from './pictureOf.ts';

/** One line under the picture: what would help this machine's forecast most. Nothing, where nothing is amiss. */
export function Hint({
  sheet,
  chosenId,
  onAnswer,
}: {
  sheet: MachineSheet;
  chosenId: number | null;
  onAnswer: (pointId: number) => void;
}) {
  const [, goTo] = useLocation();
  const questioned = questionedPoints(sheet);
  const next = questioned.find(({ pointId }) => pointId === chosenId) ?? questioned[0];
  if (next) {
    const count = questioned.reduce((sum, point) => sum + point.count, 0);
    return (
      <div className="machine-hint asks">
        <Picture width={20} height={20} label={null}>
          <QuestionRing x={10} y={10} radiusPx={8.5} />
        </Picture>
        {machineWords.questionedElsewhere(count)}
        <TextKey onPress={() => onAnswer(next.pointId)}>{machineWords.toQuestion}</TextKey>
      </div>
    );
  }
  if (sheet.hours.machineHours === null) {
    return (
      <div className="machine-hint">
        {machineWords.noHours}
        <TextKey onPress={() => openHours({ machineId: sheet.machineId })}>{machineWords.readMeter}</TextKey>
      </div>
    );
  }
  if (sheet.points.every((point) => point.visits.length === 0)) {
    return (
      <div className="machine-hint">
        {machineWords.nothingMeasured}
        <TextKey onPress={() => goTo(`/strip-down/${sheet.machineId}`)}>{panelWords.startStripDown}</TextKey>
      </div>
    );
  }
  return null;
}

export const TextKey = ({ children, onPress, label }: { children: string; onPress: () => void; label?: string }) => (
  <button type="button" className="text-key" onClick={onPress} aria-label={label}>
    {children}
  </button>
);
