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

/**
 * Solves an integer program by branch and bound. The same program gives the same answer: one thread, a fixed seed, a search
 * that ends by work done.
 *
 * @returns null when no choice holds every rule
 * @source HiGHS, a library for linear and mixed-integer programs (Huangfu and Hall, Mathematical Programming Computation 10,
 *   2018)
 */
export async function solveProgram(program: IntegerProgram, mostNodes = MOST_NODES): Promise<Solved | null> {
  if (program.cost.length === 0) return { values: [], cost: 0, proven: true };
  const highs = await loadedHighs();
  const solution = highs.solve(asText(program), {
    threads: 1,
    random_seed: 1,
    mip_rel_gap: 1e-6,
    mip_max_nodes: mostNodes,
    output_flag: false,
  });
  if (solution.Status === 'Infeasible') return null;
  const columns = solution.Columns as Readonly<Record<string, { Primal?: number }>>;
  const values = program.cost.map((_, variable) => columns[name(variable)]?.Primal ?? 0);
  return { values, cost: sumOf(program.cost, values), proven: solution.Status === 'Optimal' };
}

// its types speak of its CommonJS build, whose loader is a member; imported, the loader is what comes
type LoadHighs = typeof highsPackage.default;
const loadHighs = highsPackage as unknown as LoadHighs;

let loading: ReturnType<LoadHighs> | undefined;

/** The library, loaded once: a few tens of milliseconds. */
function loadedHighs(): ReturnType<LoadHighs> {
  loading ??= loadHighs();
  return loading;
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
