/** Hands what an address stands for to the browser as a file. */
export function saveFile(name: string, address: string): void {
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
}
