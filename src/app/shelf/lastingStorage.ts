/** Whether the browser keeps the shelf when disk space runs short. */
export type Lasting = 'granted' | 'refused' | 'unknown';

/** Asks the browser not to clear the shelf. Some show a prompt, so call it after a job was saved. */
export async function askForLastingStorage(storage: StorageManager | undefined): Promise<Lasting> {
  try {
    if (storage?.persist === undefined) return 'unknown';
    return (await storage.persisted()) || (await storage.persist()) ? 'granted' : 'refused';
  } catch {
    return 'unknown';
  }
}

/** Whether the browser has promised before to keep the shelf; asks nothing of the maker. */
export async function isLasting(storage: StorageManager | undefined): Promise<boolean> {
  try {
    return (await storage?.persisted?.()) ?? false;
  } catch {
    return false;
  }
}
