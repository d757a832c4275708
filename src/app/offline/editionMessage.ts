/** What a window asks of the worker that waits: to take over, if it is the only window. */
export type EditionRequest = 'take';

export type EditionAnswer = 'taken' | 'othersAreOpen';
