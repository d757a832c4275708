/** Exit codes of the commands, as the job and report documents promise them; the last as a shell gives it for Ctrl-C. */
export const EXIT = { noneFails: 0, fails: 1, badInput: 2, internal: 3, outputCut: 4, interrupted: 130 } as const;
