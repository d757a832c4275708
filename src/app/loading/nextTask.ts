/** Goes on in another task, so that the page may answer in between. */
export const nextTask = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));
