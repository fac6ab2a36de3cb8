import { z } from 'zod';
import type { RenewalKind } from '../shop/measuringPoint.ts';
import { isDay } from '../units/day.ts';

/** Shapes that several operations share. Lengths are mm, times are hours, days are ISO text. */

export const zDay = z.string().refine(isDay, { message: 'a day that exists, like 2026-10-12' });
export const zId = z.int().positive();
export const zName = z.string().trim().min(1).max(120);
export const zNote = z.string().max(2000);
/** a size from zero up: no part is thicker than ten metres */
export const zSizeMm = z.number().min(0).max(10_000);
export const zHours = z.number().min(0).max(10_000_000);

/** who says or does something; may be left out */
export const zBy = z.string().max(120);
/** a share of hours */
export const zShare = z.number().min(0.01).max(1);
/** digits of an hour meter; null: not known */
export const zMeterDigits = z.int().min(3).max(8).nullable();

/** Low, middle, high: 10 %, 50 %, 90 %; low is always the smaller number. Null: beyond what can be said. */
export const zRange = z.object({
  low: z.number().nullable(),
  middle: z.number().nullable(),
  high: z.number().nullable(),
});
export const zDayRange = z.object({
  low: z.string().nullable(),
  middle: z.string().nullable(),
  high: z.string().nullable(),
});

export const zFacts = z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null()]));
/** Why long work beside the program came to nothing. */
export const zJobFault = z.object({ code: z.string(), path: z.string().exactOptional(), facts: zFacts });
export const zCaution = z.object({ code: z.string(), facts: zFacts });

/** Asked of the person who typed something unlikely; kept as typed, left out of the forecast until answered. */
export const zQuestion = z.object({ code: z.string(), facts: zFacts, choices: z.array(z.string()) });

/** What was done: as shop/measuringPoint.ts says. */
export const zRenewalKind = z.enum(['new-part', 'bush', 'weld-and-bore', 'oversize', 'turned'] satisfies RenewalKind[]);
export const zFindingKind = z.enum(['crack', 'bent', 'broken', 'seized', 'missing', 'other']);
export const zSeverity = z.enum(['watch', 'repair', 'do-not-use']);
/** A repair refused by the customer, in their own words. */
export const zDeclined = z.object({ saidOn: zDay, saidBy: z.string(), words: z.string() });
export const zDialEventKind = z.enum(['reading', 'estimate', 'new-meter', 'rollover']);
export const zWears = z.enum(['down', 'up']);
export const zMeasures = z.enum(['thickness', 'diameter', 'bore', 'slack', 'section', 'depth']);
export const zSizeEvent = z.enum(['as-found', 'as-left']);

/** Which figure decides: low for towing and lifting parts, middle for the rest. */
export const zDecides = z.enum(['low', 'middle']);
/**
 * What a position asks for: its limit falls before the next winter but one (this-winter), it is worth doing with
 * what is opened anyway (with-it), it can be left (leave), it must not be used (stop), nothing is known (none).
 */
export const zRole = z.enum(['this-winter', 'with-it', 'leave', 'stop', 'none']);

export type Range = z.infer<typeof zRange>;
export type DayRange = z.infer<typeof zDayRange>;
export type Question = z.infer<typeof zQuestion>;
export type Role = z.infer<typeof zRole>;
