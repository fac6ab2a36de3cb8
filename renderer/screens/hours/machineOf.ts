/** The machine a screen is of, from its address: "/machine/3" and "/strip-down/3" are of machine 3. */
export function machineOf(location: string): number | undefined {
  const found = /^\/(?:machine|strip-down|slip)\/(\d+)/.exec(location);
  return found ? Number(found[1]) : undefined;
}
