/** Puts a text on the clipboard; false where the host does not allow it. */
export async function copy(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return copyBySelection(text);
  }
}

/** Frames without the clipboard permission may still copy what is selected. */
function copyBySelection(text: string): boolean {
  const put = (event: ClipboardEvent) => {
    event.clipboardData?.setData("text/plain", text);
    event.preventDefault();
  };
  document.addEventListener("copy", put, { once: true });
  const done = document.execCommand("copy");
  document.removeEventListener("copy", put);
  return done;
}
