/**
 * Exit codes of the commands, as the job and report documents promise them; the last two as a shell gives them for Ctrl-C and for a
 * plain `kill`.
 */
export const EXIT = {
  noneFails: 0,
  fails: 1,
  badInput: 2,
  internal: 3,
  outputCut: 4,
  interrupted: 130,
  terminated: 143,
} as const;
