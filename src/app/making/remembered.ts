/** The function with its results remembered for as long as what they were found of exists. */
export function remembered<Of extends object, Found>(find: (of: Of) => Found): (of: Of) => Found {
  const known = new WeakMap<Of, { readonly found: Found }>();
  return (of) => {
    const before = known.get(of);
    if (before !== undefined) return before.found;
    const found = find(of);
    known.set(of, { found });
    return found;
  };
}
