/** The version that `casebook --version` prints; a test holds it equal to the manifest's. */
export function version(): string {
  return '0.1.0';
}
