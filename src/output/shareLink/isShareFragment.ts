export const SHARE_PREFIX = /^#?job=/;

/** Whether an address's fragment claims to hold a job, sound or damaged. */
export const isShareFragment = (fragment: string): boolean => SHARE_PREFIX.test(fragment);
