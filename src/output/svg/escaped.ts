/** Text as it stands in XML, in an attribute too. */
export const escaped = (text: string): string =>
  // Control characters are not allowed in XML at all.
  text
    .replace(/\p{Cc}/gu, ' ')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
