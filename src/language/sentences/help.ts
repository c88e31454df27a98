/** What "what can I say" answers: short enough to be heard out. The screen lists more. */
export function sayHelp(questionWaits: boolean): string {
  return questionWaits
    ? "Affirm, negative, or the digits. Or say the value again."
    : "Say a reading, such as one ten over sixty, or sats ninety four. Or say status, next, done, correction, disregard, read back, stand by.";
}
