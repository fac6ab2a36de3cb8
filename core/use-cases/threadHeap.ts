/**
 * Room a thread has for what it has just made [MB]. With more, as a large computer would give it, what is let go of is only cleared later:
 * learning took 418 MB at most, and takes 304.
 */
export const YOUNG_HEAP_MB = 48;
