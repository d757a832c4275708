/** Exit codes of the commands, as the job and report documents promise them. */
export const EXIT = { fits: 0, fails: 1, badInput: 2, internal: 3 } as const;
