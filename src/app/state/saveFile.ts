/** Gives content to the browser as a file to save. */
export function saveFile(name: string, content: string | Blob | Uint8Array, type: string): void {
  const url = URL.createObjectURL(new Blob([content as BlobPart], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The browser reads the address after the click has been handled.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
