const KEY = "tragus.cautionRead";

/** Whether the cautions were once put away on this device. A device that will not remember shows them again. */
export function wasCautionRead(): boolean {
  try {
    return localStorage.getItem(KEY) === "yes";
  } catch {
    return false;
  }
}

export function rememberCautionRead(): void {
  try {
    localStorage.setItem(KEY, "yes");
  } catch {
    // Private windows may refuse storage; showing the cautions again next time is right then.
  }
}
