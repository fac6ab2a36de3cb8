import { type HowKnown, type Sourced, sourced } from '../howKnown.ts';

/** What is pressed into what. */
export const MATERIALS = ['structural-steel', 'quenched-steel', 'cast-steel', 'cast-iron', 'tin-bronze'] as const;
export type MaterialName = (typeof MATERIALS)[number];

/** What pressing, heating and bearing need to know of a material. */
export type Material = {
  name: MaterialName;
  /** Young's modulus [MPa] */
  youngsMpa: number;
  /** Poisson's ratio */
  poisson: number;
  /** lengthening for each kelvin between room and 250 °C [1/K] */
  expansionPerK: number;
  /** mean shortening for each kelvin down to liquid nitrogen [1/K] */
  contractionPerK: number;
  /** stress at which it stays deformed (for cast iron: at which it breaks in tension) [MPa]; the part's own figure prevails */
  yieldMpa: number;
  /** true: whoever knows the part's steel said so */
  yieldIsOwn: boolean;
  /** heated above this it may lose what hardening gave it, or crack [°C] */
  heatUpToC: number;
  howKnown: HowKnown;
  source: string;
};

const MEMORY = 'from memory';

/**
 * Defaults for each material, set otherwise by whoever knows the part's steel.
 * Lengthening of steel 11 to 12, bronze 17 to 18, cast iron 10 to 12 millionths a kelvin are partly published; steel's mean
 * shortening in the cold, 8.5, and the other figures are from memory.
 */
export const MATERIAL: Readonly<
  Record<MaterialName, Sourced<Omit<Material, 'name' | 'yieldIsOwn' | 'howKnown' | 'source'>>>
> = {
  'structural-steel': sourced(
    {
      ...{ youngsMpa: 210_000, poisson: 0.3, expansionPerK: 11.5e-6, contractionPerK: 8.5e-6 },
      ...{ yieldMpa: 355, heatUpToC: 250 },
    },
    'from-memory',
    'EN 1993-1-1, 3.2.6, and S355 up to 16 mm; from memory',
  ),
  'quenched-steel': sourced(
    {
      ...{ youngsMpa: 210_000, poisson: 0.3, expansionPerK: 11.5e-6, contractionPerK: 8.5e-6 },
      ...{ yieldMpa: 650, heatUpToC: 250 },
    },
    'from-memory',
    '42CrMo4 quenched and tempered, 40 to 100 mm; from memory',
  ),
  'cast-steel': sourced(
    {
      ...{ youngsMpa: 205_000, poisson: 0.3, expansionPerK: 11.5e-6, contractionPerK: 8.5e-6 },
      ...{ yieldMpa: 280, heatUpToC: 250 },
    },
    'from-memory',
    MEMORY,
  ),
  'cast-iron': sourced(
    {
      ...{ youngsMpa: 110_000, poisson: 0.26, expansionPerK: 10.5e-6, contractionPerK: 8e-6 },
      ...{ yieldMpa: 200, heatUpToC: 150 },
    },
    'from-memory',
    'grey iron of 200 MPa; from memory',
  ),
  'tin-bronze': sourced(
    {
      ...{ youngsMpa: 105_000, poisson: 0.34, expansionPerK: 17.5e-6, contractionPerK: 15e-6 },
      ...{ yieldMpa: 150, heatUpToC: 150 },
    },
    'from-memory',
    'cast CuSn12; from memory',
  ),
};

/** A material by name, with its yield stress put right where the part's own is known [MPa]. */
export function material(name: MaterialName, yieldMpa: number | null = null): Material {
  const { value, howKnown, source } = MATERIAL[name];
  const yieldIsOwn = yieldMpa !== null;
  return { name, ...value, yieldMpa: yieldMpa ?? value.yieldMpa, yieldIsOwn, howKnown, source };
}
