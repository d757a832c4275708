/** What a file says of itself. */
export interface FileFacts {
  readonly title: string;
  /** BCP 47. */
  readonly language: string;
  readonly producer: string;
  /** Day it was made, ISO 8601; left out where none was given. */
  readonly date?: string;
}

/** The same facts as in the file's own dictionary, for programs that read no PDF (XMP, ISO 16684-1). */
export function xmp({ title, language, producer, date }: FileFacts): string {
  const made = date === undefined ? '' : instant(date);
  return `<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
<dc:format>application/pdf</dc:format>
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">${escaped(title)}</rdf:li></rdf:Alt></dc:title>
<dc:language><rdf:Bag><rdf:li>${escaped(language)}</rdf:li></rdf:Bag></dc:language>
${made === '' ? '' : `<xmp:CreateDate>${made}</xmp:CreateDate>\n<xmp:ModifyDate>${made}</xmp:ModifyDate>\n`}<pdf:Producer>${escaped(producer)}</pdf:Producer>
</rdf:Description></rdf:RDF></x:xmpmeta>
<?xpacket end="r"?>`;
}

/** A day as the instant at which it begins in UTC. */
export const instant = (day: string): string => `${day}T00:00:00Z`;

/** Characters that XML 1.0 does not allow are left out. */
const escaped = (text: string): string =>
  text
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what XML forbids
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;');
