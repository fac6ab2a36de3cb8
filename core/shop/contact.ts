/** How a customer was reached: a slip or a letter sent, a mail, a short message, on the telephone, at the counter. */
export type ContactWay = 'slip' | 'email' | 'message' | 'phone' | 'in-person';

/** What a customer said to it: comes in, asks again later, wants it left, no longer has the machine. */
export type ContactAnswer = 'booked' | 'later' | 'declined' | 'sold';
