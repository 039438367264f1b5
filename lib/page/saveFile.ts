/**
 * Hands a file to the reader's browser to save.
 * @param contents text is written as UTF-8
 */
export function saveFile(filename: string, type: string, contents: string | Uint8Array | Blob): void {
  const blob = contents instanceof Blob ? contents : new Blob([contents as BlobPart], { type });
  const address = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = address;
  link.download = filename;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser reads the address after the click returns.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
