/** Help where one works: what a person asks of a figure on the screen before them, in as many sentences as it takes. */
export const helpWords = {
  key: 'Help',
  head: 'Help here',
  close: 'Close',
  tour: 'Take the tour',
  all: 'All that is asked here',
  none: 'Nothing is written about this screen. These hold everywhere.',
} as const;

/** Where a question is likely asked: paths of screens, as far as they are alike; none: on all. */
export type HelpTopic = { id: string; ask: string; answer: string; at: readonly string[] };

const TOPICS = [
  {
    id: 'wide',
    ask: 'Why is this number wide?',
    answer:
      'The range says how well it is known. A part measured once or never borrows from like parts, and they differ. It narrows with each size taken, most with sizes far apart in hours. Under Why this number the page says which source widens it how much.',
    at: ['/machines', '/machine/', '/slip', '/recall', '/phone', '/winter'],
  },
  {
    id: 'machine-hours',
    ask: 'What are machine hours?',
    answer:
      'Hours the machine has worked since it was new. The dial shows them only until its meter is replaced, turns over or stops. Parts wear by machine hours, so the forecast counts in them; what the farmer is told is turned back into what his dial shows.',
    at: ['/machines', '/machine/', '/strip-down', '/slip', '/take-in', '/old-sheets'],
  },
  {
    id: 'which-decides',
    ask: 'Which of the three figures counts?',
    answer:
      'The heavy one. For parts that tow or lift it is the low figure, since waiting too long can hurt someone; for others the middle. Nothing here says that a part is safe until then.',
    at: ['/machines', '/machine/', '/slip', '/recall'],
  },
  {
    id: 'basis',
    ask: 'What does “2 own readings, 14 like parts” mean?',
    answer:
      'How often this part was measured, and how many parts of its class the shop has measured on other machines. A closed bar rests on own readings; an open one is borrowed.',
    at: ['/machines', '/machine/', '/part-classes', '/slip'],
  },
  {
    id: 'limits',
    ask: 'What do renew at and reject at mean?',
    answer:
      'At renew-at a part is put right when the machine is in anyway; the forecast runs to it. At reject-at it may not go back in service. The maker’s own limits come first; where there are none, it is said whose they are.',
    at: ['/machine/', '/strip-down', '/take-in', '/shop', '/repair/'],
  },
  {
    id: 'questioned',
    ask: 'Why was my size questioned?',
    answer:
      'It is better than the last one, far out, or looks like another unit. It is kept, and left out of the forecast until somebody answers: right as read, renewed, or measured again.',
    at: ['/strip-down', '/old-sheets', '/machine/'],
  },
  {
    id: 'stations',
    ask: 'Why several sizes for one point?',
    answer:
      'A part seldom wears evenly. Each station is measured at the same place every time, and the one worn furthest speaks for the part.',
    at: ['/strip-down', '/old-sheets', '/machine/'],
  },
  {
    id: 'share',
    ask: 'What is the share of work?',
    answer:
      'How many of the machine’s hours an assembly works. A loader on a tractor that mostly ploughs may work a third of them: its parts age by a third of the machine’s hours.',
    at: ['/machine/', '/take-in'],
  },
  {
    id: 'classes',
    ask: 'What is a part class?',
    answer:
      'Parts that wear alike for the same reason: slide strips, pivot pins, hooks. What one of them shows in its hours is lent to the others, so that a part never measured has a forecast, and a wide one.',
    at: ['/part-classes', '/machine/', '/forecast-settings'],
  },
  {
    id: 'clean-up',
    ask: 'What is the clean-up bore?',
    answer:
      'The smallest round hole that takes in every wall as it was measured, so that the boring bar cuts all round. On the old centre a slot worn one way costs twice its wear; on a shifted centre less, where the joint may move by that much.',
    at: ['/repair/'],
  },
  {
    id: 'wall',
    ask: 'What is the wall left measured against?',
    answer:
      'Metal between the new hole and the outside of the boss, with the least the shop goes by under it. That figure is the shop’s own, with its source, under Figures of repair; the maker’s comes first.',
    at: ['/repair/'],
  },
  {
    id: 'drawn',
    ask: 'What does “against drawing” compare?',
    answer:
      'Bearing, shear and bending of the joint as it would be with the same joint as new: not worse than drawn is what is looked for. It says nothing of loads the joint was never made for, and calls nothing safe.',
    at: ['/repair/'],
  },
  {
    id: 'lasts',
    ask: 'How is it known how long a repair lasts?',
    answer:
      'The forecast is worked out again from the size the repair leaves: low to high hours until its limit, on one scale for all choices. A new part has no readings of its own, so its bar is borrowed from like parts.',
    at: ['/repair/'],
  },
  {
    id: 'setting',
    ask: 'What happens when I change a figure here?',
    answer:
      'Nothing until you have seen it: the program learns and forecasts the whole shop as it would be, and says how many hours at limit move, and which most. Every figure shows its own value, bounds and source, and goes back with one key.',
    at: ['/forecast-settings'],
  },
  {
    id: 'no-certificate',
    ask: 'May I rely on it?',
    answer:
      'It is a planning aid, not a certificate. It tells what like parts did. A crack, a bend or a loose pin counts at once, whatever the hours say; the maker’s instructions and the law where you work come first.',
    at: [],
  },
  {
    id: 'undo',
    ask: 'How do I put something right?',
    answer:
      'Nothing entered is written over. A size, an hour reading or a limit is put right on the machine’s page, with the old figure left in sight. The last entry is taken back under Shop, History.',
    at: [],
  },
] as const satisfies readonly HelpTopic[];

export type HelpTopicId = (typeof TOPICS)[number]['id'];
export const helpTopics: readonly (HelpTopic & { id: HelpTopicId })[] = TOPICS;
