/**
 * The same function, answering from memory what it was asked before of the very same object. For what is asked in every frame
 * and only changes with the job: object and answer must never be changed, and are forgotten together.
 */
export function remembered<Key extends object, Value, Part = void>(
  work: (key: Key, part: Part) => Value,
): (key: Key, part: Part) => Value {
  const known = new WeakMap<Key, Map<Part, Value>>();
  return (key, part) => {
    const answers = known.get(key) ?? new Map<Part, Value>();
    known.set(key, answers);
    if (!answers.has(part)) answers.set(part, work(key, part));
    return answers.get(part)!;
  };
}

/** The same function, answering from memory what it was asked last, for what is asked along a line and seldom changes there. */
export function repeated<Args extends readonly unknown[], Value>(
  work: (...args: Args) => Value,
): (...args: Args) => Value {
  let last: { readonly args: Args; readonly value: Value } | null = null;
  return (...args) => {
    if (last === null || args.some((arg, i) => arg !== last?.args[i])) last = { args, value: work(...args) };
    return last.value;
  };
}
