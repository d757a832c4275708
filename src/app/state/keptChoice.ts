/**
 * A choice that the browser keeps and that is not part of the job. `keep` returns false where the browser refuses.
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
    keep: (choice: Choice): boolean => {
      try {
        localStorage.setItem(key, JSON.stringify(choice));
        return true;
      } catch {
        return false;
      }
    },
  };
}
