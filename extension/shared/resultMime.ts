/** The type of the output that carries a `CellResult` of `core/service/cellResult.ts`. */
export const resultMime = 'application/vnd.diag.result+json';
