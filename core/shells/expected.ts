import type { z } from 'zod';
import type { FieldIssue } from '../contract/operation.ts';

type Issue = z.core.$ZodIssue;

/**
 * What was expected of each field that was not so, in the fewest words: "a number", "at least 0 and given", "one of crack | bent".
 * Never what was sent: requests hold people's names, and these lines may be logged.
 */
export const fieldIssues = (issues: readonly Issue[]): FieldIssue[] =>
  issues.map((issue) => ({ path: pathText(issue.path), expected: expectedText(issue) }));

const pathText = (path: readonly PropertyKey[]): string => path.map(String).join('.');

function expectedText(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return KIND_TEXT[issue.expected] ?? issue.expected;
    case 'invalid_value':
      return issue.values.length === 1 ? String(issue.values[0]) : `one of ${issue.values.map(String).join(' | ')}`;
    case 'too_small':
      return `${issue.inclusive === false ? 'more than' : 'at least'} ${issue.minimum}${countedText(issue.origin)}`;
    case 'too_big':
      return `${issue.inclusive === false ? 'less than' : 'at most'} ${issue.maximum}${countedText(issue.origin)}`;
    case 'not_multiple_of':
      return `a multiple of ${issue.divisor}`;
    case 'invalid_format':
      return issue.pattern === undefined ? `text of the form ${issue.format}` : `text like ${issue.pattern}`;
    case 'unrecognized_keys':
      return `no field called ${issue.keys.join(', ')}`;
    case 'invalid_union':
      return unionText(issue.errors);
    case 'invalid_key':
    case 'invalid_element':
      return issue.issues.map(expectedText).join(' and ');
    // a refinement of the contract states what it expects as its message
    case 'custom':
      return issue.message;
  }
}

const unionText = (branches: readonly (readonly Issue[])[]): string =>
  [...new Set(branches.map((branch) => branch.map(issueInUnion).join(' and ')))].filter(Boolean).join(', or ');

const issueInUnion = (issue: Issue): string =>
  issue.path.length === 0 ? expectedText(issue) : `${pathText(issue.path)}: ${expectedText(issue)}`;

const countedText = (origin: string): string =>
  origin === 'string' ? ' characters' : origin === 'array' || origin === 'set' ? ' entries' : '';

const KIND_TEXT: Record<string, string> = {
  number: 'a number',
  int: 'a whole number',
  string: 'text',
  boolean: 'true or false',
  object: 'an object',
  record: 'an object',
  array: 'a list',
  null: 'nothing (null)',
};
