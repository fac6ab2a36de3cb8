/** How a customer was reached: a slip or a letter sent, a mail, a short message, on the telephone, at the counter. */
export const CONTACT_WAYS = ['slip', 'email', 'message', 'phone', 'in-person'] as const;
export type ContactWay = (typeof CONTACT_WAYS)[number];

/** What a customer said to it: comes in, asks again later, wants it left, no longer has the machine. */
export const CONTACT_ANSWERS = ['booked', 'later', 'declined', 'sold'] as const;
export type ContactAnswer = (typeof CONTACT_ANSWERS)[number];
