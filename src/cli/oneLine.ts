/** A path or value of a broken file may hold line breaks and control characters; an error stays one line. */
export const oneLine = (text: string): string => text.replace(/\p{Cc}+/gu, ' ');
