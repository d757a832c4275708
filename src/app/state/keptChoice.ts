/**
 * A choice that the browser keeps and that is no part of the job. Where the browser refuses nothing is lost that matters, so
 * a failure is passed over.
 * @param schema gives every choice its default
 */
export function keptChoice<Choice>(key: string, schema: { parse(value: unknown): Choice }) {
  return {
    read: (): Choice => {
      try {
        return schema.parse(JSON.parse(localStorage.getItem(key) ?? '{}'));
      } catch {
        return schema.parse({});
      }
    },
    keep: (choice: Choice): void => {
      try {
        localStorage.setItem(key, JSON.stringify(choice));
      } catch {}
    },
  };
}
