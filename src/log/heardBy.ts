/** Which way an utterance came in. Browser text may turn spoken words into digits, so it is trusted less. */
export type HeardBy = "typed" | "listener" | "browser";
