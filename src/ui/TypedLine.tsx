import type { SubmitEvent } from "react";
import { useState } from "react";

/** A line to type what would be said, for silence, noise or a broken microphone. Enter sends; an empty line does nothing. */
export function TypedLine({ onSend }: { readonly onSend: (text: string) => void }) {
  const [text, setText] = useState("");
  const send = (event: SubmitEvent) => {
    event.preventDefault();
    const line = text.trim();
    if (line === "") return;
    onSend(line);
    setText("");
  };
  return (
    <form className="typed" aria-label="Typed line" onSubmit={send}>
      <label className="unseen" htmlFor="typed-line">
        Type instead of speaking
      </label>
      <input
        id="typed-line"
        type="text"
        value={text}
        onChange={(event) => setText(event.target.value)}
        placeholder="Type instead of speaking"
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        enterKeyHint="send"
      />
      <button type="submit">Send</button>
    </form>
  );
}
