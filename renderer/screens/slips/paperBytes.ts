/** A paper travels as base64 text; here it is its bytes again. */
export function bytesOfBase64(base64: string): Uint8Array<ArrayBuffer> {
  const text = atob(base64);
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) bytes[i] = text.charCodeAt(i);
  return bytes;
}

/** Hands a PDF to the person: a browser puts it with the downloads, Electron asks where. */
export function savePdf(bytes: Uint8Array<ArrayBuffer>, fileName: string): void {
  const address = URL.createObjectURL(new Blob([bytes], { type: 'application/pdf' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  // the download has taken hold of it by then
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
