/** The two-minute tour of the demo workshop: a step a screen, in the order a winter goes. */
export const tourWords = {
  region: 'Tour',
  count: (step: number, steps: number) => `Tour, ${step} of ${steps}`,
  next: 'Next',
  back: 'Back',
  leave: 'Leave the tour',
  done: 'End of the tour',
  offerHead: 'New here? Two minutes through the demo workshop.',
  offer: 'It can be left at any time, and started again under Help.',
  start: 'Start the tour',
  notNow: 'Not now',
  onDemo: 'The tour goes through the demo workshop.',
  onDemoNext: 'Your record is closed meanwhile, and stays as it is. Open it again under Shop, Record.',
  openDemo: 'Open the demo and start',
} as const;

export type TourStep = { at: string; head: string; text: string };

export const tourSteps: readonly TourStep[] = [
  {
    at: '/machines',
    head: 'Every machine on one scale of hours',
    text: 'A bar runs from the low to the high figure of the part that reaches its limit first; the heavy figure decides. Soonest comes first, and a finding that forbids use before all.',
  },
  {
    at: '/machine/1',
    head: 'One machine, part by part',
    text: 'Each row is a measuring point on the machine’s own hours: readings are dots, the bar is when its limit is reached. An open bar is borrowed from like parts. Arrows move, Enter opens a row.',
  },
  {
    at: '/strip-down/1',
    head: 'Strip-down: sizes typed at the bench',
    text: 'One box a size, Enter to the next. What looks odd is asked at once and kept out until it is answered. When it is saved, it says what moved in the forecast.',
  },
  {
    at: '/slip/1',
    head: 'The farmer’s page',
    text: 'One page, on the figures of his own dial: when to bring it in, what was found, what comes next, and how sure that is.',
  },
  {
    at: '/recall',
    head: 'Whom to ring, and why now',
    text: 'Machines whose parts come due before the next season, with what was said last time. V opens the phone sheet while a farmer is on the line.',
  },
  {
    at: '/winter',
    head: 'The winter, week by week',
    text: 'The A key proposes which machine comes in which week, so that the bench is full and nobody works over. What a farmer agreed to stays where it is.',
  },
  {
    at: '/part-classes',
    head: 'What the shop’s own sizes have taught',
    text: 'Every part measured makes the others of its class better known. Here stands how fast each class wears; under Check, how well earlier forecasts held.',
  },
  {
    at: '/start',
    head: 'Now with your own machines',
    text: 'Start empty lays down a record of your own; nothing of the demo stays in it. Old paper and sheets from a spreadsheet come in under Strip-down and In and out. This page stands under Shop, Record.',
  },
];
