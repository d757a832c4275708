/** Options of a choice whose values are its words. */
export const optionsOf = <Word extends string>(values: readonly Word[]) =>
  values.map((value) => ({ value, label: value }));
