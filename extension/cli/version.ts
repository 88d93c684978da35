/** The version that `casebook --version` prints; a test holds it equal to the manifest's. */
export const version = '0.1.0';
