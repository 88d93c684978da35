/**
 * The settings under `diag`, as `package.json` contributes them. The server asks the client for the section `diag`
 * with the document's uri as scope.
 */
export interface Settings {
  /** In which units values are shown beside the author's own. */
  readonly units: 'as written' | 'metric' | 'US';
  /** Severity by code of a finding: its own where a code is not named. */
  readonly severity: Readonly<Record<string, 'error' | 'warning' | 'info' | 'off'>>;
  /** Whether results follow every edit; otherwise they come when asked for. Only the client looks at it. */
  readonly liveResults: boolean;
  /** Milliseconds from the last edit to its results. Only the client looks at it. */
  readonly liveResultsDelay: number;
}

export const defaultSettings: Settings = {
  units: 'as written',
  severity: {},
  liveResults: true,
  liveResultsDelay: 60,
};
