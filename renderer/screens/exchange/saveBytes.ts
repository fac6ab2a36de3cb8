/** Saves bytes under a name, where the window saves downloads (Electron asks where). */
export function saveBytes(name: string, base64: string, type: string): void {
  const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
  const address = URL.createObjectURL(new Blob([bytes], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // the download has its own hold of the bytes by the next turn
  setTimeout(() => URL.revokeObjectURL(address), 1000);
}
