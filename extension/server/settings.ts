import type { Severity } from '../../core/diagnostics/row.ts';
import type { Finding } from '../../core/study/types.ts';
import { defaultSettings, type Settings } from '../shared/settings.ts';

/** What of the settings the server looks at. */
export type ServerSettings = Pick<Settings, 'units' | 'severity'>;

/** The settings as a client gave them; what is missing or no setting is as if it was not set. */
export function settingsFrom(given: unknown): ServerSettings {
  if (typeof given !== 'object' || given === null) return defaultSettings;
  const units: unknown = Reflect.get(given, 'units');
  const severity: unknown = Reflect.get(given, 'severity');
  return {
    units: units === 'metric' || units === 'US' || units === 'as written' ? units : defaultSettings.units,
    severity: typeof severity === 'object' && severity !== null ? chosenSeverities(severity) : {},
  };
}

function chosenSeverities(given: object): Settings['severity'] {
  const chosen: Record<string, Severity | 'off'> = {};
  for (const [code, value] of Object.entries(given)) {
    if (value === 'error' || value === 'warning' || value === 'info' || value === 'off') chosen[code] = value;
  }
  return chosen;
}

/** A finding as the settings weigh it: nothing when it is turned off. */
export function severityOf(finding: Finding, severity: Settings['severity']): readonly Finding[] {
  const { diagnostic } = finding;
  const wanted = Object.hasOwn(severity, diagnostic.code) ? severity[diagnostic.code] : undefined;
  if (wanted === undefined || wanted === diagnostic.severity) return [finding];
  return wanted === 'off' ? [] : [{ ...finding, diagnostic: { ...diagnostic, severity: wanted } }];
}
