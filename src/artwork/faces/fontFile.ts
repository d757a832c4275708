const files = new Map<string, Promise<Uint8Array>>();

/**
 * A font file that ships with the tool, loaded once on demand.
 *
 * @param url its address on the page
 * @param path the same file in its package, `package/folder/file.ttf`: the command line and the tests read it there
 * @returns its bytes; rejects with an Error that says what to do
 */
export function fontFile(url: string, path: string): Promise<Uint8Array> {
  const known = files.get(path);
  if (known !== undefined) return known;
  const file = load(url, path);
  files.set(path, file);
  // What failed once, as without a network, may succeed later.
  file.catch(() => files.delete(path));
  return file;
}

async function load(url: string, path: string): Promise<Uint8Array> {
  const node = globalThis.process?.getBuiltinModule;
  if (node !== undefined) {
    const file = node('node:module')
      .createRequire(import.meta.url)
      .resolve(path);
    return node('node:fs/promises').readFile(file);
  }
  const response = await fetch(url);
  if (!response.ok)
    throw new Error(
      `A font could not be fetched: got status ${response.status} for ${path.replace(/^.*\//, '')}. Reload the page and try again.`,
    );
  return new Uint8Array(await response.arrayBuffer());
}
