import { useParams } from 'wouter';

/** Number of the thing an address names, as in "/machine/12"; null where what stands there is the number of nothing. */
export function useIdInAddress(name: string): number | null {
  const id = Number(useParams<Record<string, string | undefined>>()[name]);
  return Number.isSafeInteger(id) && id > 0 ? id : null;
}
