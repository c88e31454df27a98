const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** Characters that are no text, and those that turn the direction of what follows: they could show a number reversed. */
const HIDDEN = /(?![\t\n])[\p{Cc}\p{Cs}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

/** Text as it may stand in HTML and in XML, in elements and in attributes. */
export const escapeMarkup = (text: string): string =>
  text.replace(HIDDEN, "\ufffd").replace(/[&<>"']/gu, (character) => ENTITIES[character] ?? "");
