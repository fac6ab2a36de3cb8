import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { z } from 'zod';

const zPlace = z.object({
  x: z.int(),
  y: z.int(),
  width: z.int().min(600),
  height: z.int().min(400),
  maximised: z.boolean(),
});
export type WindowPlace = z.infer<typeof zPlace>;
type Area = { x: number; y: number; width: number; height: number };

/** Where the window last stood; undefined when it never did, or when no screen shows that place any more. */
export function keptPlace(file: string, screens: readonly Area[]): WindowPlace | undefined {
  try {
    const place = zPlace.parse(JSON.parse(readFileSync(file, 'utf8')));
    return screens.some((screen) => titleBarIsOn(place, screen)) ? place : undefined;
  } catch {
    return undefined; // a first start, or a file someone wrote in: the window opens where it likes
  }
}

export function keepPlace(file: string, place: WindowPlace): void {
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, JSON.stringify(place));
}

/** The middle of the title bar can be taken hold of on that screen. */
const titleBarIsOn = (place: Area, screen: Area): boolean => {
  const middle = place.x + place.width / 2;
  return (
    middle >= screen.x && middle <= screen.x + screen.width && place.y >= screen.y && place.y < screen.y + screen.height
  );
};
