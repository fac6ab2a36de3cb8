/** Where the machine of a job stands, on screens and papers alike. */
export const whereaboutsNames: Readonly<Record<'not-said' | 'in-the-yard' | 'at-the-farm' | 'elsewhere', string>> = {
  'not-said': 'not said',
  'in-the-yard': 'in the yard',
  'at-the-farm': 'at the farm',
  elsewhere: 'elsewhere',
};

/** "in the yard, bay 2"; nothing said is no words. */
export const whereaboutsText = (job: { whereabouts: keyof typeof whereaboutsNames; whereaboutsNote: string }): string =>
  [job.whereabouts === 'not-said' ? '' : whereaboutsNames[job.whereabouts], job.whereaboutsNote]
    .filter(Boolean)
    .join(', ');
