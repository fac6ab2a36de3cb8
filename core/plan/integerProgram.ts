import highsPackage from 'highs';

/** A linear sum: how often each variable is taken. Variables are numbered from 0. */
export type LinearSum = readonly (readonly [variable: number, times: number])[];

/**
 * An integer program: the least cost of choices that hold every rule.
 * @see solveProgram
 */
export type IntegerProgram = {
  /** cost of each variable */
  cost: readonly number[];
  /** which variables are yes or no; the others are numbers from 0 up */
  yesOrNo: ReadonlySet<number>;
  /** which of the others are whole numbers; absent: none */
  whole?: ReadonlySet<number>;
  rules: readonly { sum: LinearSum; is: '<=' | '=' | '>='; than: number }[];
};

export type Solved = {
  /** value of each variable */
  values: number[];
  cost: number;
  /** true: no choice costs less, within a millionth */
  proven: boolean;
};

/** Work after which a search gives what it has found, in branches looked into: never by the clock. */
const MOST_NODES = 20_000;
/** Share of the cost below which a better choice is no longer looked for. */
const CLOSE = 1e-6;

/**
 * Solves an integer program by branch and bound. The same program gives the same answer: one thread, a fixed seed, a search
 * that ends by work done.
 *
 * @returns null when no choice holds every rule
 * @source HiGHS, a library for linear and mixed-integer programs (Huangfu and Hall, Mathematical Programming Computation 10,
 *   2018)
 */
export async function solveProgram(program: IntegerProgram, mostNodes = MOST_NODES): Promise<Solved | null> {
  return (await boundProgram(program, mostNodes)).found;
}

/** What a search that was ended has found, and what no choice costs less than. */
export type BoundedProgram = {
  /** null: no choice holds every rule, or none was found with the work allowed */
  found: Solved | null;
  /** -Infinity: nothing is proven */
  bound: number;
};

/** As solveProgram, with what is proven when the search ends by the work allowed. */
export async function boundProgram(program: IntegerProgram, mostNodes: number): Promise<BoundedProgram> {
  if (program.cost.length === 0) return { found: { values: [], cost: 0, proven: true }, bound: 0 };
  const highs = await loadedHighs();
  said.length = 0;
  const solution = highs.solve(asText(program), {
    threads: 1,
    random_seed: 1,
    mip_rel_gap: CLOSE,
    mip_max_nodes: mostNodes,
    output_flag: true,
  });
  if (solution.Status === 'Infeasible') return { found: null, bound: Number.POSITIVE_INFINITY };
  const columns = solution.Columns as Readonly<Record<string, { Primal?: number }>>;
  const values = program.cost.map((_, variable) => columns[name(variable)]?.Primal ?? 0);
  const cost = sumOf(program.cost, values);
  const proven = solution.Status === 'Optimal';
  const found = proven || holds(program, values) ? { values, cost, proven } : null;
  return { found, bound: proven ? cost - CLOSE * Math.abs(cost) : dualBound() };
}

// its types speak of its CommonJS build, whose loader is a member; imported, the loader is what comes
type LoadHighs = typeof highsPackage.default;
const loadHighs = highsPackage as unknown as LoadHighs;

let loading: ReturnType<LoadHighs> | undefined;

/** What the library says of its last search: only there it names the bound. */
const said: string[] = [];

/** The library, loaded once: a few tens of milliseconds. */
function loadedHighs(): ReturnType<LoadHighs> {
  loading ??= loadHighs({ print: (line: string) => said.push(line) });
  return loading;
}

/** The bound of a search that was ended, below it by what its last digit may hide. */
function dualBound(): number {
  const text = said
    .findLast((line) => line.includes('Dual bound'))
    ?.trim()
    .split(/\s+/)
    .at(-1);
  const bound = Number(text ?? Number.NaN);
  return Number.isFinite(bound) ? bound - CLOSE * Math.abs(bound) : Number.NEGATIVE_INFINITY;
}

/** Whether values hold every rule: of an ended search the library gives values even when it found none that do. */
function holds({ rules, yesOrNo, whole }: IntegerProgram, values: readonly number[]): boolean {
  const near = 1e-5;
  for (const variable of [...yesOrNo, ...(whole ?? [])])
    if (Math.abs(values[variable]! - Math.round(values[variable]!)) > near) return false;
  return rules.every(({ sum, is, than }) => {
    const over = sum.reduce((all, [variable, times]) => all + times * values[variable]!, 0) - than;
    return is === '=' ? Math.abs(over) <= near : is === '<=' ? over <= near : over >= -near;
  });
}

const sumOf = (cost: readonly number[], values: readonly number[]): number =>
  cost.reduce((sum, each, variable) => sum + each * (values[variable] ?? 0), 0);

const name = (variable: number): string => `x${variable}`;

/** The program as text in the LP format, which the library reads. */
function asText({ cost, yesOrNo, whole, rules }: IntegerProgram): string {
  const objective = linear(cost.map((each, variable) => [variable, each] as const));
  const lines = rules.map(({ sum, is, than }, number) => ` r${number}: ${linear(sum)} ${is} ${than}`);
  return [
    'Minimize',
    ` cost: ${objective}`,
    'Subject To',
    ...lines,
    ...section('Binary', yesOrNo),
    ...section('General', whole),
    'End',
  ].join('\n');
}

/** A section that names variables; none of them, no section. */
const section = (title: string, variables: ReadonlySet<number> = new Set()): string[] =>
  variables.size === 0 ? [] : [title, ` ${[...variables].map(name).join('\n ')}`];

/** A variable taken no times is named all the same, so that the library knows it. */
const linear = (sum: LinearSum): string =>
  sum.map(([variable, times]) => `${times < 0 ? '-' : '+'} ${Math.abs(times)} ${name(variable)}`).join('\n  ');
