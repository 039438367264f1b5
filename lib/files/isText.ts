const looked = 4096;

/**
 * Whether bytes look like text: a spreadsheet's own file, a picture or anything else that is packed has control characters
 * all over, which text has hardly ever.
 * @param bytes  UTF-8
 * @example isText(new TextEncoder().encode('horse,date')) // true
 */
export function isText(bytes: Uint8Array): boolean {
  const length = Math.min(bytes.length, looked);
  let controls = 0;
  for (let i = 0; i < length; i++) if (isControl(bytes[i])) controls++;
  return controls * 32 < length;
}

/** Below the space, but no tab, line feed, form feed or carriage return. */
function isControl(byte: number): boolean {
  return byte < 32 && byte !== 9 && byte !== 10 && byte !== 12 && byte !== 13;
}
