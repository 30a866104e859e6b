/** One mistake in a site file: where in the tree, and a sentence that starts with the path. */
export interface Mistake {
  readonly path: readonly PropertyKey[];
  readonly sentence: string;
}
