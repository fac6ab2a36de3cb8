import { circlePath } from '#core/axis/wornHole.ts';
import type { RepairChoiceName } from '#core/contract/repair.ts';
import { Picture, useHatch } from '#renderer/marks/Picture.tsx';

/** A section of what a choice comes to: boss, bush and pin; not to scale. Crossed out when closed. */
export function OptionPicture({ choice, closed }: { choice: RepairChoiceName; closed: boolean }) {
  return (
    <Picture width={92} height={86} label={null} className={closed ? 'option-picture shut' : 'option-picture'}>
      <Section choice={choice} />
      {closed && <path className="l-thin" d="M4 4L88 82M88 4L4 82" />}
    </Picture>
  );
}

const MIDDLE = { x: 46, y: 42 };
const BOSS = 36;

function Section({ choice }: { choice: RepairChoiceName }) {
  const [boss, other, weld] = [useHatch('section'), useHatch('section-other'), useHatch('part')];
  const round = (radius: number, x = MIDDLE.x) => circlePath(x, MIDDLE.y, radius);
  const newPart = choice === 'new-boss' || choice === 'reject';
  const hole = choice === 'oversize-pin' ? 27 : 23;
  return (
    <>
      {boss.pattern}
      {choice === 'bush' && other.pattern}
      {choice === 'weld' && weld.pattern}
      {choice === 'reject' && <rect className="l-thick" x={3} y={2} width={86} height={80} />}
      <path className={newPart ? 'l-thick' : 'l-thin'} style={{ fill: boss.fill }} d={round(BOSS)} />
      {choice === 'bush' && <path className="l-thick" style={{ fill: other.fill }} d={`${round(29)}${round(23)}`} />}
      {choice === 'weld' && <path className="l-thin" style={{ fill: weld.fill }} d={`${round(28)}${round(23)}`} />}
      <path className="paper" d={round(hole)} />
      {choice === 'leave' && <path className="paper l-thick" d={round(23, MIDDLE.x + 4)} />}
      <path className="l-thick" d={round(hole)} />
      <path className="pin-face" d={round(choice === 'leave' ? 21 : hole - 1.5, choice === 'leave' ? 44 : MIDDLE.x)} />
      {choice === 'new-boss' && <path className="ink" d="M8 82l7 -12l7 12zM70 82l7 -12l7 12z" />}
    </>
  );
}
