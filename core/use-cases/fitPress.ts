import type { fitPress } from '../contract/fits.ts';
import type { Handler } from '../contract/operation.ts';
import { limitsOfSize } from '../iso286/limitsOfSize.ts';
import { readFit } from '../iso286/readFit.ts';
import { type HoleClass, readClass } from '../iso286/toleranceClass.ts';
import { orRefuse, RefusedError } from '../outcome.ts';
import { LOCAL_RULES_PREVAIL } from '../repair/cautions/cautions.ts';
import { cautionsFor, plainFacts } from '../repair/cautions/cautionsFor.ts';
import { knownOf } from '../repair/howKnown.ts';
import { ADHESIVE_GAP_MM, adhesiveFit } from '../repair/press-fit/adhesiveFit.ts';
import { material } from '../repair/press-fit/material.ts';
import { pressBush } from '../repair/press-fit/pressBush.ts';
import { FRICTION } from '../repair/press-fit/pressForce.ts';
import type { Context } from './context.ts';

export const fitPressHandler: Handler<typeof fitPress, Context> = (_context, asked) => {
  const { nominalMm, hole, shaft } = orRefuse(readFit(asked.fit));
  const boss = material(asked.bossMaterial, asked.bossYieldMpa);
  const bush = material(asked.bushMaterial, asked.bushYieldMpa);
  const pressed = orRefuse(
    pressBush({
      ...asked,
      ...{ interfaceMm: nominalMm, bossClass: hole, bushClass: shaft, boss, bush },
      ...{ bushBoreClass: holeOf(asked.bushBoreClass), wantedBoreClass: holeOf(asked.wantedBoreClass) },
    }),
  );
  const glued = adhesiveFit({ ...orRefuse(limitsOfSize(nominalMm, hole)), lengthMm: asked.lengthMm });
  const friction = FRICTION[asked.lubrication];
  const part = { kind: 'other', towingOrLifting: false, crack: false } as const;
  return {
    ...pressed,
    friction: { ...friction.value, ...knownOf(friction) },
    adhesive: glued.ok ? { ...glued.value, ...knownOf(ADHESIVE_GAP_MM) } : null,
    ...{ boss, bush },
    cautions: cautionsFor(plainFacts(['press', 'heat-or-freeze'], part)),
    prevail: LOCAL_RULES_PREVAIL,
  };
};

/** A class of a bore; of a shaft it is refused. */
function holeOf(written: string | null): HoleClass | null {
  if (written === null) return null;
  const read = orRefuse(readClass(written));
  if (read.of !== 'hole') throw new RefusedError({ code: 'iso286-not-a-hole', facts: { written } });
  return read;
}
