import { expect, test } from 'vitest';
import { flatCsv } from './flatCsv.ts';

test('objects become columns of their own, lists one cell, no rows the heading alone', () => {
  const rows = [
    { machine: 'Loader, red', hoursLeft: { low: -12.5, middle: null }, cautions: ['no-limit', 'x'], openFindings: [] },
    {
      machine: '=HYPERLINK("x")',
      hoursLeft: { low: 1, middle: 2 },
      cautions: [],
      openFindings: [{ finding: 'crack', note: '' }],
    },
  ];
  expect(flatCsv(rows, [])).toBe(
    [
      'machine,hoursLeft_low,hoursLeft_middle,cautions,openFindings',
      '"Loader, red",-12.5,,no-limit; x,',
      `"'=HYPERLINK(""x"")",1,2,,crack`,
      '',
    ].join('\n'),
  );
  expect(flatCsv([], ['machine', 'hoursLeft_low'])).toBe('machine,hoursLeft_low\n');
});
